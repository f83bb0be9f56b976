"""The page of one fleece: what it can become, how that was worked out, what happened to it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from app.book.holding import Holding
from app.book.reading import Reading
from app.craft.figure import Figure
from app.craft.working import Step
from app.planning.drying import Drying
from app.planning.funnel import Stage
from app.web.forms.filled import Filled
from app.web.forms.fleece import GOING
from app.web.pages.answer import Sentence
from app.web.pages.breed import told_of, yield_told
from app.web.pages.cautions import CAUTIONS
from app.web.pages.drying import dry_url, drying_told
from app.web.pages.fleece_form import weigh_url, wool_said
from app.web.pages.fleece_history import Happening, history
from app.web.pages.funnel import Funnel, funnel_picture
from app.web.pages.photos import PhotoShown
from app.web.pages.wool_of import WoolOf
from app.web.shown import Shown, as_typed
from app.work.fleece_find import KnownFleece, heaviest
from app.work.fleece_put_away import Going


@dataclass(frozen=True, slots=True)
class AtGrist:
    """Metres of yarn at a linear density in tex."""

    tex: float
    metres: Figure


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
    funnel: Funnel | None
    funnel_of: str
    wool: tuple[tuple[str, str], ...]
    called_for: str
    drying: tuple[tuple[str, str], ...]
    caution: str
    facts: tuple[tuple[str, str], ...]
    notes: str
    readings: tuple[ReadingLine, ...]
    history: tuple[Happening, ...]
    skeins: tuple[tuple[str, str], ...]
    photos: tuple[PhotoShown, ...]
    wool_of: WoolOf | None
    look: str
    looked_url: str
    working: tuple[Step, ...]
    stamp: str
    put_away: bool
    going: Mapping[Going, str]


def fleece_page(
    known: KnownFleece,
    at: AtGrist,
    grist: Filled,
    stages: Sequence[Stage],
    stamp: str,
    shown: Shown,
    lying_wet: Sequence[Drying] = (),
    wool: WoolOf | None = None,
    photos: Sequence[PhotoShown] = (),
) -> FleecePage:
    """Everything of one fleece, `at` the asked grist; `stages` are the way still before it,
    `lying_wet` what of it dries."""
    fleece, holding, answer = known.fleece, known.holding, known.answer
    gone = holding.put_away is not None
    states = tuple(one.holding.state or "" for one in known.wool)
    return FleecePage(
        id=fleece.id,
        name=fleece.name,
        colour=fleece.colour,
        about=" · ".join(filter(None, (fleece.breed, fleece.fibre, fleece.colour_name))),
        sentence=_sentence(known, at, grist, shown),
        grist=grist,
        funnel=funnel_picture(stages, fleece.colour, shown) if stages and not gone else None,
        called_for=shown.short_mass(answer.called_for_g) if answer.called_for_g > 0 else "",
        funnel_of=wool_said(known, most, shown)
        if (most := heaviest(known)) and len(states) > 1
        else "",
        wool=tuple((weigh_url(known, one), wool_said(known, one, shown)) for one in known.wool),
        drying=tuple(
            (dry_url(fleece.id, one.holding.id), drying_told(one, shown)) for one in lying_wet
        ),
        caution="" if gone else next((CAUTIONS[one] for one in states if one in CAUTIONS), ""),
        facts=_facts(known, shown),
        notes=fleece.notes,
        readings=tuple(_reading(one, shown) for one in reversed(known.readings)),
        history=history(known, shown),
        skeins=tuple((one.id, one.code) for one in known.skeins),
        photos=tuple(photos),
        wool_of=wool,
        look="" if gone else _look(holding, shown),
        looked_url=f"/wool-book/{holding.id}/looked",
        working=answer.working,
        stamp=stamp,
        put_away=gone,
        going=GOING,
    )


def _sentence(known: KnownFleece, at: AtGrist, grist: Filled, shown: Shown) -> Sentence:
    answer, holding = known.answer, known.holding
    if holding.put_away is not None:
        return Sentence("idle", "Put away", f" on {shown.day(holding.put_away)}.")
    if answer.now_g <= 0:
        return Sentence("idle", "Nothing left of it.", " Weigh it if there is.")
    lead = f"{', '.join(wool_said(known, one, shown) for one in known.wool)}:"
    becomes = f" about {shown.mass_range(answer.yarn_g)} of yarn"
    if grist.errors:
        return Sentence("idle", lead, f"{becomes}. The grist: {grist.errors['grist']}")
    long = f"at {shown.grist(at.tex)} that is {shown.length_range(at.metres)}"
    return Sentence("idle", lead, f"{becomes}; {long}.")


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


def _look(holding: Holding, shown: Shown) -> str:
    """When to look for moth, and whether it lies apart until then."""
    when = f"Look again for moth on {shown.day(holding.look_again)}." if holding.look_again else ""
    apart = "It is kept apart until it was looked at." if holding.apart else ""
    return " ".join(filter(None, (apart, when)))


def _reading(one: Reading, shown: Shown) -> ReadingLine:
    return ReadingLine(shown.day(one.day), as_typed(one.typed, one.unit), one.wool)
