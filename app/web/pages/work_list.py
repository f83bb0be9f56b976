"""The work list: what to spin, wash, card and buy, and what the maker added herself."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from app.book.words import ErrandKind
from app.planning.answers import Reckoning, WorkLine
from app.web.forms.filled import Filled
from app.web.forms.options import with_none
from app.work.work_list_csv import COLUMNS

if TYPE_CHECKING:
    from app.work.undo_records import Change


@dataclass(frozen=True, slots=True)
class WorkRow:
    """A line, and where ticking it leads: to entering what was made, or a form of its own."""

    line: WorkLine
    tick_url: str
    tick_words: str
    plan_url: str
    fleece_url: str


@dataclass(frozen=True, slots=True)
class WorkGroup:
    """Lines of one heading; `hint` says what ticking leads to."""

    title: str
    hint: str
    rows: tuple[WorkRow, ...]


@dataclass(frozen=True, slots=True)
class WorkListPage:
    """`form` is the form for a line of her own, `plans` what it may be for; `last` is a line taken
    out that can be put back."""

    groups: tuple[WorkGroup, ...]
    count: int
    columns: tuple[tuple[str, str], ...]
    plans: Mapping[str, str]
    today: date
    form: Filled
    last: "Change | None"


HEADINGS: tuple[tuple[str, tuple[ErrandKind, ...], str], ...] = (
    ("To spin", ("spin",), "When it is spun, tick it and enter the skein."),
    ("To wash and card", ("wash", "card"), "When it is done, tick it and weigh the fleece."),
    ("To buy", ("buy",), "When you have it, tick it and enter the balls."),
)
OWN = ("Your own lines", "Anything else to remember.")


def work_list_page(
    reckoning: Reckoning,
    plans: Mapping[str, str],
    today: date,
    form: Filled,
    last: "Change | None" = None,
) -> WorkListPage:
    """`plans` are the names, by id, of what a line of her own may be for."""
    return WorkListPage(
        groups=work_groups(reckoning.work),
        count=sum(1 for one in reckoning.work if not one.done),
        columns=COLUMNS,
        plans=with_none("nothing in particular", plans),
        today=today,
        form=form,
        last=last,
    )


def work_groups(lines: Iterable[WorkLine]) -> tuple[WorkGroup, ...]:
    """The lines under their headings; headings with nothing under them are left out."""
    lines = tuple(lines)
    reckoned = [one for one in lines if one.errand_id is None]
    groups = [
        WorkGroup(title, hint, tuple(work_row(one) for one in reckoned if one.kind in kinds))
        for title, kinds, hint in HEADINGS
    ]
    own = tuple(work_row(one) for one in lines if one.errand_id is not None)
    return tuple(one for one in (*groups, WorkGroup(*OWN, own)) if one.rows)


def work_row(line: WorkLine) -> WorkRow:
    """A line with the addresses that belong to it."""
    url, words = _tick(line)
    return WorkRow(
        line=line,
        tick_url=url,
        tick_words=words,
        plan_url=f"/garments/{line.plan_id}" if line.plan_id else "",
        fleece_url=f"/fleeces/{line.fleece_id}" if line.fleece_id else "",
    )


def _tick(line: WorkLine) -> tuple[str, str]:
    if line.errand_id is not None:
        state = "untick" if line.done else "tick"
        return f"/work-list/{line.errand_id}/{state}", "Not done yet" if line.done else "Done"
    if line.kind == "buy":
        return "/skeins/bought" + _query(plan=line.plan_id, yarn=line.yarn_id), "Bought: enter it"
    if line.kind in ("wash", "card") and line.fleece_id:
        weighed = _query(wool=line.holding_id, taken=f"{line.g} g" if line.g else None)
        return f"/fleeces/{line.fleece_id}/weigh{weighed}", "Done: weigh it"
    query = _query(plan=line.plan_id, yarn=line.yarn_id, fleece=line.fleece_id)
    return "/skeins/finish" + query, "Spun: finish the skein"


def _query(**known: str | None) -> str:
    given = {name: value for name, value in known.items() if value}
    return f"?{urlencode(given)}" if given else ""
