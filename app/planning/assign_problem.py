"""From book and reckoning to the solver's problem: whole metres, prices, what fleeces can give."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import floor

from app.book.book import Book
from app.book.code_order import in_order
from app.craft.odds import whole_up
from app.planning.allowances import losses_of
from app.planning.answers import Reckoning
from app.planning.assign_kinds import Unit, kinds, unlike
from app.planning.needs import needs_of
from app.planning.proposal import LEAST_M, can_take_m, missing_m
from app.planning.solve.problem import Kind, Part, Prices, Problem, Skein
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class Asked:
    """A plan's problem, with what its numbers stand for: units are its parts, `holdings` its
    skeins and `can_take_m` what each of them can still give to the plan, tails included."""

    plan_id: str
    units: tuple[Unit, ...]
    holdings: tuple[str, ...]
    can_take_m: tuple[float, ...]
    problem: Problem
    lots: Lots

    def surer(self, share: float) -> Problem:
        """The same with every need larger by a share, to be as sure as was asked."""
        parts = (
            replace(part, need=_whole(unit.missing_m * (1 + share)))
            for part, unit in zip(self.problem.parts, self.units, strict=True)
        )
        return replace(self.problem, parts=tuple(parts))


def ask(book: Book, reckoning: Reckoning, plan_id: str) -> Asked:
    """What the parts of a plan still miss against what is free or in reserve for it.

    What is promised already stays. A part that no yarn is chosen for and none suits is left out.
    """
    lots = Lots(book)
    units = _units(reckoning, plan_id, lots)
    own = kinds(units, lots)
    units = [one for one in units if any(unlike(one, kind, 1.0, lots) is not None for kind in own)]
    holdings, free = _skeins(reckoning, plan_id, {yarn for kind in own for yarn in kind}, lots)
    tails = 2 * losses_of(book.plan[plan_id], book.settings).tail_mm / 1000
    skeins = tuple(
        Skein(book.holding[one].code, book.holding[one].yarn_id or "", max(0, floor(m - tails)))
        for one, m in zip(holdings, free, strict=True)
    )
    fleeces = list(dict.fromkeys(f for one in own if (f := book.yarn[one[0]].fleece_id)))
    parts = tuple(_part(one, own, lots) for one in units)
    problem = Problem(
        parts=parts,
        skeins=skeins,
        kinds=tuple(_kind(one, fleeces, lots) for one in own),
        fleeces=tuple(_can_give_g(reckoning, plan_id, one) for one in fleeces),
        prices=_prices(book, parts, skeins),
    )
    return Asked(plan_id, tuple(units), tuple(holdings), tuple(free), problem, lots)


def _units(reckoning: Reckoning, plan_id: str, lots: Lots) -> list[Unit]:
    plan, answer = lots.book.plan[plan_id], reckoning.plan(plan_id)
    needs = {one.part.id: one for one in needs_of(plan, lots.book.parts_of.get(plan_id, []), lots)}
    units = [
        Unit(needs[part.part_id], role, missing_m(needs[part.part_id], role, part))
        for part in answer.parts
        for role in needs[part.part_id].roles
    ]
    return [one for one in units if one.missing_m >= LEAST_M]


def _skeins(
    reckoning: Reckoning, plan_id: str, yarns: set[str], lots: Lots
) -> tuple[list[str], list[float]]:
    """The skeins of those yarns with something free, in the order of their codes."""
    free = {
        one.id: can_take_m(reckoning.shelf[one.id], plan_id)
        for yarn in yarns
        for one in lots.skeins.get(yarn, [])
        if one.id in reckoning.shelf
    }
    book = lots.book
    found = sorted(free, key=lambda one: (in_order(book.holding[one].code), one))
    found = [one for one in found if free[one] >= LEAST_M]
    return found, [free[one] for one in found]


def _part(unit: Unit, own: Sequence[tuple[str, ...]], lots: Lots) -> Part:
    price = lots.book.settings.prices.unlike
    costs = tuple(unlike(unit, kind, price, lots) for kind in own)
    return Part(f"{unit.part.part.name}, {unit.role.role}", _whole(unit.missing_m), costs)


def _kind(yarns: tuple[str, ...], fleeces: Sequence[str], lots: Lots) -> Kind:
    fleece, tex = lots.book.yarn[yarns[0]].fleece_id, lots.tex(yarns[0])
    if fleece is None:
        return Kind(yarns)
    return Kind(yarns, fleeces.index(fleece), tex.value / 1000 if tex else 0.0)


def _can_give_g(reckoning: Reckoning, plan_id: str, fleece_id: str) -> float:
    """Grams of finished yarn a fleece can give once the other plans have theirs."""
    others = (
        line.g or 0
        for line in reckoning.work
        if line.kind == "spin" and line.fleece_id == fleece_id and line.plan_id != plan_id
    )
    return max(0.0, reckoning.fleeces[fleece_id].yarn_g.value - sum(others))


def _prices(book: Book, parts: Sequence[Part], skeins: Sequence[Skein]) -> Prices:
    """The maker's prices; a metre still to be made stands above all the others together."""
    own = book.settings.prices
    most = own.join * (len(skeins) + len(parts)) + (own.cut + own.scrap) * len(parts)
    most += sum(max((one for one in part.unlike if one is not None), default=0) for part in parts)
    miss = float(whole_up(most) + 1)
    return Prices(own.join, own.cut, own.scrap, own.scrap_below_mm // 1000, miss, 10 * miss)


def _whole(metres: float) -> int:
    return max(1, whole_up(metres))
