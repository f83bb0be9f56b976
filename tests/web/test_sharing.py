"""Over the home network only paired devices come in; here it is another loopback address."""

from collections.abc import Iterator
from datetime import date
from importlib import import_module
from pkgutil import iter_modules

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store
from app.web import routes
from app.web.pages.labels import labels_page
from app.web.server import create_app
from app.web.sharing import COOKIE, LETTERS, LOCKED_S, TEN, Sharing, new_code
from app.work.device_pair import devices
from tests.web.conftest import HOME

HOST, PORT = "127.0.0.2", 8765
PHONE = f"http://{HOST}:{PORT}"


class Clock:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def sharing(clock: Clock) -> Sharing:
    return Sharing(frozenset({HOST}), PORT, clock)


@pytest.fixture
def app(store: Store, sharing: Sharing):
    return create_app(store, sharing=sharing)


def browser(app, base: str) -> TestClient:
    return TestClient(app, base_url=base, headers={"origin": base}, follow_redirects=False)


@pytest.fixture
def phone(app) -> Iterator[TestClient]:
    with browser(app, PHONE) as client:
        yield client


@pytest.fixture
def home(app) -> Iterator[TestClient]:
    with browser(app, HOME) as client:
        yield client


def pair(phone: TestClient, code: str, name: str = "my phone"):
    return phone.post("/pair", data={"code": code, "name": name})


def test_this_machine_s_own_browser_needs_no_pairing(home: TestClient):
    assert home.get("/").status_code == 200


def test_an_unpaired_device_gets_nothing_by_any_address(phone: TestClient):
    """Every route, by its own methods: on to the form, with nothing of the book in the answer."""
    rooms = [
        import_module(f"{routes.__name__}.{one.name}") for one in iter_modules(routes.__path__)
    ]
    known = [route for room in rooms for route in room.router.routes if route.path != "/pair"]
    assert len(known) > 150
    for route in known:
        path = route.path
        for part in route.param_convertors:
            path = path.replace(f"{{{part}}}", "1")
        for method in route.methods:
            answer = phone.request(method, path)
            assert (answer.status_code, answer.headers["location"]) == (303, "/pair"), route.path
            assert answer.text == ""


@pytest.mark.parametrize("path", ["/static/css/base.css", "/static/vendor/x.js", "/gone", "/pair/"])
def test_nor_by_any_other(phone: TestClient, path: str):
    assert phone.get(path).headers.get("location") == "/pair"


def test_the_form_shows_nothing_of_the_book(phone: TestClient):
    page = phone.get("/pair").text
    assert "Pair this device" in page
    assert "Fleeces" not in page
    assert "not encrypted" in page
    assert phone.get("/static/css/pair.css").status_code == 200


def test_a_code_in_the_address_is_filled_in(phone: TestClient):
    assert 'value="K7QM-3XWP"' in phone.get("/pair?code=K7QM-3XWP").text
    assert "<script>" not in phone.get("/pair?code=<script>").text


def test_a_device_pairs_once_and_comes_in(phone: TestClient, sharing: Sharing, store: Store):
    code = sharing.code
    answer = pair(phone, code.lower().replace("-", " "))
    assert (answer.status_code, answer.headers["location"]) == (303, "/")
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=strict" in cookie
    assert phone.get("/").status_code == 200
    assert phone.get("/settings/devices").text.count("my phone") == 2
    with store.reading() as session:
        (device,) = devices(session)
    assert (device.name, device.seen, device.revoked) == ("my phone", date.today(), None)
    assert sharing.code != code
    assert code not in phone.get("/settings/devices").text


def test_a_used_code_pairs_no_second_device(app, phone: TestClient, sharing: Sharing):
    code = sharing.code
    pair(phone, code)
    with browser(app, PHONE) as other:
        assert pair(other, code).status_code == 422
        assert other.get("/").status_code == 303


def test_only_the_digest_of_a_token_is_kept(phone: TestClient, sharing: Sharing, store: Store):
    pair(phone, sharing.code)
    token = phone.cookies[COOKIE].split(".")[1]
    with store.reading() as session:
        kept = session.connection().exec_driver_sql("SELECT * FROM device").all()
    assert token not in str(kept)


@pytest.mark.parametrize("made", ["{id}.wrong", "{id}.", "{id}", ".{token}", "other.{token}", ""])
def test_a_cookie_that_was_made_up_is_worth_nothing(phone: TestClient, sharing: Sharing, made: str):
    pair(phone, sharing.code)
    id, token = phone.cookies[COOKIE].split(".")
    phone.cookies.clear()
    answer = phone.get("/", headers={"cookie": f"{COOKIE}={made.format(id=id, token=token)}"})
    assert answer.status_code == 303


