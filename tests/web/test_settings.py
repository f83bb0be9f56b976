import pytest
from hypothesis import given
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.plan import Losses
from app.book.settings import Prices, Settings, StepLosses
from app.store.engine import Store
from app.web.forms.reader import Reader
from app.web.forms.settings import filled_settings, read_settings
from app.work.settings_read import settings_now
from tests.web.forms import shown_values

SETTINGS = st.builds(
    Settings,
    length_unit=st.sampled_from(["m", "yd"]),
    mass_unit=st.sampled_from(["g", "oz"]),
    grist_unit=st.sampled_from(["m/100 g", "yd/lb", "tex"]),
    gauge_unit=st.sampled_from(["10 cm", "4 in"]),
    decimal=st.sampled_from([".", ","]),
    paper=st.sampled_from(["A4", "Letter"]),
    sureness_pct=st.integers(500, 995).map(lambda tenths: tenths / 10),
    girth_mm=st.integers(100, 10_000),
    losses=st.builds(
        Losses,
        tail_mm=st.integers(0, 2_000),
        swatch_mm=st.integers(0, 1_000_000),
        unusable_pct=st.integers(0, 950).map(lambda tenths: tenths / 10),
        mending_mm=st.integers(0, 1_000_000),
    ),
    steps=st.builds(
        StepLosses,
        skirt=st.integers(0, 9500).map(lambda parts: parts / 100),
        combed=st.integers(0, 95).map(float),
    ),
    prices=st.builds(
        Prices,
        join=st.integers(0, 1000).map(lambda tenths: tenths / 10),
        cut=st.integers(0, 100).map(float),
        scrap_below_mm=st.integers(0, 1_000_000),
    ),
)


def saved(store: Store) -> Settings:
    with store.reading() as session:
        return settings_now(session)


def form(client: TestClient) -> dict[str, str]:
    return shown_values(client.get("/settings").text, "/settings")


def test_settings_sent_back_unchanged_are_unchanged(client: TestClient, store: Store):
    answer = client.post("/settings", data=form(client))
    assert "The settings are saved." in answer.text
    assert saved(store) == Settings()


@pytest.mark.property
@given(SETTINGS)
def test_any_settings_survive_being_shown_and_read(settings: Settings):
    reader = Reader(filled_settings(settings).values, settings)
    assert read_settings(reader, settings) == settings
    assert reader.errors == {}


def test_units_and_losses_are_changed(client: TestClient, store: Store):
    wanted = {
        "length_unit": "yd",
        "mass_unit": "oz",
        "decimal": ",",
        "sureness_pct": "95 %",
        "girth_mm": "2 m",
        "mending_mm": "7,5",
        "step_skirt": "20",
    }
    page = client.post("/settings", data=form(client) | wanted).text
    assert "sure 19 times in 20" in page
    assert "shown in yards and ounces" in page
    now = saved(store)
    assert (now.length_unit, now.decimal, now.girth_mm) == ("yd", ",", 2000)
    assert (now.sureness_pct, now.losses.mending_mm, now.steps.skirt) == (95.0, 7500, 20.0)


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("sureness_pct", "100", "This must be 99.5 or less."),
        ("sureness_pct", "", "This is needed."),
        ("sureness_pct", "nine in ten", "is not a number"),
        ("girth_mm", "1 cm", "This must be 10"),
        ("length_unit", "ell", "Choose one of these."),
        ("step_spin", "96", "This must be 95 or less."),
    ],
)
def test_a_fault_changes_nothing_and_keeps_what_was_typed(
    client: TestClient, store: Store, field: str, typed: str, said: str
):
    answer = client.post("/settings", data=form(client) | {"paper": "Letter", field: typed})
    assert answer.status_code == 422
    assert said in answer.text
    assert '<option value="Letter" selected>' in answer.text
    assert saved(store) == Settings()


def test_a_stale_form_is_told_so(client: TestClient, store: Store):
    first = form(client)
    client.post("/settings", data=first | {"paper": "Letter"})
    answer = client.post("/settings", data=first | {"sureness_pct": "80"})
    assert answer.status_code == 409
    assert saved(store).sureness_pct == 90.0
    assert saved(store).paper == "Letter"


def test_what_she_would_rather_avoid_is_weighed_as_she_says(client: TestClient, store: Store):
    assert "What you would rather avoid" in client.get("/settings").text
    client.post("/settings", data=form(client) | {"price_join": "2.5", "scrap_below_mm": "20"})
    assert saved(store).prices == Prices(join=2.5, scrap_below_mm=20_000)
    client.post("/settings", data=form(client) | {"price_cut": "0"})
    assert saved(store).prices.cut == 0.0


@pytest.mark.parametrize("typed", ["-1", "", "many", "101"])
def test_a_price_that_cannot_be_is_said_beside_its_field(client: TestClient, typed: str):
    answer = client.post("/settings", data=form(client) | {"price_scrap": typed})
    assert answer.status_code == 422
    assert 'id="e-price_scrap"' in answer.text
