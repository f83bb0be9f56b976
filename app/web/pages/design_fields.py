"""What the form of a design asks for: each measure with how it is taken and what a blank means."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.person import Person
from app.craft.body import MEASURES
from app.craft.constructions.drawing import Construction
from app.craft.constructions.ease import USUAL, chest_ease, ease_by_part
from app.craft.constructions.wanting import EASE, choices_of, sizes_of
from app.craft.garments import USUAL_CHEST
from app.craft.sizes import EASES, Measured, body
from app.craft.typed import Unclear, length_mm
from app.web.forms.design_fields import body_measures, choice_field, ease_field
from app.web.forms.filled import Filled
from app.web.forms.person import field_of
from app.web.pages.measure_said import assumed_said, by_name, ease_said
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class SizeAsked:
    """The field of a measure or size; the hint says how it is taken and what a blank means."""

    name: str
    label: str
    hint: str
    of_body: bool = False


@dataclass(frozen=True, slots=True)
class ChoiceAsked:
    """The field of a choice with its values in words."""

    name: str
    label: str
    options: Mapping[str, str]


def sizes_asked(
    construction: Construction, person: Person | None, form: Filled, shown: Shown
) -> dict[str, SizeAsked]:
    """Every measure and size by name, those of the body first."""
    known = known_sizes(construction, person, form, shown)
    asked = {}
    for name in body_measures(construction):
        hint = f"{MEASURES[name].capitalize()}. {_blank(name, known[name], person, shown)}".strip()
        asked[name] = SizeAsked(field_of(name), name.capitalize(), hint, True)
    for name, (cm, u) in sizes_of(construction).items():
        hint = _blank(name, Measured(cm, u, "assumed"), None, shown)
        asked[name] = SizeAsked(field_of(name), name.capitalize(), hint)
    return asked


def choices_asked(construction: Construction) -> dict[str, ChoiceAsked]:
    """Every choice by name, the usual value first."""
    return {
        name: ChoiceAsked(choice_field(name), name.capitalize(), {one: one for one in values})
        for name, values in choices_of(construction).items()
    }


def ease_words(shown: Shown) -> dict[str, str]:
    """The charts' names with their amounts: the same word means another amount in another chart."""
    return {one.name: f"{one.name}: {_span(one.low_cm, one.high_cm, shown)}" for one in EASES}


def ease_asked(
    construction: Construction, person: Person | None, form: Filled, shown: Shown
) -> tuple[SizeAsked, ...]:
    """The ease of each part, with what a blank takes."""
    cm = {name: one.cm for name, one in known_sizes(construction, person, form, shown).items()}
    usual = ease_by_part(_chest_ease(form), cm, {})
    return tuple(
        SizeAsked(
            ease_field(name),
            name.capitalize(),
            f"Left blank: {ease_said(usual[name], shown)}.",
        )
        for name in construction.eases
    )


def _chest_ease(form: Filled) -> float:
    try:
        return chest_ease(form.values.get(choice_field(EASE)) or USUAL)
    except ValueError:
        return chest_ease(USUAL)


def known_sizes(
    construction: Construction, person: Person | None, form: Filled, shown: Shown
) -> dict[str, Measured]:
    """Each measure of the body as it is taken now: typed, else the person's, else assumed."""
    names = body_measures(construction)
    taken = {one.name: one.mm / 10 for one in person.measures} if person else {}
    taken |= _typed(names, form, shown)
    if not names:
        return {}
    try:
        known = body(taken.get("chest", USUAL_CHEST.cm), taken)
    except ValueError:
        known = body(USUAL_CHEST.cm)
    return known if "chest" in taken else known | {"chest": USUAL_CHEST}


def _typed(names: tuple[str, ...], form: Filled, shown: Shown) -> dict[str, float]:
    found = {}
    for name in names:
        text = form.values.get(field_of(name), "").strip()
        try:
            mm = length_mm(text, shown.size_unit, shown.settings.decimal) if text else 0
        except Unclear:
            mm = 0
        if mm > 0:
            found[name] = mm / 10
    return found


def _blank(name: str, known: Measured, person: Person | None, shown: Shown) -> str:
    """What a field left blank stands for; nothing where it is filled in and nobody else knows."""
    theirs = by_name(person.measures).get(name) if person else None
    if person and theirs is not None:
        return f"Left blank: {shown.size(theirs)}, as written of {person.name}."
    return "" if known.standing == "measured" else f"Left blank: {assumed_said(known, shown)}."


def _span(low_cm: float, high_cm: float, shown: Shown) -> str:
    """ "5 to 10 cm more", "10 to 5 cm less", "up to 5 cm less"."""
    low, high = ease_said(low_cm, shown), ease_said(high_cm, shown)
    if low == high:
        return low
    if 0 in (low_cm, high_cm):
        return f"up to {high if low_cm == 0 else low}"
    return f"{low.split(shown.size_unit)[0].strip()} to {high}"
