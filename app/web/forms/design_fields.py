"""The fields a design is asked by: their names, and what they hold when the form is opened."""

from collections.abc import Iterable

from app.book.design import Design
from app.book.person import Measure, Person
from app.book.plan import Plan
from app.book.settings import Settings
from app.craft.constructions.drawing import Construction
from app.craft.constructions.wanting import choices_of, sizes_of
from app.craft.gauge import TEN_CM_IN
from app.web.forms.gauge import gauge_values
from app.web.forms.person import field_of
from app.web.forms.plan import main_yarn
from app.web.shown import MINUS, Shown

CHEST = "chest"
"""Asked for wherever a body is: what is not measured is found from it."""


def choice_field(name: str) -> str:
    """The field of a choice ("neckline")."""
    return "choice_" + name.replace(" ", "_")


def ease_field(part: str) -> str:
    """The field of a part's ease."""
    return "ease_" + part.replace(" ", "_")


def band_gauge_field(band: str) -> str:
    """The field of a band's own gauge."""
    return f"band_{band.replace(' ', '_')}_gauge"


def band_needle_field(band: str) -> str:
    """The field of the needle a band is knit on."""
    return f"band_{band.replace(' ', '_')}_needle"


def body_measures(construction: Construction) -> tuple[str, ...]:
    """The measures of a body that are asked for, the chest always with them."""
    if not construction.measures or CHEST in construction.measures:
        return construction.measures
    return (CHEST, *construction.measures)


def measures_asked(construction: Construction) -> tuple[str, ...]:
    """Every measure and size a construction is asked with."""
    return (*body_measures(construction), *sizes_of(construction))


def depth_of(band: str) -> str:
    """The size that is a band's depth."""
    return f"{band} depth"


def design_values(
    plan: Plan | None, construction: Construction, person: Person | None, settings: Settings
) -> dict[str, str]:
    """What the form holds when it is opened. A measure that the person has as well is left blank,
    so that it goes on coming from them."""
    design = plan.design if plan and plan.design else Design(construction.word)
    return {
        "construction": construction.word,
        "name": plan.name if plan else "",
        "person_id": person.id if person else "",
        "yarn_id": main_yarn(plan.yarns) if plan else "",
        **gauge_values(plan.gauge if plan else None, settings),
        **_sizes(construction, design, person, Shown(settings)),
        **_chosen(construction, design),
        **_own_gauges(construction, design, settings),
    }


def _sizes(
    construction: Construction, design: Design, person: Person | None, shown: Shown
) -> dict[str, str]:
    theirs = _by_name(person.measures if person else ())
    own = {name: mm for name, mm in _by_name(design.measures).items() if theirs.get(name) != mm}
    ease = _by_name(design.ease)
    asked = measures_asked(construction)
    measures = {field_of(one): shown.field_size(own.get(one)) for one in asked}
    return measures | {ease_field(one): _signed(ease.get(one), shown) for one in construction.eases}


def _signed(mm: int | None, shown: Shown) -> str:
    return MINUS + shown.field_size(-mm) if mm is not None and mm < 0 else shown.field_size(mm)


def _chosen(construction: Construction, design: Design) -> dict[str, str]:
    chosen = {one.name: one.value for one in design.choices}
    known = choices_of(construction).items()
    return {choice_field(name): chosen.get(name, values[0]) for name, values in known}


def _own_gauges(construction: Construction, design: Design, settings: Settings) -> dict[str, str]:
    chosen = {one.name: one.value for one in design.choices}
    shown, found = Shown(settings), {}
    for band in construction.bands or {}:
        gauge = chosen.get(f"{band} gauge", "")
        found[band_gauge_field(band)] = _gauge_text(gauge, settings)
        needle = chosen.get(f"{band} needle", "")
        found[band_needle_field(band)] = shown.field_number(float(needle)) if needle else ""
    return found


def _gauge_text(kept: str, settings: Settings) -> str:
    """A gauge kept as "24 × 32" in 10 cm, in the measure and the numbers of the settings."""
    if not kept:
        return ""
    factor, shown = TEN_CM_IN[settings.gauge_unit], Shown(settings)
    both = (round(float(one) / factor, 4) for one in kept.split("×"))
    return " × ".join(shown.field_number(one) for one in both)


def _by_name(measures: Iterable[Measure]) -> dict[str, int]:
    return {one.name: one.mm for one in measures}
