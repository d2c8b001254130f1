"""The door: only this computer, this start and this browser come in; nothing is fetched from elsewhere."""

from __future__ import annotations

from hmac import compare_digest
from http.cookies import CookieError, SimpleCookie
from urllib.parse import parse_qs

from starlette.types import ASGIApp, Message, Receive, Scope, Send

__all__ = ["COOKIE", "Guard", "MOST_BYTES"]

COOKIE = "rootcollar_key"
MOST_BYTES = 2_000_000  # ours: no form or upload of one property is larger

_POLICY = "; ".join((
    "default-src 'none'", "script-src 'self'", "style-src 'self'", "img-src 'self' data:", "font-src 'self'",
    "connect-src 'self'", "form-action 'self'", "base-uri 'none'", "frame-ancestors 'none'",
))  # fmt: skip
_HEADERS = (
    (b"content-security-policy", _POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"permissions-policy", b"geolocation=(), camera=(), microphone=()"),
    (b"cache-control", b"no-store"),
)
_CHANGES = frozenset({"POST", "PUT", "PATCH", "DELETE"})


class Guard:
    """Middleware that lets in only requests to this computer's own name, with the key of this start.

    key: made anew for each start and known only to who started it. hosts: names the app may be called by, with port.
    """

    def __init__(self, app: ASGIApp, key: str, hosts: frozenset[str]) -> None:
        """Keep the key and the names."""
        self.app, self.key, self.hosts = app, key, hosts

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer 400, 403 or 413, open the door at `/enter`, or pass the request on with strict headers."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = {name.decode("latin-1").lower(): value.decode("latin-1") for name, value in scope["headers"]}
        if headers.get("host", "") not in self.hosts:
            await _refuse(send, 400, "This app answers only to its own address on this computer.")
        elif scope["path"] == "/enter":
            await self._enter(scope, send)
        elif not self._has_key(headers):
            await _refuse(
                send, 403, "Open the address that was printed where the app was started: it has the key in it."
            )
        elif scope["method"] in _CHANGES and not self._own_page(headers):
            await _refuse(send, 403, "This form was sent from another page.")
        elif _too_long(headers):
            await _refuse(send, 413, f"At most {MOST_BYTES:,} bytes may be sent at once.")
        else:
            await self.app(scope, _bounded(receive), _with_headers(send))

    async def _enter(self, scope: Scope, send: Send) -> None:
        told = parse_qs(scope["query_string"].decode("latin-1")).get("key", [""])[0]
        if not compare_digest(told.encode(), self.key.encode()):
            await _refuse(send, 403, "This address is from an earlier start: take the one printed last.")
            return
        cookie = f"{COOKIE}={self.key}; Path=/; HttpOnly; SameSite=Strict"
        await send({
            "type": "http.response.start", "status": 303,
            "headers": [(b"location", b"/"), (b"set-cookie", cookie.encode()), *_HEADERS],
        })  # fmt: skip
        await send({"type": "http.response.body", "body": b""})

    def _has_key(self, headers: dict[str, str]) -> bool:
        try:
            found = SimpleCookie(headers.get("cookie", "")).get(COOKIE)
        except CookieError:
            return False
        return found is not None and compare_digest(found.value.encode(), self.key.encode())

    def _own_page(self, headers: dict[str, str]) -> bool:
        """Whether a change comes from one of our own pages; browsers name the page's origin on every such request."""
        origin = headers.get("origin")
        if origin is not None:
            return origin.removeprefix("http://") in self.hosts
        return headers.get("sec-fetch-site", "same-origin") == "same-origin"


def _too_long(headers: dict[str, str]) -> bool:
    said = headers.get("content-length", "0")
    return not said.isdigit() or int(said) > MOST_BYTES


def _bounded(receive: Receive) -> Receive:
    """Return a receive that stops a body which is longer than it said."""
    left = MOST_BYTES

    async def counted() -> Message:
        nonlocal left
        message = await receive()
        left -= len(message.get("body", b""))
        return message if left >= 0 else {"type": "http.disconnect"}

    return counted


def _with_headers(send: Send) -> Send:
    async def strict(message: Message) -> None:
        if message["type"] == "http.response.start":
            said = {name.lower() for name, _ in message["headers"]}
            message["headers"] = [*message["headers"], *(one for one in _HEADERS if one[0] not in said)]
        await send(message)

    return strict


async def _refuse(send: Send, status: int, why: str) -> None:
    body = f"{why}\n".encode()
    headers = [(b"content-type", b"text/plain; charset=utf-8"), (b"content-length", str(len(body)).encode())]
    await send({"type": "http.response.start", "status": status, "headers": [*headers, *_HEADERS]})
    await send({"type": "http.response.body", "body": body})
