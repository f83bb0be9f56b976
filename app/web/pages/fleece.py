"""The page of one fleece: what it can become, how that was worked out, what happened to it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from app.book.event import Event
from app.book.reading import Reading
from app.craft.figure import Figure
from app.craft.working import Step
from app.web.forms.fleece import GOING
from app.web.forms.reader import Filled
from app.web.pages.answer import Sentence
from app.web.pages.breed import told_of, yield_told
from app.web.shown import Shown
from app.work.fleece_find import KnownFleece
from app.work.fleece_put_away import Going
from app.work.fleece_step import states_of

CAUTIONS = {
    "raw": "Raw fleece carries dust, dung and at times disease. Work where the air moves, wear a "
    "mask, keep hands from the face and wash them after. Scouring water is hot enough to scald.",
    "skirted": "Scouring water is hot enough to scald, and wet fleece is heavy: lift it in "
    "portions. Raw wool carries dust and at times disease: wear a mask and wash your hands.",
    "drying": "Wet fleece is heavy: lift it in portions, with a straight back.",
    "scoured": "Wool combs are as sharp as knives. Clamp them, keep the tines away from you and "
    "cover them when you put them down.",
}
"""The usual cautions for what comes next with wool in each state."""


@dataclass(frozen=True, slots=True)
class Happening:
    """A line of the fleece's history, in words. `undo` is the event a button can take back."""

    day: str
    what: str
    change: str
    undo: int | None = None
    undone: bool = False


@dataclass(frozen=True, slots=True)
class ReadingLine:
    """A weighing as it was taken."""

    day: str
    typed: str
    wool: str


@dataclass(frozen=True, slots=True)
class FleecePage:
    id: str
    name: str
    colour: str
    about: str
    sentence: Sentence
    grist: Filled
    called_for: str
    drying: str
    caution: str
    facts: tuple[tuple[str, str], ...]
    notes: str
    readings: tuple[ReadingLine, ...]
    history: tuple[Happening, ...]
    working: tuple[Step, ...]
    stamp: str
    put_away: bool
    going: Mapping[Going, str]


def fleece_page(
    known: KnownFleece, metres: Figure, tex: float, grist: Filled, stamp: str, shown: Shown
) -> FleecePage:
    """Everything of one fleece; `metres` of yarn at the asked grist `tex`."""
    fleece, holding, answer = known.fleece, known.holding, known.answer
    state = holding.state or ""
    gone = holding.put_away is not None
    return FleecePage(
        id=fleece.id,
        name=fleece.name,
        colour=fleece.colour,
        about=" · ".join(filter(None, (fleece.breed, fleece.fibre, fleece.colour_name))),
        sentence=_sentence(known, metres, tex, grist, shown),
        grist=grist,
        called_for=shown.short_mass(answer.called_for_g) if answer.called_for_g > 0 else "",
        drying=drying_told(known.readings, shown) if state == "drying" else "",
        caution="" if gone else CAUTIONS.get(state, ""),
        facts=_facts(known, shown),
        notes=fleece.notes,
        readings=tuple(_reading(one, shown) for one in reversed(known.readings)),
        history=_history(known, shown),
        working=answer.working,
        stamp=stamp,
        put_away=gone,
        going=GOING,
    )


def drying_told(readings: Iterable[Reading], shown: Shown) -> str:
    """Whether the last two damp weighings agree: wool is dry when they do (practice, 0.5 %)."""
    damp = [one for one in readings if one.kind == "mass" and one.wool == "damp"]
    if len(damp) < 2 or not damp[-2].value:
        return "Weigh it again tomorrow: it is dry when two weighings agree within 0.5 %."
    lost = 100 * (damp[-2].value - damp[-1].value) / damp[-2].value
    if abs(lost) <= AGREES_PCT:
        return "The last two weighings agree: it is dry. Weigh it as scoured."
    return f"It lost {shown.percent(lost, 1)} between the last two weighings: still drying."


AGREES_PCT = 0.5


def _sentence(
    known: KnownFleece, metres: Figure, tex: float, grist: Filled, shown: Shown
) -> Sentence:
    answer, holding = known.answer, known.holding
    if holding.put_away is not None:
        return Sentence("idle", "Put away", f" on {shown.day(holding.put_away)}.")
    if answer.now_g <= 0:
        return Sentence("idle", "Nothing left of it.", " Weigh it if there is.")
    lead = f"{shown.mass(answer.now_g)} {holding.state or ''}:"
    becomes = f" about {shown.mass_range(answer.yarn_g)} of yarn"
    if grist.errors:
        return Sentence("idle", lead, f"{becomes}. The grist: {grist.errors['grist']}")
    at = f"at {shown.grist(tex)} that is {shown.length_range(metres)}"
    return Sentence("idle", lead, f"{becomes}; {at}.")


def _facts(known: KnownFleece, shown: Shown) -> tuple[tuple[str, str], ...]:
    fleece, holding = known.fleece, known.holding
    told = told_of(fleece.breed, shown)
    micron = f"{shown.number(fleece.micron, 1, least=0)} µm, measured" if fleece.micron else ""
    staple = f"{shown.size(fleece.staple_mm)}, measured" if fleece.staple_mm else ""
    facts = (
        ("Yield, scoured from skirted", yield_told(fleece, shown)),
        ("Fineness", micron or told.fineness),
        ("Staple", staple or told.staple),
        ("From", fleece.source),
        ("Came in", shown.day(holding.day) if holding.day else ""),
        ("Paid", holding.price),
        ("Lies in", holding.place),
    )
    return tuple((word, fact) for word, fact in facts if fact)


def _reading(one: Reading, shown: Shown) -> ReadingLine:
    unit = "" if any(sign.isalpha() for sign in one.typed) else f" {one.unit}"
    return ReadingLine(shown.day(one.day), f"{one.typed}{unit}", one.wool)


def _history(known: KnownFleece, shown: Shown) -> tuple[Happening, ...]:
    open_events = [
        one for one in known.events if one.seq not in known.undone and one.kind != "undo"
    ]
    last = open_events[-1].seq if open_events else None
    return tuple(_happening(known, one, last, shown) for one in reversed(known.events))


def _happening(known: KnownFleece, event: Event, last: int | None, shown: Shown) -> Happening:
    gained = sum(line.mg for line in event.lines if line.holding_id == known.holding.id)
    sign = "+" if gained > 0 else "−" if gained < 0 else ""
    return Happening(
        day=shown.day(event.day),
        what=_words(event),
        change=f"{sign}{shown.mass(abs(gained) / 1000)}",
        undo=event.seq if event.seq == last else None,
        undone=event.seq in known.undone,
    )


def _words(event: Event) -> str:
    states = states_of(event)
    if states:
        return f"from {states[0]} to {states[1]}"
    words = EVENT_WORDS.get(event.kind, event.kind)
    return f"{words}: {event.note}" if event.note else words


EVENT_WORDS = {
    "arrive": "came in",
    "prepare": "prepared",
    "spin": "spun",
    "correct": "weighed again",
    "put away": "put away",
    "undo": "undone",
}
