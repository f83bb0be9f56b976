"""A bobbin while it is spun: its checks against the single meant, and what its end would give."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.holding import Holding
from app.book.yarn import Yarn
from app.craft.figure import Figure
from app.craft.spinning import Check, check_of, end_becomes
from app.planning.answers import Reckoning
from app.planning.spinning_checks import Noted, bobbin_checks, singles_spread
from app.planning.spinning_plan import single_meant

WRAPS_U = 0.20
LENGTH_U = 0.10
"""Standard uncertainty of a check as a share, by wraps and by a weighed length (practice)."""

WAYS = {"kept": 1, "plied on itself": 2, "chain-plied": 3}
"""What can be done with the end of a bobbin, and how often the single lies side by side then."""


@dataclass(frozen=True, slots=True)
class BobbinAnswer:
    """A bobbin of a yarn: grams on it, the single's tex that is meant and by its checks (None where
    not known), each check compared, her spread, and metres its end gives by each way."""

    bobbin: Holding
    yarn: Yarn | None
    g: float
    meant_tex: float | None
    tex: float | None
    checks: tuple[tuple[Noted, Check | None], ...]
    spread: float
    ends: dict[str, float]

    @property
    def last(self) -> Check | None:
        """The latest check, compared with what is meant."""
        return self.checks[-1][1] if self.checks else None


def bobbin_answer(book: Book, reckoning: Reckoning, bobbin: Holding) -> BobbinAnswer:
    """All there is to say of a bobbin."""
    yarn = book.yarn.get(bobbin.yarn_id or "")
    meant = single_meant(book, reckoning, yarn) if yarn else None
    noted = bobbin_checks(book, bobbin)
    tex = sum(one.tex for one in noted) / len(noted) if noted else meant
    held = book.balances.get(bobbin.id)
    g = held.mg / 1000 if held else 0.0
    return BobbinAnswer(
        bobbin=bobbin,
        yarn=yarn,
        g=g,
        meant_tex=meant,
        tex=tex,
        checks=tuple((one, _compared(book, one, meant)) for one in noted),
        spread=singles_spread(book),
        ends=_ends(book, g, tex),
    )


def _compared(book: Book, noted: Noted, meant: float | None) -> Check | None:
    if meant is None:
        return None
    reading = next(one for one in book.readings_of[noted.bobbin.id] if one.id == noted.reading_id)
    share = WRAPS_U if reading.instrument == "gauge" else LENGTH_U
    return check_of(Figure(noted.tex, "tex", {"the check": share * noted.tex}), meant)


def _ends(book: Book, g: float, tex: float | None) -> dict[str, float]:
    """Metres of what is left on a bobbin, by what is done with it; none of an empty one."""
    if tex is None or g <= 0:
        return {}
    take_up = book.settings.steps.take_up / 100
    return {way: end_becomes(g, tex, plies, take_up) for way, plies in WAYS.items()}


def started(book: Book, yarn_id: str) -> list[Holding]:
    """The bobbins of a yarn that are on the wheel or wait to be plied, by code; those emptied are
    left out."""
    begun = {line.holding_id for event in book.events for line in event.lines}
    found = [one for one in book.holdings if one.kind == "bobbin" and one.yarn_id == yarn_id]
    here = [one for one in found if one.put_away is None]
    full = [one for one in here if one.id not in begun or book.balances[one.id].mg > 0]
    return sorted(full, key=lambda one: one.code)
