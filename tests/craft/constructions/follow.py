"""A knitter who does what she is told: the stitches of every row, from the words alone."""

import re
from dataclasses import dataclass, field

PLACES = {
    "at each end of": 2,
    "on each side of the marker on": 2,
    "on each side of both side markers on": 4,
    "at the neck edge of": 1,
    "at each neck edge of": 2,
    "at the armhole edge of": 1,
    "at each armhole edge of": 2,
    "at the side edge of": 1,
    "of the body beside each line on": 4,
    "of the sleeves beside each line on": 4,
    "in every wedge on": 8,
}
"""Stitches shaped at a time, by where they are."""

SHAPED = re.compile(r"(in|de)crease one stitch (.*?) (the next .*)", re.IGNORECASE)
GAP = r"every (?:(\d+)\w\w )?(?:row|round), (?:(\d+) times|once)"


def gaps_told(told: str) -> list[int]:
    """The rows from each shaping to the one after it, the first falling on row 1."""
    begun, _, after = told.partition(", all this ")
    turn = _listed(begun)
    if not after:
        return turn
    return turn * int(after.split()[0]) + _listed(after, first=False)


def _listed(told: str, first: bool = True) -> list[int]:
    found = [1] if first and re.search(r"the next (row|round)\b", told) else []
    for gap, times in re.findall(GAP, told):
        found += [int(gap or 1)] * int(times or 1)
    return found


def shaped_at(told: str) -> list[int]:
    """The rows, from 1, on which a stitch is shaped."""
    at = [1]
    for gap in gaps_told(told)[1:]:
        at.append(at[-1] + gap)
    return at


def changes(told: str, rows: int | None = None) -> tuple[dict[int, int], int]:
    """What is gained or lost in each row of one shaping, and how many rows it tells of."""
    steep = re.match(r"cast off (\d+) stitches in even steps(?: over (\d+) rows?)?(.*)", told, re.I)
    if steep:
        over = rows or int(steep[2])
        return _steps(int(steep[1]), over, steep[3]), over
    evenly = re.match(
        r"(in|de)crease (\d+) stitch(?:es)? evenly over (\d+) (row|round)", told, re.I
    )
    if evenly:
        sign = 1 if evenly[1].lower() == "in" else -1
        over = int(evenly[3])
        return _evenly(sign * int(evenly[2]), over), over
    shaped = SHAPED.match(told)
    assert shaped, told
    one = PLACES[shaped[2]] * (1 if shaped[1].lower() == "in" else -1)
    at = shaped_at(shaped[3])
    gained = dict.fromkeys(at, one)
    odd = re.search(r"(\d+) more on the last", told)
    if odd:
        gained[at[-1]] += int(odd[1]) * (1 if one > 0 else -1)
    rest = re.search(r"then work (\d+) (?:row|round)s? more", told)
    return gained, rows or at[-1] + (int(rest[1]) if rest else 0)


def _evenly(change: int, rows: int) -> dict[int, int]:
    done = [round(change * row / rows) for row in range(rows + 1)]
    return {row: done[row] - done[row - 1] for row in range(1, rows + 1)}


def _steps(many: int, rows: int, listed: str) -> dict[int, int]:
    inside = re.match(r" \(([\d, and]+?)( on each side)?, every", listed)
    if not inside:
        return _evenly(-many, rows)
    sizes = [int(one) for one in re.findall(r"\d+", inside[1])]
    sides = 2 if inside[2] else 1
    assert sum(sizes) * sides == many, listed
    return {1 + 2 * at: -sides * size for at, size in enumerate(sizes)}


@dataclass
class Knitter:
    """What is on her needle, and the rows she has worked."""

    stitches: int
    rows: list[int] = field(default_factory=list)
    waits: list[tuple[int, dict[int, int]]] = field(default_factory=list)
    neck: int = 0

    def work(self, rows: int, gained: dict[int, int] | None = None) -> None:
        for row in range(1, rows + 1):
            self.stitches += (gained or {}).get(row, 0)
            self.rows.append(self.stitches)

    def has(self, stitches: str | int) -> None:
        assert self.stitches == int(stitches), (self.stitches, stitches)

    def follow(self, told: str) -> None:
        """One sentence, or one line of it."""
        for words, does in DOES:
            found = re.match(words, told)
            if found:
                does(self, found)
                return
        raise AssertionError(f"she does not know what to do: {told}")


