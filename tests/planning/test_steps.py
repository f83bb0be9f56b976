"""The working of a plan names each part and allowance once."""

from app.craft.working import Step
from app.planning.reckoning import reckon
from tests.books import a_book, a_part, a_plan, a_skein, a_yarn


def first_step(*parts: object) -> Step:
    book = a_book(a_yarn(), a_skein(), a_plan(), *parts)
    return reckon(book).plan("pullover").working[0]


def test_parts_and_allowances_of_one_name_are_summed() -> None:
    second = a_part(id="again", name=a_part().name, position=2)
    one, two = first_step(a_part()), first_step(a_part(), second)
    assert two.how.count(a_part().name) == 1
    assert two.how.count("joins and tails") <= 1
    assert [entry.split(" ", 1)[1] for entry in two.how.split(" + ")] == [
        entry.split(" ", 1)[1] for entry in one.how.split(" + ")
    ]


def test_the_terms_add_up_to_the_need() -> None:
    step = first_step(a_part(), a_part(id="again", position=2))
    terms = [float(entry.split(" ")[0]) for entry in step.how.split(" + ")]
    assert abs(sum(terms) - step.value) < 0.1 * len(terms)
