"""The picture as it is drawn: outlines, fills, words with room, and the pages it stands on."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import combinations
from math import pi
from time import process_time

import pytest
from starlette.testclient import TestClient

from app import paths
from app.book.book import Book
from app.book.design import Design
from app.book.exchange import loads
from app.book.gauge import Gauge
from app.book.holding import ColourAt
from app.book.person import Measure
from app.book.plan import RoleYarn
from app.book.settings import Settings
from app.book.shape import Counted, Metres, Run, Runs, Strand
from app.craft.constructions import constructions
from app.planning import reckon
from app.planning.design import drawing_of, parts_from
from app.planning.picture import picture
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from app.web.pages.funnel import USUAL_COLOUR
from app.web.pages.picture import PAPER, drawing, look_of
from app.web.pages.picture_ink import WIDE, Drawing, Hatch
from app.web.pages.picture_labels import short
from app.web.pages.picture_room import Box
from app.web.routes.picture import file_name
from app.web.shown import Shown
from app.web.templating import draw
from tests.bench.picture import striped
from tests.books import a_book, a_part, a_person, a_plan, a_promise, a_skein, a_yarn
from tests.planning.test_picture import a_body
from tests.web.garden import page, words

NASTY = '<script>alert("1")</script> & "more"'
SHOWN = Shown(Settings())


def drawn(book: Book, plan_id: str = "pullover", shown: Shown = SHOWN) -> Drawing:
    return drawing(picture(book, reckon(book), plan_id), shown)


def file(found: Drawing) -> str:
    return draw("pictures/garment_file.svg", {"drawn": found})


def boxes(found: Drawing) -> list[Box]:
    return [one.box for one in (*found.captions, *found.tags)]


def demo() -> Book:
    return loads(paths.DEMO.read_text(encoding="utf-8"))


def all_of_demo() -> list[Drawing]:
    book = demo()
    reckoning = reckon(book)
    return [drawing(picture(book, reckoning, one.id), SHOWN) for one in book.plans]


def test_rows_of_one_skein_are_one_outline():
    found = drawn(a_body(a_plan(), a_promise("G-1", 100_000), a_promise("G-2", 50_000)))
    assert [one.fill for one in found.shapes] == ["#111111", USUAL_COLOUR, "url(#no-skein-1)"]
    assert found.hatches == [Hatch("no-skein-1", "")]
    assert len(found.strokes) == 1
    assert [one.lines[0] for one in found.tags] == ["G-1", "G-2", "no skein yet"]
    assert not any(one.pale for one in found.shapes)


@pytest.mark.parametrize(("rows", "tags"), [(100, ["no skein yet"]), (12, [])])
def test_that_there_is_no_skein_is_written_where_it_hides_nothing(rows: int, tags: list[str]):
    """Small pieces are hatched, and told in the words beside the picture."""
    found = drawn(a_book(a_yarn(), a_plan(), a_part(shape=Counted(100, rows))))
    assert [one.lines[0] for one in found.tags] == tags
    assert len(found.hatches) == 1


def test_the_words_of_a_folded_garment_are_told_once():
    parts = [
        a_part("body", name="Body", shape=Counted(200, 100), in_round=False, place="body"),
        a_part("yoke", name="Yoke", shape=Counted(260, 60), place="yoke", position=2),
    ]
    found = drawn(a_book(a_yarn(), a_plan(), *parts))
    assert [one.name for one in found.words] == ["Body", "Yoke"]
    assert len(found.outlines) == 6
    assert found.folded
    assert found.sentence == (
        "pullover, folded as it is worn, its back beside its front, which is open, and to scale: "
        "Body and Yoke."
    )


def test_the_rows_of_a_half_round_shawl_are_rings():
    """The first skein knits half a disc, the second a ring: its path goes out along its outer row
    and back along its inner one, and a join lies along the row where it falls."""
    found = drawn(a_half_round_shawl())
    inner, ring, rest = found.shapes
    assert all(one.round for one in found.shapes)
    assert [one.points.count("A") for one in found.shapes] == [1, 2, 2]
    assert f'<path d="{ring.points}"' in file(found)
    assert found.words[0].size.replace("\u202f", " ").startswith("140 cm wide, 70 cm long; ")
    assert found.words[0].size.endswith("rows that lie in half rings")
    outer, beyond = (float(one.points[1:].split()[0]) for one in (ring, rest))
    assert outer > beyond
    (join,) = found.strokes
    assert join.path == inner.points[:-1]


def test_the_rings_of_a_shawl_hold_its_stitches():
    """A half ring between two radii is π/2 × the difference of their squares."""
    book = a_half_round_shawl()
    (piece,) = picture(book, reckon(book), "pullover").pieces
    assert piece.rings
    (run,) = book.parts[0].shape.runs
    growth = (run.stitches_to - run.stitches) / run.rows
    for band in piece.bands:
        rows = range(band.first, band.last + 1)
        held = sum(run.stitches + growth * (row - 0.5) for row in rows) * 100 / (22 * 30)
        assert pi / 2 * (band.ended**2 - band.begun**2) == pytest.approx(held, rel=0.02)


def a_half_round_shawl() -> Book:
    plan = a_plan(design=Design("shawl, half-round", (Measure("chest", 960),)))
    (part,) = parts_from(plan, Gauge(22.0, 30.0))
    return a_book(
        a_yarn(),
        a_skein("G-1", colour="#111111"),
        a_skein("G-2"),
        plan,
        part,
        a_promise("G-1", 400_000, part_id=part.id),
        a_promise("G-2", 300_000, part_id=part.id, id="p2"),
        held={"G-1": (180, 400), "G-2": (180, 400)},
    )


def test_rows_without_a_skein_are_hatched_in_the_colour_meant_for_them():
    """So the picture changes when another yarn is chosen, before a skein of it is there."""
    parts = (a_part(), a_part("sleeve", yarns=(RoleYarn("main", "blue"),), position=2))
    yarns = (a_yarn(colour="#888888"), a_yarn("blue", colour="#000088"))
    found = drawn(a_book(*yarns, a_plan(), *parts))
    assert [one.fill for one in found.shapes] == ["url(#no-skein-1)", "url(#no-skein-2)"]
    assert [one.colour for one in found.hatches] == ["#888888", "#000088"]
    alone = drawn(a_book(a_plan(yarns=()), a_part()))
    assert alone.hatches == [Hatch("no-skein-1", "")]
    assert alone.words[0].lines[0].knit_in == "no skein yet"


def test_a_stitch_pattern_has_its_look_over_its_rows():
    runs = Runs(
        (
            Run(10, 100, 100, "2×2 rib"),
            Run(5, 100, 100),
            Run(15, 100, 100),
            Run(8, 99, 99, "Garter stitch"),
        )
    )
    found = drawn(a_book(a_yarn(), a_plan(), a_part(shape=runs, name="piece")))
    assert [one.look for one in found.fabrics] == ["rib", "stocking", "garter"]
    assert found.looks == ["garter", "rib", "stocking"]
    tops = [min(float(one.split(",")[1]) for one in each.points.split()) for each in found.fabrics]
    assert tops == sorted(tops, reverse=True)
    assert [look_of(one) for one in ("Moss stitch", "lace", "brioche")] == [
        "moss",
        "lace",
        "stocking",
    ]


def test_a_piece_lies_within_the_drawing_and_keeps_its_proportions():
    found = drawn(a_body(a_plan(), name="piece"))
    across, down = zip(
        *(map(float, one.split(",")) for one in found.outlines[0].split()), strict=True
    )
    assert min(across) >= 0
    assert max(across) <= WIDE
    assert found.top <= min(down)
    assert max(down) <= found.top + found.height
    wide, high = max(across) - min(across), max(down) - min(down)
    assert wide / high == pytest.approx((100 / 22) / (100 / 30), rel=0.01)


def test_several_yarns_in_a_row_are_flecks_by_their_share():
    patterned = (Strand("main", 0.5), Strand("contrast", 0.3), Strand("third", 0.2))
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("contrast", "blue"))
    book = a_book(
        a_yarn(colour="#888888"),
        a_yarn("blue", colour="#000088"),
        a_skein("G-1"),
        a_skein("B-1", "blue"),
        a_plan(yarns=yarns),
        a_part(
            copies=2,
            shape=Runs((Run(20, 100, 100, strands=patterned), Run(20, 100, 80, strands=patterned))),
        ),
        a_promise("G-1", 100_000),
        a_promise("B-1", 100_000, role="contrast"),
        held={"G-1": (45, 100), "B-1": (45, 100)},
    )
    (fleck,) = (found := drawn(book)).flecks
    assert found.shapes[0].fill == f"url(#{fleck.name})"
    assert (fleck.ground, fleck.flecks) == ("#888888", (("#000088", 0.0, 3.0), (PAPER, 3.0, 2.0)))
    assert found.tags[0].lines == ("G-1 + B-1",)


def stranded(*promises: object) -> Drawing:
    strands = (Strand("main", 0.75), Strand("contrast", 0.25))
    shape = Runs((Run(20, 100, 100, strands=strands),))
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("contrast", "blue"))
    grey, blue = a_yarn(colour="#888888"), a_yarn("blue", colour="#000088")
    part = a_part(shape=shape)
    held = {"G-1": (450.0, 1000.0)}
    return drawn(a_book(grey, blue, a_skein(), a_plan(yarns=yarns), part, *promises, held=held))


def test_a_second_colour_is_seen_before_a_skein_of_it_is_promised():
    found = stranded()
    assert found.hatches == [Hatch("no-skein-1", "#888888", (("#000088", 0.0, 1.5),))]
    assert 'height="1.5" fill="#000088"' in file(found)
    (fleck,) = stranded(a_promise("G-1", 900_000)).flecks
    assert (fleck.ground, fleck.flecks) == ("#888888", (("#000088", 0.0, 2.5),))


def test_what_is_knit_is_solid_and_a_line_tells_how_far():
    finished, knit, *_ = (one for one in all_of_demo() if one.shapes)
    assert finished.finished
    assert not any(one.pale for one in finished.shapes)
    assert {one.pale for one in knit.shapes} == {True, False}
    assert sum(one.knit_to for one in knit.strokes) == 2
    assert [one.lines for one in knit.tags].count(("knit to here",)) == 1
    lines = [line for piece in knit.words for line in piece.lines]
    assert lines[0].knit_in.endswith("B-01 Bramble two-ply, knit")
    assert lines[-1].knit_in == "no skein yet of Bramble two-ply, to come"


def test_no_words_lie_on_each_other_or_outside():
    for found in all_of_demo():
        assert not any(one.meets(other) for one, other in combinations(boxes(found), 2))
        for one in boxes(found):
            assert one.x - one.wide / 2 >= 0
            assert one.x + one.wide / 2 <= WIDE
            assert found.top <= one.y - one.high / 2
            assert one.y + one.high / 2 <= found.top + found.height


@pytest.mark.parametrize("word", sorted(constructions()))
def test_every_construction_is_drawn_with_its_chief_words(word: str):
    """Its largest part has its words, whatever else there is room for."""
    plan = a_plan(design=Design(word, (Measure("chest", 960), Measure("neck", 360))))
    parts = parts_from(plan, Gauge(22.0, 30.0))
    found = drawn(a_book(a_yarn(), plan, *parts))
    assert not any(one.meets(other) for one, other in combinations(boxes(found), 2))
    views = 1
    if "raglan" in word or "round yoke" in word:
        views = 3 if "cardigan" in word else 2
        assert ("The back",) in [one.lines for one in found.captions]
    folded = [one for one in parts if one.place in ("body", "yoke", "neck") or one.name == "hem"]
    seen = sum((views if one in folded else 1) * one.copies for one in parts)
    assert len(found.outlines) == seen
    assert len(found.captions) >= min(2, len(parts))
    assert {one.name.split(",")[0].lower() for one in found.words} == {one.name for one in parts}


def test_every_piece_of_the_demo_has_its_words():
    captioned = [one.lines[0] for found in all_of_demo() for one in found.captions]
    assert {"Body", "Sleeves × 2", "Yoke", "Bands", "Back"} <= set(captioned)


def test_the_words_tell_sizes_rows_and_joins():
    book = a_body(a_plan(), a_promise("G-1", 100_000), a_promise("G-2", 50_000), name="front")
    (told,) = drawn(book).words
    assert told.name == "Front"
    assert told.size.replace("\u202f", " ") == "45.5 cm, 33.3 cm long; 100 stitches in 100 rows"
    assert [(one.rows, one.knit_in) for one in told.lines] == [
        ("Rows 1 to 55", "G-1 grey two-ply"),
        ("Rows 56 to 83", "G-2 grey two-ply"),
        ("Rows 84 to 100", "no skein yet of grey two-ply"),
    ]
    assert told.joins == "Join at row 56"
    assert told.lines[0].colours == ("#111111",)


def test_sizes_are_told_in_her_units_and_by_the_shape():
    runs = Runs((Run(30, 40, 80), Run(1, 70, 70), Run(10, 70, 20)))
    book = a_book(
        a_yarn(),
        a_plan(),
        a_part(name="Sleeves", shape=runs, copies=2, in_round=True, place="sleeve"),
    )
    found = drawn(book, shown=Shown(Settings(length_unit="yd")))
    (told,) = found.words
    assert told.name == "Sleeves, two pieces alike"
    assert told.size.replace("\u202f", " ").startswith("7.2 in to 14.3 in, then to 3.6 in round")
    assert told.lines[0].rows == "Rounds 1 to 41"
    said = [line.replace("\u202f", " ") for line in found.captions[0].lines]
    assert said == [
        "Sleeves × 2",
        "14.3 in round at most",
        "80 stitches at most",
        "5.4 in, 41 rounds",
    ]


def test_copies_that_differ_are_told_apart():
    book = a_body(a_plan(), a_promise("G-1", 100_000), name="fronts", copies=3)
    assert [one.name for one in drawn(book).words] == [
        "Fronts, the first",
        "Fronts, the second and third",
    ]
    one_row = a_body(a_plan(), a_promise("G-1", 2_000), name="fronts", copies=8)
    assert drawn(one_row).words[0].lines[0].rows == "Row 1"
    assert drawn(one_row).words[1].name.endswith("7th and 8th")


def test_a_garment_of_400_rows_in_stripes_is_small_and_quick():
    book = striped(400)
    reckoning = reckon(book)
    begun = process_time()
    found = drawing(picture(book, reckoning, "pullover"), SHOWN)
    svg = file(found)
    took = process_time() - begun
    assert len(found.shapes) == 400
    assert len(svg) <= 100_000
    assert took < 0.5  # the bench shows the real figure
    assert found.words[0].lines[-1].knit_in == "388 more changes among G-2 and G-1"
    assert found.words[0].joins == ""


def test_an_opened_garment_in_stripes_is_as_small():
    """Three views of every row: 260 of the body and 140 of the yoke."""
    book = striped(400)
    whole, (part,) = book.parts[0].shape.runs, book.parts
    named = {"body": (whole[:260], 1), "yoke": (whole[260:], 2)}
    parts = tuple(
        replace(part, id=name, name=name, place=name, position=at, shape=Runs(runs))
        for name, (runs, at) in named.items()
    )
    promises = tuple(
        replace(one, id=f"{one.id}-{part.id}", part_id=part.id, mm=one.mm // 2)
        for one in book.promises
        for part in parts
    )
    found = drawn(replace(book, parts=parts, promises=promises))
    assert len(found.shapes) == 3 * 400
    assert len(file(found)) <= 100_000


def test_a_file_stands_by_itself():
    root = ET.fromstring(file(drawn(a_body(a_plan(name=NASTY), a_promise("G-1", 100_000)))))
    space = {"svg": "http://www.w3.org/2000/svg"}
    assert root.find("svg:title", space).text == NASTY
    assert NASTY in root.find("svg:desc", space).text
    text = ET.tostring(root, encoding="unicode")
    assert "style" not in text
    assert "href" not in text


def test_names_and_codes_are_escaped_and_cut():
    skein = a_skein("G-9", code=NASTY, colour="#123456")
    book = a_book(
        a_yarn(name=NASTY),
        skein,
        a_plan(name=NASTY),
        a_part(name=NASTY, shape=Counted(220, 300)),
        a_promise("G-9", 100_000),
        held={"G-9": (45, 100)},
    )
    found = drawn(book)
    assert "<script" not in file(found)
    assert found.tags[0].lines == (short(NASTY),)
    assert len(short(NASTY)) == 16


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Round-yoke pullover", "round-yoke-pullover.svg"),
        ('a/../"b"\r\n', "a-b.svg"),
        ("Žlutý", "lut.svg"),
        ("毛糸", "garment.svg"),
        ("x" * 200, f"{'x' * 60}.svg"),
    ],
)
def test_a_file_has_a_name_any_disk_can_hold(name: str, expected: str):
    assert file_name(name) == expected


@pytest.fixture
def shelf(store: Store) -> None:
    tilde = a_person("Tilde", measures=())
    book = a_body(
        a_plan(person_id="Tilde"),
        a_plan("idea", priority=2),
        a_part("so much", plan_id="idea", shape=Metres(300_000)),
        a_promise("G-1", 100_000),
        tilde,
    )
    with store.writing() as session:
        fill(session, book)


@pytest.mark.usefixtures("shelf")
def test_the_picture_stands_in_the_page_and_can_be_kept(client: TestClient):
    html = page(client, "/garments/pullover")
    assert 'class="garment-picture"' in html
    assert "style=" not in html
    assert "Hatched rows have no skein yet." in words(html)
    assert "a tube lies flat, half its width seen." in words(html)
    assert "Rows 56 to 100: no skein yet of grey two-ply" in words(html).replace("Rounds", "Rows")
    answer = client.get("/garments/pullover/picture.svg")
    assert answer.headers["content-type"] == "image/svg+xml"
    assert answer.headers["content-disposition"] == 'attachment; filename="pullover.svg"'
    assert ET.fromstring(answer.text).tag.endswith("svg")
    assert client.get("/garments/none/picture.svg").status_code == 404


@pytest.mark.usefixtures("shelf")
def test_a_bare_amount_is_said_not_to_be_in_the_picture(client: TestClient):
    html = page(client, "/garments/idea")
    assert "garment-picture" not in html
    assert "Not in the picture: so much, which is only an amount of yarn." in words(html)
    assert client.get("/garments/idea/picture.svg").status_code == 200


@pytest.mark.usefixtures("shelf")
def test_the_sheet_has_the_picture_the_work_and_the_care(client: TestClient):
    html = page(client, "/garments/pullover/print")
    said = words(html)
    assert 'class="garment-picture"' in html
    assert "Begin with 100 stitches." in said
    assert "Fibre: wool. Wash by hand in lukewarm water" in said
    assert "For a small child" not in said


@pytest.mark.usefixtures("shelf")
def test_the_sheet_of_a_designed_garment_is_whole(client: TestClient, store: Store):
    """For a child of 56 cm: picture, parts with their stitches, rows, needles and work, needs,
    skeins to tick off, how it is joined, fibre, care, and the cautions."""
    design = Design("pullover, round yoke", (Measure("chest", 560),))
    gauge = Gauge(22.0, 30.0, needle_mm=3.75)
    plan = a_plan("yoked", name="Yoked pullover", design=design, gauge=gauge)
    parts = parts_from(plan, gauge)
    with store.writing() as session:
        put(session, plan)
        for part in parts:
            put(session, part)
        put(session, a_promise("G-2", 50_000, id="yoked", plan_id="yoked", part_id=parts[0].id))
    html = page(client, "/garments/yoked/print")
    said = words(html).replace("\u202f", " ")
    assert 'class="garment-picture"' in html
    for part in parts:
        many = ", 2 pieces" if part.copies > 1 else ""
        assert re.search(rf"{part.name}{many} ?: [\d ]+ stitches in \d+ rounds", said)
        for line in drawing_of(design, gauge).piece(part.name).words:
            assert words(line) in said
    assert "needle 3.75 mm" in said
    assert "G-2 grey two-ply 50 m" in said
    assert re.search(r"[\d ]+ m not yet promised", said)
    assert "To finish Leave" in said
    assert "Fibre: wool. Wash by hand" in said
    assert "no cords or ties at the neck or hood, and no small buttons" in said


def test_the_sheet_warns_of_cords_for_a_small_child(client: TestClient, store: Store):
    with store.writing() as session:
        fill(session, demo())
    plan = next(one for one in demo().plans if one.name == "Small patterned pullover")
    said = words(page(client, f"/garments/{plan.id}/print"))
    assert "For a small child : no cords or ties" in said
    assert re.search(r"1\.? ?Cast on|Cast on 166 stitches", said)


def test_a_ball_whose_colour_runs_is_drawn_row_by_row_and_told_as_one_skein():
    change = (ColourAt(0, "#000000"), ColourAt(100_000, "#f0f0f0"))
    book = a_book(
        a_yarn(),
        a_skein("G-1", colours=change),
        a_plan(),
        a_part(shape=Counted(100, 40), place="piece"),
        a_promise("G-1", 100_000),
        held={"G-1": (45, 100)},
    )
    found = drawing(picture(book, reckon(book), "pullover"), Shown(Settings()))
    fills = [one.fill for one in found.shapes]
    assert len(set(fills)) > 12
    assert fills == sorted(fills)
    (piece,) = found.words
    assert [line.rows for line in piece.lines] == ["Rows 1 to 40"]
    assert [one.lines for one in found.tags] == [("G-1",)]