def _cast_on_band(k: Knitter, m: re.Match) -> None:
    k.stitches = int(m[1])
    k.work(int(m[2]))


def _set(k: Knitter, m: re.Match) -> None:
    k.stitches = int(m[1])


def _plain(k: Knitter, m: re.Match) -> None:
    k.has(m[2])
    k.work(int(m[1]))


def _band(k: Knitter, m: re.Match) -> None:
    """A double decrease takes two in each row."""
    k.work(int(m[1]), dict.fromkeys(range(1, int(m[1]) + 1), -2) if m[2] else None)
    if m[2]:
        k.has(m[2])


def _shape(k: Knitter, m: re.Match) -> None:
    gained, rows = changes(m[0])
    k.work(rows, gained)
    k.has(re.search(r": (\d+) stitches", m[0])[1])


def _both(k: Knitter, m: re.Match) -> None:
    rows = int(m[1])
    one, other = (changes(told, rows)[0] for told in (m[2], m[3]))
    k.work(rows, {row: one.get(row, 0) + other.get(row, 0) for row in range(1, rows + 1)})
    k.has(m[4])


def _fewer(k: Knitter, m: re.Match) -> None:
    k.stitches -= int(m[1])


def _fewer_to(k: Knitter, m: re.Match) -> None:
    k.stitches -= int(m[1])
    k.has(m[2])


def _left(k: Knitter, m: re.Match) -> None:
    k.has(m[1])


def _line(k: Knitter, m: re.Match) -> None:
    k.waits.append((0, changes(m[0])[0]))


def _neck_begins(k: Knitter, m: re.Match) -> None:
    k.neck = int(m[1] or 0)


def _neck_off(k: Knitter, m: re.Match) -> None:
    k.waits.append((k.neck, {1: -int(m[1]) * (2 if "each" in m[0] else 1)}))


def _neck_edge(k: Knitter, m: re.Match) -> None:
    k.waits.append((k.neck, changes(m[0])[0]))


def _neck_steps(k: Knitter, m: re.Match) -> None:
    k.waits.append((k.neck, changes(m[1])[0]))


def _in_all(k: Knitter, m: re.Match) -> None:
    gained: dict[int, int] = {}
    for begun, one in k.waits:
        for row, change in one.items():
            gained[begun + row] = gained.get(begun + row, 0) + change
    k.waits = []
    k.work(int(m[1]), gained)


def _round_of_decreases(k: Knitter, m: re.Match) -> None:
    k.work(int(m[1]) - (1 if "more" in m[0].split(";")[0] else 0) + (1 if k.rows else 0))
    k.stitches -= int(m[2])
    k.has(m[3])
    k.work(1)


def _turn(k: Knitter, m: re.Match) -> None:
    rows, last = int(m[1]), int(m[2])
    k.rows += range(last - rows + 1, last + 1)
    k.stitches = last


def _gusset(k: Knitter, m: re.Match) -> None:
    times = int(m[1])
    k.work(2 * times, {2 * at + 1: -2 for at in range(times)})
    k.has(m[2])


def _crown(k: Knitter, m: re.Match) -> None:
    at = shaped_at(m[2])
    wedges = int(m[3])
    rest = re.search(r"then work (\d+) round", m[0])
    k.stitches = wedges * int(m[1])
    k.work(at[-1] + (int(rest[1]) if rest else 0), dict.fromkeys(at, -wedges))
    k.has(m[3])


def _wedges(k: Knitter, m: re.Match) -> None:
    k.work(int(m[2]), changes(m[0].split(":")[0])[0])
    k.has(m[1])


def _border(k: Knitter, m: re.Match) -> None:
    k.work(int(m[1]), _evenly(8 * int(m[2]), int(m[1])))
    k.has(m[3])


