"""What stands on a label is what the book says of the skein or the bag."""

from dataclasses import replace
from datetime import date

import pytest

from app.book.spinning import FibreShare
from app.planning import reckon
from app.work.label_make import Label, in_order_of_codes, labels_of, wool_to_label
from app.work.reckoning import Known
from tests.books import a_book, a_fleece, a_holding, a_reading, a_skein, a_yarn

BLEND = (FibreShare("wool", 70.0), FibreShare("silk", 30.0))
BOOK = a_book(
    a_fleece("Bramble", breed="Shetland"),
    a_fleece("batts", name="Grey and silk", blend=BLEND, colour_name="pearl"),
    a_yarn("two-ply", name="Grey two-ply", colour_name="grey"),
    a_yarn("silky", name="Silky", fleece_id="batts", blend=BLEND),
    a_holding("F-1", fleece_id="Bramble", state="scoured", day=date(2026, 3, 1)),
    a_holding("B-1", "fibre", fleece_id="batts", state="carded"),
    a_holding("X-1", "fibre"),
    a_skein("S-10", "two-ply", day=date(2026, 4, 2)),
    a_skein("S-2", "silky", colour_name="silver"),
    a_skein("S-3", None),
    a_skein("S-4", "two-ply", put_away=date(2026, 5, 1)),
    a_skein("S-5", "two-ply"),
    held={
        "F-1": (900, 0),
        "B-1": (250, 0),
        "X-1": (10, 0),
        "S-10": (96, 213),
        "S-2": (50, 300),
        "S-3": (40, 0),
        "S-4": (50, 100),
    },
)
KNOWN = Known(BOOK, reckon(BOOK))


def label(id: str, known: Known = KNOWN) -> Label:
    (found,) = labels_of(known, [id])
    return found


def test_a_skein():
    found = label("S-10")
    assert (found.code, found.name, found.colour_name) == ("S-10", "Grey two-ply", "grey")
    assert found.page == "/skeins/S-10"
    assert (found.g, found.m) == (96, 213)
    assert found.tex == pytest.approx(96 / 213 * 1000)
    assert found.yarn_class == "3 Light"
    assert found.fibres == "100 % wool"
    assert (found.day, found.state) == (date(2026, 4, 2), "")


def test_a_blend_with_its_shares_and_a_colour_of_its_own():
    found = label("S-2")
    assert found.fibres == "70 % wool, 30 % silk"
    assert found.colour_name == "silver"


def test_a_skein_nobody_measured_has_neither_metres_nor_grist_nor_class():
    found = label("S-3")
    assert (found.m, found.tex, found.yarn_class, found.name) == (None, None, "", "")
    assert found.fibres == "100 % unknown fibre"


def test_one_that_is_not_finished_says_so():
    reading = a_reading("S-10", 230_000, kind="length", finished=False, unit="mm")
    book = replace(BOOK, readings=(reading,))
    assert label("S-10", Known(book, reckon(book))).state == "not finished"


def test_a_bag_of_wool_leads_to_its_fleece():
    found = label("B-1")
    assert (found.page, found.name, found.state) == ("/fleeces/batts", "Grey and silk", "carded")
    assert (found.g, found.m, found.colour_name) == (250, None, "pearl")
    assert found.fibres == "70 % wool, 30 % silk"


@pytest.mark.parametrize("id", ["S-4", "S-5", "X-1", "come in", "none"])
def test_what_is_gone_or_empty_or_has_no_page_gets_no_label(id: str):
    assert labels_of(KNOWN, [id]) == ()


def test_they_come_in_the_order_asked_for():
    assert [one.code for one in labels_of(KNOWN, ["S-10", "F-1", "S-2"])] == ["S-10", "F-1", "S-2"]


def test_codes_are_in_the_order_people_count_them():
    assert in_order_of_codes(BOOK, ["S-10", "S-3", "none", "S-2"]) == ("S-2", "S-3", "S-10")
    assert wool_to_label(BOOK) == ("B-1", "F-1", "X-1")
    assert wool_to_label(BOOK, "batts") == ("B-1",)


def test_a_dyed_part_has_its_own_colour_and_the_name_of_its_fleece_once():
    book = a_book(
        a_fleece("bramble", name="Bramble", colour_name="cream"),
        a_holding("F", code="Bramble", fleece_id="bramble", state="raw"),
        a_holding(
            "P", "fibre", code="Bramble, combed", fleece_id="bramble", colour_name="madder red"
        ),
        held={"F": (900, 0), "P": (100, 0)},
    )
    fleece, part = labels_of(Known(book, reckon(book)), ["F", "P"])
    assert (fleece.code, fleece.name, fleece.colour_name) == ("Bramble", "", "cream")
    assert (part.code, part.name, part.colour_name) == ("Bramble, combed", "", "madder red")
