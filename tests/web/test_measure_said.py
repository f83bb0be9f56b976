"""Measures and ease in words, in centimetres and in inches."""

import pytest

from app.book.settings import Settings
from app.craft.sizes import Measured
from app.web.pages.design_fields import ease_words
from app.web.pages.measure_said import assumed_said, body_known, ease_said, give_or_take
from app.web.shown import Shown

CM = Shown(Settings())
INCHES = Shown(Settings(length_unit="yd"))


@pytest.mark.parametrize(
    ("one", "said"),
    [
        (Measured(78.2, 3.91, "memory", "a table"), "78.2 ± 3.9 cm, as the body table has it"),
        (Measured(60.0, 4.8, "assumed"), "60 ± 4.8 cm, assumed"),
        (Measured(5.0, 0.0, "assumed"), "5 cm, usual"),
    ],
)
def test_an_assumed_measure_says_who_says_so(one: Measured, said: str):
    assert assumed_said(one, CM).replace("\u202f", " ") == said


def test_in_inches_it_is_the_same_measure():
    assert give_or_take(Measured(76.2, 3.81, "memory"), INCHES).replace("\u202f", " ") == (
        "30 ± 1.5 in"
    )


@pytest.mark.parametrize(
    ("cm", "said"), [(7.5, "7.5 cm more"), (-5.0, "5 cm less"), (0.0, "as the body")]
)
def test_ease_is_more_or_less_than_the_body(cm: float, said: str):
    assert ease_said(cm, CM).replace("\u202f", " ") == said


def test_each_chart_says_its_own_amount():
    told = {name: words.replace("\u202f", " ") for name, words in ease_words(CM).items()}
    assert told["standard"] == "standard: 5 to 10 cm more"
    assert told["very close (older chart)"] == ("very close (older chart): up to 5 cm less")
    assert told["very close (2018 chart)"] == "very close (2018 chart): 10 to 5 cm less"
    assert told["close (2018 chart)"] == "close (2018 chart): as the body"


def test_a_body_is_known_from_its_chest_alone():
    known = body_known({"chest": 960})
    assert known["chest"].standing == "measured"
    assert known["waist"].u > 0
    assert body_known({"waist": 800}) == {}
    assert body_known({"chest": 2500}) == {}
