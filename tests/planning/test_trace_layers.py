from app.planning.trace_layers import MOST_IN_A_COLUMN, Band, Node, layers
from app.planning.trace_streams import Stream


def streams(*found: tuple[str, str, float]) -> list[Stream]:
    return [Stream(source, target, mg, came) for came, (source, target, mg) in enumerate(found)]


def test_nothing_has_no_columns():
    found = layers([])
    assert (found.nodes, found.bands, found.columns) == ((), (), 0)


def test_wool_goes_from_column_to_column():
    found = layers(
        streams(("A", "mix", 300), ("B", "mix", 100), ("A", "waste", 40), ("mix", "S-1", 200))
    )
    assert found.nodes == (
        Node(("A",), 0, 340),
        Node(("B",), 0, 100),
        Node(("mix",), 1, 400),
        Node(("waste",), 1, 40),
        Node(("S-1",), 2, 200),
    )
    assert found.bands == (Band(0, 2, 300), Band(0, 3, 40), Band(1, 2, 100), Band(2, 4, 200))
    assert found.columns == 3


def test_wool_that_went_back_does_not_move_what_it_went_back_to():
    found = layers(streams(("A", "B", 10), ("B", "A", 5)))
    assert {one.holdings[0]: one.column for one in found.nodes} == {"A": 0, "B": 1}
    assert found.bands == (Band(0, 1, 10), Band(1, 0, 5))


def test_many_skeins_are_drawn_as_some_and_the_rest():
    many = streams(*(("A", f"S-{number}", 100 - number) for number in range(20)), ("A", "waste", 9))
    found = layers(many)
    second = [one for one in found.nodes if one.column == 1]
    assert [len(one.holdings) for one in second] == [1] * (MOST_IN_A_COLUMN - 1) + [13, 1]
    assert second[-1].holdings == ("waste",)
    assert sum(one.mg for one in found.bands) == sum(one.mg for one in many)


def test_streams_inside_what_is_drawn_as_one_are_not_drawn():
    skeins = [("A", f"S-{number}", 100.0 - number) for number in range(20)]
    found = layers(streams(*skeins, ("S-19", "X", 1.0), ("S-18", "S-19", 1.0)))
    rest = next(place for place, one in enumerate(found.nodes) if "S-19" in one.holdings)
    assert "S-18" in found.nodes[rest].holdings
    assert all(one.source != one.target for one in found.bands)
    assert any(one.source == rest for one in found.bands)


def test_what_is_left_in_a_fleece_is_drawn_with_what_flowed_out_of_it():
    found = layers(streams(("A", "top", 180)), {"A": 60.0, "elsewhere": 5.0, "top": -1.0})
    assert found.nodes == (Node(("A",), 0, 240), Node(("top",), 1, 180))
