"""A cowl is short; a fade into the second yarn is compared, taken, seen, read and undone."""

import pytest

from tests.browser.cowl import a_cowl, fills, is_as_it_was, rows_in_picture, told, two_yarns
from tests.browser.maker import Maker, plain

pytestmark = pytest.mark.browser


@pytest.fixture(params=[True, False], ids=["scripts", "no scripts"])
def scripts(request):
    return request.param


def test_a_fade_out_of_a_shortfall(empty, page, scripts):
    maker = Maker(page, empty.address)
    two_yarns(maker)
    a_cowl(maker)
    maker.reads("Short by ")
    garment, before = page.url, fills(maker)
    assert len(_ways(maker, scripts)) >= 3
    row = page.locator("#ways-found tr", has_text="Fade the body")
    promised = plain(row.locator("[data-word='reaches the end']").inner_text())
    with page.expect_navigation():
        row.get_by_role("link", name="Show me the plan so").click()
    seen = rows_in_picture(maker)
    assert set(seen) == {"Grey two-ply", "Madder single"}
    maker.press("Take it")
    assert page.url == garment
    assert "Taken: fade the body" in plain(page.inner_text("main"))
    assert promised in maker.answer()
    assert rows_in_picture(maker) == seen
    assert _words_to_knit_from(maker, garment) == seen
    maker.press("Undo")
    is_as_it_was(maker, before)


def _ways(maker, scripts):
    if not scripts:
        maker.follow("Ways out of this")
    maker.page.locator("#ways-found").wait_for()
    for folded in maker.page.locator("#ways-found details:not([open]) > summary").all():
        folded.click()
    return maker.page.locator("#ways-found tbody tr").all()


def _words_to_knit_from(maker, garment):
    """The yarn of every row as the text tells it, read beside the page that can be undone."""
    beside = Maker(maker.page.context.new_page(), maker.address)
    beside.page.goto(garment)
    beside.follow("Knit from it")
    beside.page.get_by_text("All of it in words").click()
    found = told(beside)
    beside.page.close()
    return found
