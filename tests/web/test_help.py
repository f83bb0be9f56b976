"""The help's worked example is worked again here, by the program's own functions and by hand."""

import math
import re

from starlette.testclient import TestClient

from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Plan
from app.craft.ball import Ball, Weighed
from app.craft.constructions.drawing import Knit
from app.craft.constructions.round_yoke import UPPER_ARM, WRIST, by_thirds
from app.craft.fabric import loop_cm
from app.craft.shaping import even_spacing
from app.planning.design import parts_from
from app.planning.ways_out.lengths import even_rows
from tests.planning.learning.test_garments_seen import NEXT, TUBE_M, book_of, need_of, old
from tests.web.garden import page, words

KNIT = Knit(22, 30)


def told(client: TestClient) -> str:
    """The page on one line, its numbers without the spaces between thousands."""
    return re.sub(r"(?<=\d) (?=\d{3}\b)", "", words(page(client, "/help/garments")))


def test_the_body(client: TestClient) -> None:
    text = told(client)
    around = 96 + 8
    stitches, rows = round(KNIT.across(around)), KNIT.along(40)
    loop = loop_cm(22, 30, True)
    metres = stitches * rows * loop.value / 100
    assert math.isclose(loop.value, math.sqrt(21.6 / (2.2 * 3.0)))
    assert f"96 + 8 = {around} cm around; 104 × 2.2 = 228.8, so {stitches} stitches." in text
    assert f"40 × 3.0 = {rows} rounds." in text
    assert f"{stitches} × {rows} = {stitches * rows} stitches." in text
    assert f"= {loop.value:.3f} cm of yarn." in text
    share = loop.u / loop.value
    assert (
        f"{metres:.1f} m , give or take {share:.0%}: {metres * share:.0f} m.".replace("7%", "7 %")
        in text
    )
    assert f"Of a yarn of {100_000 / 450:.1f} m to 100 g (450 tex)" in text
    assert f"that is {metres * 0.45:.1f} g." in text


def test_the_body_made_shorter(client: TestClient) -> None:
    text, rows = told(client), even_rows(Gauge(22.0, 30.0), 50)
    metres = 229 * rows * loop_cm(22, 30, True).value / 100
    assert f"5 × 3.0 = 15 rounds, knit as {rows}, an even number." in text
    assert f"229 × {rows} = {229 * rows} stitches, {metres:.1f} m less." in text


def test_the_sleeve(client: TestClient) -> None:
    text = told(client)
    lower, upper, rows = KNIT.pairs(22), KNIT.pairs(36), KNIT.along(45)
    (few, gap), (many, longer) = even_spacing((upper - lower) // 2, rows)
    stitches = (lower + upper) * rows // 2
    metres = stitches * loop_cm(22, 30, True).value / 100
    assert f"so {lower} stitches; 36 × 2.2 = 79.2, so {upper}" in text
    assert f"{upper} − {lower} = {upper - lower} stitches to add" in text
    assert f"{few} times every {gap}th round and {many} times every {longer}th." in text
    assert f"{stitches} stitches, {metres:.1f} m" in text


def test_the_yoke(client: TestClient) -> None:
    text = told(client)
    joined = 200 + 2 * round(200 * UPPER_ARM) - 4 * 16
    counts = by_thirds(joined)
    assert f"the wrist takes 20 %, {round(200 * WRIST)}; the upper arm 33 %" in text
    assert f"{round(200 * UPPER_ARM)}; each underarm 8 %, 16." in text
    assert f"= {joined} stitches." in text
    assert f"leave {counts.first}, then {counts.second}, then {counts.neck} for the neck" in text


def test_the_yoke_is_what_the_program_draws() -> None:
    """A chest that is 200 stitches around at 20 in 10 cm, without ease."""
    design = Design(
        "pullover, round yoke",
        (Measure("chest", 1000),),
        (Measure("chest", 0),),
        (Choice("proportions", "by percentage"),),
    )
    parts = parts_from(Plan("p", "Yoke", design=design), Gauge(20.0, 28.0))
    yoke = next(one for one in parts if one.name == "yoke")
    assert [run.stitches for run in yoke.shape.runs] == [268, 179, 120, 80]


def test_it_is_linked_from_every_page_and_from_a_new_garment(client: TestClient) -> None:
    assert 'href="/help/garments"' in page(client, "/")
    assert page(client, "/garments/new").count('href="/help/garments"') == 2


def test_it_belongs_to_the_garments(client: TestClient) -> None:
    assert 'href="/garments" aria-current="true"' in page(client, "/help/garments")


def test_the_ball(client: TestClient) -> None:
    text = told(client)
    ball = Ball((Weighed(0, 100), Weighed(100, 52)), 0.45)
    sure, about, most = (ball.reaches(odds) for odds in (0.95, 0.5, 0.05))
    assert f"after about {about:.0f} m of rows as planned, surely not before {int(sure)} m" in text
    assert f"at most after {most:.0f} m." in text
    rows = [int(one / (497.13 / 120)) for one in (about, sure, most)]
    assert "about row {}, surely not before row {}, at most row {}.".format(*rows) in text
    assert f"48 g went, {48 / 45 - 1:.0%}".replace("%", " %") in text


def test_what_a_garment_teaches(client: TestClient) -> None:
    text, share = told(client), 0.10**2 / (0.10**2 + 0.03**2 + 0.01**2)
    assert f"= {share:.2f} of it is taken for the hand." in text
    more = need_of(book_of(old(times=1.1), NEXT)).roles[0].need.value / TUBE_M - 1
    assert math.isclose(1.1**share - 1, more, rel_tol=1e-3)
    assert f"{more:.0%} more.".replace("%", " %") in text
