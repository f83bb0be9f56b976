"""The changes a maker makes to a part: each changes the needs at once, and says by how much."""

from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.book.gauge import Gauge
from app.book.plan import Extra, Part, RoleYarn, Worked
from app.book.shape import Counted, Measured, Rectangle, Run, Runs, Strand
from app.planning.schedule import schedule
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_part, a_plan, a_promise
from tests.web.garden import BLANK_PART, book_of, page, stamp_of, value_of, words
from tests.work.shelf import a_shelf

BODY = "/garments/pullover/parts/body"
NEW = "/garments/pullover/parts/new"
SAME = {"name": "body", "counted_stitches": "229", "counted_rows": "120"}
WHITE = "white single"


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


def change(client: TestClient, store: Store, **told: str) -> str:
    """What the page says after the body is changed so."""
    stamp = {"stamp": stamp_of(store, "part", "body")}
    answer = client.post(f"{BODY}/change", data=BLANK_PART | SAME | told | stamp)
    assert answer.status_code == 200, words(answer.text)
    return words(answer.text)


def body(store: Store) -> Part:
    return book_of(store).part["body"]


def test_nothing_changed_is_kept_as_it_was(client: TestClient, store: Store) -> None:
    before = body(store)
    assert "body is changed." in change(client, store)
    assert body(store) == before


def test_longer(client: TestClient, store: Store) -> None:
    """Ten rows of 229: 41.4 m, 42 m with what is unusable, and a tail."""
    assert "This takes 42 m more (19 g)" in change(client, store, counted_rows="130")


def test_a_stretchy_cast_off(client: TestClient, store: Store) -> None:
    """Two rows for 1.15: 0.85 × 4.14 = 3.5 m. A tail of 3.3 × 104 cm is 3.4 m; and 1 %."""
    change(client, store, edges="cast on and off")
    said = change(client, store, edges="cast on, stretchy cast-off")
    assert "This takes 3.6 m more (1.6 g)" in said
    assert "This takes 3.5 m less" in change(client, store, edges="picked up, stretchy cast-off")


def test_yarn_held_double(client: TestClient, store: Store) -> None:
    """As much again: 497.1 m, 502 m with what is unusable, and tails."""
    assert "This takes 503 m more (226 g)" in change(client, store, ends="2")
    assert body(store).shape == Runs((Run(120, 229, 229, strands=(Strand(ends=2),)),))
    assert "This takes 503 m less (226 g)" in change(client, store)
    assert body(store).shape == Counted(229, 120)


def test_stripes_share_the_yarn_between_two(client: TestClient, store: Store) -> None:
    told = {"second_use": "stripes", "second_yarn_id": WHITE, "second_share": "25 %"}
    change(client, store, **told)
    found = body(store)
    assert found.yarns == (RoleYarn("contrast", WHITE),)
    assert found.shape == Runs(
        (Run(120, 229, 229, strands=(Strand("main", 0.75), Strand("contrast", 0.25))),)
    )


def test_stripes_say_what_of_each_yarn(client: TestClient, store: Store) -> None:
    """A quarter of 497.1 m is 124.3 m, at 450 and 333 tex."""
    told = {"second_use": "stripes", "second_yarn_id": WHITE, "second_share": "25 %"}
    assert (
        "This takes 124 m less of grey two-ply (56 g) and 124 m more of white single (41 g)"
    ) in change(client, store, **told)


def test_a_part_in_another_yarn(client: TestClient, store: Store) -> None:
    said = change(client, store, yarn_id=WHITE)
    assert "This takes 497 m less of grey two-ply (224 g)" in said
    assert "and 497 m more of white single (166 g)" in said


def test_another_needle_and_gauge_for_a_part(client: TestClient, store: Store) -> None:
    """At 20 × 28 a stitch takes √(21.6 / 5.6) = 1.964 cm: 539.7 m, 42.6 m more, and 1 %."""
    told = {"gauge_stitches": "20", "gauge_rows": "28", "gauge_needle": "5"}
    assert "This takes 43 m more (19 g)" in change(client, store, **told)


def test_a_border_in_another_rib_is_as_long_and_less_sure(client: TestClient, store: Store) -> None:
    said = change(client, store, pattern="2×2 rib")
    assert "This takes as much yarn as before, but less surely" in said


