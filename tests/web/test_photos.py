"""Photos of a fleece, a skein and a garment, as somebody at the pages keeps and tends them."""

import re
from collections.abc import Callable
from io import BytesIO
from zipfile import ZipFile

import pytest
from starlette.testclient import TestClient

from app.book.photo import Photo
from app.store.engine import Store
from app.store.fill import fill
from app.store.photos import names_there, photos_folder
from app.store.picture_file import prepare
from app.store.records import load_book
from app.web import server
from app.work import photo_add
from tests.books import a_book, a_fleece, a_holding, a_plan, a_skein, a_yarn
from tests.pictures import a_picture, a_png_of, from_a_camera, halves, opened, written
from tests.web.forms import shown_values

UNDO = re.compile(r'action="(/undo/change/\w+)"')
THINGS = {"fleeces": "Bramble", "skeins": "G-1", "garments": "pullover"}
WIDE = written(halves(640, 320))
"""Red on the left, blue on the right; shown 320 × 160."""


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    book = a_book(
        a_fleece(),
        a_yarn(),
        a_plan(),
        a_holding(fleece_id="Bramble", state="raw"),
        a_skein(colour="#8a7f72"),
        held={"F-1": (900, 0), "G-1": (96, 213)},
    )
    with store.writing() as session:
        fill(session, book)


def photos(store: Store) -> list[Photo]:
    with store.reading() as session:
        return list(load_book(session).photos)


def add(client: TestClient, content: bytes, room: str = "skeins", name: str = "a.jpg", **typed):
    fields = {"room": room, "of": THINGS.get(room, "nobody")} | typed
    return client.post("/photos", data=fields, files={"picture": (name, content)})


def added(client: TestClient, store: Store, content: bytes = WIDE, room: str = "skeins") -> Photo:
    assert add(client, content, room).status_code == 200
    return photos(store)[-1]


def undone(client: TestClient, html: str):
    found = UNDO.search(html)
    assert found
    return client.post(found[1], data={"back": "/"})


@pytest.mark.parametrize("room", THINGS)
def test_a_photo_is_added_shown_and_taken_back(client: TestClient, store: Store, room: str):
    address = f"/{room}/{THINGS[room]}/photos"
    empty = client.get(address).text
    assert "No photo yet." in empty
    told = shown_values(empty, "/photos")
    assert (told["room"], told["of"]) == (room, THINGS[room])
    answer = add(client, WIDE, room, caption=" by the\r\nwindow ", day="2026-04-03")
    assert str(answer.url).endswith(address)
    assert f"The photo of {THINGS[room]} is kept." in answer.text
    (photo,) = photos(store)
    assert (photo.caption, photo.media) == ("by the window", "image/jpeg")
    assert [photo.fleece_id, photo.holding_id, photo.plan_id].count(None) == 2
    assert f'src="/photos/file/{photo.sha256}.jpg"' in answer.text
    assert "1 photo." in answer.text
    assert "by the window, 3\u00a0April\u00a02026" in answer.text
    undone(client, answer.text)
    assert photos(store) == []
    assert names_there(store.folder) == [f"{photo.sha256}.jpg"]


def test_a_picture_is_served_as_what_it_is_and_may_be_kept(client: TestClient, store: Store):
    photo = added(client, store)
    answer = client.get(f"/photos/file/{photo.sha256}.jpg")
    assert answer.content == (photos_folder(store.folder) / f"{photo.sha256}.jpg").read_bytes()
    assert len(answer.content) == photo.bytes
    assert answer.headers["content-type"] == "image/jpeg"
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["cache-control"] == "private, max-age=31536000, immutable"
    assert "img-src 'self'" in answer.headers["content-security-policy"]


@pytest.mark.parametrize(
    "name",
    [
        f"{'0f' * 32}.jpg",
        "../tallyhank.sqlite",
        "..%2ftallyhank.sqlite",
        "%2e%2e/tallyhank.sqlite",
        "..%5c..%5ctallyhank.sqlite",
        "%2fetc%2fpasswd",
        "x.jpg",
        "x%00.jpg",
        f"{'0f' * 32}.jpg%0a",
    ],
)
def test_a_name_that_leads_elsewhere_finds_nothing(client: TestClient, name: str):
    answer = client.get(f"/photos/file/{name}")
    assert answer.status_code == 404
    assert answer.headers["content-type"].startswith("text/html")
    assert answer.headers["cache-control"] == "no-store"


