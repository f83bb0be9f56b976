"""Bring in skeins from a table in a real browser, with scripts and without."""

import pytest

pytestmark = pytest.mark.browser

TABLE = "code;yarn;weight;length;notes\nA-1;Rowan grey;96 g;213 m;\nA-2;Rowan grey;;{}\n"
WRONG, RIGHT = TABLE.format("200 m;two knots"), TABLE.replace(";;{}", ";90,5;200 m;two knots")
WIDTHS = (360, 1280)
SIDEWAYS = "document.documentElement.scrollWidth > document.documentElement.clientWidth"


@pytest.fixture(params=[True, False], ids=["scripts", "no scripts"])
def scripts(request):
    return request.param


def test_look_put_right_and_bring_in(page, empty, scripts):
    page.goto(empty.address + "skeins")
    page.get_by_role("link", name="bring in").click()
    page.get_by_label("Paste it here").fill(WRONG)
    page.get_by_role("button", name="Look at it").click()
    assert "1 line is to be put right" in page.inner_text("#answer")
    assert "Say how much it weighs." in page.inner_text("main")
    assert page.get_by_role("button", name="Bring them in").count() == 0
    if scripts:
        is_in_order(page)
    page.get_by_label("Paste it here").fill(RIGHT)
    page.get_by_role("button", name="Look at it again").click()
    assert "2 skeins can be brought in" in page.inner_text("#answer")
    if scripts:
        is_in_order(page)
    page.get_by_role("button", name="Bring them in").click()
    assert "2 skeins came to the shelf" in page.inner_text("main")
    with page.expect_download() as saved:
        page.get_by_role("link", name="save").click()
    assert "A-2,Rowan grey,wool" in saved.value.path().read_text(encoding="utf-8")


def test_a_file_is_taken(page, empty, tmp_path):
    file = tmp_path / "skeins.csv"
    file.write_bytes(RIGHT.replace("grey", "grün").encode("cp1252"))
    page.goto(empty.address + "skeins/import")
    page.get_by_label("Or choose a file").set_input_files(file)
    page.get_by_role("button", name="Look at it").click()
    assert "Read as Windows-1252, with semicolons between the cells." in page.inner_text("main")
    assert "Rowan grün" in page.get_by_label("Paste it here").input_value()


def is_in_order(page):
    """Nothing for axe to find, and nothing wider than the window."""
    from axe_playwright_python.sync_playwright import Axe

    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        assert not page.evaluate(SIDEWAYS), width
        assert [one["id"] for one in Axe().run(page).response["violations"]] == []
