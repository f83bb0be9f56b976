"""Groups: roles of a plan's parts that draw on the same yarns, and so suffice or fail together.

A yarn may be promised to any of the parts it is meant for, and two yarns promised to one part may
stand in for each other there; whatever hangs together so is one group.
"""

from dataclasses import dataclass, field

from app.book.plan import Promise
from app.planning.needs import PartNeed, RoleNeed


@dataclass(frozen=True, slots=True)
class Group:
    """`yarn_ids` with the yarn meant first; `roles` are (part id, need) pairs."""

    yarn_ids: tuple[str, ...]
    roles: tuple[tuple[str, RoleNeed], ...]
    promises: tuple[Promise, ...]

    @property
    def part_ids(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(part_id for part_id, _ in self.roles))


@dataclass(slots=True)
class _Bundle:
    yarns: dict[str, None] = field(default_factory=dict)
    roles: list[tuple[str, RoleNeed]] = field(default_factory=list)
    promises: list[Promise] = field(default_factory=list)

    def take(self, other: "_Bundle") -> None:
        self.yarns |= other.yarns
        self.roles += other.roles
        self.promises += other.promises


NO_YARN = ""
"""Roles without any yarn hang together too: one yarn will have to be found for them."""


def groups(
    needs: tuple[PartNeed, ...], promises: list[Promise], yarn_of: dict[str, str | None]
) -> tuple[Group, ...]:
    """The groups of one plan, in the order of its parts. `yarn_of` gives a holding's yarn."""
    bundles: list[_Bundle] = []
    for part in needs:
        for role in part.roles:
            own = [one for one in promises if (one.part_id, one.role) == (part.part.id, role.role)]
            _join(bundles, _bundle(part.part.id, role, own, yarn_of))
    return tuple(
        Group(
            tuple(yarn for yarn in one.yarns if yarn != NO_YARN),
            tuple(one.roles),
            tuple(one.promises),
        )
        for one in bundles
    )


def _bundle(
    part_id: str, role: RoleNeed, own: list[Promise], yarn_of: dict[str, str | None]
) -> _Bundle:
    meant = [role.yarn_id] if role.yarn_id else []
    promised = [yarn_of.get(one.holding_id) or one.holding_id for one in own]
    yarns = dict.fromkeys(meant + promised or [NO_YARN])
    return _Bundle(yarns, [(part_id, role)], own)


def _join(bundles: list[_Bundle], new: _Bundle) -> None:
    met = [one for one in bundles if one.yarns.keys() & new.yarns.keys()]
    if not met:
        bundles.append(new)
        return
    first, *others = met
    for other in others:
        first.take(other)
        bundles.remove(other)
    first.take(new)
