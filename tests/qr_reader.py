"""A small reader of QR codes, written from ISO/IEC 18004 and apart from what draws them.

It reads clean codes of versions 1 to 6 at level M in byte mode, and mends nothing: every block must
be a word of its Reed-Solomon code as it stands.
"""

import re

Matrix = list[list[bool]]

FORMAT_MASK = 0b101010000010010
LEVEL_M = 0b00
BYTES = 0b0100
BLOCKS_AT_M = {
    1: (1, 26, 16),
    2: (1, 44, 28),
    3: (1, 70, 44),
    4: (2, 50, 32),
    5: (2, 67, 43),
    6: (4, 43, 27),
}
"""By version: blocks, codewords in each, data codewords in each (table 9 of the standard)."""

SECOND_ALIGNMENT = {2: 18, 3: 22, 4: 26, 5: 30, 6: 34}
FINDER = ["1111111", "1000001", "1011101", "1011101", "1011101", "1000001", "1111111"]
MASKS = (
    lambda i, j: (i + j) % 2,
    lambda i, _: i % 2,
    lambda _, j: j % 3,
    lambda i, j: (i + j) % 3,
    lambda i, j: (i // 2 + j // 3) % 2,
    lambda i, j: i * j % 2 + i * j % 3,
    lambda i, j: (i * j % 2 + i * j % 3) % 2,
    lambda i, j: ((i + j) % 2 + i * j % 3) % 2,
)


def matrix_of(path: str, size: int, quiet: int) -> Matrix:
    """The modules that a path of horizontal strokes paints, without the quiet zone, which is
    checked to be light."""
    painted = [[False] * size for _ in range(size)]
    drawn = re.findall(r"M(\d+) (\d+)\.5h(\d+)", path)
    assert "".join(f"M{x} {y}.5h{n}" for x, y, n in drawn) == path
    for x, y, length in drawn:
        for at in range(int(x), int(x) + int(length)):
            painted[int(y)][at] = True
    inner = [row[quiet : size - quiet] for row in painted[quiet : size - quiet]]
    assert sum(map(sum, painted)) == sum(map(sum, inner)), "the quiet zone is not light"
    return inner


def read(matrix: Matrix) -> str:
    """The text of a code; AssertionError where it is none."""
    size = len(matrix)
    version = (size - 17) // 4
    assert size == 17 + 4 * version
    for top, left in ((0, 0), (0, size - 7), (size - 7, 0)):
        seen = ["".join("01"[x] for x in row[left : left + 7]) for row in matrix[top : top + 7]]
        assert seen == FINDER
    mask = _mask_of(matrix)
    bits = [
        matrix[i][j] ^ (MASKS[mask](i, j) == 0)
        for i, j in _path(size)
        if not _is_function(i, j, version)
    ]
    words = [_number(bits[at : at + 8]) for at in range(0, len(bits) - 7, 8)]
    return _text(_data(words, version))


def _mask_of(matrix: Matrix) -> int:
    """From the format information, whose BCH code must be whole (15, 5; generator 10100110111)."""
    places = [(8, j) for j in (0, 1, 2, 3, 4, 5, 7, 8)] + [(i, 8) for i in (7, 5, 4, 3, 2, 1, 0)]
    found = _number([matrix[i][j] for i, j in places]) ^ FORMAT_MASK
    rest = found
    for shift in range(4, -1, -1):
        if rest >> (shift + 10) & 1:
            rest ^= 0b10100110111 << shift
    assert rest == 0
    assert found >> 13 == LEVEL_M
    return found >> 10 & 0b111


def _is_function(i: int, j: int, version: int) -> bool:
    size = 17 + 4 * version
    corner = (i < 9 and j < 9) or (i < 9 and j >= size - 8) or (i >= size - 8 and j < 9)
    middle = SECOND_ALIGNMENT.get(version, -9)
    return corner or 6 in (i, j) or (abs(i - middle) < 3 and abs(j - middle) < 3)


def _path(size: int) -> list[tuple[int, int]]:
    """Two columns at a time from the right, up and down in turn, past the timing column."""
    found, upwards = [], True
    for right in [*range(size - 1, 6, -2), 5, 3, 1]:
        rows = range(size - 1, -1, -1) if upwards else range(size)
        found += [(i, j) for i in rows for j in (right, right - 1)]
        upwards = not upwards
    return found


def _data(words: list[int], version: int) -> list[int]:
    blocks, total, data = BLOCKS_AT_M[version]
    assert len(words) == blocks * total
    parts = [words[at::blocks][:data] for at in range(blocks)]
    mending = words[blocks * data :]
    for at, part in enumerate(parts):
        assert _is_a_codeword(part + mending[at::blocks], total - data)
    return [word for part in parts for word in part]


def _is_a_codeword(block: list[int], checks: int) -> bool:
    """Zero at the first powers of 2 in the field of 256 with x⁸ + x⁴ + x³ + x² + 1."""
    root = 1
    for _ in range(checks):
        value = 0
        for word in block:
            value = _times(value, root) ^ word
        if value:
            return False
        root = _times(root, 2)
    return True


def _times(a: int, b: int) -> int:
    product = 0
    while b:
        if b & 1:
            product ^= a
        a = a << 1 ^ (0x11D if a & 0x80 else 0)
        b >>= 1
    return product


def _text(data: list[int]) -> str:
    bits = [bool(word >> at & 1) for word in data for at in range(7, -1, -1)]
    assert _number(bits[:4]) == BYTES
    length = _number(bits[4:12])
    content = [_number(bits[at : at + 8]) for at in range(12, 12 + 8 * length, 8)]
    return bytes(content).decode()


def _number(bits: list[bool]) -> int:
    return int("".join("01"[bit] for bit in bits), 2)
