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


def printed(given, expected):
    gauge = Gauge(**given["gauge"])
    totals = []
    for construction in (given["construction"], given["opened"]):
        plan = Plan("plan", "pullover", gauge=gauge, design=design_of(given, construction))
        took = metres(plan, parts_from(plan, gauge))
        arms = took["sleeves"] + took["cuffs"]
        totals.append(sum(took.values()))
        assert expected["sleeves"][0] < arms / totals[-1] < expected["sleeves"][1]
    share = totals[0] / METRES_IN_YARD / expected["printed_yd"]
    assert expected["share"][0] < share < expected["share"][1]
    assert expected["cardigan"][0] < totals[1] / totals[0] < expected["cardigan"][1]


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
