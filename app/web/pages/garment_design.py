"""The page on which a garment is planned from measurements, and seen at once."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.person import Person
from app.book.plan import Plan
from app.book.stamp import stamp
from app.craft.constructions import constructions
from app.craft.constructions.drawing import Construction
from app.craft.constructions.wanting import EASE
from app.web.forms.design_fields import (
    band_gauge_field,
    band_needle_field,
    choice_field,
    depth_of,
    design_values,
)
from app.web.forms.filled import Filled
from app.web.forms.gauge import MEASURES, WASHED
from app.web.forms.options import names_by_id, with_none
from app.web.pages.design_fields import (
    ChoiceAsked,
    SizeAsked,
    choices_asked,
    ease_asked,
    ease_words,
    sizes_asked,
)
from app.web.pages.design_seen import Seen
from app.web.pages.garment_form import swatches_said
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class BandAsked:
    """A band: its depth and its pattern, and the fields of its own gauge and needle."""

    title: str
    depth: SizeAsked
    pattern: ChoiceAsked
    gauge: str
    needle: str


@dataclass(frozen=True, slots=True)
class DesignPage:
    """`plan` is None for a new one. `seen` is the garment as it would be, None while something is
    missing or at fault."""

    plan: Plan | None
    action: str
    back: str
    form: Filled
    construction: Construction
    kinds: Mapping[str, str]
    people: Mapping[str, str]
    yarns: Mapping[str, str]
    swatches: Mapping[str, str]
    gauge_measures: Mapping[str, str]
    washed: Mapping[str, str]
    body: tuple[SizeAsked, ...]
    sizes: tuple[SizeAsked, ...]
    fits: Mapping[str, str]
    ease: tuple[SizeAsked, ...]
    choices: tuple[ChoiceAsked, ...]
    bands: tuple[BandAsked, ...]
    seen: Seen | None


def design_page(
    book: Book,
    shown: Shown,
    plan: Plan | None,
    construction: Construction,
    person: Person | None,
    form: Filled,
    seen: Seen | None = None,
) -> DesignPage:
    """The form as it stands, with the garment it gives."""
    asked = sizes_asked(construction, person, form, shown)
    chosen = choices_asked(construction)
    depths = {depth_of(one) for one in construction.bands or {}}
    return DesignPage(
        plan=plan,
        action=f"/garments/{plan.id if plan else 'new'}/design",
        back=f"/garments/{plan.id}" if plan else "/garments",
        form=form,
        construction=construction,
        kinds={word: one.title for word, one in constructions().items()},
        people=with_none("nobody in particular", names_by_id(book.people)),
        yarns=with_none("to be chosen", names_by_id(book.yarns)),
        swatches=swatches_said(book, plan),
        gauge_measures=MEASURES,
        washed=WASHED,
        body=tuple(one for one in asked.values() if one.of_body),
        sizes=tuple(one for name, one in asked.items() if not one.of_body and name not in depths),
        fits=ease_words(shown) if EASE in chosen else {},
        ease=ease_asked(construction, person, form, shown),
        choices=tuple(
            one
            for name, one in chosen.items()
            if name != EASE and name not in _patterns(construction)
        ),
        bands=_bands_asked(construction, asked, chosen),
        seen=seen,
    )


def _bands_asked(
    construction: Construction, asked: Mapping[str, SizeAsked], chosen: Mapping[str, ChoiceAsked]
) -> tuple[BandAsked, ...]:
    return tuple(
        BandAsked(
            band.capitalize(),
            asked[depth_of(band)],
            chosen[f"{band} pattern"],
            band_gauge_field(band),
            band_needle_field(band),
        )
        for band in construction.bands or {}
    )


def opened_form(
    book: Book, plan: Plan | None, construction: Construction, person: Person | None
) -> Filled:
    """The form as it is opened: what the plan was drawn from, else blank."""
    values = design_values(plan, construction, person, book.settings)
    return Filled(values, {}, stamp(plan) if plan else "")


def _patterns(construction: Construction) -> set[str]:
    return {f"{band} pattern" for band in construction.bands or {}}


__all__ = ["BandAsked", "DesignPage", "choice_field", "design_page", "opened_form"]
