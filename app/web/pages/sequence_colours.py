"""What is said of the colours of a garment's skeins."""

from dataclasses import dataclass

from app.book.plan import Plan
from app.book.stamp import stamp
from app.craft.colour import difference_word
from app.planning.colours import Colours, Join, Shade, colours_of
from app.planning.colours_blend import blended
from app.planning.picture import picture
from app.planning.places import in_round
from app.web.pages.answer import Sentence, listed
from app.web.shown import Shown
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class JoinSaid:
    """A join that shows, in words; `can` tells that its skeins can be made to take turns there."""

    words: str
    colours: tuple[str, str]
    part_id: str
    row: int
    next_id: str
    stamp: str
    can: bool


@dataclass(frozen=True, slots=True)
class ColoursPage:
    """`order` are all skeins from light to dark, `alike` the families of more than one."""

    plan: Plan
    answer: Sentence
    order: tuple[Shade, ...]
    alike: tuple[str, ...]
    joins: tuple[JoinSaid, ...]
    unknown: str
    running: str
    whole: bool


def colours_page(known: Known, plan: Plan, shown: Shown, whole: bool) -> ColoursPage:
    """The colours of a plan, on a page of their own or (not `whole`) within its garment's."""
    found = colours_of(known.book, plan, picture(known.book, known.reckoning, plan.id))
    return ColoursPage(
        plan=plan,
        answer=_answer(found, known, shown),
        order=tuple(one for family in found.families for one in family),
        alike=tuple(listed([s.code for s in one]) for one in found.families if len(one) > 1),
        joins=tuple(_join(one, known, plan, shown) for one in found.joins),
        unknown=listed(list(found.unknown)) if found.unknown else "",
        running=listed(list(found.running)) if found.running else "",
        whole=whole,
    )


def _answer(found: Colours, known: Known, shown: Shown) -> Sentence:
    if found.joins:
        worst = found.joins[0]
        codes = f"{worst.before.code} and {worst.after.code}"
        far = shown.number(worst.difference, 1)
        rest = f" they differ by {far}, and meet at {_place(worst, known)}."
        return Sentence("waiting", f"Alternate {codes}:", rest)
    if not found.families:
        return Sentence("idle", "No colours yet:", " no skein of it has a colour noted.")
    count = len(found.families)
    told = "all read as one colour" if count == 1 else f"they read as {count} colours"
    return Sentence("enough", "No change of skein shows:", f" {told}.")


def _join(one: Join, known: Known, plan: Plan, shown: Shown) -> JoinSaid:
    far = f"{shown.number(one.difference, 1)}, {difference_word(one.difference)}"
    place = _place(one, known)
    words = f"{place[:1].upper()}{place[1:]}: {one.before.code} to {one.after.code} differ by {far}"
    next_id = one.after.holding_id
    return JoinSaid(
        words=words,
        colours=(one.before.colour, one.after.colour),
        part_id=one.part_id,
        row=one.row,
        next_id=next_id,
        stamp=stamp(known.book.part[one.part_id]),
        can=blended(known.book, plan, one.part_id, one.row, next_id) is not None,
    )


def _place(one: Join, known: Known) -> str:
    noun = "round" if in_round(known.book.part[one.part_id]) else "row"
    return f"{noun} {one.row} of {one.part}"
