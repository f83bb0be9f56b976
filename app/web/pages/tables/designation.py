"""A yarn's construction in one line, read and written in both orders."""

from app.craft.designation import (
    SOURCE,
    STANDING,
    Designation,
    Fold,
    fold_to_single,
    read_designation,
    single_to_fold,
)
from app.craft.twist_direction import SLOPES
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """What the line says, and the same in the other order where it is known."""
    try:
        yarn = read_designation(asked.words["line"])
    except ValueError as error:
        raise Fault("line", _sentence(str(error))) from None
    single, *outer = yarn.folds
    pieces = 1
    for fold in outer:
        pieces *= fold.pieces
    lines = (
        Line("whole yarn", _tex(shown, yarn.resultant_tex)),
        Line("single", _tex(shown, yarn.single_tex), _turns(shown, single)),
        *(Line(f"fold of {one.pieces}", "twisted", _turns(shown, one)) for one in outer),
        *_orders(yarn),
    )
    return Answer(f"{_said(pieces)}; the single is twisted {_turns(shown, single)}.", lines)


def _said(pieces: int) -> str:
    return "A single yarn" if pieces == 1 else f"A yarn of {pieces} singles"


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."


def _tex(shown: Shown, tex: float | None) -> str:
    return "not told" if tex is None else f"{plain(shown, tex)} tex"


def _turns(shown: Shown, fold: Fold) -> str:
    turns = fold.turns
    if turns is None:
        return "in a way not told"
    if turns.per_m == 0:
        return "not at all"
    return (
        turns.direction
        if turns.per_m is None
        else (f"{turns.direction}, {short(shown, turns.per_m)} turns in a metre")
    )


def _orders(yarn: Designation) -> tuple[Line, ...]:
    """The line in each order that what is known allows."""
    found = []
    for name, write in (("from the fold", fold_to_single), ("from the single", single_to_fold)):
        try:
            found.append(Line(name, write(yarn)))
        except ValueError:
            continue
    return tuple(found)


def sheets(_: Shown) -> tuple[Sheet, ...]:
    signs = (
        ("R", "the linear density of the whole yarn, in tex"),
        ("S or Z and a number", "direction and turns in a metre"),
        ("t0", "not twisted"),
        ("/ or ×", "so many of what follows or goes before, folded"),
        (";", "then the other end: the single, or the whole yarn"),
    )
    rows = tuple(Row(sign, (means,), STANDING, SOURCE) for sign, means in signs)
    slopes = tuple(Row(way, (slope,), "published", "ISO 2") for way, slope in SLOPES.items())
    return (
        Sheet("Signs of the line", "Sign", ("means",), rows, prose=True),
        Sheet("Direction of twist", "Letter", ("the fibres slope",), slopes, prose=True),
    )


TABLE = Table(
    word="designation",
    title="A yarn in one line",
    group="Yarn",
    place=6,
    answers="What does the line of a yarn's construction say?",
    fields=(Field("line", "The line", "text"),),
    ask=ask,
    example=Example(
        {"line": "225 tex Z 320 × 2 S 160; R 450 tex"},
        "225 tex Z 320 × 2 S 160; R 450 tex",
        "A yarn of 2 singles; the single is twisted Z, 320 turns in a metre.",
    ),
    sheets=sheets,
    notes=("The line may be written from the fold to the single or from the single to the fold.",),
    more="iso 1139 construction s z twist direction fold resultant",
)
