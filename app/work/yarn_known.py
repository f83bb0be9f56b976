"""All yarns with what they hold, and one yarn with its skeins and the plans that use it."""

from dataclasses import dataclass
from math import sqrt

from sqlmodel import Session

from app.book.fleece import Fleece
from app.book.plan import Plan
from app.book.yarn import Yarn
from app.craft.figure import Figure
from app.craft.yarn_class import by_grist
from app.planning.fleeces import metres_at
from app.planning.turn import in_turn
from app.store.skein_list import SkeinFilter
from app.store.yarn_totals import YarnTotal, yarn_totals
from app.work.reckoning import Known
from app.work.skein_browse import Browsed, browse
from app.work.skein_known import meant_for


@dataclass(frozen=True, slots=True)
class YarnSum:
    """A yarn with its totals. `tex` is its mean over the measured skeins, `spread` how far they
    stray from one another (standard deviation, tex; None below two); `target` tells that `tex` is
    only aimed at. `classes` are labels such as "4 Medium"."""

    total: YarnTotal
    tex: float | None
    spread: float | None
    target: bool
    classes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class KnownYarn:
    """`free_m` of its skeins could be promised now. `could_be` is what its fleece could still
    become at its grist, in m; None without a fleece or a grist."""

    yarn: Yarn
    sum: YarnSum
    free_m: float
    fleece: Fleece | None
    could_be: Figure | None
    skeins: Browsed
    plans: tuple[Plan, ...]


def all_yarns(session: Session) -> list[YarnSum]:
    """Every yarn in the order of its name."""
    return [summed(one) for one in yarn_totals(session)]


def known_yarn(session: Session, known: Known, yarn_id: str, page: int = 1) -> KnownYarn | None:
    """All that is known of a yarn; None where there is none of that id."""
    yarn = known.book.yarn.get(yarn_id)
    totals = [one for one in yarn_totals(session, yarn_id) if yarn]
    if yarn is None or not totals:
        return None
    one = summed(totals[0])
    fleece = known.book.fleece.get(yarn.fleece_id or "")
    return KnownYarn(
        yarn=yarn,
        sum=one,
        free_m=_free_m(known, yarn_id),
        fleece=fleece,
        could_be=_could_be(known, fleece, one.tex),
        skeins=browse(session, SkeinFilter(yarn_id=yarn_id, page=page)),
        plans=tuple(plan for plan in in_turn(known.book.plans) if uses(known, plan, yarn_id)),
    )


def summed(total: YarnTotal) -> YarnSum:
    """A yarn's mean grist and its spread, from the sums over its skeins."""
    measured = 1000 * total.measured_mg / total.mm if total.mm else None
    tex = measured or total.target_tex
    classes = tuple(one.label for one in by_grist(tex)) if tex else ()
    return YarnSum(total, tex, _spread(total), tex is not None and measured is None, classes)


def uses(known: Known, plan: Plan, yarn_id: str) -> bool:
    """True where a plan is meant for a yarn, or has some of it promised."""
    book = known.book
    promised = (book.holding[one.holding_id].yarn_id for one in book.promises_of.get(plan.id, []))
    return meant_for(book, plan, yarn_id) or yarn_id in promised


def _free_m(known: Known, yarn_id: str) -> float:
    of_yarn = {one.id for one in known.book.holdings if one.yarn_id == yarn_id}
    return sum(one.free_m for id, one in known.reckoning.shelf.items() if id in of_yarn)


def _spread(total: YarnTotal) -> float | None:
    if total.measured < 2:
        return None
    mean = total.tex_sum / total.measured
    squares = max(0.0, total.tex_square_sum - total.measured * mean**2)
    return sqrt(squares / (total.measured - 1))


def _could_be(known: Known, fleece: Fleece | None, tex: float | None) -> Figure | None:
    answer = known.reckoning.fleeces.get(fleece.id) if fleece else None
    return metres_at(answer.yarn_g, tex) if answer and tex else None
