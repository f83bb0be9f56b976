"""The page of the settings."""

from collections.abc import Mapping
from dataclasses import dataclass, fields

from app.book.person import Person
from app.book.settings import Settings, StepLosses
from app.web.forms.filled import Filled
from app.web.forms.prices import price_fields
from app.web.forms.settings import CHOICES, LENGTH_UNITS, MASS_UNITS, STEPS, Choice
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class LossField:
    """A loss from fleece to yarn: its field, what it is called, and common practice."""

    name: str
    label: str
    practice: str


@dataclass(frozen=True, slots=True)
class SettingsPage:
    form: Filled
    sure: str
    units: str
    choices: Mapping[str, Choice]
    losses: tuple[LossField, ...]
    prices: tuple[tuple[str, str, str], ...]
    people: tuple[str, ...]


def settings_page(settings: Settings, people: list[Person], form: Filled) -> SettingsPage:
    """The settings as they are, or as they were typed with their faults."""
    shown = Shown(settings)
    usual = StepLosses()
    losses = tuple(
        LossField(f"step_{one.name}", STEPS[one.name], shown.percent(getattr(usual, one.name)))
        for one in fields(StepLosses)
    )
    return SettingsPage(
        form=form,
        sure=shown.odds(settings.sureness_pct / 100),
        units=f"{LENGTH_UNITS[settings.length_unit]} and {MASS_UNITS[settings.mass_unit]}",
        choices=CHOICES,
        losses=losses,
        prices=price_fields(),
        people=tuple(one.name for one in people),
    )
