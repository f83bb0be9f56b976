"""A picture that was sent is kept as its pixels alone, or refused before it can do harm."""

import tracemalloc

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from app.store import picture_file as room
from app.store.picture_file import NotAPicture, patch, prepare, size_of
from tests.pictures import a_picture, a_png_of, from_a_camera, halves, markers, opened, written

ONLY_PIXELS = {0xE0, 0xDB, 0xC0, 0xC4}
"""JFIF's own head, the tables and the frame: nothing that a camera or a person adds."""


def near(one: tuple, other: tuple, by: int = 12) -> bool:
    return all(abs(a - b) <= by for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_three_kinds_are_taken_and_kept_as_one(kind: str) -> None:
    kept = prepare(a_picture(kind=kind))
    assert opened(kept.content).format == "JPEG"
    assert (kept.width, kept.height) == opened(kept.content).size == size_of(kept.content)
    assert near(opened(kept.content).getpixel((30, 20)), (120, 90, 60))


def test_nothing_but_pixels_is_kept() -> None:
    sent = from_a_camera()
    kept = prepare(sent).content
    for secret in (b"a camera of somebody", b"the kitchen table", b"Exif"):
        assert secret in sent
        assert secret not in kept
    assert set(markers(kept)) <= ONLY_PIXELS
    assert not opened(kept).getexif()


@pytest.mark.parametrize(
    ("orientation", "size", "red"),
    [(1, (80, 40), "left"), (3, (80, 40), "right"), (6, (40, 80), "top"), (8, (40, 80), "bottom")],
)
def test_it_stands_as_the_camera_was_held(orientation: int, size: tuple, red: str) -> None:
    kept = opened(prepare(from_a_camera(orientation)).content)
    assert kept.size == size
    width, height = size
    edge = {
        "left": (5, height // 2),
        "right": (width - 6, height // 2),
        "top": (width // 2, 5),
        "bottom": (width // 2, height - 6),
    }
    assert near(kept.getpixel(edge[red]), (200, 0, 0), 25)


def test_a_large_one_is_made_smaller_and_keeps_its_shape() -> None:
    kept = prepare(a_picture(4000, 3000))
    assert (kept.width, kept.height) == (1600, 1200)
    assert prepare(a_picture(3, 5000)).height == 1600


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_what_is_seen_through_stands_on_white(kind: str) -> None:
    sent = written(Image.new("RGBA", (40, 40), (0, 0, 0, 0)), kind)
    assert near(opened(prepare(sent).content).getpixel((20, 20)), (255, 255, 255), 2)


@pytest.mark.parametrize(
    ("mode", "colour"),
    [("L", 128), ("1", 1), ("P", 3), ("LA", (128, 255)), ("I;16", 32896), ("CMYK", (0, 0, 0, 127))],
)
def test_every_usual_mode_is_taken(mode: str, colour: object) -> None:
    kind = "JPEG" if mode == "CMYK" else "PNG"
    kept = opened(prepare(a_picture(mode=mode, colour=colour, kind=kind)).content)
    assert kept.mode == "RGB"
    if mode in ("L", "I;16", "LA", "CMYK"):
        assert near(kept.getpixel((30, 20)), (128, 128, 128), 4)


def test_a_camera_s_own_profile_is_applied_and_a_broken_one_passed_over() -> None:
    swapped = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    own = a_picture(kind="PNG", icc_profile=swapped)
    broken = a_picture(kind="PNG", icc_profile=b"no profile at all")
    wrong_space = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes()
    for sent in (own, broken, a_picture(kind="PNG", icc_profile=wrong_space)):
        assert near(opened(prepare(sent).content).getpixel((30, 20)), (120, 90, 60))


def test_the_same_picture_is_the_same_file() -> None:
    assert prepare(a_picture()).sha256 == prepare(a_picture()).sha256


@pytest.mark.parametrize(
    "content",
    [b"", b"a shopping list", b"<svg xmlns='http://www.w3.org/2000/svg'/>", b"%PDF-1.7 ", b"GIF89a"]
    + [a_picture(kind=kind) for kind in ("GIF", "BMP", "TIFF", "ICO")],
)
def test_anything_else_is_refused_by_its_content(content: bytes) -> None:
    with pytest.raises(NotAPicture, match="no JPEG, PNG or WebP"):
        prepare(content)


@pytest.mark.parametrize("size", [(50_001, 1000), (20_000, 20_000), (2**31 - 1, 2**31 - 1)])
def test_a_bomb_is_refused_by_its_head(size: tuple[int, int]) -> None:
    bomb = a_png_of(*size)
    assert len(bomb) < 300
    tracemalloc.start()
    with pytest.raises(NotAPicture, match="50 million pixels"):
        prepare(bomb)
    assert tracemalloc.get_traced_memory()[1] < 20_000_000
    tracemalloc.stop()


def test_a_file_that_is_too_long_is_not_even_opened(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(room, "MOST_BYTES", 100)
    with pytest.raises(NotAPicture, match="24 MB"):
        prepare(a_picture())


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_every_cut_into_its_pixels_is_refused(kind: str) -> None:
    sent = written(halves(300, 200), kind)
    for length in range(0, len(sent) - 20, max(1, len(sent) // 40)):
        with pytest.raises(NotAPicture):
            prepare(sent[:length])


@pytest.mark.property
@settings(max_examples=150, deadline=None)
@given(st.sampled_from(["JPEG", "PNG", "WEBP"]), st.integers(0), st.binary(min_size=1, max_size=8))
def test_a_file_with_a_wound_never_does_harm(kind: str, place: int, wound: bytes) -> None:
    sent = from_a_camera() if kind == "JPEG" else written(halves(), kind)
    at = place % len(sent)
    try:
        kept = prepare(sent[:at] + wound + sent[at + len(wound) :])
    except NotAPicture:
        return
    assert set(markers(kept.content)) <= ONLY_PIXELS


def test_a_kept_picture_is_a_jpeg() -> None:
    with pytest.raises(NotAPicture):
        size_of(a_picture(kind="PNG"))


@pytest.mark.parametrize(
    ("across", "down", "colour"),
    [
        (0.1, 0.5, (200, 0, 0)),
        (0.9, 0.5, (0, 0, 200)),
        (0, 0, (200, 0, 0)),
        (1, 1, (0, 0, 200)),
        (7, -3, (0, 0, 200)),
    ],
)
def test_a_patch_is_taken_where_it_was_pointed(across: float, down: float, colour: tuple) -> None:
    kept = prepare(written(halves(800, 400)))
    pixels = patch(kept.content, across, down)
    assert len(pixels) == 16 * 16
    assert all(near(one, colour, 25) for one in pixels)


def test_a_picture_of_one_pixel_has_a_patch() -> None:
    assert len(patch(prepare(a_picture(1, 1)).content, 0.5, 0.5)) == 1


def test_a_patch_of_a_torn_file_is_said() -> None:
    kept = prepare(written(halves(800, 400))).content
    with pytest.raises(NotAPicture):
        patch(kept[: len(kept) // 2], 0.5, 0.9)
