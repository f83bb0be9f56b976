import pytest

from app.planning.places import in_round, place_of
from tests.books import a_part


@pytest.mark.parametrize(
    ("name", "place"),
    [
        ("Body", "body"),
        ("Back", "back"),
        ("left front", "front"),
        ("Fronts", "front"),
        ("Sleeves", "sleeve"),
        ("round yoke", "yoke"),
        ("Neck band", "neck"),
        ("collar", "neck"),
        ("Front bands", "band"),
        ("button band", "band"),
        ("Bands", "band"),
        ("Hem", "band"),
        ("Cuffs", "cuff"),
        ("Crown", "crown"),
        ("Whole shawl", "piece"),
        ("Charm", "piece"),
    ],
)
def test_a_name_tells_the_place(name: str, place: str):
    assert place_of(a_part(name=name)) == place


def test_what_she_said_comes_first():
    assert place_of(a_part(name="Sleeves", place="back")) == "back"


def test_a_tube_is_what_says_so_or_has_no_seams_where_tubes_are_usual():
    assert in_round(a_part(name="Body", edges="cast on and off"))
    assert not in_round(a_part(name="Body", edges="cast on, off and seams"))
    assert not in_round(a_part(name="Back"))
    assert in_round(a_part(name="Back", in_round=True))
    assert not in_round(a_part(name="Body", place="body"))
