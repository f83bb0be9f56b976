"""Look the data over: the file, the balances, every record, the pictures, and the promises nothing
covers."""

from collections.abc import Iterable

from sqlmodel import Session

from app.book.book import Book
from app.book.checks import check
from app.book.finding import Finding
from app.book.sense import nonsense
from app.planning import reckon
from app.store.balance import wrong_balances
from app.store.examine import disorder
from app.store.records import load_book
from app.work.photo_check import lost_pictures


def look_over(session: Session) -> list[Finding]:
    """Everything that is not as it should be; an empty list when nothing is wrong."""
    file = [Finding("the data file", "contents", text) for text in disorder(session)]
    if file:
        return file
    book = load_book(session)
    found = [*wrong_balances(session), *check(book), *lost_pictures(session, book)]
    return found if nonsense(book) else [*found, *uncovered(book)]


def uncovered(book: Book) -> Iterable[Finding]:
    """The promises, or parts of them, that the shelf no longer holds."""
    for one in reckon(book).uncovered:
        text = f"{one.m:.1f} m of {one.code} are promised, but the skein no longer has them."
        yield Finding(f"{one.plan}, {one.part}", "promises", text)
