"""What goes on paper: the sheet of each garment and the work list, A4 and Letter."""

import pytest

from tests.browser.maker import plain, printed

pytestmark = pytest.mark.browser

NOT_ON_PAPER = ("Skip to the page", "Settings", "Fill this for me", "Undo")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_sheet_of_a_garment_holds_its_parts_and_no_buttons(
    page, demo, addresses, paper, tmp_path
):
    for address in addresses:
        if address.startswith("/garments/") and address.endswith("/print"):
            page.goto(demo.address + address[1:])
            parts = [plain(one) for one in page.locator("tbody th").all_inner_texts()]
            text = printed(page, tmp_path, paper)
            assert [one for one in parts if one not in text] == [], address
            assert [one for one in NOT_ON_PAPER if one in text] == [], address


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_work_list_on_paper_holds_every_line(page, demo, paper, tmp_path):
    page.goto(demo.address + "work-list/print")
    lines = [plain(one) for one in page.locator(".to-tick b").all_inner_texts()]
    assert len(lines) > 1
    text = printed(page, tmp_path, paper)
    assert [line for line in lines if line not in text] == []
    assert [one for one in NOT_ON_PAPER if one in text] == []


def test_paper_is_white_whatever_the_screen_is(page, demo):
    page.emulate_media(media="print", color_scheme="dark")
    page.goto(demo.address + "work-list/print")
    ground = page.evaluate("() => getComputedStyle(document.body).backgroundColor")
    ink = page.evaluate("() => getComputedStyle(document.body).color")
    assert (ground, ink) == ("rgb(255, 255, 255)", "rgb(0, 0, 0)")
