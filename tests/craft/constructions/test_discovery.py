import pytest

import app.craft.constructions as room
from app.craft.constructions import construction_of, constructions
from app.craft.constructions.drawing import Knit
from app.craft.constructions.wanting import want

PENNANT = '''
"""A pennant: a triangle of bunting."""

from app.craft.constructions.drawing import Construction, Drawing, KnitRun, Wanted
from app.craft.constructions.pieces import piece


def draw(wanted: Wanted) -> Drawing:
    wide = wanted.knit.pairs(wanted.cm("width"))
    run = KnitRun(wanted.knit.along(wanted.cm("length")), wide, 2)
    return Drawing((piece("pennant", "piece", (run,), wanted.knit),))


CONSTRUCTION = Construction(
    "pennant", "Pennant", (), draw, {}, {"width": (20.0, 2.0), "length": (30.0, 2.0)}
)
'''


@pytest.fixture
def with_a_pennant(tmp_path, monkeypatch):
    (tmp_path / "pennant.py").write_text(PENNANT, encoding="utf-8")
    monkeypatch.setattr(room, "__path__", [*room.__path__, str(tmp_path)])
    constructions.cache_clear()
    yield
    constructions.cache_clear()


@pytest.mark.usefixtures("with_a_pennant")
def test_a_new_construction_is_one_new_file():
    """20 × 30 cm at 22 × 30: 44 stitches to 2 over 90 rows, 2070 stitches."""
    pennant = construction_of("pennant")
    (drawn,) = pennant.draw(want(pennant, {}, Knit(22, 30)).wanted).pieces
    assert drawn.worked == 90 * (44 + 2) / 2
    assert drawn.words == (
        "Cast on 44 stitches.",
        "Decrease one stitch at each end of the next and every 4th row, 6 times, "
        "then every 6th row, once, all this 3 times: 2 stitches, then work 3 rows more.",
        "Cast off the 2 stitches that are left.",
    )


def test_what_is_no_construction():
    with pytest.raises(ValueError, match="no construction is called 'pennant'"):
        construction_of("pennant")


def test_every_construction_is_found_by_its_word():
    assert {"pullover, drop shoulder", "hat", "scarf"} <= set(constructions())
    assert list(constructions()) == sorted(constructions())
