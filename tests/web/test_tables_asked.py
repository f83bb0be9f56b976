"""What the tables answer, against numbers worked by hand or printed elsewhere."""

from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Literal

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.store.engine import open_store
from app.web.pages.table_rows import ShownRow, printed
from app.web.pages.tables import all_tables
from app.web.server import create_app

HOME = "http://127.0.0.1:8765"


@pytest.fixture(scope="module")
def client(empty_folder: Path) -> Iterator[TestClient]:
    """One program for all of these tests: tables only read."""
    store = open_store(empty_folder)
    with TestClient(create_app(store), base_url=HOME) as browser:
        yield browser
    store.close()


def page(client: TestClient, question: str) -> str:
    answer = client.get(f"/tables/{question}")
    assert answer.status_code == 200
    return unescape(answer.text)


def line(what: str, value: str) -> str:
    return f'<tr><th scope="row">{what}</th><td class="n">{value}</td>'


PUBLISHED = [
    # GATE TF 1992 Q2: 20 tex is 29.5 cotton, 180 denier, 50 metric
    ("counts?count=20&system=tex", "cotton", "29.53"),
    ("counts?count=20&system=tex", "denier", "180.0"),
    ("counts?count=20&system=tex", "metric", "50.00"),
    # Brooks, Cotton Manufacturing: 20 cotton is 30 worsted, 56 linen, 16.93 French
    ("counts?count=20&system=cotton", "worsted", "30.00"),
    ("counts?count=20&system=cotton", "linen", "56.00"),
    ("counts?count=20&system=cotton", "French cotton", "16.93"),
    # ASTM D2118: 12.0 % content is 13.64 % regain, 13.04 % is 15.00 %
    ("regain?mass=100+g&content=12&fibre=cotton", "regain", "13.64 %"),
    ("regain?mass=100+g&content=13.04&fibre=cotton", "regain", "15.00 %"),
    # a spinner's published measurement, 2014: 600 yd became 433 yd, 27.8 % shorter
    ("finishing?before=600+yd&after=433+yd", "change of length", "27.8 % shorter"),
]

WORKED = [
    # 100 kg of cotton with 4 % of water in it: 96 dry, at 8.5 % regain 104.16
    ("regain?mass=100+g&content=4&fibre=cotton", "at 8.5 % regain", "104.2 g"),
    # 25 tex at 6 turns in a cm: 6 × √25 = 30, ÷ 9.567 = 3.14
    ("twist?turns=6&per=cm&count=25&system=tex", "twist factor", "30.0"),
    ("twist?turns=6&per=cm&count=25&system=tex", "English multiplier", "3.14"),
    # Munden 1959 by hand: 22 × 30, washed, 1.8091 cm and 1194.0 m; not washed √(19/6.6) = 1.697
    ("gauge?stitches=22&rows=30", "in a stitch", "1.809 cm"),
    ("gauge?stitches=22&rows=30&state=as+knitted", "in a stitch", "1.697 cm"),
    # a tube of 104 × 40 cm: 0.416 m² × 1194.0 = 496.7
    ("gauge?stitches=22&rows=30&width=104&length=40", "in your piece", "497 m"),
    # the chain by hand: 180 g of yarn want 185.6, 206.2, 343.6 and 404.3 g
    (
        "yarn-to-fleece?length=400&count=450&system=tex&plies=2&shrink=8&take_up=5&state=raw"
        "&skirt=15&yield=60&prepare=10&spin=3&finish=0",
        "skirted",
        "343.6 g",
    ),
    ("finishing?before=100+m&after=103+m", "change of length", "3.00 % longer"),
    # CIEDE2000: black against white is 100
    ("colours?one=%23000000&other=%23ffffff", "difference", "100"),
    ("gauge-measures?count=7&measure=4+in", "in 10 cm", "6.89"),
    ("rates?amount=100&rate=50&per=g%2Fh", "hours", "2.00"),
]


@pytest.mark.published
@pytest.mark.parametrize(("question", "what", "value"), PUBLISHED)
def test_a_line_as_it_is_printed(client: TestClient, question: str, what: str, value: str):
    assert line(what, value) in page(client, question)


@pytest.mark.parametrize(("question", "what", "value"), WORKED)
def test_a_line_as_worked_by_hand(client: TestClient, question: str, what: str, value: str):
    assert line(what, value) in page(client, question)


