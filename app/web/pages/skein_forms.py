"""The pages with the forms of a skein: added, bought, weighed, changed, put away."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.holding import Holding
from app.book.stamp import stamp
from app.web.forms.filled import Filled
from app.web.forms.fleece_weigh import REASONS
from app.web.forms.options import names_by_id, with_none
from app.web.forms.skein import TAKEN
from app.web.forms.skein import WOOL as NEW_WOOL
from app.web.forms.skein_weigh import GOINGS, WOOL
from app.web.forms.skein_yarn import yarn_options
from app.web.forms.yarn import TWISTS


@dataclass(frozen=True, slots=True)
class NewSkeinPage:
    """`plan_id` is the garment the skein was made for, where a work list line led here."""

    form: Filled
    yarns: dict[str, str]
    fleeces: dict[str, str]
    fibres: list[str]
    taken: dict[str, str]
    wool: dict[str, str]
    twists: dict[str, str]
    plan_id: str


@dataclass(frozen=True, slots=True)
class SkeinFormPage:
    """A form of a skein that is there already."""

    form: Filled
    skein: Holding
    yarns: dict[str, str]
    wool: dict[str, str]
    goings: dict[str, str]
    reasons: tuple[str, ...]


def new_skein_page(book: Book, form: Filled) -> NewSkeinPage:
    return NewSkeinPage(
        form=form,
        yarns=yarn_options(book),
        fleeces=with_none("none, or not known", names_by_id(book.fleeces)),
        fibres=known_fibres(book),
        taken=TAKEN,
        wool=NEW_WOOL,
        twists=TWISTS,
        plan_id=form.values.get("plan", ""),
    )


def known_fibres(book: Book) -> list[str]:
    """The fibres of the maker's own fleeces and yarns."""
    of_yarns = {one.fibre for one in book.yarns}
    return sorted(of_yarns | {one.fibre for one in book.fleeces})


def skein_form_page(
    skein: Holding, form: Filled, yarns: dict[str, str] | None = None
) -> SkeinFormPage:
    marked = Filled(form.values, form.errors, form.stamp or stamp(skein))
    return SkeinFormPage(marked, skein, yarns or {}, WOOL, GOINGS, REASONS)