def test_a_piece_that_is_fulled_takes_more(client: TestClient, store: Store) -> None:
    """85 × 40 cm are 187 × 120 stitches; off the needles 100 × 50 cm, 220 × 150: 191 m more."""
    size = {"way": "rectangle", "rectangle_width": "85", "rectangle_length": "40"}
    change(client, store, **size)
    said = change(client, store, **size, worked_width="85", worked_length="80")
    assert "This takes 193 m more (87 g)" in said


def test_a_colourwork_band_carries_floats(client: TestClient, store: Store) -> None:
    """Of 497.1 m plain, the grey knits 60 % and floats behind a quarter of 40, the white the other
    way round: 70 and 55 %."""
    told = {"second_use": "stranded", "second_yarn_id": WHITE, "second_share": "40"}
    said = change(client, store, **told)
    assert (
        "This takes 149 m less of grey two-ply (67 g) and 273 m more of white single (91 g)"
    ) in said
    assert "Floats" in said


def test_a_second_yarn_given_up_frees_what_was_promised_of_it(
    client: TestClient, store: Store
) -> None:
    told = {"second_use": "held along", "second_yarn_id": WHITE}
    change(client, store, **told)
    with store.writing() as session:
        put(session, a_promise("W-1", 50_000, role="contrast"))
    said = change(client, store)
    assert "body is changed. Yarn that is no longer knit in it is free again." in said
    assert {one.holding_id for one in book_of(store).promises} == {"G-1"}


def test_a_cable_panel_and_floats_by_their_share(client: TestClient, store: Store) -> None:
    said = change(client, store, extra_cables="6", extra_floats="10 %", extra_other="4")
    assert body(store).extras == (
        Extra("cable panel", 6.0, 6.0),
        Extra("floats", 10.0, pytest.approx(3.2)),
        Extra("other", 4.0, 2.0),
    )
    assert "Cable panel" in said
    assert "This takes 100 m more" in said


def test_an_extra_of_another_name_stays_and_the_same_share_is_as_sure_as_it_was(
    client: TestClient, store: Store
) -> None:
    extras = (Extra("fringe", 3.0, 1.0), Extra("cable panel", 6.0, 0.5))
    with store.writing() as session:
        put(session, a_part(extras=extras))
    change(client, store, extra_cables="6")
    assert body(store).extras == extras


def test_another_pattern_wants_a_swatch(client: TestClient, store: Store) -> None:
    said = change(client, store, pattern="2×2 rib")
    assert body(store).shape == Runs((Run(120, 229, 229, "2×2 rib"),))
    assert "as long as stocking stitch, ± 25 %: swatch it to know" in said


def test_fulled_cloth(client: TestClient, store: Store) -> None:
    size = {"way": "rectangle", "rectangle_width": "85", "rectangle_length": "40"}
    change(client, store, **size, worked_width="85", worked_length="80")
    assert body(store).worked == Worked(85.0, 80.0)
    assert body(store).shape == Rectangle(850, 400)
    change(client, store, **size, worked_width="100")
    assert body(store).worked is None


def test_a_measured_part_stays_measured_whatever_its_yarns(
    client: TestClient, store: Store
) -> None:
    """Its rows follow the gauge: at 20 × 28 it is 208 stitches by 112 rows, held double."""
    size = {"way": "rectangle", "rectangle_width": "104", "rectangle_length": "40", "ends": "2"}
    change(client, store, **size)
    assert body(store).shape == Measured(1040, 1040, 400, strands=(Strand(ends=2),))
    html = page(client, f"{BODY}/change")
    assert value_of(html, "rectangle_width") == "104"
    with store.writing() as session:
        put(session, replace(body(store), gauge=Gauge(20.0, 28.0)))
    (run,) = schedule(body(store).shape, Gauge(20.0, 28.0))
    assert (run.stitches, run.rows, run.strands) == (208, 112, (Strand(ends=2),))
    change(client, store, **size | {"ends": "1"})
    assert body(store).shape == Rectangle(1040, 400)


STATED = {"way": "stated", "stated_yarn": "1000"}


def test_a_panel_is_added_to_what_a_pattern_states(client: TestClient, store: Store) -> None:
    """835 m of 1000 m stated are expected; 6 % more of them are 50 m, 51 m with 1 % for knots."""
    change(client, store, **STATED)
    assert "This takes 51 m more" in change(client, store, **STATED, extra_cables="6")
    html = words(page(client, "/garments/pullover"))
    assert "6 ± 6 % of what it takes by the stated amount" in html.replace("\u202f", " ")


