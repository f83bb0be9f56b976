"""How long a piece of a garment is, in rows."""

from app.book.book import Book
from app.planning.needs import needs_of
from app.planning.yarns import Lots


def rows_of_piece(book: Book, plan_id: str, part_id: str, piece: int) -> int:
    """Rows of one piece of a part; 0 where there is no such piece, or no row of it is known."""
    part = book.part.get(part_id)
    if part is None or part.plan_id != plan_id or not 1 <= piece <= part.copies:
        return 0
    (need,) = needs_of(book.plan[plan_id], [part], Lots(book))
    return need.rows or 0
