"""Yarns that take turns in a part, as a maker asks for them: what she gets, or why not."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.plan import Part, Plan, RoleYarn
from app.book.sequence import Band, Sequence, SequenceYarn
from app.book.words import SequenceKind
from app.craft.figure import Figure, total
from app.planning.answers import Reckoning
from app.planning.knitting.done import rows_done
from app.planning.needs import meant_yarn, needs_of
from app.planning.sequence_fade import Fade, fade
from app.planning.sequence_piece import Piece, last_row_of, piece_of, taken_by
from app.planning.sequence_refused import Refused
from app.planning.sequence_spread import Knit, by_supply, spread, within
from app.planning.sequence_stray import stray_of
from app.planning.sequence_supply import Need, Supply, supply_of
from app.planning.yarns import Lots

MAIN = "main"
NUMBERED = ("second yarn", "third yarn", "fourth yarn", "fifth yarn", "sixth yarn")


@dataclass(frozen=True, slots=True)
class AskedYarn:
    """A yarn with its shares at the beginning and at the end (None: by what there is of it), and in
    stripes how many rows of it follow each other."""

    yarn_id: str
    share: float | None = None
    share_to: float | None = None
    rows: int = 0


@dataclass(frozen=True, slots=True)
class Asked:
    """Rows are counted from 1 through the part and those it goes `over` into. With `spin_rest` only
    the yarn that leaves a fade is limited by what there is of it."""

    kind: SequenceKind
    yarns: tuple[AskedYarn, ...]
    from_row: int | None = None
    to_row: int | None = None
    spiral: bool = False
    over: tuple[str, ...] = ()
    spin_rest: bool = False


@dataclass(frozen=True, slots=True)
class TurnYarn:
    """A yarn in its turns: rows and metres it knits, the last row of it, and what there is of it.
    `stray` is how far it is from its share where it is furthest, in changes of yarn."""

    role: str
    yarn_id: str
    rows: int
    m: float
    last_row: int
    supply: Supply
    stray: float

    @property
    def left_m(self) -> float:
        return self.supply.there_m - self.m


@dataclass(frozen=True, slots=True)
class Turns:
    """The parts with their sequences, ready to be kept, and the yarns in them."""

    parts: tuple[Part, ...]
    knit: Knit
    yarns: tuple[TurnYarn, ...]


def take_turns(
    book: Book, reckoning: Reckoning, plan: Plan, part_ids: tuple[str, ...], asked: Asked
) -> Turns:
    """The answer for parts knit one after the other; Refused, with the reason, where there is none.
    Nothing is saved."""
    pieces, need = _laid_out(book, plan, part_ids)
    roles = roles_of(plan, pieces[0].part, asked.yarns)
    supplies = _supplies(book, reckoning, plan, set(part_ids), roles, need)
    knit = _knit(pieces, asked, [*_role_of(roles, asked)], supplies)
    _leaves_what_is_knit(book, plan, knit)
    parts = tuple(_with(piece.part, plan, one, roles) for piece, one in knit)
    return Turns(parts, knit, tuple(_told(knit, roles, supplies)))


def _supplies(
    book: Book,
    reckoning: Reckoning,
    plan: Plan,
    parts: set[str],
    roles: dict[str, str],
    whole: Figure,
) -> dict[str, Supply]:
    """What there is for each role; what no row takes comes from the main yarn."""
    beside = sum(one.m for one in reckoning.plan(plan.id).allowances)
    found = {}
    for role, yarn_id in roles.items():
        need = Need(whole, beside if role == MAIN else 0.0, len(roles))
        found[role] = supply_of(book, reckoning, plan, parts, yarn_id, need)
    return found


def _laid_out(book: Book, plan: Plan, part_ids: tuple[str, ...]) -> tuple[list[Piece], Figure]:
    needs = {one.part.id: one for one in needs_of(plan, book.parts_of[plan.id], Lots(book))}
    chosen = [needs[one] for one in part_ids]
    pieces = [piece for one in chosen if (piece := piece_of(one))]
    if len(pieces) != len(chosen):
        raise Refused("no rows")
    return pieces, total((role.need for one in chosen for role in one.roles), "m")


def roles_of(plan: Plan, part: Part, yarns: tuple[AskedYarn, ...]) -> dict[str, str]:
    """The role each yarn has in the part, or gets, with the yarn."""
    named = {one.role: one.yarn_id for one in (*plan.yarns, *part.yarns)}
    main = meant_yarn(plan, part, MAIN) or yarns[0].yarn_id
    of_yarn = {yarn: role for role, yarn in named.items() if role != MAIN} | {main: MAIN}
    free = iter(one for one in NUMBERED if one not in named)
    found: dict[str, str] = {}
    for one in yarns:
        role = of_yarn.get(one.yarn_id) or next(free)
        of_yarn[one.yarn_id] = role
        found[role] = one.yarn_id
    return found


def _leaves_what_is_knit(book: Book, plan: Plan, knit: Knit) -> None:
    """Refused where rows that are knit already would be in another yarn; they are counted through
    all parts, up to the furthest piece of each."""
    done = rows_done(book, plan.id) if plan.state == "being knit" else {}
    before = 0
    for piece, sequence in knit:
        part = piece.part
        behind = max((rows for (id, _), rows in done.items() if id == part.id), default=0)
        was = piece.roles(book.part[part.id].sequence)
        if piece.roles(sequence)[:behind] != was[:behind]:
            raise Refused("knit already", row=before + behind + 1)
        before += piece.rows


def _role_of(roles: dict[str, str], asked: Asked) -> Iterator[str]:
    of_yarn = {yarn: role for role, yarn in roles.items()}
    return (of_yarn[one.yarn_id] for one in asked.yarns)


def _knit(pieces: list[Piece], asked: Asked, roles: list[str], supplies: dict[str, Supply]) -> Knit:
    have = {role: one.usable_m for role, one in supplies.items()}
    limits = {roles[0]: have[roles[0]]} if asked.spin_rest else have
    if asked.kind == "fade" and all(one.share is None for one in asked.yarns):
        come = tuple((role, 1.0) for role in roles[1:])
        return fade(pieces, Fade(roles[0], come, limits, asked.from_row, asked.to_row))
    whole = Sequence(
        kind=asked.kind,
        yarns=_yarns(pieces, asked, roles, have),
        bands=_bands(asked, roles),
        from_row=asked.from_row or 1,
        to_row=asked.to_row,
        spiral=asked.spiral,
    )
    return within(spread(pieces, whole), limits)


def _yarns(
    pieces: list[Piece], asked: Asked, roles: list[str], have: dict[str, float]
) -> tuple[SequenceYarn, ...]:
    if asked.kind == "stripes":
        return ()
    if asked.spiral:
        return tuple(SequenceYarn(role, 1 / len(roles), 1 / len(roles)) for role in roles)
    if all(one.share is None for one in asked.yarns):
        rows = slice((asked.from_row or 1) - 1, asked.to_row)
        found = by_supply(pieces, have, rows)
        return tuple(SequenceYarn(role, share, share) for role, share in found.items())
    begin = [one.share or 0.0 for one in asked.yarns]
    end = [
        a if one.share_to is None else one.share_to
        for a, one in zip(begin, asked.yarns, strict=True)
    ]
    return tuple(
        SequenceYarn(role, a / sum(begin), b / sum(end))
        for role, a, b in zip(roles, begin, end, strict=True)
    )


def _bands(asked: Asked, roles: list[str]) -> tuple[Band, ...]:
    if asked.kind != "stripes":
        return ()
    return tuple(Band(role, one.rows) for role, one in zip(roles, asked.yarns, strict=True))


def _with(part: Part, plan: Plan, sequence: Sequence | None, roles: dict[str, str]) -> Part:
    """A part with its sequence, and the yarns of it that neither it nor its plan names yet."""
    named = {(one.role, one.yarn_id) for one in (*plan.yarns, *part.yarns)}
    new = {role: yarn for role, yarn in roles.items() if (role, yarn) not in named}
    kept = tuple(one for one in part.yarns if one.role not in new)
    yarns = (*kept, *(RoleYarn(role, yarn) for role, yarn in new.items()))
    return replace(part, sequence=sequence, yarns=yarns)


def _told(knit: Knit, roles: dict[str, str], supplies: dict[str, Supply]) -> Iterator[TurnYarn]:
    taken, stray = taken_by(knit), stray_of(knit)
    rows = [role for piece, one in knit for role in piece.roles(one)]
    for role, yarn_id in roles.items():
        last = last_row_of(role, knit)
        yield TurnYarn(
            role,
            yarn_id,
            rows.count(role),
            taken.get(role, 0.0),
            last,
            supplies[role],
            stray.get(role, 0.0),
        )
