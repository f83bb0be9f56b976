"""Plans are written down and changed; what is promised follows their state."""

from dataclasses import replace

from sqlmodel import Session

from app.book.words import PlanState
from app.store.records import load_book, put
from app.work.plan_save import add_plan, change_plan
from tests.books import a_plan, a_promise


def pullover_in(session: Session, state: PlanState) -> int:
    return change_plan(session, replace(load_book(session).plan["pullover"], state=state))


def states(session: Session) -> list[str]:
    return [one.state for one in load_book(session).promises]


def test_a_new_plan_is_served_last(writing: Session) -> None:
    assert add_plan(writing, a_plan("socks")).priority == 3
    assert load_book(writing).plan["socks"].priority == 3


def test_casting_on_settles_what_is_promised_and_only_that(writing: Session) -> None:
    put(writing, a_promise("G-2", id="an idea", state="proposed"))
    pullover_in(writing, "being knit")
    assert sorted(states(writing)) == ["proposed", "settled"]


def test_ripping_back_to_an_intention_unsettles_it(writing: Session) -> None:
    pullover_in(writing, "being knit")
    pullover_in(writing, "intended")
    assert states(writing) == ["kept"]


def test_a_plan_put_away_lets_go_of_its_skeins(writing: Session) -> None:
    assert pullover_in(writing, "put away") == 1
    assert load_book(writing).promises == ()


def test_a_plan_that_stays_as_it_was_keeps_its_promises(writing: Session) -> None:
    assert pullover_in(writing, "intended") == 0
    assert states(writing) == ["kept"]
