"""A swatch is counted, a garment planned to it, and weighing the swatch makes the answer surer."""

import re

import pytest

from tests.browser.maker import Maker, plain

pytestmark = pytest.mark.browser


@pytest.fixture(params=[True, False], ids=["with scripts", "without scripts"])
def scripts(request):
    return request.param


@pytest.fixture
def maker(empty, page):
    """Somebody with one skein of 213 m, 96 g."""
    somebody = Maker(page, empty.address)
    somebody.go("/skeins/new")
    somebody.fill(girth=1.5, turns=142, mass=96, yarn_name="Grey two-ply")
    somebody.press("Add the skein")
    return somebody


def unsure(page):
    """The ± of the need of the body, in m."""
    row = plain(page.locator("tr", has_text="Body").first.inner_text())
    found = re.search(r"± ([\d.]+) ?m", row)
    assert found, row
    return float(found[1])


def test_from_a_swatch_to_a_garment_and_back(maker, page):
    maker.go("/swatches")
    maker.follow("Write down a swatch")
    maker.fill(name="Grey on 4", yarn_id="Grey two-ply", needle=4)
    maker.fill(finished_stitches=22, finished_rows=30)
    maker.press("Save")
    maker.reads("22 × 30 in 10 cm, washed: 1.81 cm of yarn in a stitch ± 7 %")
    maker.follow("Plan a garment to this gauge")
    maker.fill(name="Cowl")
    maker.press("Plan it")
    maker.follow("Add a part")
    maker.fill(name="Body", copies=1, counted_stitches=100, counted_rows=60)
    maker.choose("Stitches and rows, counted")
    maker.press("Add the part")
    counted = unsure(page)
    maker.follow("Grey on 4")
    maker.follow("Count, weigh or change it")
    maker.fill(weight=10, whole_stitches="24×50+28", unravelled=40, thread="72.4")
    maker.press("Save")
    maker.reads("± 1.4 %")
    maker.follow("Cowl")
    assert unsure(page) < counted / 3


def test_a_needle_is_asked_for_in_place(maker, page):
    maker.go("/swatches/new")
    maker.fill(name="Grey on 4", yarn_id="Grey two-ply", needle=4)
    maker.fill(finished_stitches=22, finished_rows=30)
    maker.press("Save")
    maker.fill(stitches=22)
    maker.press("Ask")
    told = page.locator("#asked")
    told.get_by_text("9 times in 10").wait_for()
    assert "4.0 mm for 22 stitches in 10 cm" in plain(told.inner_text())
    assert page.url.split("#")[0].endswith("?stitches=22")
