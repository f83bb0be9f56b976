"""The rules of the wool book: what an event moves, so that no gram is lost and none invented.

Each function gives the kind of an event and its lines, and stores nothing. `held` is what every
holding concerned holds now. In every event the grams sum to zero; only the sinks may go below
zero; only yarn (skeins, balls, left-overs) is also counted in metres.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from app.book.errors import BadAmount, CannotUndo, HoldsTooLittle, MakesTooMuch, NotYarn
from app.book.event import Balance, Event, Line, balances
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.words import SINKS, YARN_KINDS, EventKind

COME_IN, WASTE, GIVEN_AWAY, WEIGHING = SINKS
Held = Mapping[str, Balance]


@dataclass(frozen=True, slots=True)
class Portion:
    """So many mg of wool, and mm of yarn, taken from a holding or put into it."""

    holding: Holding
    mg: int
    mm: int = 0


class Entry(NamedTuple):
    """The kind and lines of an event still to be posted."""

    kind: EventKind
    lines: tuple[Line, ...]


def arrive(made: Sequence[Portion]) -> Entry:
    """Wool comes in: a fleece shorn or given, yarn bought, or yarn spun before the book began."""
    return _entry("arrive", {}, (), made, COME_IN)


def prepare(held: Held, taken: Portion, made: Portion, waste_mg: int | None = None) -> Entry:
    """Skirting, scouring, carding or combing, in place or into a new holding.

    What the step took goes to waste; what it seems to have added is moisture. Where the waste was
    weighed as well, only that goes to waste, and what is over or missing is weighing and moisture.
    """
    if waste_mg is None:
        return _entry("prepare", held, (taken,), (made,), WASTE)
    if waste_mg < 0:
        raise BadAmount("Waste cannot weigh less than nothing.")
    thrown = Portion(Holding(WASTE, "waste", WASTE), waste_mg)
    return _entry("prepare", held, (taken,), (made, thrown), WEIGHING)


def mix(held: Held, taken: Sequence[Portion], made: Portion) -> Entry:
    """Several lots of wool become one; what the work took goes to waste."""
    return _entry("prepare", held, taken, (made,), WASTE)


def spin(held: Held, taken: Sequence[Portion], made: Sequence[Portion]) -> Entry:
    """Fleece or fibre to bobbins, bobbins to skeins, or all at once; the rest goes to waste."""
    return _entry("spin", held, taken, made, WASTE)


def wind(held: Held, taken: Portion, made: Sequence[Portion]) -> Entry:
    """One skein wound into several balls; ends cut off go to waste."""
    _no_more_yarn(taken.mm, made)
    return _entry("wind", held, (taken,), made, WASTE)


def use(
    held: Held,
    taken: Sequence[Portion],
    garment: Holding,
    left: Sequence[Portion] = (),
    waste_mg: int = 0,
) -> Entry:
    """Skeins are knit into a garment; `left` are left-overs weighed, `waste_mg` tails cut off."""
    _no_more_yarn(sum(one.mm for one in taken), left)
    knit_mg = sum(one.mg for one in taken) - sum(one.mg for one in left) - waste_mg
    if waste_mg < 0 or knit_mg < 0:
        raise MakesTooMuch("More is left over than was taken. Weigh what is left once more.")
    return _entry("use", held, taken, (*left, Portion(garment, knit_mg)), WASTE)


def rip(held: Held, garment: Portion, made: Sequence[Portion]) -> Entry:
    """Knitting is undone: yarn comes out of a garment as holdings of its own. MakesTooMuch where
    more comes out than the garment gives."""
    if sum(one.mg for one in made) > garment.mg:
        raise MakesTooMuch("More was ripped back than was knit. Weigh it once more.")
    return _entry("rip", held, (garment,), made, WASTE)


def correct(
    held: Held, holding: Holding, reading: Reading, readings: Iterable[Reading] = ()
) -> Entry | None:
    """A reading that disagrees with the book: the difference goes to *weighing and moisture*.

    None where the reading moves nothing: it agrees, is of thickness, was taken while the wool was
    damp or, for what should be clean, in the grease; or one of `readings`, the others of this
    holding, is later or was taken after finishing.
    """
    if reading.value < 0:
        raise BadAmount("A measurement cannot be below zero.")
    counting = (one for one in readings if _counts(holding, one))
    if not _counts(holding, reading) or any(_stands_above(one, reading) for one in counting):
        return None
    now = held.get(holding.id, Balance())
    if reading.kind == "length":
        _only_yarn(Portion(holding, 0, reading.value))
        longer = reading.value - now.mm
        return Entry("correct", (Line(holding.id, 0, longer),)) if longer else None
    gained = reading.value - now.mg
    lines = (Line(holding.id, gained), Line(WEIGHING, -gained))
    return Entry("correct", lines) if gained else None


def give_away(held: Held, taken: Portion) -> Entry:
    """Wool or yarn leaves the house, whole or in part."""
    return _entry("put away", held, (taken,), (), GIVEN_AWAY)


def put_away(held: Held, holding: Holding) -> Entry:
    """A holding is emptied for good: lost, moth-eaten or thrown out; all of it goes to waste."""
    now = held.get(holding.id, Balance())
    return _entry("put away", held, (Portion(holding, now.mg, now.mm),), (), WASTE)


def undo(event: Event, events: Iterable[Event]) -> Entry:
    """The counter-event of `event`, one of `events`, the whole book.

    CannotUndo for an undo or for what was undone; HoldsTooLittle where the wool has moved on.
    """
    events = tuple(events)
    if event.kind == "undo":
        raise CannotUndo("An undo cannot be undone. Enter the event again.")
    if any(one.undoes == event.seq for one in events):
        raise CannotUndo("This was undone already.")
    lines = tuple(Line(line.holding_id, -line.mg, -line.mm) for line in event.lines)
    now = balances(events)
    for line in lines:
        have = now.get(line.holding_id, Balance())
        if line.holding_id not in SINKS and (have.mg + line.mg < 0 or have.mm + line.mm < 0):
            raise HoldsTooLittle(
                "What came of this has been used since. Undo the later event first."
            )
    return Entry("undo", lines)


def mg_of(held: Balance, mm: int) -> int:
    """The grams, in mg, of `mm` of a holding's yarn, as if it were even along its length."""
    return round(held.mg * mm / held.mm) if held.mm else 0


