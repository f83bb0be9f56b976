"""At the wheel: more like a yarn, its sheet on paper, and a bobbin checked on a phone."""

import pytest

from tests.browser.maker import Maker, plain, printed

pytestmark = pytest.mark.browser

PHONE = {"width": 390, "height": 844}


def a_yarn_to_spin(maker: Maker) -> None:
    maker.go("/settings/wheels/new")
    maker.fill(name="Upright", ratios="8; 14", bobbin="100 g")
    maker.press("Save")
    maker.go("/yarns/new")
    maker.fill(name="Grey two-ply", plies="2", target="222")
    maker.press("Save")
    maker.follow("How to spin it")
    maker.follow("Say what it is to be")
    maker.fill(wanted="400", wheel="Upright")
    maker.press("Save")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_sheet_for_the_wheel_on_paper(page, empty, paper, tmp_path):
    maker = Maker(page, empty.address)
    a_yarn_to_spin(maker)
    maker.reads("Spin at 498 m/100 g:")
    maker.follow("The sheet for the wheel")
    facts = [plain(one) for one in page.locator(".facts dd").all_inner_texts()]
    assert len(facts) >= 10
    text = printed(page, tmp_path, paper)
    without = "".join(text.split())
    assert [one for one in facts if "".join(one.split()) not in without] == []
    assert "8 : 1" in text
    assert "Load 2, single 2" in text
    assert [one for one in ("Skip to the page", "Back to", "Settings") if one in text] == []


def test_a_bobbin_is_checked_in_three_taps_on_a_phone(page, empty):
    """The field, the number, the button."""
    page.set_viewport_size(PHONE)
    maker = Maker(page, empty.address)
    a_yarn_to_spin(maker)
    maker.follow("Write down a bobbin")
    maker.press("Write it down")
    page.locator("#f-wraps").click()
    page.keyboard.type("14")
    maker.press("Check")
    maker.reads("Too heavy by")
    assert "times as long before the twist takes it" in plain(page.locator("main").inner_text())


def test_more_like_a_yarn_of_the_shelf(page, demo):
    """Only looked at: the form is there, with the usual skein in it."""
    maker = Maker(page, demo.address)
    maker.go("/yarns")
    maker.follow("Bramble two-ply")
    maker.follow("How to spin it")
    assert page.locator("#f-wanted").input_value() != ""
    assert page.get_by_role("button", name="More like this").count() == 1
