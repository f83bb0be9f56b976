"""A round-yoke cardigan is planned from measurements, and its picture follows its yarn."""

import re

import pytest

from tests.browser.maker import Maker, metres, plain

pytestmark = pytest.mark.browser

GREY, MADDER = "#8a8a86", "#a3402f"


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without scripts"])
def test_a_round_yoke_cardigan_from_measurements(empty, page, scripts):
    maker = Maker(page, empty.address)
    _two_yarns(maker)
    _someone(maker)
    _begin(maker)
    _see_it(maker, scripts)
    _save_it(maker)
    before = _fills(maker)
    _another_yarn_for_the_yoke(maker)
    after = _fills(maker)
    assert before != after
    assert (GREY in before, MADDER in before) == (True, False)
    assert {GREY, MADDER} <= set(after)
    _shorter_sleeves(maker, scripts)


def _two_yarns(maker):
    for name, colour in (("Grey two-ply", GREY), ("Madder single", MADDER)):
        maker.go("/yarns/new")
        maker.fill(name=name, plies=2)
        maker.page.locator("#f-colour").evaluate("(one, colour) => one.value = colour", colour)
        maker.page.locator("#f-colour-known").check()
        maker.press("Save")
        maker.go("/skeins/new")
        maker.fill(girth="1.5", turns=900, mass=600, yarn=name)
        maker.press("Add the skein")


def _someone(maker):
    maker.go("/settings/people/new")
    maker.fill(name="Ines", measure_chest=96)
    maker.press("Save")


def _begin(maker):
    maker.go("/garments/new")
    page = maker.page
    page.locator("#b-construction").select_option(label="Cardigan with a round yoke")
    page.locator("#b-person").select_option(label="Ines")
    maker.press("Go on to its measurements")
    maker.reads("say what gauge you knit to")
    assert "as written of Ines" in plain(page.locator("form.asked").inner_text())


def _see_it(maker, scripts):
    """The answer follows what is typed; without scripts after pressing Show."""
    maker.fill(yarn_id="Grey two-ply", gauge_stitches=18, gauge_rows=26)
    _show(maker, scripts)
    maker.reads("It takes about")
    narrow = metres(maker.answer())
    maker.fill(measure_chest=110)
    _show(maker, scripts)
    _until(maker, lambda: metres(maker.answer()) > narrow)
    maker.fill(measure_chest="")
    _show(maker, scripts)
    _until(maker, lambda: metres(maker.answer()) == narrow)
    assert maker.page.locator(".garment-picture").count() == 1
    assert "Join body and sleeves" in plain(maker.page.locator(".work-words").inner_text())


def _show(maker, scripts):
    if scripts:
        maker.page.keyboard.press("Tab")
    else:
        maker.press("Show")


def _until(maker, holds):
    for _ in range(100):
        if holds():
            return
        maker.page.wait_for_timeout(50)
    raise AssertionError(maker.answer())


def _save_it(maker):
    maker.press("Plan it")
    maker.reads("Not promised yet")
    _fill_it(maker)


def _fill_it(maker):
    maker.press("Fill this for me")
    maker.page.get_by_text("only proposed").wait_for()


def _another_yarn_for_the_yoke(maker):
    maker.press("Drop it")
    maker.page.get_by_text("only proposed").wait_for(state="detached")
    part = maker.page.locator("section.part", has=maker.page.locator("h3", has_text="yoke"))
    part.get_by_role("link", name=re.compile("^Change")).first.click()
    maker.fill(yarn_id="Madder single")
    maker.press("Save the change")
    maker.page.locator(".garment-picture").wait_for()
    _fill_it(maker)


def _fills(maker):
    """The colours in the picture, piece by piece."""
    picture = maker.page.locator(".garment-picture").first
    return picture.evaluate(
        "one => [...one.querySelectorAll('polygon')].map(it => it.getAttribute('fill'))"
    )


def _shorter_sleeves(maker, scripts):
    """A change keeps what is promised, and says what it takes."""
    maker.press("Keep the proposal")
    maker.page.get_by_text("only proposed").wait_for(state="detached")
    held = maker.page.locator("section.part li").count()
    maker.follow("Its measurements, ease and choices")
    maker.fill(choice_sleeve="short")
    _show(maker, scripts)
    _until(maker, lambda: "less" in maker.answer())
    maker.press("Save the change")
    maker.page.locator("#said").get_by_text("is changed").wait_for()
    assert maker.page.locator("section.part li").count() == held


def test_a_garment_that_cannot_be_is_refused_where_it_is_typed(empty, page):
    maker = Maker(page, empty.address)
    maker.go("/garments/new/design?construction=hat&person_id=")
    maker.fill(gauge_stitches=22, gauge_rows=30, measure_head="6")
    maker.press("Show")
    fault = maker.page.locator("#e-measure_head")
    fault.wait_for()
    assert "No such garment can be knit" in plain(fault.inner_text())


def test_small_sums_answer_in_place(empty, page):
    maker = Maker(page, empty.address)
    maker.go("/garments/new/design?construction=cardigan%2C+round+yoke&person_id=")
    maker.fill(gauge_stitches=22, gauge_rows=30)
    maker.press("Plan it")
    maker.page.locator(".small-sums > summary").click()
    sums = maker.page.locator("#sums")
    sums.locator("#f-buttons").fill("5")
    maker.page.keyboard.press("Tab")
    sums.get_by_text("five buttonholes of 3").first.wait_for()
    assert "/garments/" in maker.page.url
    assert "/sums" not in maker.page.url


def test_a_fold_stays_open_while_she_types_in_it(empty, page):
    maker = Maker(page, empty.address)
    maker.go("/garments/new/design?construction=hat&person_id=")
    maker.fill(gauge_stitches=22, gauge_rows=30)
    page.keyboard.press("Tab")
    maker.reads("It takes about")
    before = metres(maker.answer())
    maker.fill(band_brim_gauge="34 × 52")
    page.keyboard.press("Tab")
    _until(maker, lambda: metres(maker.answer()) != before)
    assert page.locator("[name=band_brim_needle]").is_visible()
    assert page.evaluate("document.activeElement.name") == "band_brim_needle"
