"""The lengths of a size by the row gauge, against the wearer's own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.craft.pattern_gauge import Recounted
from app.craft.sizes import Measured
from app.planning.pattern_lengths import ARM, BODY, PieceAsKnit, length_fits

OWN = Gauge(20.0, 28.0)
KNOWN = {BODY: Measured(60.0, 0.0, "measured"), ARM: Measured(44.0, 0.0, "measured")}


def piece(name, place, cm):
    return PieceAsKnit(name, place, 1, Recounted(100, 100, round(cm * 2.8)), cm)


def fits(*pieces, known=KNOWN):
    return {one.place: one for one in length_fits(pieces, known, OWN)}


@pytest.mark.golden
def test_a_body_and_its_yoke_reach_from_neck_to_hem():
    """40 and 24 cm are 64, 4 cm more than 60: 36 cm of body are 100.8, 101 rows at 28 in 10 cm;
    sleeves of 40 cm want 4 cm more: 44 cm are 123.2, 123 rows."""
    found = fits(piece("Body", "body", 40), piece("Yoke", "yoke", 24), piece("Arms", "sleeve", 40))
    body, arm = found[BODY], found[ARM]
    assert (body.garment_cm, body.longer_cm, body.rows, body.knit_cm) == (64, 4, 101, 36)
    assert (arm.piece, arm.garment_cm, arm.longer_cm, arm.rows) == ("Arms", 40, -4, 123)


@pytest.mark.parametrize(
    ("pieces", "told"),
    [
        ([piece("Back", "back", 62), piece("Sleeves", "sleeve", 56)], {BODY}),
        ([piece("Body", "body", 40)], set()),
        ([piece("Hands", "body", 20), piece("Tip", "crown", 4)], set()),
        ([], set()),
    ],
    ids=["a back alone; its sleeve may have a cap", "no yoke told", "mittens", "nothing counted"],
)
def test_what_is_not_told_is_not_guessed(pieces, told):
    assert set(fits(*pieces)) == told


def test_of_a_body_nothing_is_known_of_nothing_is_said():
    yoked = (piece("Body", "body", 40), piece("Yoke", "yoke", 24))
    assert fits(*yoked, known={"head": Measured(56.0, 0.0, "measured")}) == {}


@pytest.mark.parametrize(("cm", "longer"), [(20.9, 0.0), (19.1, 0.0), (21.5, 1.5), (18.0, -2.0)])
def test_a_length_within_a_centimetre_fits(cm, longer):
    found = fits(piece("Body", "body", 40), piece("Yoke", "yoke", cm))
    assert found[BODY].longer_cm == pytest.approx(longer)


def test_a_body_nobody_measured_is_no_nearer_known():
    unsure = {BODY: Measured(60.0, 4.8, "assumed")}
    yoked = (piece("Body", "body", 40), piece("Yoke", "yoke", 24))
    assert fits(*yoked, known=unsure)[BODY].longer_cm == 0


@pytest.mark.property
@given(st.floats(1, 90), st.floats(1, 40), st.floats(20, 90))
def test_the_rows_told_bring_it_to_the_body(body, yoke, wearer):
    known = {BODY: Measured(wearer, 0.0, "measured")}
    found = fits(piece("Body", "body", body), piece("Yoke", "yoke", yoke), known=known)[BODY]
    if found.knit_cm:
        assert found.knit_cm + yoke == pytest.approx(wearer)
        assert abs(found.rows / 2.8 - found.knit_cm) <= 0.5 / 2.8 + 1e-9
    else:
        assert yoke >= wearer - 1e-9
