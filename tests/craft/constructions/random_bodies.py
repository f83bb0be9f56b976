"""Bodies, gauges and choices at random, children to large adults, for every construction."""

from dataclasses import dataclass

from hypothesis import strategies as st

from app.craft.constructions import constructions
from app.craft.constructions.drawing import Drawing, Impossible, Knit
from app.craft.constructions.wanting import choices_of, sizes_of, want
from app.craft.sizes import body

WORDS = sorted(constructions())


@dataclass(frozen=True)
class Order:
    """What one person asks of one construction."""

    word: str
    measures: dict[str, float]
    ease: dict[str, float]
    knit: Knit
    choices: dict[str, str]

    def wanted(self, measures=None, ease=None):
        construction = constructions()[self.word]
        return want(
            construction,
            measures or self.measures,
            self.knit,
            ease=self.ease if ease is None else ease,
            choices=self.choices,
        ).wanted

    def drawn(self, measures=None, ease=None) -> Drawing | None:
        """None for a body that is refused."""
        try:
            return constructions()[self.word].draw(self.wanted(measures, ease))
        except Impossible:
            return None


@st.composite
def orders(draw, word):
    """A body within a tenth of the table's in every measure, at any ordinary gauge."""
    chest = draw(st.floats(40, 150))
    known = body(chest)
    construction = constructions()[word]
    strays = st.floats(0.9, 1.1)
    measures = {name: known[name].cm * draw(strays) for name in construction.measures}
    measures |= {name: cm * draw(strays) for name, (cm, _) in sizes_of(construction).items()}
    if "chest" in measures:
        measures["chest"] = chest
    ease = {"chest": draw(st.floats(-8, 22))} if "chest" in construction.eases else {}
    stitches = draw(st.floats(12, 36))
    knit = Knit(stitches, stitches * draw(st.floats(1.2, 1.5)))
    choices = {
        name: draw(st.sampled_from(values)) for name, values in choices_of(construction).items()
    }
    return Order(word, measures, ease, knit, choices)


def stitches_in(drawing: Drawing) -> float:
    """Stitches of the whole garment."""
    return sum(piece.copies * piece.worked for piece in drawing.pieces)
