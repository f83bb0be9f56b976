"""Another garment from this yarn, rather than this one."""

from collections.abc import Iterator
from dataclasses import replace

from app.book.book import Book
from app.book.plan import Plan, Promise
from app.craft.garments import KINDS
from app.planning.answers import PlanAnswer
from app.planning.quick import Question, quick
from app.planning.reckoning import reckon
from app.planning.ways_out.situation import Situation, filled
from app.planning.ways_out.way import Effort, Proposal, Said, Way
from app.planning.what_if import WhatIf, between

EVENINGS = 20.0
"""What the garment that was wanted is held to be worth (assumed)."""

MOST = 2


def find(situation: Situation) -> Iterator[Proposal]:
    """The garments that take most of this yarn and are sure enough, for the same wearer."""
    yarn_id = next((one.yarn_id for one in situation.short_groups), None)
    if situation.plan.state != "intended" or yarn_id is None:
        return
    tried = [one for kind in KINDS if (one := _instead(situation, kind, yarn_id))]
    enough = [one for one in tried if one[2].enough]
    for kind, change, answer in sorted(enough, key=lambda one: -one[2].need.value)[:MOST]:
        yield Proposal(
            f"instead-{kind}",
            Said(f"Make {_a(kind)} of it instead"),
            Effort(EVENINGS, Said(f"{situation.plan.name} is put away until there is yarn for it")),
            change,
            change,
            answer.plan_id,
        )


def _instead(
    situation: Situation, kind: str, yarn_id: str
) -> tuple[str, WhatIf, PlanAnswer] | None:
    """The book with that garment in the place of the plan; None where no such garment fits."""
    old, tex = situation.plan, situation.lots.tex(yarn_id)
    person = situation.book.person.get(old.person_id or "")
    measures = {one.name: one.mm / 10 for one in person.measures} if person else {}
    question = Question(kind, have_m=1.0, tex=tex, gauge=old.gauge, measures=measures)
    try:
        found = quick(question, situation.book.settings)
    except ValueError:
        return None
    plan_id = f"{old.id}-{kind}"
    new = replace(
        found.plan,
        id=plan_id,
        person_id=old.person_id,
        priority=old.priority,
        yarns=old.yarns,
        sureness_pct=old.sureness_pct,
    )
    parts = tuple(
        replace(one, id=f"{plan_id}-{place}", plan_id=plan_id)
        for place, one in enumerate(found.parts, 1)
    )
    bare = WhatIf((_put_away(old), new, *parts), _promises(situation)).in_book(situation.book)
    changed = filled(bare, plan_id)
    return kind, between(situation.book, changed), _answer(changed, plan_id)


def _answer(book: Book, plan_id: str) -> PlanAnswer:
    return reckon(book).plan(plan_id)


def _put_away(plan: Plan) -> Plan:
    return replace(plan, state="put away")


def _promises(situation: Situation) -> tuple[Promise, ...]:
    return tuple(situation.book.promises_of.get(situation.plan_id, ()))


def _a(kind: str) -> str:
    return kind if kind in ("mittens", "socks") else f"a {kind}"


WAY = Way("instead", find)
