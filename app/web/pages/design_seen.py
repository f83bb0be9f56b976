"""The garment a design gives, before it is saved: picture, parts, words, metres, changes."""

from dataclasses import dataclass

from app.book.book import Book
from app.craft.constructions.drawing import Construction, Join
from app.planning.answers import PartAnswer
from app.planning.redraw import Redrawn
from app.web.pages.answer import listed
from app.web.pages.design_said import PlaceSaid, fit_said, place_lines
from app.web.pages.effect import effect_sentence
from app.web.pages.measure_said import assumed_said
from app.web.pages.picture import drawing
from app.web.pages.picture_ink import Drawing
from app.web.shown import Shown
from app.work.design_look import Look


@dataclass(frozen=True, slots=True)
class PartSeen:
    """A part as it would be knit, with its work in words."""

    answer: PartAnswer
    work: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Seen:
    """The whole: `sentence` says what it takes, `effect` what a change of the plan does, `leaves`
    what saving takes out and frees; both may be empty."""

    lead: str
    sentence: str
    effect: str
    leaves: str
    drawn: Drawing
    parts: tuple[PartSeen, ...]
    meets: tuple[str, ...]
    notes: tuple[str, ...]
    fit: str
    places: tuple[PlaceSaid, ...]
    assumed: tuple[str, ...]


def seen(look: Look, construction: Construction, shown: Shown) -> Seen:
    """What there is to see of a garment that would be."""
    drawn = look.drawing
    return Seen(
        lead=f"It takes about {shown.length(look.answer.need.value)}",
        sentence=f" ({shown.length_range(look.answer.need)}, 9 times in 10).",
        effect=effect_sentence(look.effect, shown),
        leaves=leaves(look.redrawn, look.book),
        drawn=drawing(look.picture, shown),
        parts=tuple(PartSeen(one, look.sheet.work[one.part_id]) for one in look.answer.parts),
        meets=tuple(_meets(one, shown) for one in drawn.joins),
        notes=drawn.notes,
        fit=fit_said(look.taken),
        places=place_lines(construction, look.taken, drawn, shown),
        assumed=tuple(
            f"{name} {assumed_said(one, shown)}" for name, one in look.taken.assumed.items()
        ),
    )


def leaves(redrawn: Redrawn, book: Book) -> str:
    """What a saved design takes out of the plan, which skeins that frees, and which rows it draws
    over; empty for nothing."""
    told = []
    if redrawn.gone:
        told.append(f"It has no {listed([one.name for one in redrawn.gone])} any more.")
    freed = dict.fromkeys(book.holding[one.holding_id].code for one in redrawn.freed)
    if freed:
        told.append(f"What was promised there becomes free: {listed([*freed])}.")
    if redrawn.remade:
        names = listed([one.name for one in redrawn.remade])
        told.append(f"The rows you had changed are drawn anew: {names}.")
    return " ".join(told)


def _meets(join: Join, shown: Shown) -> str:
    """ "Yoke, joined to body and sleeves: 268 stitches for 268"."""
    unit = shown.size_unit if join.unit == "cm" else join.unit
    per = 2.54 if unit == "in" else 1.0
    has, wants = (shown.number(one / per, 1, least=0) for one in (join.has, join.wants))
    return f"{join.one.capitalize()}, {join.how} {join.other}: {has} for {wants} {unit}"
