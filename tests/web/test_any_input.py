"""Whatever is typed into a form: a page, or a fault beside its field, never an error."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from tests.web.forms import shown_values

FORMS = (
    "/fleeces/new",
    "/settings",
    "/settings/people/new",
    "/settings/wheels/new",
    "/swatches/new",
    "/work-list/time",
)
ODD = st.one_of(
    st.text(max_size=70),
    st.sampled_from(
        ["", "0", "1e999", "9" * 40, "1/0", "½", "-1", "NaN", "\x00", "<gnat>", "2×", "١"]
    ),
)


@pytest.mark.property
@pytest.mark.parametrize("path", FORMS)
@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(data=st.data())
def test_any_text_in_any_field(client: TestClient, path: str, data: st.DataObject):
    form = shown_values(client.get(path).text, path)
    typed = form | {
        name: data.draw(ODD) for name in form if name != "stamp" and data.draw(st.booleans())
    }
    answer = client.post(path, data=typed)
    assert answer.status_code in (200, 422)
    assert "<gnat>" not in answer.text


@pytest.mark.property
@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(grist=ODD, breed=ODD)
def test_any_question_in_an_address(client: TestClient, grist: str, breed: str):
    assert client.get("/tables/breeds", params={"breed": breed}).status_code in (200, 422)
    assert client.get("/fleeces/nobody", params={"grist": grist}).status_code == 404
