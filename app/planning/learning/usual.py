"""What is usual before anything is learned: common practice, or what the maker set herself."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from app.book.settings import Settings, StepLosses
from app.craft.breeds import typical_yield
from app.craft.working import Standing

SETTING: Mapping[str, str] = MappingProxyType(
    {
        "skirt": "skirt",
        "card": "carded",
        "comb": "combed",
        "spin": "spin",
        "finish": "finish",
        "shrink": "ply_shrink",
    }
)
"""The setting in which each factor of a loss stands."""

PRACTICE = StepLosses()


@dataclass(frozen=True, slots=True)
class Pace:
    """An hour's work in `unit`, m or g, as it usually is; what it is taken from."""

    per_hour: float
    unit: str
    standing: Standing
    source: str


WHEEL_SOURCE = "between 32 g an hour of a 200 tex single and the fastest of a contest in 2009"
SPINDLE_SOURCE = "spindles in print, 12.5 to 26 g an hour, of a 175 tex single"
PRACTICE_SOURCE = "common practice, no source"

PACES: Mapping[str, Pace] = MappingProxyType(
    {
        "skirt": Pace(1500.0, "g", "practice", PRACTICE_SOURCE),
        "scour": Pace(700.0, "g", "practice", PRACTICE_SOURCE),
        "pick": Pace(150.0, "g", "practice", PRACTICE_SOURCE),
        "card": Pace(70.0, "g", "practice", PRACTICE_SOURCE),
        "comb": Pace(50.0, "g", "practice", PRACTICE_SOURCE),
        "blend": Pace(80.0, "g", "practice", PRACTICE_SOURCE),
        "spin": Pace(180.0, "m", "derived", WHEEL_SOURCE),
        "spin on a spindle": Pace(110.0, "m", "derived", SPINDLE_SOURCE),
        "ply": Pace(250.0, "m", "practice", PRACTICE_SOURCE),
        "finish": Pace(300.0, "g", "practice", PRACTICE_SOURCE),
        "wind": Pace(800.0, "m", "practice", PRACTICE_SOURCE),
        "knit": Pace(27.0, "m", "practice", "25 stitches of 1.8 cm in a minute, common practice"),
    }
)
"""Only attended time; what dries, dries alone."""


def set_herself(factor: str, settings: Settings) -> bool:
    """True where a loss was changed from common practice: then it stays in force."""
    name = SETTING.get(factor)
    return name is not None and getattr(settings.steps, name) != getattr(PRACTICE, name)


def usual_kept(factor: str, settings: Settings) -> float:
    """The share usually kept by the settings, as they are; KeyError for a factor of no setting."""
    lost: float = getattr(settings.steps, SETTING[factor])
    return 1 - lost / 100


def usual_yield(breed: str) -> float:
    """The share of skirted wool that a breed leaves when scoured, by print."""
    return typical_yield(breed).figure.value / 100
