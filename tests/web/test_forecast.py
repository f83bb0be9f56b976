"""What is ahead of a garment on the needles, as its page says it."""

import re
from datetime import date

import pytest

from app.book.settings import Settings
from app.planning import reckon
from app.web.forms.filled import Filled
from app.web.pages.forecast import ahead_page
from app.web.shown import Shown
from app.web.templating import environment
from app.work.reckoning import Known
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_yarn,
    some_progress,
)
from tests.planning.knitting.test_forecast import BODY, G_PER_M, SLEEVES, at
from tests.web.garden import words

TODAY = date(2026, 5, 1)


def known_of(*records, metres=(222.0, 222.0), state="being knit", evening=120, **plan):
    codes = [f"G-{n}" for n in range(1, len(metres) + 1)]
    held = {code: (m * G_PER_M, m) for code, m in zip(codes, metres, strict=True)}
    book = a_book(
        a_fleece(),
        a_holding("F-1", fleece_id="Bramble", state="carded"),
        a_yarn(fleece_id="Bramble", target_tex=450.0),
        *(a_skein(one) for one in codes),
        a_plan(state=state, **plan),
        *(a_promise(code, round(m * 1000)) for code, m in zip(codes, metres, strict=True)),
        *records,
        held=held | {"F-1": (3000, 0)},
        settings=Settings(evening_minutes=evening),
    )
    return Known(book, reckon(book))


def seen(known, hours=""):
    """The page's dataclass, and what its part of the page looks like."""
    shown = Shown(known.book.settings)
    ahead = ahead_page(known, shown, "pullover", TODAY, Filled({"hours": hours}))
    template = environment().get_template("pages/needles/ahead.html")
    return ahead, template.render(ahead=ahead, shown=shown) if ahead else ""


def said(*records, hours="", **other):
    return words("</head>" + seen(known_of(*records, **other), hours)[1])


def test_only_a_garment_on_the_needles_is_looked_ahead_at():
    assert seen(known_of(BODY, state="intended"))[0] is None
    assert seen(known_of())[0] is None


def test_each_ball_says_where_it_ends_and_how_surely():
    told = said(BODY, some_progress(rows=40), at(0, 100.0), at(20, 62.0), at(40, 26.0))
    assert "G-1 ends about row 54 of the body , surely not before row 52 of the body." in told
    assert "It reaches the end of the body hardly ever" in told
    assert "more will be needed." in told


def test_a_ball_that_is_enough_says_what_will_be_left():
    told = said(BODY, some_progress(rows=115), at(100, 100.0), at(115, 72.0))
    assert "G-1 reaches beyond the end of the garment" in told
    assert "It reaches the end of the body practically every time: about" in told
    assert "will be left." in told


def test_the_picture_has_its_points_band_and_end_and_the_same_in_words():
    weighed = at(0, 100.0), at(20, 62.0), at(40, 26.0)
    ahead, html = seen(known_of(BODY, some_progress(rows=40), *weighed))
    (plot,) = [one.plot for one in ahead.balls]
    assert html.count("<circle") == len(plot.points) == 3
    assert len(plot.band.split()) == 50
    assert "G-1 weighed 100\u202fg, 62\u202fg, 26\u202fg" in plot.words
    assert (plot.begun.words, plot.end.words) == ("row 0", "row 120")
    heights = [one.y for one in plot.points]
    assert heights == sorted(heights)
    assert "style=" not in html
    assert re.search(r'role="img" aria-label="G-1 weighed', html)


def test_no_ball_weighed_asks_for_two_weighings():
    told = said(BODY, some_progress(rows=1))
    assert "Weigh the ball you are knitting from, twice at least" in told


def test_a_yarn_that_will_not_last_says_where_to_fade_and_when_to_spin():
    told = said(BODY, some_progress(rows=1))
    assert re.search(r"Begin the fade at row \d+ of the body, from every row down to", told)
    assert "grey two-ply surely lasts for about" in told
    assert re.search(r"Begin by \d+ May 2026, and it is there in time\.", told)
    assert "The ways out, from what is really left" in told


def test_too_little_for_a_fade_alternates_from_here():
    told = said(BODY, some_progress(rows=1), metres=(250.0,))
    assert re.search(r"Alternate grey two-ply .* from row 2 of the body on, \d rows in 20", told)


def test_both_sleeves_fade_alike():
    told = said(BODY, SLEEVES, some_progress(rows=1), metres=(222.0, 222.0, 222.0, 100.0))
    assert re.search(r"Begin the fade at row \d+ of the sleeves, on every piece alike", told)


def test_the_length_a_free_part_may_become():
    told = said(BODY, some_progress(rows=1), metres=(222.0, 222.0, 111.0))
    assert re.search(r"The body may become \d+\scm to \d+\scm long if it alone", told)


def test_too_late_to_spin_says_that_the_knitting_waits():
    told = said(BODY, some_progress(rows=1), evening=1000)
    assert re.search(r"Begin now; the knitting will wait about (a day|\d days) for it\.", told)


@pytest.mark.parametrize(
    ("hours", "answer"),
    [
        ("2", "In 2 h you would knit about 13 rows, to row 53 of the body."),
        ("a lot", "“a lot” is not a number."),
        ("0", "This must be 0.1 or more."),
        ("", "What fits in it?"),
    ],
)
def test_what_fits_in_a_journey(hours, answer):
    assert answer in said(BODY, some_progress(rows=40), hours=hours)


def test_a_journey_within_a_sleeve_names_the_piece():
    told = said(
        BODY, SLEEVES, some_progress(rows=120), hours="1", metres=(222.0, 222.0, 222.0, 222.0)
    )
    assert "of the sleeves, 1 of 2" in told


def test_nothing_left_to_knit():
    assert "Nothing is left to knit." in said(BODY, some_progress(rows=120), hours="2")


def test_what_a_day_asks_of_each_week():
    told = said(BODY, some_progress(rows=40), wanted_by=date(2026, 5, 29))
    assert "To be ready by 29 May 2026 it asks" in told
    past = said(BODY, some_progress(rows=40), wanted_by=date(2026, 4, 29))
    assert "It was wanted by 29 April 2026." in past


def test_one_sleeve_but_not_both():
    pair = a_part("cuffs", position=2, copies=2, place="sleeve", shape=SLEEVES.shape)
    weighed = (
        at(0, 70.0, part_id="cuffs", piece=1),
        at(50, 45.0, part_id="cuffs", piece=1, id="second"),
    )
    told = said(BODY, pair, some_progress(rows=120), some_progress("cuffs", rows=50), *weighed)
    assert "G-1 does one piece of the cuffs but not both" in told
