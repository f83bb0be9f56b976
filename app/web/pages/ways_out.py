"""The ways out of a garment's shortfall: the list of them, and one of them looked at."""

from dataclasses import dataclass
from urllib.parse import urlencode

from app.book.book import Book
from app.book.plan import Plan
from app.planning.answers import PlanAnswer
from app.planning.left_over import Fits
from app.planning.picture import picture
from app.planning.ways_out.judged import Harm, Judged, Looked
from app.planning.ways_out.way import Amount, Said
from app.web.pages.answer import Sentence, answer_sentence, listed
from app.web.pages.picture import drawing
from app.web.pages.picture_ink import Drawing
from app.web.shown import Shown
from app.work.ways_out import Seen, offer_stamp


@dataclass(frozen=True, slots=True)
class WayShown:
    """A way out in words; `stamp` goes with taking it, `listed` is on the work list already."""

    url: str
    key: str
    title: str
    tone: str
    odds: str
    short: str
    costs: str
    notes: tuple[str, ...]
    harms: tuple[str, ...]
    listed: bool
    stamp: str


@dataclass(frozen=True, slots=True)
class FitShown:
    """Something the left-over reaches for; `url` is its page, or asks the quick reckoning."""

    words: str
    yarn: str
    odds: str
    url: str


@dataclass(frozen=True, slots=True)
class WaysPage:
    """`ways` for a plan that is short, `fits` for one that leaves something over; `sentence` says
    which. Ways after the `first` are folded up, unless this is the `whole` page. `unlooked` is how
    many kinds of ways were not looked for yet, of `kinds`; `going_on` whether they still are."""

    plan: Plan
    sentence: str
    ways: tuple[WayShown, ...]
    fits: tuple[FitShown, ...]
    whole: bool
    kinds: int
    unlooked: int
    going_on: bool
    first: int = 3


@dataclass(frozen=True, slots=True)
class Compared:
    """A line of the comparison: before and after."""

    what: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class WayPage:
    """A way out as it would be: the garment's answer, its picture, and its budget beside that of
    now. `other` is another garment in the place of this one."""

    plan: Plan
    way: WayShown
    name: str
    other: bool
    answer: Sentence
    budget: tuple[Compared, ...]
    parts: tuple[Compared, ...]
    drawn: Drawing


def ways_page(
    book: Book,
    plan_id: str,
    short: bool,
    looked: Looked,
    going_on: bool,
    fits: tuple[Fits, ...],
    shown: Shown,
    whole: bool = True,
) -> WaysPage:
    """The list of ways for a plan that is short, or what else the left-over would make."""
    unlooked = looked.of - looked.looked
    return WaysPage(
        plan=book.plan[plan_id],
        sentence=_sentence(short, looked.ways, fits, unlooked > 0),
        ways=tuple(way_shown(one, book, shown) for one in looked.ways),
        fits=tuple(_fit_shown(one, book, plan_id, shown) for one in fits),
        whole=whole,
        kinds=looked.of,
        unlooked=unlooked,
        going_on=going_on and unlooked > 0,
    )


def way_page(seen: Seen, shown: Shown) -> WayPage:
    """One way out, before and after it."""
    (book, _), (changed, after) = seen.before, seen.after
    judged, about = seen.judged, seen.judged.proposal.about
    plan_id = judged.before.plan_id
    return WayPage(
        plan=book.plan[plan_id],
        way=way_shown(judged, book, shown),
        name=changed.plan[about].name,
        other=about != plan_id,
        answer=answer_sentence(judged.after, changed, shown),
        budget=_budget(judged.before, judged.after, shown),
        parts=_parts(judged.before, judged.after, shown),
        drawn=drawing(picture(changed, after, about), shown),
    )


def way_shown(judged: Judged, book: Book, shown: Shown) -> WayShown:
    """A way out as it stands in the list."""
    proposal, after = judged.proposal, judged.after
    plan_id = judged.before.plan_id
    return WayShown(
        url=f"/garments/{plan_id}/ways-out/{proposal.key}",
        key=proposal.key,
        title=said_words(proposal.title, shown),
        tone="enough" if after.enough else "short",
        odds=shown.odds(after.odds),
        short=_short_or_left(after, shown),
        costs=said_words(proposal.effort.said, shown),
        notes=tuple(f"{said_words(one, shown)}." for one in proposal.notes),
        harms=tuple(_harm(one, shown) for one in judged.harms),
        listed=proposal.listed,
        stamp=offer_stamp(book, judged),
    )


