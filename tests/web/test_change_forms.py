"""Every form that changes a record: opened and saved as it is, it changes nothing."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.fleece import Fleece
from app.book.gauge import Gauge
from app.book.holding import Holding
from app.book.person import Measure, Person
from app.book.plan import Losses, Part, Plan, RoleYarn
from app.book.settings import Settings, StepLosses
from app.book.shape import Counted, Metres, Rectangle, Run, Runs, Stated, Trapezoid
from app.book.swatch import Count, Swatch
from app.book.words import EDGES, PLAN_STATES
from app.book.yarn import Yarn
from app.store.engine import Store
from app.store.records import get, put
from tests.books import a_part, a_plan, a_swatch, a_yarn
from tests.web.forms import shown_values

DAY = date(2026, 4, 30)
ADDRESSES: dict[type, str] = {
    Fleece: "/fleeces/it/change",
    Yarn: "/yarns/it/change",
    Holding: "/skeins/it/change",
    Swatch: "/swatches/it/change",
    Person: "/settings/people/it/change",
    Plan: "/garments/it/change",
    Part: "/garments/pullover/parts/it/change",
    Settings: "/settings",
}


def one_of(*values: Any) -> st.SearchStrategy[Any]:
    return st.sampled_from(values)


def or_none(values: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return st.none() | values


def measured(least: float, most: float) -> st.SearchStrategy[float]:
    """A figure that was worked out, with more digits than a form shows."""
    return st.floats(least, most).map(lambda x: round(x, 11))


IT = st.just("it")
NAMES = one_of("Bramble", "Grey <two-ply>", "Ä & Ö, 2026", "½ oz", "it's")
WORDS = one_of("", "heather", "Böhme & Söhne", '"as it is"')
NOTES = one_of("", "one line", "two\nlines", "<b>moth</b> & dust", "\u202fnarrow".strip())
COLOURS = one_of("", "#8a7f72", "#000000", "#b8a88f")
MM, MG = st.integers(1, 400_000), st.integers(1, 2_000_000)
SIZES = st.integers(20, 3_000)
GAUGES = st.builds(
    Gauge,
    measured(5, 50),
    measured(5, 60),
    st.booleans(),
    or_none(measured(1, 20)),
    one_of(0.0, 7.5, 15.0),
    one_of(None, "first try"),
)
COUNTS = st.builds(Count, measured(15, 25), one_of(50, 101.6), measured(15, 40), one_of(50, 101.6))
PERCENT = measured(0, 40)
LOSSES = st.builds(Losses, st.integers(0, 2_000), MM, PERCENT, MM)
ROLES = one_of(
    (),
    (RoleYarn("main", "grey two-ply"),),
    (RoleYarn("main", "white"), RoleYarn("contrast", "grey two-ply")),
    (RoleYarn("contrast", "grey two-ply"), RoleYarn("main", "white")),
)
SHAPES = st.one_of(
    st.builds(Counted, st.integers(1, 500), st.integers(1, 900)),
    st.builds(Rectangle, SIZES, SIZES),
    st.builds(Trapezoid, SIZES, SIZES, SIZES),
    st.builds(Stated, MM),
    st.builds(Metres, MM),
    st.just(Runs((Run(12, 40, 44, "2×2 rib"),))),
)
RECORDS = st.one_of(
    st.builds(
        Fleece,
        *(IT, NAMES, WORDS, one_of("wool", "alpaca")),
        yield_pct=or_none(measured(10, 95)),
        micron=or_none(measured(10, 50)),
        staple_mm=or_none(st.integers(10, 600)),
        colour=COLOURS,
        colour_name=WORDS,
        source=WORDS,
        notes=NOTES,
    ),
    st.builds(
        Yarn,
        *(IT, NAMES, one_of("wool", "alpaca")),
        plies=or_none(st.integers(1, 8)),
        twist=one_of("", "S", "Z"),
        fleece_id=one_of(None, "Ash"),
        target_tex=or_none(measured(40, 2_000)),
        bought=st.booleans(),
        ball_mg=or_none(MG),
        ball_mm=or_none(MM),
        colour=COLOURS,
        colour_name=WORDS,
        notes=NOTES,
    ),
    st.builds(
        Holding,
        *(IT, one_of("skein", "ball", "left-over"), one_of("G-001", "½ <G>", "Ä & Ö")),
        fleece_id=one_of(None, "Ash"),
        yarn_id=one_of(None, "grey two-ply"),
        day=or_none(st.just(DAY)),
        colour=COLOURS,
        colour_name=WORDS,
        dye_lot=WORDS,
        price=WORDS,
        place=WORDS,
        notes=NOTES,
    ),
    st.builds(
        Swatch,
        *(IT, NAMES, one_of(None, "grey two-ply")),
        needle_mm=or_none(measured(1, 20)),
        worked=or_none(COUNTS),
        finished=or_none(COUNTS),
        weight_mg=st.just(10_000),
        scale_mg=st.integers(1, 10_000),
        whole_stitches=measured(100, 2_000),
        unravelled=measured(20, 60),
        thread_mm=SIZES,
        day=or_none(st.just(DAY)),
        notes=NOTES,
    ),
    st.builds(
        Person,
        *(IT, NAMES),
        measures=one_of(
            (), (Measure("chest", 961), Measure("ankle bone", 77)), (Measure("wrist", 163),)
        ),
        notes=NOTES,
    ),
    st.builds(
        Plan,
        *(IT, NAMES, one_of(None, "Ines"), one_of(*PLAN_STATES), st.integers(2, 9)),
        wanted_by=or_none(st.just(DAY)),
        gauge=or_none(GAUGES),
        yarns=ROLES,
        sureness_pct=or_none(measured(50, 99)),
        losses=or_none(LOSSES),
        notes=NOTES,
    ),
    st.builds(
        Part,
        *(IT, st.just("pullover"), NAMES, SHAPES, st.integers(1, 9), st.integers(1, 4)),
        gauge=or_none(GAUGES),
        yarns=ROLES,
        edges=one_of(*EDGES),
        shape_u_pct=PERCENT,
        notes=NOTES,
    ),
)
SETTINGS = st.builds(
    Settings,
    *(one_of("m", "yd"), one_of("g", "oz"), one_of("m/100 g", "yd/lb", "tex")),
    *(one_of("10 cm", "4 in"), one_of(".", ","), one_of("A4", "Letter"), measured(50, 99)),
    st.integers(100, 10_000),
    LOSSES,
    st.builds(StepLosses, *(PERCENT for _ in range(7))),
)
often = settings(
    deadline=None,
    max_examples=60,
    phases=(Phase.reuse, Phase.generate),
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


def furnish(store: Store, wanted: Settings) -> None:
    """The records that the others name."""
    with store.writing() as session:
        put(session, replace(wanted))
        for one in (Person("Ines", "Ines"), Fleece("Ash", "Ash"), a_yarn(), a_yarn("white")):
            put(session, one)
        put(session, Holding("ash", "fleece", "Ash", fleece_id="Ash", state="raw"))
        put(session, a_swatch())
        put(session, a_plan())
        put(session, a_part())


def saved_as_it_is(client: TestClient, kind: type) -> None:
    address = ADDRESSES[kind]
    form = shown_values(client.get(address).text, address)
    answer = client.post(address, data=form, follow_redirects=False)
    assert answer.status_code == 303, answer.text


@pytest.mark.property
@often
@given(record=RECORDS, units=SETTINGS)
def test_a_form_saved_as_it_is_changes_nothing(
    client: TestClient, store: Store, record: Any, units: Settings
) -> None:
    furnish(store, units)
    with store.writing() as session:
        put(session, record)
        if isinstance(record, Fleece):
            same = {"colour": record.colour, "colour_name": record.colour_name}
            wool = Holding("its wool", "fleece", record.name, "it", state="raw", **same)
            put(session, wool)
    saved_as_it_is(client, type(record))
    with store.reading() as session:
        assert get(session, type(record), "it") == record
        if isinstance(record, Fleece):
            assert get(session, Holding, "its wool") == wool


@pytest.mark.property
@often
@given(units=SETTINGS)
def test_the_settings_saved_as_they_are_change_nothing(
    client: TestClient, store: Store, units: Settings
) -> None:
    furnish(store, units)
    saved_as_it_is(client, Settings)
    with store.reading() as session:
        assert get(session, Settings, "settings") == units
