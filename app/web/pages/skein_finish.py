"""The page on which a skein is finished, and what is said once it is."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.event import Balance
from app.book.holding import Holding
from app.book.stamp import stamp
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id, with_none
from app.web.forms.skein import TAKEN
from app.web.forms.skein_finish import plans_to_promise
from app.web.forms.skein_yarn import yarn_options
from app.web.forms.yarn import TWISTS
from app.web.pages.answer import listed
from app.web.pages.skein_forms import known_fibres
from app.web.shown import Shown
from app.work.skein_finish import Finished


@dataclass(frozen=True, slots=True)
class FinishPage:
    """`code` is empty for a skein that is not on the shelf yet; `wanted` says what asks for it."""

    form: Filled
    code: str
    action: str
    wanted: str
    held: str
    chosen: bool
    yarns: dict[str, str]
    fleeces: dict[str, str]
    plans: dict[str, str]
    fibres: list[str]
    twists: dict[str, str]
    taken: dict[str, str]


def finish_page(
    book: Book,
    form: Filled,
    wanted: str,
    skein: Holding | None = None,
    held: str = "",
) -> FinishPage:
    """The form for a new skein, or for one that is on the shelf and was washed."""
    marked = Filled(form.values, form.errors, form.stamp or stamp(skein)) if skein else form
    return FinishPage(
        form=marked,
        code=skein.code if skein else "",
        action=f"/skeins/{skein.id}/finish" if skein else "/skeins/finish",
        wanted=wanted,
        held=held,
        chosen=form.values.get("yarn", "") in book.yarn,
        yarns=yarn_options(book),
        fleeces=with_none("none, or not known", names_by_id(book.fleeces)),
        plans=plans_to_promise(book),
        fibres=known_fibres(book),
        twists=TWISTS,
        taken=TAKEN,
    )


def wanted_said(book: Book, yarn_id: str, plan_id: str | None) -> str:
    """ "Grey two-ply, for Waistcoat" """
    yarn, plan = book.yarn.get(yarn_id), book.plan.get(plan_id or "")
    for_plan = [f"for {plan.name}"] if plan else []
    return ", ".join(([yarn.name] if yarn else []) + for_plan)


def finished_said(done: Finished, held: Balance, book: Book, shown: Shown) -> str:
    """ "G-014 is finished: 213 m, 96 g. It lost 8 % of its length in finishing." """
    length, mass = shown.length(held.mm / 1000), shown.mass(held.mg / 1000)
    words = [f"{done.skein.code} is finished: {length}, {mass}."]
    if done.shrink is not None:
        change = "lost" if done.shrink >= 0 else "gained"
        share = shown.percent(100 * abs(done.shrink), 1)
        words.append(f"It {change} {share} of its length in finishing.")
    if done.promised:
        parts = [
            f"{shown.length(one.mm / 1000)} to {book.part[one.part_id].name}"
            for one in done.promised
        ]
        plan = book.plan[done.promised[0].plan_id].name
        words.append(f"Promised to {plan}: {listed(parts)}.")
    return " ".join(words)