def _fit_shown(fit: Fits, book: Book, plan_id: str, shown: Shown) -> FitShown:
    url = f"/garments/{fit.plan_id}"
    if fit.plan_id is None:
        asked = {
            "have": f"{fit.m} m",
            "yarn": fit.yarn_id,
            "garment": fit.kind,
            "person": book.plan[plan_id].person_id or "",
            "gauge_measure": shown.settings.gauge_unit,
            "gauge_washed": "yes",
        }
        url = f"/quick?{urlencode(asked)}"
    return FitShown(fit.words, book.yarn[fit.yarn_id].name, shown.odds(fit.odds), url)


def said_words(said: Said, shown: Shown) -> str:
    """A sentence of the reckoning with its amounts in the maker's units."""
    return said.text.format(*(_amount(one, shown) for one in said.amounts))


def _amount(one: Amount, shown: Shown) -> str:
    match one.kind:
        case "yarn":
            return shown.short_length(one.value)
        case "wool":
            return shown.short_mass(one.value)
        case "size":
            return shown.size(one.value)
        case "hours":
            return _hours(max(1, round(one.value)), shown)
        case "needle":
            return f"{shown.number(one.value, 2, least=0)} mm"
        case "count":
            return shown.number(one.value, 1, least=0)


def _hours(hours: int, shown: Shown) -> str:
    return f"{shown.number(hours)} {'hour' if hours == 1 else 'hours'}"


def _short_or_left(after: PlanAnswer, shown: Shown) -> str:
    if after.enough:
        return f"about {shown.length(after.left_m)} left"
    return f"short by {shown.short_length(after.short_m)}"


def _harm(harm: Harm, shown: Shown) -> str:
    return (
        f"{harm.name} then reaches the end {shown.odds(harm.after)}, not {shown.odds(harm.before)}."
    )


def _sentence(short: bool, ways: tuple[Judged, ...], fits: tuple[Fits, ...], looking: bool) -> str:
    if ways:
        return "The most for the least effort comes first."
    if fits:
        return f"What is left over would also make {listed([one.words for one in fits])}."
    if looking:
        return "No way out was found so far."
    if short:
        return "No way out was found on this shelf and among these fleeces."
    return "What is left over would make nothing else: keep it for mending."


def _budget(before: PlanAnswer, after: PlanAnswer, shown: Shown) -> tuple[Compared, ...]:
    def line(what: str, words: str, was: float, now: float) -> Compared:
        told = getattr(shown, words)
        return Compared(what, told(was), told(now))

    return (
        Compared("reaches the end", shown.odds(before.odds), shown.odds(after.odds)),
        line("needs", "length", before.need.value, after.need.value),
        line("promised", "length", before.promised_m, after.promised_m),
        line("in reserve", "at_least_length", before.reserved_m, after.reserved_m),
        line("short", "short_length", before.short_m, after.short_m),
        line("to spin or buy", "short_length", before.to_make_m, after.to_make_m),
        line("left over", "length", before.left_m, after.left_m),
        line(
            "left over, at least", "at_least_length", before.left_at_least_m, after.left_at_least_m
        ),
    )


def _parts(before: PlanAnswer, after: PlanAnswer, shown: Shown) -> tuple[Compared, ...]:
    was = {
        one.name: _have(one.need.value, one.promised_m + one.used_m, shown) for one in before.parts
    }
    now = {
        one.name: _have(one.need.value, one.promised_m + one.used_m, shown) for one in after.parts
    }
    names = dict.fromkeys([*now, *was])
    return tuple(Compared(one, was.get(one, "–"), now.get(one, "–")) for one in names)


def _have(need: float, have: float, shown: Shown) -> str:
    return f"{shown.length(have)} of {shown.length(need)}"
