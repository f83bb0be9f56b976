"""The tables, a file each: a module in here with a `TABLE` is a table of the room."""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from app.web.pages.table import GROUPS, Table


@cache
def all_tables() -> dict[str, Table]:
    """Every table by its word, in the order in which they are listed."""
    names = [one.name for one in iter_modules(__path__, f"{__name__}.")]
    found: list[Table] = [import_module(name).TABLE for name in names]
    found.sort(key=lambda one: (GROUPS.index(one.group), one.place, one.title))
    return {one.word: one for one in found}
