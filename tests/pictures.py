"""Pictures to test with, as a camera or somebody with bad intent would send them."""

import struct
import zlib
from io import BytesIO

from PIL import Image

ORIENTATION = 0x0112
MAKER = 0x010F
GPS = 0x8825


def a_picture(
    width: int = 60, height: int = 40, kind: str = "JPEG", colour: object = (120, 90, 60), **other
) -> bytes:
    """A picture of one colour."""
    mode = other.pop("mode", "RGB")
    return written(Image.new(mode, (width, height), colour), kind, **other)


def written(image: Image.Image, kind: str = "JPEG", **other) -> bytes:
    file = BytesIO()
    image.save(file, kind, **other)
    return file.getvalue()


def opened(content: bytes) -> Image.Image:
    return Image.open(BytesIO(content))


def halves(width: int = 80, height: int = 40) -> Image.Image:
    """Red on the left, blue on the right."""
    image = Image.new("RGB", (width, height), (200, 0, 0))
    image.paste((0, 0, 200), (width // 2, 0, width, height))
    return image


def from_a_camera(orientation: int = 6) -> bytes:
    """Two halves, with where and with what they were taken, and which side is up."""
    exif = Image.Exif()
    exif[ORIENTATION] = orientation
    exif[MAKER] = "a camera of somebody"
    exif.get_ifd(GPS)[2] = (54.0, 30.0, 0.0)
    return written(halves(), exif=exif, comment=b"the kitchen table")


def a_png_of(width: int, height: int) -> bytes:
    """A file of a few hundred bytes whose head says that it is this large."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    rows = zlib.compress(b"\0" * 10_000)
    return b"\x89PNG\r\n\x1a\n" + _chunk(b"IHDR", head) + _chunk(b"IDAT", rows)


def _chunk(name: bytes, content: bytes) -> bytes:
    checked = struct.pack(">I", zlib.crc32(name + content))
    return struct.pack(">I", len(content)) + name + content + checked


def markers(jpeg: bytes) -> list[int]:
    """The markers of the segments of a JPEG up to its pixels (ISO/IEC 10918-1, B.1)."""
    at, found = 2, []
    while jpeg[at + 1] != 0xDA:
        found.append(jpeg[at + 1])
        at += 2 + int.from_bytes(jpeg[at + 2 : at + 4], "big")
    return found