def mm_of(held: Balance, mg: int) -> int:
    """The length, in mm, of `mg` of a holding's yarn, as if it were even along its length."""
    return round(held.mm * mg / held.mg) if held.mg else 0


def _entry(
    kind: EventKind, held: Held, taken: Sequence[Portion], made: Sequence[Portion], rest: str
) -> Entry:
    for portion in (*taken, *made):
        _only_yarn(portion)
    _enough(held, taken)
    moved: dict[str, list[int]] = {}
    for sign, portions in ((-1, taken), (1, made)):
        for one in portions:
            line = moved.setdefault(one.holding.id, [0, 0])
            line[0] += sign * one.mg
            line[1] += sign * one.mm
    lost = -sum(mg for mg, _ in moved.values())
    # Wool that weighs more after a step has taken up water; only what is bought comes in.
    sink = rest if lost >= 0 or rest == COME_IN else WEIGHING
    moved[sink] = [lost, 0]
    lines = (Line(holding, mg, mm) for holding, (mg, mm) in moved.items() if mg or mm)
    return Entry(kind, tuple(lines))


def _only_yarn(portion: Portion) -> None:
    if portion.mg < 0 or portion.mm < 0:
        raise BadAmount(f"The amount of {portion.holding.code} cannot be below zero.")
    if portion.mm and portion.holding.kind not in YARN_KINDS:
        raise NotYarn(f"{portion.holding.code} is no skein, ball or left-over: it has no metres.")


def _enough(held: Held, taken: Sequence[Portion]) -> None:
    wanted: dict[str, list[int]] = {}
    for one in taken:
        total = wanted.setdefault(one.holding.id, [0, 0])
        total[0] += one.mg
        total[1] += one.mm
        have = held.get(one.holding.id, Balance())
        if total[0] > have.mg or total[1] > have.mm:
            raise HoldsTooLittle(f"{one.holding.code} holds less than is taken from it.")


def _no_more_yarn(taken_mm: int, made: Sequence[Portion]) -> None:
    if sum(one.mm for one in made) > taken_mm:
        raise MakesTooMuch("More metres come out than went in. Measure once more.")


def _counts(holding: Holding, reading: Reading) -> bool:
    """Whether the wool was in a state in which its weight or length can be entered."""
    clean = holding.state not in ("raw", "skirted")
    out_of_state = reading.wool == "damp" or (reading.wool == "in the grease" and clean)
    return reading.kind in ("mass", "length") and not out_of_state


def _stands_above(other: Reading, reading: Reading) -> bool:
    later = (other.finished, other.day) > (reading.finished, reading.day)
    return other.kind == reading.kind and later