def test_where_and_with_what_it_was_taken_is_not_kept(client: TestClient, store: Store):
    sent = from_a_camera(6)
    photo = added(client, store, sent)
    kept = client.get(f"/photos/file/{photo.sha256}.jpg").content
    assert (photo.width, photo.height) == (40, 80)
    assert b"Exif" in sent
    assert b"Exif" not in kept
    assert b"camera" not in kept


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "Choose a picture."),
        (b"<svg onload='x'/>", "no JPEG, PNG or WebP picture"),
        (b"<html><script>", "no JPEG, PNG or WebP picture"),
        (a_picture(kind="GIF"), "no JPEG, PNG or WebP picture"),
        (a_png_of(60_000, 60_000), "more than 50 million pixels"),
        (WIDE[:400], "damaged or cut short"),
    ],
)
def test_what_is_no_photo_is_refused_beside_the_field(
    client: TestClient, store: Store, content: bytes, said: str
):
    answer = add(client, content, caption="in <b>the sun</b>", name="../../x.jpg")
    assert answer.status_code == 422
    assert said in answer.text.split('id="e-picture"')[1].split("</span>")[0]
    assert shown_values(answer.text, "/photos")["caption"] == "in <b>the sun</b>"
    assert "<b>the sun" not in answer.text
    assert photos(store) == []
    assert names_there(store.folder) == []


def test_a_day_to_come_is_refused_and_no_picture_kept(client: TestClient, store: Store):
    answer = add(client, WIDE, day="2199-01-01")
    assert answer.status_code == 422
    assert 'id="e-day"' in answer.text
    assert names_there(store.folder) == []


def test_a_text_where_a_picture_should_be_is_no_picture(client: TestClient):
    answer = client.post("/photos", data={"room": "skeins", "of": "G-1", "picture": "x"})
    assert answer.status_code == 422


def test_far_too_much_is_refused_unread(client: TestClient):
    most = server.LARGER_BODIES["/photos"]
    assert add(client, b"\0" * (most + 1)).status_code == 413


@pytest.mark.parametrize("room", ["yarns", "photos", ""])
def test_what_has_no_photos(client: TestClient, room: str):
    assert client.get(f"/{room or 'x'}/G-1/photos").status_code == 404
    assert add(client, WIDE, room).status_code == 404


def test_what_is_not_there_has_no_photos(client: TestClient, store: Store):
    for address in ("/skeins/F-1/photos", "/fleeces/none/photos", "/photos/none"):
        assert client.get(address).status_code == 404
    assert add(client, WIDE, "skeins", of="none").status_code == 404
    assert names_there(store.folder) == []


def test_a_full_disk_is_said_and_leaves_nothing(
    client: TestClient, store: Store, monkeypatch: pytest.MonkeyPatch
):
    monkeypatch.setattr("app.store.photos.move_into_place", _no_room)
    answer = add(client, WIDE)
    assert answer.status_code == 503
    assert "The photo could not be written: No space left on device." in answer.text
    assert photos(store) == []
    assert list(photos_folder(store.folder).iterdir()) == []


def test_a_row_that_cannot_be_written_is_not_said_to_be(
    client: TestClient, store: Store, monkeypatch: pytest.MonkeyPatch
):
    def fail(*_arguments: object) -> None:
        raise RuntimeError("pulled")

    monkeypatch.setattr(photo_add, "put", fail)
    assert add(client, WIDE).status_code == 500
    assert photos(store) == []


def _no_room(*_arguments: object) -> None:
    raise OSError(28, "No space left on device")


# One photo


def colour_of(store: Store, room: str) -> str:
    with store.reading() as session:
        book = load_book(session)
    wool = book.fleece["Bramble"] if room == "fleeces" else book.holding["G-1"]
    return wool.colour


def take(client: TestClient, photo: Photo, **fields: object):
    page = client.get(f"/photos/{photo.id}")
    form = shown_values(page.text, f"/photos/{photo.id}/colour")
    return client.post(f"/photos/{photo.id}/colour", data=form | fields)


def is_red(colour: str) -> bool:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return red > 180 and green < 20 and blue < 20


@pytest.mark.parametrize("room", ["fleeces", "skeins"])
def test_the_colour_of_the_place_that_was_pressed_and_back(
    client: TestClient, store: Store, room: str
):
    photo = added(client, store, room=room)
    before = colour_of(store, room)
    answer = take(client, photo, **{"at.x": "60", "at.y": "80"})
    assert is_red(colour_of(store, room))
    assert f"now has the colour of that place, {colour_of(store, room)}." in answer.text
    assert "Undone:" in undone(client, answer.text).text
    assert colour_of(store, room) == before


@pytest.mark.parametrize(
    ("fields", "red"),
    [
        ({"at.x": "0", "at.y": "0", "place": "top left"}, True),
        ({"place": "bottom right"}, False),
        ({"at.x": "319", "at.y": "1", "place": "left"}, False),
        ({"at.x": "9999", "at.y": "9999"}, False),
        ({"at.x": "-5", "at.y": "x", "place": "left"}, True),
        ({"place": "left"}, True),
    ],
)
def test_a_place_is_chosen_where_nobody_pointed(
    client: TestClient, store: Store, fields: dict[str, str], red: bool
):
    take(client, added(client, store), **fields)
    assert is_red(colour_of(store, "skeins")) == red


def test_a_colour_changed_again_since_is_not_undone(client: TestClient, store: Store):
    photo = added(client, store)
    first = take(client, photo, place="left")
    take(client, photo, place="right")
    answer = undone(client, first.text)
    assert answer.status_code == 409
    assert not is_red(colour_of(store, "skeins"))


