"""Cells of a table for a spreadsheet, as text that none takes for a formula."""

MARK = "\ufeff"
"""A byte order mark, so that a spreadsheet reads the file as UTF-8."""

FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "'")


def harmless(cell: object) -> str:
    """A cell as text that no spreadsheet takes for a formula; None becomes an empty cell."""
    text = "" if cell is None else str(cell)
    return f"'{text}" if text.lstrip(" ").startswith(FORMULA) else text


def told_back(cell: str) -> str:
    """The text for which `harmless` wrote this cell; any other cell as it stands."""
    text = cell[1:]
    guarded = cell.startswith("'") and text.lstrip(" ").startswith(FORMULA)
    return text if guarded else cell
