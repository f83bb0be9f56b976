from app.craft.body import MEASURES
from app.craft.garments import KINDS
from app.craft.sizes import ASSUMED, body, printed


def test_every_measure_of_a_body_can_be_taken_from_a_person():
    """What the table prints, what is assumed and what a garment uses all have one name."""
    assert {row.measure for row in printed()} <= set(MEASURES)
    assert set(ASSUMED) <= set(MEASURES)
    for kind in KINDS.values():
        assert set(kind.uses) <= set(MEASURES)


def test_each_says_how_it_is_taken_and_a_body_knows_the_usual_ones():
    assert all(MEASURES.values())
    assert set(body(96)) <= set(MEASURES)
