"""Golden cases: a folder each, named by what it shows, worked by hand as its note tells."""

import json
from pathlib import Path

import pytest

from app.book.book import Book
from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Part, Plan
from app.book.shape import Rectangle, Runs, Trapezoid
from app.craft.shaping import even_spacing, even_spacing_flat, pick_up, shaping_text
from app.planning.design import drawing_of, parts_from
from app.planning.needs import needs_of
from app.planning.schedule import schedule, stitches_in
from app.planning.yarns import Lots
from tests.craft.constructions.follow import gaps_told

pytestmark = pytest.mark.golden

CASES = sorted(path.parent for path in Path(__file__).parent.glob("*/input.json"))
SHAPES = {"rectangle": Rectangle, "trapezoid": Trapezoid}
METRES_IN_YARD = 0.9144


def lists(value):
    return json.loads(json.dumps(value))


def counts(runs):
    """Runs that go on as they were are one."""
    joined = []
    for run in runs:
        if joined and joined[-1][1:] == [run.stitches] * 2 and run.stitches == run.stitches_to:
            joined[-1][0] += run.rows
        else:
            joined.append([run.rows, run.stitches, run.stitches_to])
    return joined


def design_of(given, construction):
    mm = {"in": 25.4, "cm": 10.0}
    measures, ease = (
        tuple(
            Measure(name, round(value * scale))
            for unit, scale in mm.items()
            for name, value in given.get(f"{kind}_{unit}", {}).items()
        )
        for kind in ("measures", "ease")
    )
    choices = tuple(Choice(*one) for one in given.get("choices", {}).items())
    return Design(construction, measures, ease, choices)


def metres(plan, parts):
    needs = needs_of(plan, list(parts), Lots(Book()))
    return {one.part.name: sum(role.need.value for role in one.roles) for one in needs}


def spacing(given, expected):
    assert lists(even_spacing(given["events"], given["rows"])) == expected["in the round"]
    assert lists(even_spacing_flat(given["events"], given["rows"])) == expected["flat"]
    begun = 40
    told = shaping_text(given["rows"], begun, begun + 2 * given["events"], in_round=True)
    assert told == expected["words"]


def picked(given, expected):
    assert lists(pick_up(given["stitches"], given["rows"])) == expected


def shaped(given, expected):
    gauge = Gauge(**given["gauge"])
    shape = SHAPES[given["shape"]](*given["mm"])
    (run,) = schedule(shape, gauge)
    assert counts([run]) == expected["runs"]
    assert stitches_in(run) == expected["stitches"]
    plan = Plan("plan", "one piece", gauge=gauge)
    part = Part("part", "plan", "piece", Runs((run,)))
    assert metres(plan, [part])["piece"] == pytest.approx(expected["metres"], abs=0.05)
    if "words" in expected:
        assert shaping_text(run.rows, run.stitches, run.stitches_to) == expected["words"]


def designed(given, expected):
    drawing = drawing_of(design_of(given, given["construction"]), Gauge(**given["gauge"]))
    underarm = expected.pop("underarm", None)
    assert {name: counts(drawing.piece(name).runs) for name in expected} == expected
    if underarm:
        assert f"Leave {underarm} stitches" in drawing.notes[0]


def over_the_arms(drawing):
    """The share of a yoke that lies over the arms: at first the stitches that come from the
    sleeves; between the lines of a raglan they get fewer to its end, else the share stays."""
    yoke, words = drawing.piece("yoke"), drawing.piece("yoke").words
    underarm = int(drawing.notes[0].split()[1])
    arms = drawing.piece("sleeves").runs[-1].stitches_to - underarm
    lines = [one for one in words if one.startswith("Decrease one stitch of the sleeves")]
    if not lines:
        return 2 * arms / yoke.runs[0].stitches
    at_the_neck = arms - 2 * len(gaps_told(lines[0]))
    return (arms + at_the_neck) * yoke.rows / yoke.worked


def took_by(given, construction):
    """What each part takes, and the share over the arms without and with its part of a yoke."""
    gauge = Gauge(**given["gauge"])
    plan = Plan("plan", "pullover", gauge=gauge, design=design_of(given, construction))
    took = metres(plan, parts_from(plan, gauge))
    whole, arms = sum(took.values()), took["sleeves"] + took["cuffs"]
    yoke = 0.0
    if "yoke" in took:
        yoke = took["yoke"] * over_the_arms(drawing_of(plan.design, gauge))
    return took, arms / whole, (arms + yoke) / whole


def within(value, band):
    return band[0] < value < band[1]


def printed(given, expected):
    for way in given["ways"]:
        closed, alone, arms = took_by(given, f"pullover, {way}")
        opened, *_ = took_by(given, f"cardigan, {way}")
        whole, yoke = sum(closed.values()), "yoke" in closed
        assert within(arms, expected["yoke sleeves" if yoke else "sleeves"]), (way, arms)
        assert not yoke or within(alone, expected["yoke sleeves alone"]), (way, alone)
        assert within(whole / METRES_IN_YARD / expected["printed_yd"], expected["share"])
        assert within(sum(opened.values()) / whole, expected["cardigan"]), way
        bands = opened["front bands"] + opened["neck band"] - closed["neck band"]
        assert within(bands / whole, expected["bands"]), (way, bands / whole)


RECKON = {
    "spacing": spacing,
    "pick up": picked,
    "shape": shaped,
    "design": designed,
    "printed amount": printed,
}


@pytest.mark.parametrize("folder", CASES, ids=lambda folder: folder.name)
def test_case(folder):
    given = json.loads((folder / "input.json").read_text(encoding="utf-8"))
    expected = json.loads((folder / "expected.json").read_text(encoding="utf-8"))
    assert (folder / "note.md").read_text(encoding="utf-8").strip()
    RECKON[given["reckon"]](given, expected)
