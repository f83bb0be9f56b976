"""Constructions: a garment from a body, its ease and a gauge, stitch by stitch.

Each is one file here with a `CONSTRUCTION`; a new one is one new file and no change elsewhere.
"""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from app.craft.constructions.drawing import Construction


@cache
def constructions() -> dict[str, Construction]:
    """Every construction by its word, in the order of their words."""
    names = sorted(one.name for one in iter_modules(__path__, f"{__name__}."))
    modules = [import_module(name) for name in names]
    found = [module.CONSTRUCTION for module in modules if hasattr(module, "CONSTRUCTION")]
    return {one.word: one for one in sorted(found, key=lambda one: one.word)}


def construction_of(word: str) -> Construction:
    """The construction of that word; ValueError for one that has no file here."""
    if word not in constructions():
        raise ValueError(f"no construction is called {word!r}")
    return constructions()[word]