SAID = [
    ("plied?system=cotton&single1=40&single2=80&single3=120", "21.82 cotton:"),  # Brooks
    ("plied?system=cotton&single1=64&single2=48&single3=32", "14.77 cotton:"),  # Davis
    ("missing-single?system=tex&wanted=450&other1=200", "A single of 250.0 tex:"),
    ("skein?girth=1.5&turns=142", "213.0 m."),
    ("wraps?wraps=12", "About 205 m/100 g; 3 Light by its grist."),
    ("wraps?count=1200&system=yd/lb&stitches=22", "3 Light by its grist and its gauge."),
    ("needles?size=4&kind=mm", "4 mm: US 6, old British 8."),
    ("needles?size=8&kind=old+British", "old British 8 is 4 mm."),
    ("wheel?ratio=14&treadles=2&draft=5.08&unit=cm", "14 turns in an inch."),
    ("increases?events=16&over=135&kind=round", "Every 8th row 9 times, then every 9th row 7"),
    ("increases?events=16&over=135&kind=flat", "Every 8th row 13 times, then every 10th row 3"),
    ("increases?events=10&over=10&kind=stitches", "Every stitch 10 times."),
    ("increases?events=1&over=22&kind=round", "Every 22nd row once."),
    ("multiples?stitches=228&multiple=4", "228 fits."),
    ("buttons?band=10&buttons=1&hole=2&edge=1", "It begins 4 cm from the lower end."),
    ("breeds?breed=moon+sheep", "Nothing is printed of moon sheep here."),
    ("breeds?breed=East+Friesian", "yield 62 ± 10 %, assumed"),
    ("grades?micron=24&sd=7", "Grade 58s"),
    ("fibres?micron=150", "150 µm fine: no fibre of this table."),
    ("finishing?before=100", "About 88.00 m, give or take 8.0 m."),
    ("designation?line=R+450+tex+S+/+2", "the single is twisted in a way not told."),
    ("designation?line=20+tex+t0", "A single yarn; the single is twisted not at all."),
    ("twist?turns=0.1&per=m&count=20&system=tex", "as for no usual use."),
    ("ease?chest=96", "A standard fit measures 101 to 106 cm around."),
    ("pick-up?stitches=20&rows=30&edge=90", "Pick up 2 in 3 rows, over and over."),
    ("patterns?pattern=cables&stitches=1000&loop=2", "21.00 m, give or take 1.0 m."),
]


@pytest.mark.parametrize(("question", "said"), SAID)
def test_a_sentence_that_answers(client: TestClient, question: str, said: str):
    assert said in page(client, question)


REFUSED = [
    ("needles?size=3.5&kind=old+British", "No needle has that old British number."),
    ("needles?size=900&kind=mm", "A needle is between 0.5 and 50 mm thick."),
    ("needles?size=thick&kind=mm", "“thick” is not a number."),
    ("missing-single?system=tex&wanted=100&other1=200", "are as heavy as this yarn already."),
    ("needle-for-gauge?stitches=40&count=50&system=m/100+g", "too thick for so many stitches"),
    ("increases?events=20&over=10&kind=round", "There are more of them than places for them."),
    ("pick-up?stitches=30&rows=20", "pick up one in every row and increase after."),
    ("buttons?band=10&buttons=20&hole=2&edge=1", "So many buttonholes do not fit on this band."),
    ("designation?line=sheep", "“sheep” is no designation"),
    ("blend?fibre1=silk&share1=50&fibre2=cotton&share2=20&share3=30", "Choose the fibre"),
    ("bodies?chest=5", "This must be 30\u202fcm or more."),
    ("colours?one=red&other=%23ffffff", "Choose a colour from the field."),
]


@pytest.mark.parametrize(("question", "why"), REFUSED)
def test_a_question_without_an_answer(client: TestClient, question: str, why: str):
    answer = client.get(f"/tables/{question}")
    assert answer.status_code == 422
    assert why in unescape(answer.text)
    assert 'id="says"' not in answer.text


def test_a_label_share_is_made_dry_before_it_is_blended(client: TestClient):
    asked = "blend?fibre1=wool,+carded&share1=50&fibre2=polyester&share2=50&by="
    # dry 50/1.17 and 50/1.015: 46.45 and 53.55 %; regain 0.4645 × 17 + 0.5355 × 1.5 = 8.70
    assert line("regain of the blend", "8.700 %") in page(client, f"{asked}label")
    assert line("regain of the blend", "9.250 %") in page(client, f"{asked}dry")


def test_a_fibre_named_twice_is_one(client: TestClient):
    asked = "blend?fibre1=silk&share1=30&fibre2=silk&share2=70&by=dry"
    assert line("silk", "100 % of the dry mass") in page(client, asked)


def test_grams_and_firmness_come_with_the_grist(client: TestClient):
    found = page(client, "gauge?stitches=22&rows=30&count=450&system=tex")
    # √450 ÷ 1.8091 = 11.73; 1194.0 m × 450 tex = 537 g
    assert line("firmness", "11.7 (ordinary)") in found
    assert line("weight of a square metre", "537 g") in found


def test_a_number_that_is_two_needles_shows_both(client: TestClient):
    found = page(client, "needles?size=2&kind=US")
    assert line("2.75 mm", "US 2, old British 12") in found
    assert line("3 mm", "US 2, old British 11") in found


def test_two_colours_are_shown_beside_their_difference(client: TestClient):
    found = page(client, "colours?one=%23102030&other=%23102030")
    assert found.count('fill="#102030"') == 2
    assert "A difference of 0: not seen as a difference." in found


def test_bodies_are_to_the_half_centimetre_or_the_quarter_inch():
    women = {
        unit: printed(all_tables()["bodies"], Settings(length_unit=unit)).sheets[0]
        for unit in ("m", "yd")
    }
    assert women["m"].caption == "Women, in cm"
    assert women["m"].rows[0].cells[1] == "81.5–86.5"
    assert women["yd"].caption == "Women, in inches"
    assert women["yd"].rows[0].cells[1] == "32–34"


def test_a_fleece_is_in_kilograms_or_pounds():
    lincoln = {
        unit: next(row for row in _breeds(unit) if row.word == "Lincoln") for unit in ("g", "oz")
    }
    assert lincoln["g"].cells[3] == "5.4 to 9.1 kg"
    assert lincoln["oz"].cells[3] == "12 to 20 lb"
    assert lincoln["g"].cells[4] == "36–46s"


def _breeds(unit: Literal["g", "oz"]) -> tuple[ShownRow, ...]:
    return printed(all_tables()["breeds"], Settings(mass_unit=unit)).sheets[0].rows