def _graft(k: Knitter, m: re.Match) -> None:
    k.has(int(m[1]) + int(m[2]))


def _nothing(k: Knitter, m: re.Match) -> None:
    pass


ROWS = r"(\d+) (?:row|round)s?"
DOES = (
    (rf"Cast on (\d+) stitches and work {ROWS} in ", _cast_on_band),
    (r"Cast on (\d+) stitches", _set),
    (r"Pick up \d+ stitches along either side of the heel: (\d+)", _set),
    (r"Pick up (\d+) stitches", _set),
    (r"Knit on from \d+ stitches and pick up \d+ .*: (\d+) stitches\.", _set),
    (r"Knit on from \d+ stitches\.", _nothing),
    (r"Mark the edges of the row", _nothing),
    (r"In the first (?:row|round) that follows .*: (\d+) stitches\.", _set),
    (r"Go on with (\d+) stitches\.", _set),
    (rf"Work {ROWS} on (\d+) stitches", _plain),
    (rf"Work {ROWS} in [^,]*? with a double decrease .*?: (\d+) stitches; cast off", _band),
    (rf"Work {ROWS} in [^,]*?()and cast off", _band),
    (rf"Work {ROWS} in [^,]*, increasing .*? (\d+) times in all: (\d+) stitches", _border),
    (
        rf"Work {ROWS}(?: more)?; in the next decrease (\d+) .*?: (\d+) stitches",
        _round_of_decreases,
    ),
    (rf"Work {ROWS} to and fro on the (\d+) stitches", _plain),
    (rf"Work {ROWS}()\.", _band),
    (r"Turn the heel .* in each of (\d+) rows: (\d+) stitches", _turn),
    (r"Decrease one stitch on either side of the instep .*, (\d+) times: (\d+) stitches", _gusset),
    (r"Place a marker after every (\d+) .* on (the next .*): (\d+) stitches.*", _crown),
    (rf"Increase one stitch in every wedge on .*: (\d+) stitches after {ROWS}", _wedges),
    (r"Decrease one stitch of the (?:body|sleeves) beside each line on .*", _line),
    (rf"(?:After {ROWS}|From the first on) work the", _neck_begins),
    (r"Cast off (\d+) stitches in the middle of the front and go on", _neck_off),
    (r"Cast off (\d+) stitches at each front edge", _neck_off),
    (r"Decrease one stitch at each neck edge of [^:]*$", _neck_edge),
    (r"At the neck edges (cast off .*)", _neck_steps),
    (rf"{ROWS} in all", _in_all),
    (rf"Over {ROWS} (.*); at the same time (.*): (\d+) stitches", _both),
    (r"Cast off \d+ stitches in even steps.*", _shape),
    (r"(?:In|De)crease .*: \d+ stitches.*", _shape),
    (r"Cast off (\d+) stitches in all, \d+ at each side: (\d+)", _fewer_to),
    (r"Cast off (\d+) stitches at the armhole edge: (\d+)", _fewer_to),
    (r"Cast off (\d+) stitches (?:in the middle for the neck|at the neck edge)", _fewer),
    (r"Cast off the (\d+) stitches that are left", _left),
    (r"Draw the yarn through the (\d+) stitches", _left),
    (r"Graft the (\d+) \+ (\d+) stitches", _graft),
    (r"Join body and sleeves: (\d+) stitches", _set),
    (r"Leave the \d+ stitches of the gusset .* go on with (\d+) stitches", _set),
    (r"Part (?:it|the front) in (?:the|its) middle", _nothing),
)
"""What she does at each thing she may be told, the first that fits."""


def rows_by_words(piece) -> list[int]:
    """Stitches in each row of a piece, knit as it is told."""
    knitter = Knitter(piece.runs[0].stitches)
    for told in piece.words:
        knitter.follow(told)
    return knitter.rows


def rows_by_runs(piece) -> list[float]:
    """Stitches in each row of its runs, which go evenly."""
    return [
        run.stitches + (run.stitches_to - run.stitches) * (row + 0.5) / run.rows
        for run in piece.runs
        for row in range(run.rows)
    ]