def test_a_revoked_device_is_out_at_once(
    home: TestClient, phone: TestClient, sharing: Sharing, store: Store
):
    pair(phone, sharing.code)
    with store.reading() as session:
        (device,) = devices(session)
    assert home.post(f"/settings/devices/{device.id}/revoke").status_code == 303
    assert phone.get("/").headers["location"] == "/pair"
    assert phone.post("/settings/people/new", data={"name": "Ines"}).headers["location"] == "/pair"
    assert "shut out" in home.get("/settings/devices").text
    assert home.post(f"/settings/devices/{device.id}/revoke").status_code == 404
    assert home.post("/settings/devices/gone/revoke").status_code == 404


def test_ten_wrong_codes_lock_pairing_for_a_while(
    phone: TestClient, sharing: Sharing, clock: Clock
):
    for _ in range(TEN):
        assert pair(phone, "WRONG").status_code == 422
        clock.now += 20
    assert pair(phone, sharing.code).status_code == 429
    clock.now += LOCKED_S / 2
    answer = pair(phone, sharing.code)
    assert answer.status_code == 429
    assert "too many wrong codes" in answer.text
    clock.now += LOCKED_S
    assert pair(phone, sharing.code).status_code == 303


def test_a_guess_too_soon_after_a_wrong_one_is_not_heard(
    phone: TestClient, sharing: Sharing, clock: Clock
):
    assert "not the code" in pair(phone, "WRONG").text
    answer = pair(phone, sharing.code)
    assert answer.status_code == 429
    assert "too quick" in answer.text
    clock.now += 1.1
    assert pair(phone, sharing.code).status_code == 303


def test_each_wrong_guess_makes_the_next_wait_longer(sharing: Sharing, clock: Clock):
    waits = []
    for _ in range(TEN):
        sharing.guess("WRONG")
        waits.append(sharing.wait_s())
        clock.now += waits[-1]
    assert waits == [1, 2, 4, 8, 16, 16, 16, 16, 16, LOCKED_S]


@pytest.mark.parametrize("data", [{"code": "", "name": "x"}, {"code": "x", "name": ""}])
def test_both_fields_are_needed(phone: TestClient, sharing: Sharing, data: dict[str, str]):
    answer = phone.post("/pair", data=data)
    assert answer.status_code == 422
    assert sharing.wait_s() == 0


@pytest.mark.parametrize(
    "host", ["localhost:8765", "127.0.0.1:8765", "tallyhank.example:8765", "127.0.0.2:80"]
)
def test_by_the_home_network_only_its_own_address_is_a_name(phone: TestClient, host: str):
    assert phone.get("/pair", headers={"host": host}).status_code == 400


def test_the_address_of_the_home_network_is_no_name_on_this_machine(home: TestClient):
    assert home.get("/", headers={"host": f"{HOST}:{PORT}"}).status_code == 400


def test_a_change_from_a_foreign_page_is_refused(phone: TestClient, sharing: Sharing):
    pair(phone, sharing.code)
    made = {"name": "Ines"}
    foreign = {"origin": "http://192.0.2.9"}
    assert phone.post("/settings/people/new", data=made, headers=foreign).status_code == 403
    assert phone.post("/settings/people/new", data=made).status_code == 303


def test_a_code_can_be_typed_on_a_phone():
    code = new_code()
    assert len(code) == 9
    assert code[4] == "-"
    assert set(code) <= {*LETTERS, "-"}


def test_the_page_shows_code_and_drawing_only_while_shared(home: TestClient, sharing: Sharing):
    page = home.get("/settings/devices").text
    assert sharing.code in page
    assert PHONE in page
    drawn = home.get("/settings/devices/code.svg")
    assert drawn.headers["content-type"] == "image/svg+xml"
    assert b"style=" not in drawn.content


def test_without_sharing_there_is_no_form_and_no_code(client: TestClient):
    assert client.get("/pair").status_code == 404
    assert client.get("/settings/devices/code.svg").status_code == 404
    assert "tallyhank --share" in client.get("/settings/devices").text


def test_labels_lead_to_the_address_that_a_phone_can_reach(
    home: TestClient, monkeypatch: pytest.MonkeyPatch
):
    told: list[str] = []

    def watched(*args, **more):
        told.append(args[4])
        return labels_page(*args, **more)

    monkeypatch.setattr("app.web.routes.labels.labels_page", watched)
    home.get("/labels?holding=G-1")
    assert told == [PHONE]
