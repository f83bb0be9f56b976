"""A five-size pattern is written down, and the right size named when the gauge is off."""

import pytest

from tests.browser.maker import Maker, metres, metres_of_plain_knit

pytestmark = pytest.mark.browser

SIZES = ("XS", "S", "M", "L", "XL")
CHEST = (88, 96, 104, 112, 120)
BODY = (194, 211, 229, 246, 264)
SLEEVE = ((46, 72), (48, 76), (50, 80), (52, 86), (54, 92))
STATED = (1050, 1180, 1310, 1450, 1600)
PATTERN, OWN = (22, 30), (20, 28)
BODY_CM, SLEEVE_CM = 40, 45
WEARER, EASE = 96, (5, 10)
WIDTHS = (360, 1280)
SIDEWAYS = "document.documentElement.scrollWidth > document.documentElement.clientWidth"


def right_size(gauge: int) -> int:
    """The size whose body comes out 5 to 10 cm wider than the wearer."""
    widths = [stitches * 10 / gauge for stitches in BODY]
    (found,) = [i for i, cm in enumerate(widths) if EASE[0] <= cm - WEARER <= EASE[1] + 0.5]
    return found


@pytest.fixture(params=[True, False], ids=["scripts", "no scripts"])
def scripts(request):
    return request.param


def test_a_pattern_in_five_sizes_at_another_gauge(page, empty, scripts):
    assert (right_size(PATTERN[0]), right_size(OWN[0])) == (2, 1)
    maker = Maker(page, empty.address)
    _write_the_pattern_down(maker, scripts)
    _plan_at_the_own_gauge(maker)
    maker.follow("Which size of a pattern?")
    assert "Say what the chest measures." in maker.answer()
    maker.fill(body=WEARER)
    maker.press("Ask")
    _the_right_size_is_named(maker)
    if scripts:
        _is_in_order(page)
    _it_is_taken(maker)


def test_the_same_pattern_as_a_pasted_table(page, empty, scripts):
    maker = Maker(page, empty.address)
    maker.go("/patterns/new")
    maker.fill(name="Weekday pullover", gauge_stitches=PATTERN[0], gauge_rows=PATTERN[1])
    maker.press("Save")
    assert "No sizes yet:" in maker.answer()
    maker.follow("Paste its table of sizes")
    table = _table()
    page.get_by_label("The table").fill(table.replace("104", "wide"))
    maker.press("Look at it")
    assert "1 line is to be put right." in maker.answer()
    if scripts:
        _is_in_order(page)
    page.get_by_label("The table").fill(table)
    maker.press("Look at it again")
    assert "Five sizes can be kept." in maker.answer()
    if scripts:
        _is_in_order(page)
    maker.press("Keep these sizes")
    assert "Five sizes, 88 cm to 120 cm around" in maker.answer()


def _write_the_pattern_down(maker, scripts):
    maker.go("/garments")
    maker.follow("Written patterns")
    maker.follow("Write down a pattern")
    if scripts:
        _is_in_order(maker.page)
    maker.fill(name="Weekday pullover", gauge_stitches=PATTERN[0], gauge_rows=PATTERN[1])
    for k, name in enumerate(SIZES, 1):
        begun, widest = SLEEVE[k - 1]
        maker.fill(
            **{
                f"size_{k}": name,
                f"width_{k}": CHEST[k - 1],
                f"stated_{k}": STATED[k - 1],
                f"cast_on_1_{k}": BODY[k - 1],
                f"length_1_{k}": BODY_CM,
                f"cast_on_2_{k}": begun,
                f"widest_2_{k}": widest,
                f"length_2_{k}": SLEEVE_CM,
            }
        )
    maker.press("Save")
    maker.reads("Five sizes, 88 cm to 120 cm around")
    if scripts:
        _is_in_order(maker.page)


def _plan_at_the_own_gauge(maker):
    maker.go("/garments/new")
    maker.fill(name="Pullover", gauge_stitches=OWN[0], gauge_rows=OWN[1])
    maker.press("Plan it")


def _the_right_size_is_named(maker):
    at = right_size(OWN[0])
    wide = BODY[at] * 10 / OWN[0]
    maker.reads(f"Cast on for size {SIZES[at]}: {wide:g} cm, {wide - WEARER:g} cm of ease")
    assert f"knit the body to {BODY_CM} cm" in maker.answer()
    begun, widest = SLEEVE[at]
    body = metres_of_plain_knit(BODY[at], BODY_CM * OWN[1] // 10, OWN)
    sleeve = metres_of_plain_knit((begun + widest) // 2, SLEEVE_CM * OWN[1] // 10, OWN)
    plain = body + 2 * sleeve
    assert plain < metres(maker.answer().split("It takes")[1]) < 1.15 * plain


def _it_is_taken(maker):
    name = SIZES[right_size(OWN[0])]
    maker.press(f"Take size {name} by its counts")
    text = maker.page.inner_text("main")
    assert f"Pullover is size {name} of Weekday pullover now." in text
    assert f"Which size? It is size {name}" in text


def _table():
    rows = {
        "size": SIZES,
        "chest": CHEST,
        "yarn": STATED,
        "cast on body": BODY,
        "length body": [BODY_CM] * 5,
        "cast on sleeve": [begun for begun, _ in SLEEVE],
        "widest sleeve": [widest for _, widest in SLEEVE],
        "length sleeve": [SLEEVE_CM] * 5,
    }
    return "\n".join("\t".join(map(str, (what, *cells))) for what, cells in rows.items())


def _is_in_order(page):
    """Nothing for axe to find, light and dark, and nothing wider than the window."""
    from axe_playwright_python.sync_playwright import Axe

    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        assert not page.evaluate(SIDEWAYS), width
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)
            assert [one["id"] for one in Axe().run(page).response["violations"]] == []
