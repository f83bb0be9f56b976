"""By keyboard only: a skein is put to a part, and taken off again."""

import pytest

from tests.browser.maker import Maker

pytestmark = pytest.mark.browser

MOST_STEPS = 200


def reach(page, words):
    """Press Tab until what has the focus says these words."""
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        told = page.evaluate(
            "() => { const one = document.activeElement;"
            " return (one.labels?.[0] ?? one).textContent.trim(); }"
        )
        if told.startswith(words):
            return
    raise AssertionError(f"Tab never reaches {words!r}")


def shows_its_focus(page):
    return page.evaluate(
        "() => getComputedStyle(document.activeElement).outlineStyle !== 'none'"
        " && parseFloat(getComputedStyle(document.activeElement).outlineWidth) >= 2"
    )


@pytest.fixture
def garment(empty, page):
    """A garment's page with one part and a skein of its yarn on the shelf."""
    maker = Maker(page, empty.address)
    maker.go("/skeins/new")
    maker.fill(girth=1.5, turns=142, mass=96, yarn_name="Grey two-ply")
    maker.press("Add the skein")
    maker.go("/garments/new")
    maker.fill(name="Cowl", gauge_stitches=22, gauge_rows=30, yarn_id="Grey two-ply")
    maker.press("Plan it")
    maker.follow("Add a part")
    maker.fill(name="Body", copies=1, counted_stitches=100, counted_rows=60)
    maker.choose("Stitches and rows, counted")
    maker.press("Add the part")
    return maker


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without scripts"])
def test_a_skein_is_assigned_and_taken_off_by_keyboard(garment, page):
    garment.reads("Not promised yet")
    reach(page, "Put a skein here")
    assert shows_its_focus(page)
    page.keyboard.press("Enter")
    page.get_by_role("radio").first.wait_for()
    reach(page, "G-001")
    page.keyboard.press("Space")
    reach(page, "Put it here")
    assert shows_its_focus(page)
    page.keyboard.press("Enter")
    garment.reads("Enough")
    reach(page, "Take off")
    page.keyboard.press("Enter")
    garment.reads("Not promised yet")


def test_the_first_step_leads_past_the_navigation(page, demo):
    page.goto(demo.address)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("() => document.activeElement.id") == "page"
