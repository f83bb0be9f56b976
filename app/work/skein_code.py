"""A skein's code: proposed from its yarn's name, unique on the shelf, changeable by the maker."""

import re
from collections.abc import Iterable
from unicodedata import normalize

NUMBERED = re.compile(r"^(?P<stem>.*?)-?(?P<number>\d+)$")


def letters_of(name: str) -> str:
    """The plain capital letters of a yarn's name, or "S" for a name without any."""
    plain = normalize("NFKD", name).encode("ascii", "ignore").decode().upper()
    return "".join(sign for sign in plain if sign.isalpha()) or "S"


def stem_for(name: str, own: Iterable[str], others: Iterable[str]) -> str:
    """The letters before the number: those of the yarn's own codes, else the shortest beginning
    of its name that no other yarn uses."""
    used = [stem for code in own if (stem := stem_of(code))]
    if used:
        return max(used, key=used.count)
    letters, taken = letters_of(name), {stem_of(code) for code in others}
    free = (letters[:length] for length in range(1, len(letters) + 1))
    return next((stem for stem in free if stem not in taken), letters[0])


def stem_of(code: str) -> str:
    """The part of a code before its running number: "G" of "G-014"."""
    found = NUMBERED.match(code)
    return found["stem"] if found else code


def proposed(stem: str, codes: Iterable[str], count: int = 1) -> tuple[str, ...]:
    """The next `count` codes of a stem after the highest number it has on the shelf, in as many
    digits as that one has; three where it has none."""
    found = (NUMBERED.match(code) for code in codes)
    numbers = [one["number"] for one in found if one and one["stem"] == stem]
    last = max(numbers, key=int, default="000")
    first = int(last) + 1
    return tuple(f"{stem}-{number:0{len(last)}d}" for number in range(first, first + count))


def following(first: str, count: int) -> tuple[str, ...]:
    """`count` codes that begin with the one typed: "A-7" → "A-7", "A-8" …; a code without a
    number is numbered from 1 when there are several."""
    found = NUMBERED.match(first)
    if count == 1:
        return (first,)
    if not found:
        return tuple(f"{first}-{number}" for number in range(1, count + 1))
    digits = found["number"]
    stem = first[: -len(digits)]
    start, width = int(digits), len(digits)
    return tuple(f"{stem}{number:0{width}d}" for number in range(start, start + count))
