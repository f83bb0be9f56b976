import pytest

from app.book.spinning import Spinning
from app.planning.learning.stints_seen import stints_seen, work_of
from tests.books import a_book, a_stint, a_wheel, a_yarn


def seen(*records):
    return list(stints_seen(a_book(*records)))


def test_metres_of_an_hour():
    (found,) = seen(a_yarn(), a_stint(mg=None, mm=270_000, minutes=90, yarn_id="grey two-ply"))
    assert (found.measured, found.unit, found.usual) == (pytest.approx(180), "m/h", 180)
    assert found.factors == ("pace of spin",)
    assert found.what == "spin, 90 min at grey two-ply"


def test_grams_of_singles_are_metres_by_the_grist_meant():
    """45 g of singles of 225 tex, half of 450: 200 m in an hour."""
    yarn = a_yarn(target_tex=450.0)
    (found,) = seen(yarn, a_stint(mg=45_000, minutes=60, yarn_id=yarn.id))
    assert found.measured == pytest.approx(200)
    (plied,) = seen(yarn, a_stint(work="ply", mg=45_000, minutes=60, yarn_id=yarn.id))
    assert plied.measured == pytest.approx(100)


def test_grams_of_an_hour_at_the_carder():
    (found,) = seen(a_stint(work="card", mg=140_000, minutes=120))
    assert (found.measured, found.unit) == (pytest.approx(70), "g/h")
    assert found.what == "card, 120 min"


@pytest.mark.parametrize(
    "stint",
    [
        a_stint(mg=None),
        a_stint(mg=45_000),
        a_stint(mg=45_000, yarn_id="grey two-ply"),
        a_stint(work="card", mg=None, mm=100_000),
        a_stint(work="dry", mg=100_000),
        a_stint(work="card", mg=100_000, minutes=0),
    ],
)
def test_what_cannot_be_told_as_a_pace_tells_nothing(stint):
    assert seen(a_yarn(), stint) == []


def test_a_spindle_has_a_pace_of_its_own():
    spindle = a_wheel("top whorl", kind="spindle")
    book = a_book(spindle, a_wheel(), a_yarn(spinning=Spinning(wheel_id="top whorl")))
    assert work_of(book, "spin", "grey two-ply") == "spin on a spindle"
    assert work_of(book, "ply", "grey two-ply") == "ply"
    assert work_of(book, "spin", None) == "spin"
