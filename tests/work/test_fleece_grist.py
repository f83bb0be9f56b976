from sqlmodel import Session

from app.book.yarn import Yarn
from app.store.records import load_book, put
from app.work.fleece_grist import USUAL_TEX, likely_tex
from tests.books import a_book, a_fleece, a_skein, a_yarn
from tests.work.flock import a_raw_fleece


def test_what_was_spun_from_it_comes_first():
    """96 g in 213 m is 450.70 tex."""
    book = a_book(
        a_fleece(),
        a_yarn(fleece_id="Bramble", target_tex=300.0),
        a_skein(fleece_id="Bramble"),
        held={"G-1": (96, 213)},
    )
    assert round(likely_tex(book, "Bramble"), 2) == 450.70


def test_then_what_is_aimed_at():
    book = a_book(a_fleece(), a_yarn(fleece_id="Bramble", target_tex=300.0))
    assert likely_tex(book, "Bramble") == 300.0


def test_then_the_usual(writing: Session):
    a_raw_fleece(writing)
    put(writing, Yarn("other", "other", target_tex=100.0))
    assert likely_tex(load_book(writing), "bramble") == USUAL_TEX
