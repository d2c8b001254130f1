"""The door: only this computer, only this start, only our own pages, and nothing larger than a property needs."""

from __future__ import annotations

import pytest
from starlette.testclient import TestClient

from rootcollar.web.guard import COOKIE, MOST_BYTES
from tests.web.conftest import HOST, KEY


def test_another_name_in_host_is_not_answered(demo: TestClient) -> None:
    for host in ("evil.example", "127.0.0.1", "127.0.0.1:9", "localhost:8000.evil.example", ""):
        said = demo.get("/choose", headers={"host": host})
        assert said.status_code == 400
        assert "Hobbin" not in said.text


def test_without_the_key_of_this_start_nothing_is_shown(demo: TestClient) -> None:
    for cookies in ({}, {COOKIE: "another"}, {COOKIE: ""}):
        bare = TestClient(demo.app, base_url=f"http://{HOST}", cookies=cookies)
        for path in ("/", "/choose", "/static/look.css", "/door/openapi.json"):
            assert bare.get(path, follow_redirects=False).status_code == 403


def test_the_door_opens_with_the_key_and_sets_a_cookie_no_script_and_no_other_page_can_use(demo: TestClient) -> None:
    bare = TestClient(demo.app, base_url=f"http://{HOST}")
    assert bare.get("/enter?key=wrong", follow_redirects=False).status_code == 403
    said = bare.get(f"/enter?key={KEY}", follow_redirects=False)
    assert said.status_code == 303
    assert "HttpOnly" in said.headers["set-cookie"]
    assert "SameSite=Strict" in said.headers["set-cookie"]
    assert bare.get("/choose").status_code == 200


def test_a_change_sent_from_another_page_is_refused(demo: TestClient) -> None:
    for headers in ({"origin": "http://evil.example"}, {"origin": "null"}, {"sec-fetch-site": "cross-site"}):
        assert demo.post("/choose", headers=headers).status_code == 403


def test_more_than_a_property_needs_is_not_taken_in(demo: TestClient) -> None:
    assert demo.post("/choose", content=b"x" * (MOST_BYTES + 1)).status_code == 413


@pytest.mark.parametrize("path", ["/choose", "/choose/bench", "/style", "/static/look.css", "/no-such-page"])
def test_every_answer_forbids_other_hosts_frames_and_inline_code(path: str, demo: TestClient) -> None:
    said = demo.get(path).headers
    policy = said["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert "frame-ancestors 'none'" in policy
    assert said["x-content-type-options"] == "nosniff"
