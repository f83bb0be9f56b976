"""A picture as it is kept: decoded once, turned upright, made no larger than is of use, and written
anew as a JPEG.

Nothing of the file that was sent is kept but what is seen in it: no place, no camera, no words. Its
size is read from its head before a pixel is decoded, so that a small file cannot fill the memory.
"""

from dataclasses import dataclass
from hashlib import sha256
from io import BytesIO
from typing import TYPE_CHECKING, Any

from app.store.errors import StoreError

if TYPE_CHECKING:
    from PIL.Image import Image

MEDIA = "image/jpeg"
FORMATS = ("JPEG", "PNG", "WEBP")
MOST_BYTES = 24 << 20
MOST_PIXELS = 50_000_000
"""The finest usual setting of a telephone's camera; a picture of more is hardly a photo of wool."""

LONGEST_SIDE = 1600
QUALITY = 86
REDUCED_AS_THEY_ARE = ("RGB", "RGBA", "L", "LA", "CMYK")
PATCH_SHARE = 0.04
"""Side of the square a colour is taken from, per shorter side of the picture."""

NO_PICTURE = (
    "This is no JPEG, PNG or WebP picture. If it comes from a telephone, save it there as JPEG."
)
BROKEN = "This picture is damaged or cut short. Choose another."
TOO_MANY = "This picture has more than 50 million pixels. Make it smaller first."
TOO_LONG = "This file is larger than 24 MB. Make the picture smaller first."


class NotAPicture(StoreError):
    """You meet it when a file that was sent cannot be kept as a photo; the message says why."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A file to be kept, and its size in pixels."""

    content: bytes
    width: int
    height: int

    @property
    def sha256(self) -> str:
        """The digest that names it."""
        return sha256(self.content).hexdigest()


def prepare(content: bytes) -> Picture:
    """The picture in a file that was sent, fit to be kept; NotAPicture where there is none."""
    if len(content) > MOST_BYTES:
        raise NotAPicture(TOO_LONG)
    image = _opened(content)
    try:
        return _written(_reduced(image))
    except Exception as error:  # a torn file makes the decoder fail in any way it likes
        raise NotAPicture(BROKEN) from error


def size_of(content: bytes) -> tuple[int, int]:
    """Width and height of a kept picture; NotAPicture for anything else."""
    image = _opened(content)
    if image.format != "JPEG":
        raise NotAPicture(NO_PICTURE)
    return image.size


def patch(content: bytes, across: float, down: float) -> list[tuple[int, int, int]]:
    """The pixels of a small square around a point, given as shares of width and height from the
    top left; NotAPicture where the file is none."""
    image: Any = _opened(content)
    width, height = image.size
    half = max(1, round(min(width, height) * PATCH_SHARE / 2))
    x, y = _within(across * width, half, width), _within(down * height, half, height)
    box = (max(0, x - half), max(0, y - half), min(width, x + half), min(height, y + half))
    try:
        found = image.convert("RGB").crop(box).tobytes()
    except Exception as error:  # as in `prepare`
        raise NotAPicture(BROKEN) from error
    return list(zip(found[::3], found[1::3], found[2::3], strict=True))


def _within(at: float, half: int, size: int) -> int:
    """A whole pixel not nearer to an edge than half a patch, where there is room for one."""
    return round(max(min(half, size / 2), min(at, size - half)))


def _opened(content: bytes) -> "Image":
    """The picture with its head read and nothing decoded."""
    from PIL import Image, UnidentifiedImageError

    try:
        image = Image.open(BytesIO(content), formats=FORMATS)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as error:
        raise NotAPicture(TOO_MANY) from error
    except UnidentifiedImageError as error:
        raise NotAPicture(NO_PICTURE) from error
    except Exception as error:  # as in `prepare`
        raise NotAPicture(BROKEN) from error
    if image.width * image.height > MOST_PIXELS:
        raise NotAPicture(TOO_MANY)
    return image


def _reduced(image: Any) -> "Image":
    """Upright, in the colours of the screen, on white, no side longer than LONGEST_SIDE.

    Made smaller first where that can be done in its own mode, since every later step copies it.
    """
    from PIL import Image, ImageOps

    longest = (LONGEST_SIDE, LONGEST_SIDE)
    image.draft("RGB", longest)
    plain = image if image.mode in REDUCED_AS_THEY_ARE else _in_screen_colours(image)
    plain.thumbnail(longest, Image.Resampling.LANCZOS, reducing_gap=2.0)
    return _in_screen_colours(ImageOps.exif_transpose(plain))


def _in_screen_colours(image: Any) -> "Image":
    """Red, green and blue as a screen shows them: a camera's own profile is applied."""
    from PIL import Image, ImageCms

    if image.mode.startswith("I;16"):
        image = image.point(lambda value: value / 256).convert("L")
    if image.has_transparency_data:
        seen = image.convert("RGBA")
        ground = Image.new("RGBA", seen.size, "white")
        image = Image.alpha_composite(ground, seen).convert("RGB")
    profile = image.info.get("icc_profile")
    if profile:
        try:
            own: Any = ImageCms.ImageCmsProfile(BytesIO(profile))
            screen: Any = ImageCms.createProfile("sRGB")
            image = ImageCms.profileToProfile(image, own, screen, outputMode="RGB")
        except (ImageCms.PyCMSError, OSError):
            pass  # a profile that cannot be read is as good as none
    return image.convert("RGB")  # type: ignore[no-any-return]


def _written(image: "Image") -> Picture:
    """As a file that holds the pixels alone."""
    from PIL import Image

    bare = Image.frombytes("RGB", image.size, image.tobytes())
    written = BytesIO()
    bare.save(written, "JPEG", quality=QUALITY, optimize=True)
    return Picture(written.getvalue(), *bare.size)
