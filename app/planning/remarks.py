"""Does this yarn suit that part? Firmness at the gauge, fibre and colour; never a name alone."""

from app.book.plan import Plan
from app.book.yarn import Yarn
from app.craft.fabric import firmness, firmness_word
from app.planning.answers import Remark, Taken
from app.planning.needs import PartNeed
from app.planning.yarns import Lots

UNSUITED = {"open", "firm"}


def remarks(plan: Plan, need: PartNeed, taken: tuple[Taken, ...], lots: Lots) -> tuple[Remark, ...]:
    """What to know about the yarns of a part: those promised, or the one meant for it."""
    meant = [role.yarn_id for role in need.roles]
    ids = dict.fromkeys(one.yarn_id for one in taken) or dict.fromkeys(meant)
    yarns = [lots.book.yarn[one] for one in ids if one]
    found = [one for yarn in yarns if (one := firmness_remark(yarn, need, lots))]
    found += _other_swatch(need, meant[0] if meant else None, lots)
    chief = next((one.yarn_id for one in plan.yarns), None) or (meant[0] if meant else None)
    if chief and taken:
        found += [
            one
            for yarn in yarns
            for one in _unlike(yarn, lots.book.yarn[chief])
            if yarn.id != chief
        ]
    return tuple(found)


def firmness_remark(yarn: Yarn, need: PartNeed, lots: Lots) -> Remark | None:
    """How firm the fabric of a part comes out in a yarn; None without a gauge or grist."""
    tex = lots.tex(yarn.id)
    if need.loop is None or tex is None:
        return None
    k = firmness(tex.value, need.loop.value)
    word = firmness_word(k)
    text = f"Firmness {k:.1f}: {word} in {yarn.name}"
    return Remark(text, word in UNSUITED)


def _other_swatch(need: PartNeed, yarn_id: str | None, lots: Lots) -> list[Remark]:
    """Whether the gauge was taken from a swatch of another yarn than the one meant for the part."""
    book = lots.book
    swatch = book.swatch.get(need.gauge.swatch_id or "") if need.gauge else None
    if swatch is None or swatch.yarn_id in (None, yarn_id) or yarn_id is None:
        return []
    knit_in = book.yarn[swatch.yarn_id].name
    return [Remark(f"The swatch {swatch.name} is knit in {knit_in}", True)]


def _unlike(yarn: Yarn, chief: Yarn) -> list[Remark]:
    found = []
    if yarn.fibre.casefold() != chief.fibre.casefold():
        found.append(Remark(f"{yarn.name} is {yarn.fibre}, {chief.name} is {chief.fibre}", True))
    if yarn.colour_name.casefold() != chief.colour_name.casefold():
        found.append(Remark(f"{yarn.name} is another colour than {chief.name}", True))
    return found
