"""What is said of yarns that take turns: the answer first, or why it cannot be so."""

from app.book.book import Book
from app.planning.sequence import Asked, Turns
from app.planning.sequence_refused import Refused
from app.web.pages.answer import Sentence, listed
from app.web.shown import Shown

NOTHING_ASKED = Sentence(
    "idle", "Which yarns take turns?", " Choose a second yarn, then see what comes of it."
)


def said(turns: Turns, asked: Asked, noun: str, book: Book, shown: Shown) -> Sentence:
    """The answer in a sentence; rows are counted through all parts it goes over."""
    names = [book.yarn[one.yarn_id].name for one in turns.yarns]
    if asked.kind != "fade":
        word = "Stripes" if asked.kind == "stripes" else "Turn and turn about"
        rows = [
            f"{one.rows} {noun}s of {name}" for one, name in zip(turns.yarns, names, strict=True)
        ]
        return Sentence("enough", f"{word}:", f" {listed(rows)}. {_left(turns, book, shown)}")
    first = begins_at(turns)
    leaves = turns.yarns[0]
    rest = f" {names[0]} ends with {noun} {leaves.last_row}. {_left(turns, book, shown)}"
    return Sentence("enough", f"Begin the fade at {noun} {first}:", rest)


def begins_at(turns: Turns) -> int:
    """The row, counted through all parts, where a fade begins."""
    before = 0
    for piece, sequence in turns.knit:
        if sequence is not None and sequence.kind == "fade":
            return before + sequence.from_row
        before += piece.rows
    return 1


def refused(
    why: Refused, asked: Asked, turns_of: dict[str, str], noun: str, book: Book, shown: Shown
) -> tuple[str, str]:
    """The field a refusal belongs to, and what is said there. `turns_of` gives each role's yarn."""
    yarn_id = turns_of.get(why.role, asked.yarns[0].yarn_id)
    name = book.yarn[yarn_id].name
    at = next((i for i, one in enumerate(asked.yarns, 1) if one.yarn_id == yarn_id), 1)
    match why.reason:
        case "too little":
            reach = f" A quarter of the rows of it reaches {noun} {why.row}." if why.row else ""
            short = shown.short_length(why.short_m)
            return f"yarn_{at}", f"{name} lacks {short}, its reserve kept.{reach}"
        case "too little together":
            return "to_row", f"All of them together lack {shown.short_length(why.short_m)}."
        case "enough without a fade":
            told = f"{name} reaches {noun} {why.row} without a fade."
            return "from_row", f"{told} Say where it is to begin, or let it end later."
        case "no room for a fade":
            return "to_row", f"There are too few {noun}s for a fade between these."
        case "knit already":
            told = f"{noun.capitalize()}s are knit already that would be in another yarn."
            return "from_row", f"{told} Begin at {noun} {why.row} or later."
        case _:
            return (
                "kind",
                "This part has no rows yet in its main yarn: it needs a size and a gauge.",
            )


def _left(turns: Turns, book: Book, shown: Shown) -> str:
    """What is left of each yarn, or what it lacks."""
    told = []
    for one in turns.yarns:
        name = book.yarn[one.yarn_id].name
        if one.left_m >= 0:
            told.append(f"{shown.at_least_length(one.left_m)} of {name}")
        else:
            told.append(f"{shown.short_length(-one.left_m)} of {name} still to be made")
    return f"Left: {listed(told)}."