@pytest.mark.parametrize(
    ("told", "field"),
    [
        (STATED | {"ends": "2"}, "ends"),
        (STATED | {"second_use": "held along", "second_yarn_id": WHITE}, "second_use"),
        (STATED | {"worked_width": "110"}, "worked_width"),
        ({"way": "metres", "metres_yarn": "300", "extra_cables": "5"}, "extra_cables"),
    ],
)
def test_what_an_amount_cannot_take_is_refused_in_words(
    client: TestClient, told: dict[str, str], field: str
) -> None:
    answer = client.post(NEW, data=BLANK_PART | told)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert "amount" in words(answer.text.split(f'id="e-{field}"')[1][:300])


def test_where_it_lies_and_that_it_has_no_seam(client: TestClient, store: Store) -> None:
    change(client, store, place="body", in_round="1")
    assert (body(store).place, body(store).in_round) == ("body", True)
    html = page(client, f"{BODY}/change")
    assert 'value="body" selected' in html
    assert "<details" in html
    assert '<details class="changes">' in html


def test_the_form_shows_the_changes_as_they_are(client: TestClient, store: Store) -> None:
    told = {"second_use": "stranded", "second_yarn_id": WHITE, "second_share": "12.5"}
    change(client, store, **told, ends="2", extra_cables="2.5", worked_length="115")
    before, html = body(store), page(client, f"{BODY}/change")
    assert '<details class="changes" open>' in html
    assert 'value="stranded" selected' in html
    shown = {
        name: value_of(html, name)
        for name in ("counted_rows", "second_share", "ends", "extra_cables", "worked_length")
    }
    assert list(shown.values()) == ["120", "12.5", "2", "2.5", "115"]
    change(client, store, pattern="stranded", worked_width="100", **(told | shown))
    assert body(store) == before


def test_rows_that_use_their_yarns_otherwise_keep_them(client: TestClient, store: Store) -> None:
    rows = Runs((Run(9, 80, 80), Run(9, 80, 80, strands=(Strand(ends=3),))))
    with store.writing() as session:
        put(session, a_part(shape=rows))
    html = page(client, f"{BODY}/change")
    assert "Its rows use their yarns in more than one way, and keep them." in html
    assert 'name="second_use"' not in html
    change(client, store, way="runs", extra_other="5")
    assert body(store).shape == rows
    change(client, store)
    assert body(store).shape == Counted(229, 120)


def test_rows_as_they_are_may_be_held_double(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_part(shape=Runs((Run(9, 80, 80, "1×1 rib"), Run(9, 80, 90)))))
    assert '<option value="" selected>as its rows say' in page(client, f"{BODY}/change")
    change(client, store, way="runs", pattern="", ends="2")
    double = (Strand(ends=2),)
    assert body(store).shape == Runs(
        (Run(9, 80, 80, "1×1 rib", None, double), Run(9, 80, 90, strands=double))
    )


def test_a_pattern_of_her_own_is_offered_again(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_part(shape=Runs((Run(9, 80, 80, "Owls in a row"),))))
    assert '<option value="Owls in a row" selected>' in page(client, f"{BODY}/change")


@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"second_use": "held along"}, "second_yarn_id"),
        ({"second_use": "stripes", "second_yarn_id": WHITE}, "second_share"),
        (
            {"second_use": "stripes", "second_yarn_id": WHITE, "second_share": "100"},
            "second_share",
        ),
        ({"second_use": "somehow"}, "second_use"),
        ({"second_yarn_id": "none such"}, "second_yarn_id"),
        ({"ends": "0"}, "ends"),
        ({"ends": "7"}, "ends"),
        ({"extra_cables": "101"}, "extra_cables"),
        ({"extra_floats": "many"}, "extra_floats"),
        ({"worked_width": "10"}, "worked_width"),
        ({"worked_length": "300 %"}, "worked_length"),
        ({"place": "attic"}, "place"),
    ],
)
def test_a_fault_stands_beside_its_field(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    data = BLANK_PART | {"counted_stitches": "80", "counted_rows": "24"} | told
    answer = client.post(NEW, data=data)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert '<details class="changes" open>' in answer.text
    assert len(book_of(store).parts) == 3


def test_without_a_gauge_a_measured_part_waits_for_one(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_plan(gauge=None))
    size = {"way": "rectangle", "rectangle_width": "50", "rectangle_length": "40", "ends": "2"}
    assert client.post(NEW, data=BLANK_PART | {"name": "scarf"} | size).status_code == 200
    assert any(isinstance(one.shape, Measured) for one in book_of(store).parts)
