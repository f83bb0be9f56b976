"""The form in which yarns are asked to take turns: which, how much of each, over which rows."""

from collections.abc import Mapping

from app.book.plan import Part, Plan
from app.book.sequence import Sequence
from app.book.settings import Settings
from app.book.words import SEQUENCE_KINDS
from app.planning.needs import meant_yarn
from app.planning.sequence import Asked, AskedYarn
from app.web.forms.reader import Reader
from app.web.shown import Shown

LINES = 5
"""Yarns the form has room for; stripes of four that go on in another part begin within one."""

MOST_ROWS = 20_000
KIND_WORDS = {
    "fade": "fade from the first into the others",
    "alternate": "take turns all along",
    "stripes": "stripes of so many rows",
}


def read_turns(
    values: Mapping[str, object],
    settings: Settings,
    yarns: Mapping[str, str],
    later: Mapping[str, str],
) -> tuple[Reader, Asked]:
    """What was asked; it counts only where the reader is ok. `later` are the parts that the
    sequence could go on over, by id."""
    reader = Reader(values, settings)
    kind = reader.choice("kind", SEQUENCE_KINDS) or "fade"
    found = [one for at in range(1, LINES + 1) if (one := _line(reader, at, kind, yarns))]
    asked = Asked(
        kind=kind,
        yarns=tuple(found),
        from_row=reader.whole("from_row", least=1, most=MOST_ROWS),
        to_row=reader.whole("to_row", least=1, most=MOST_ROWS),
        spiral=reader.flag("spiral"),
        over=tuple(one for one in later if reader.flag(f"over_{one}")),
        spin_rest=reader.flag("spin_rest"),
    )
    _agree(reader, asked)
    return reader, asked


def turns_values(plan: Plan, part: Part, settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened: the sequence the part has, or its main yarn alone."""
    blank = {"kind": "fade", "from_row": "", "to_row": "", "spiral": "", "spin_rest": ""}
    lines = {f"{name}_{at}": "" for at in range(1, LINES + 1) for name in FIELDS}
    if part.sequence is None:
        return {**blank, **lines, "yarn_1": meant_yarn(plan, part, "main") or ""}
    return {**blank, **lines, **_kept(plan, part, part.sequence, Shown(settings))}


FIELDS = ("yarn", "share", "share_to", "rows")


def _kept(plan: Plan, part: Part, sequence: Sequence, shown: Shown) -> dict[str, str]:
    values = {
        "kind": sequence.kind,
        "from_row": str(sequence.from_row),
        "to_row": str(sequence.to_row or ""),
        "spiral": "1" if sequence.spiral else "",
    }
    for at, one in enumerate(sequence.yarns[:LINES], 1):
        values[f"yarn_{at}"] = meant_yarn(plan, part, one.role) or ""
        values[f"share_{at}"] = shown.field_number(round(100 * one.share, 1))
        values[f"share_to_{at}"] = shown.field_number(round(100 * one.share_to, 1))
    for at, band in enumerate(sequence.bands[:LINES], 1):
        values[f"yarn_{at}"] = meant_yarn(plan, part, band.role) or ""
        values[f"rows_{at}"] = str(band.rows)
    return values


def _line(reader: Reader, at: int, kind: str, yarns: Mapping[str, str]) -> AskedYarn | None:
    chosen = reader.choice(f"yarn_{at}", {"": "", **yarns}, default="")
    share = reader.number(f"share_{at}", unit="%", least=0, most=100)
    share_to = reader.number(f"share_to_{at}", unit="%", least=0, most=100)
    rows = reader.whole(f"rows_{at}", least=1, most=MOST_ROWS)
    if not chosen:
        return None
    if kind != "stripes":
        return AskedYarn(chosen, _part(share), _part(share_to))
    if rows is None:
        reader.refuse(f"rows_{at}", "Say how many rows of it follow each other.")
    return AskedYarn(chosen, rows=rows or 0)


def _part(percent: float | None) -> float | None:
    return None if percent is None else percent / 100


def _agree(reader: Reader, asked: Asked) -> None:
    """What must hold of the fields together."""
    if len({one.yarn_id for one in asked.yarns}) < 2:
        reader.refuse("yarn_2", "Choose a second yarn.")
    elif asked.kind != "stripes" and len({one.yarn_id for one in asked.yarns}) < len(asked.yarns):
        reader.refuse("yarn_1", "Name each yarn once.")
    if asked.from_row and asked.to_row and asked.from_row > asked.to_row:
        reader.refuse("to_row", "It ends before it begins.")
    begin = [one.share for one in asked.yarns]
    end = [
        a if one.share_to is None else one.share_to
        for a, one in zip(begin, asked.yarns, strict=True)
    ]
    if all(one is None for one in (*begin, *end)):
        return
    for field, shares in (("share_1", begin), ("share_to_1", end)):
        if not sum(one or 0.0 for one in shares):
            reader.refuse(field, "Give at least one yarn a share.")
