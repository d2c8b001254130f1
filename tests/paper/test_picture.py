"""The picture of page one: the same page that is printed, alone, in a size that reads on a screen."""

import struct

import pytest

from rootcollar.kernel.errors import Refusal
from rootcollar.paper import PAPERS, render_picture
from tests.paper.hobbin import MADE_ON, PACKETS

SHEETS_IN = {"us-letter": (8.5, 11.0), "a4": (210 / 25.4, 297 / 25.4)}


def size(picture: bytes) -> tuple[int, int]:
    """Return width and height of a PNG, as its head says."""
    assert picture.startswith(b"\x89PNG\r\n\x1a\n")
    width, height = struct.unpack(">II", picture[16:24])
    return width, height


@pytest.mark.parametrize("paper", PAPERS)
def test_the_picture_has_the_shape_of_its_paper(paper: str) -> None:
    width, height = size(render_picture(PACKETS["hobbin"](), made_on=MADE_ON, paper=paper))
    across, down = SHEETS_IN[paper]
    assert width / height == pytest.approx(across / down, rel=2e-3)
    assert 800 <= width <= 1200


def test_of_a_sheet_that_goes_on_only_page_one_is_shown() -> None:
    width, height = size(render_picture(PACKETS["overfull"](), made_on=MADE_ON))
    assert width / height == pytest.approx(8.5 / 11, rel=2e-3)


def test_a_paper_we_do_not_lay_out_is_refused() -> None:
    with pytest.raises(Refusal, match="Choose one of them"):
        render_picture(PACKETS["hobbin"](), made_on=MADE_ON, paper="foolscap")
