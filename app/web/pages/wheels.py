"""The pages of wheels and spindles."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.wheel import Wheel
from app.book.words import WheelKind
from app.web.forms.filled import Filled
from app.web.forms.wheel import KINDS
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class WheelLine:
    """A wheel in the list, in words."""

    id: str
    name: str
    words: str


@dataclass(frozen=True, slots=True)
class WheelsPage:
    lines: tuple[WheelLine, ...]
    away: tuple[WheelLine, ...]


@dataclass(frozen=True, slots=True)
class WheelFormPage:
    """`name` is empty for a new one."""

    form: Filled
    name: str
    action: str
    kinds: Mapping[WheelKind, str]


def wheels_page(wheels: list[Wheel], shown: Shown) -> WheelsPage:
    """Those in use, and those put away."""
    lines = [(one.put_away, WheelLine(one.id, one.name, _words(one, shown))) for one in wheels]
    return WheelsPage(
        tuple(line for away, line in lines if away is None),
        tuple(line for away, line in lines if away is not None),
    )


def wheel_form_page(form: Filled, wheel: Wheel | None) -> WheelFormPage:
    """The form of one, or of a new one."""
    base = "/settings/wheels"
    action = f"{base}/{wheel.id}/change" if wheel else f"{base}/new"
    return WheelFormPage(form, wheel.name if wheel else "", action, KINDS)


def _words(wheel: Wheel, shown: Shown) -> str:
    """ "a wheel, 8 : 1 and 14 : 1, a bobbin holds 110 g" """
    ratios = [f"{shown.number(one.value, 2, least=0)} : 1" for one in wheel.ratios]
    told = [KINDS[wheel.kind], ", ".join(ratios) or "no ratio yet"]
    if wheel.bobbin_mg:
        what = "a bobbin" if wheel.kind == "wheel" else "its cop"
        told.append(f"{what} holds {shown.mass(wheel.bobbin_mg / 1000)}")
    return ", ".join(told)