def test_a_skein_changed_meanwhile_keeps_its_colour(client: TestClient, store: Store):
    photo = added(client, store)
    answer = take(client, photo, place="left", stamp="another")
    assert answer.status_code == 409
    assert colour_of(store, "skeins") == "#8a7f72"


def test_a_garment_has_no_colour_of_its_own(client: TestClient, store: Store):
    photo = added(client, store, room="garments")
    assert f"/photos/{photo.id}/colour" not in client.get(f"/photos/{photo.id}").text
    assert client.post(f"/photos/{photo.id}/colour", data={"place": "top"}).status_code == 409


def changed(client: TestClient, photo: Photo, what: str = "change", **typed: str):
    page = client.get(f"/photos/{photo.id}")
    form = shown_values(page.text, f"/photos/{photo.id}/{what}")
    return client.post(f"/photos/{photo.id}/{what}", data=form | typed)


def test_caption_and_day_are_changed_and_put_back(client: TestClient, store: Store):
    photo = added(client, store)
    answer = changed(client, photo, caption="on the line", day="2026-05-01")
    assert "What is written of this photo is changed." in answer.text
    assert photos(store)[0].caption == "on the line"
    undone(client, answer.text)
    assert photos(store) == [photo]


def test_a_caption_too_long_is_said_and_kept_in_the_field(client: TestClient, store: Store):
    photo = added(client, store)
    answer = changed(client, photo, caption="x" * 201)
    assert answer.status_code == 422
    assert "x" * 201 in answer.text
    assert photos(store) == [photo]


@pytest.mark.parametrize("what", ["change", "remove"])
def test_a_photo_changed_meanwhile_is_not_overwritten(client: TestClient, store: Store, what: str):
    photo = added(client, store)
    assert changed(client, photo, what, stamp="another").status_code == 409
    assert photos(store) == [photo]


def test_taken_out_and_put_back(client: TestClient, store: Store):
    photo = added(client, store)
    answer = changed(client, photo, "remove")
    assert str(answer.url).endswith("/skeins/G-1/photos")
    assert "The photo of G-1 is taken out." in answer.text
    assert photos(store) == []
    assert client.get(f"/photos/{photo.id}").status_code == 404
    undone(client, answer.text)
    assert photos(store) == [photo]
    assert client.get(f"/photos/file/{photo.sha256}.jpg").status_code == 200


def _gone(folder_file) -> None:
    folder_file.unlink()


def _torn(folder_file) -> None:
    folder_file.write_bytes(b"a shopping list")


@pytest.mark.parametrize(("harm", "word"), [(_gone, "missing"), (_torn, "damaged")])
def test_a_lost_picture_is_said_on_its_page(
    client: TestClient, store: Store, harm: Callable, word: str
):
    photo = added(client, store)
    harm(photos_folder(store.folder) / f"{photo.sha256}.jpg")
    page = client.get(f"/photos/{photo.id}").text
    assert f"The picture is {word}." in page
    assert "/colour" not in page
    take_out = changed(client, photo, "remove")
    assert take_out.status_code == 200


def test_no_colour_is_taken_from_a_lost_picture(client: TestClient, store: Store):
    photo = added(client, store)
    form = shown_values(client.get(f"/photos/{photo.id}").text, f"/photos/{photo.id}/colour")
    _gone(photos_folder(store.folder) / f"{photo.sha256}.jpg")
    answer = client.post(f"/photos/{photo.id}/colour", data=form)
    assert answer.status_code == 409
    assert "no colour can be taken from it" in answer.text


# Out and in again


def test_the_zip_of_the_data_page_holds_the_pictures(client: TestClient, store: Store):
    photo = added(client, store)
    assert 'href="/settings/data/export.zip"' in client.get("/settings/data").text
    answer = client.get("/settings/data/export.zip")
    assert answer.headers["content-type"] == "application/zip"
    assert answer.headers["content-disposition"].endswith('.zip"')
    with ZipFile(BytesIO(answer.content)) as archive:
        assert archive.namelist() == ["book.json", f"photos/{photo.sha256}.jpg"]


def test_a_zip_with_a_lost_picture_is_not_begun(client: TestClient, store: Store):
    photo = added(client, store)
    _torn(photos_folder(store.folder) / f"{photo.sha256}.jpg")
    answer = client.get("/settings/data/export.zip")
    assert answer.status_code == 503
    assert "is damaged. Bring it back from a backup" in answer.text


def test_no_room_for_the_zip_is_said(client: TestClient, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr("app.web.routes.data.write_zip", _no_room)
    answer = client.get("/settings/data/export.zip")
    assert answer.status_code == 503
    assert "The ZIP could not be written: No space left on device." in answer.text


def test_a_kept_picture_is_what_the_pages_say(client: TestClient, store: Store):
    photo = added(client, store, a_picture(3000, 2000))
    kept = prepare(a_picture(3000, 2000))
    assert (photo.sha256, photo.width, photo.height) == (kept.sha256, 1600, 1067)
    assert opened(kept.content).size == (1600, 1067)
