"""Ways out of a shortfall: each is one file here with a `WAY`; a new one is one new file and no
change elsewhere."""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from app.planning.ways_out.way import Way


@cache
def ways() -> tuple[Way, ...]:
    """Every way out, in the order of their words."""
    names = sorted(one.name for one in iter_modules(__path__, f"{__name__}."))
    modules = [import_module(name) for name in names]
    found = [module.WAY for module in modules if hasattr(module, "WAY")]
    return tuple(sorted(found, key=lambda one: one.word))
