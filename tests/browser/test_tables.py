"""The tables in a real browser: asked at once, linked, copied, without scripts, and on paper."""

import pytest

from tests.browser.maker import Maker, printed

pytestmark = pytest.mark.browser


@pytest.fixture(params=[True, False], ids=["with scripts", "without scripts"])
def scripts(request: pytest.FixtureRequest) -> bool:
    return bool(request.param)


@pytest.fixture
def maker(page, demo) -> Maker:
    return Maker(page, demo.address)


def test_a_question_is_answered_in_its_place_and_is_an_address(maker, page, scripts):
    maker.go("/tables")
    maker.follow("Skein and grist")
    assert maker.answer() == "213.0 m, 450.7 tex."
    maker.fill(turns="100", mass="2 oz")
    maker.press("Work it out")
    maker.reads("150.0 m, 378.0 tex.")
    asked = page.url
    assert "turns=100" in asked
    assert "mass=2+oz" in asked
    assert page.locator("#f-turns").input_value() == "100"
    if scripts:
        assert page.evaluate("() => performance.getEntriesByType('navigation').length") == 1
    page.goto("about:blank")
    page.goto(asked)
    assert maker.answer() == "150.0 m, 378.0 tex."


def test_a_fault_stands_beside_its_field_until_it_is_mended(maker, page):
    maker.go("/tables/skein")
    maker.fill(turns="many")
    maker.press("Work it out")
    page.get_by_role("alert").wait_for()
    assert "“many” is not a number." in page.get_by_role("alert").inner_text()
    assert page.locator("#f-turns").input_value() == "many"
    assert page.locator("#f-turns").get_attribute("aria-invalid") == "true"
    assert page.locator("#e-turns").inner_text() == "“many” is not a number."
    maker.fill(turns="142")
    maker.press("Work it out")
    maker.reads("213.0 m, 450.7 tex.")
    assert page.locator("#e-turns").count() == 0
    assert page.locator("#f-turns").get_attribute("aria-invalid") is None


def test_every_table_is_searched_and_a_row_is_linked(maker, page):
    maker.go("/tables")
    maker.fill(q="shetland")
    maker.press("Look")
    maker.follow("Shetland")
    page.wait_for_url("**/tables/breeds#r-shetland")
    row = page.locator("#r-shetland")
    assert "from memory" in row.inner_text()
    row.get_by_role("link").click()
    assert page.locator("aside div:target").inner_text().endswith("(from memory)")


@pytest.mark.parametrize("scripts", [True], ids=["with scripts"])
def test_with_scripts_nothing_needs_to_be_pressed(maker, page):
    maker.go("/tables/skein")
    maker.fill(turns="100")
    page.keyboard.press("Tab")
    maker.reads("150.0 m, 640.0 tex.")
    assert page.evaluate("() => document.activeElement.id") == "f-mass"
    maker.go("/tables")
    maker.fill(q="shetland")
    page.get_by_text("is in 1 table").wait_for()
    assert page.url.endswith("/tables?q=shetland")


@pytest.mark.parametrize("scripts", [True], ids=["with scripts"])
def test_a_conversion_is_copied_one_line_each(maker, page):
    maker.go("/tables/counts?count=222&system=m/100+g")
    copied = page.evaluate(
        """() => {
          getSelection().selectAllChildren(document.querySelector(".lines"));
          return getSelection().toString();
        }"""
    )
    lines = [line.split("\t")[:2] for line in copied.splitlines()]
    assert ["tex", "450.5"] in lines
    assert ["yd/lb", "1101"] in lines


@pytest.mark.parametrize("scripts", [True], ids=["with scripts"])
def test_a_table_on_paper_holds_its_rows_and_sources(maker, page, tmp_path):
    maker.go("/tables/needles")
    text = printed(page, tmp_path, "A4")
    assert "Knitting needles" in text
    assert "25 mm" in text
    assert "a printed needle table, 2015" in text
    for pressed in ("Work it out", "Skip to the page", "Worked example"):
        assert pressed not in text
