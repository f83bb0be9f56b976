"""Take out a yarn that was written down by mistake and that nothing belongs to."""

from sqlmodel import Session

from app.book.book import Book
from app.book.holding import Holding
from app.book.plan import Part, Plan
from app.book.swatch import Swatch
from app.book.yarn import Yarn
from app.store.records import load_book, remove
from app.work.refusal import Refusal


def is_bare(book: Book, yarn: Yarn) -> bool:
    """Whether no skein, swatch or garment names a yarn."""
    made: tuple[Holding | Swatch, ...] = (*book.holdings, *book.swatches)
    knit: tuple[Plan | Part, ...] = (*book.plans, *book.parts)
    named = {one.yarn_id for one in made} | {role.yarn_id for one in knit for role in one.yarns}
    named |= {one.spinning.like_yarn_id for one in book.yarns if one.spinning}
    named |= {one.yarn_id for one in book.stints}
    return yarn.id not in named


def remove_yarn(session: Session, yarn: Yarn) -> None:
    """Take out a yarn; Refusal where something names it."""
    if not is_bare(load_book(session), yarn):
        raise Refusal("name", f"Something belongs to {yarn.name}: it cannot be taken out.")
    remove(session, yarn)
