"""Where a garment that cannot be: the field its refusal stands beside."""

from app.craft.constructions.drawing import Construction, Impossible
from app.web.forms.design_fields import CHEST, measures_asked
from app.web.forms.person import field_of

BESIDE: dict[str, tuple[str, ...]] = {
    "nothing left": ("arm length to underarm", "body length", CHEST),
    "neck too wide": ("neck",),
    "too steep": ("armhole depth", "head", "hand", "depth"),
    "sleeve does not fit": ("upper arm",),
}
"""The measures each reason is most likely about, where its words name none."""

GAUGE = "gauge_stitches"


def refused_at(refusal: ValueError, construction: Construction) -> str:
    """The field of the measure a refusal names first, else the likeliest for its reason, else the
    gauge."""
    asked, words = measures_asked(construction), str(refusal)
    named = [(words.find(one.split()[0]), one) for one in asked if one.split()[0] in words]
    if named:
        return field_of(min(named, key=lambda one: one[0])[1])
    likely = BESIDE[refusal.reason] if isinstance(refusal, Impossible) else (CHEST,)
    return next((field_of(one) for one in likely if one in asked), GAUGE)


def refusal_words(refusal: ValueError) -> str:
    """A refusal as a sentence that says what to do."""
    words = str(refusal)
    return f"No such garment can be knit: {words}. Change this, or what it is measured against."
