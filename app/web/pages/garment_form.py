"""The pages on which a garment and its parts are written down."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Part, Plan
from app.book.shape import Runs
from app.book.stamp import stamp
from app.book.swatch import gauge_of
from app.craft.constructions import constructions
from app.planning.knit_with import told_by
from app.web.forms.filled import Filled
from app.web.forms.gauge import MEASURES, WASHED
from app.web.forms.gauge_swatch import FIELD, swatches_offered
from app.web.forms.options import names_by_id, with_none
from app.web.forms.part import EDGE_WORDS, WAYS, part_values
from app.web.forms.part_changes import USE_WORDS, is_open, pattern_words, place_words
from app.web.forms.plan import STATES, plan_values
from app.web.pages.gauge_said import gauge_said
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class PlanFormPage:
    """`plan` is None for a new one; the options are words by value; `kinds` are what can be planned
    from measurements."""

    plan: Plan | None
    action: str
    back: str
    form: Filled
    people: Mapping[str, str]
    yarns: Mapping[str, str]
    states: Mapping[str, str]
    swatches: Mapping[str, str]
    measures: Mapping[str, str]
    washed: Mapping[str, str]
    usual_sureness: float
    kinds: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class ChangesShown:
    """The changes a maker makes: what can be chosen. `open` are those shown at once; `alike` tells
    that all rows work their yarns in one way, which can be changed."""

    open: bool
    alike: bool
    patterns: Mapping[str, str]
    uses: Mapping[str, str]
    second: Mapping[str, str]
    places: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class PartFormPage:
    """`part` is None for a new one; `ways` are those that can be chosen for it."""

    plan: Plan
    part: Part | None
    action: str
    back: str
    form: Filled
    yarns: Mapping[str, str]
    ways: Mapping[str, str]
    edges: Mapping[str, str]
    swatches: Mapping[str, str]
    measures: Mapping[str, str]
    washed: Mapping[str, str]
    changes: ChangesShown


def plan_form_page(book: Book, plan: Plan | None, form: Filled | None = None) -> PlanFormPage:
    """The form of a plan, as it stands or as it was typed."""
    address = f"/garments/{plan.id}" if plan else "/garments"
    return PlanFormPage(
        plan=plan,
        action=f"{address}/change" if plan else "/garments/new",
        back=address,
        form=form or Filled(plan_values(plan, book.settings), {}, stamp(plan) if plan else ""),
        people=with_none("nobody in particular", names_by_id(book.people)),
        yarns=with_none("to be chosen", names_by_id(book.yarns)),
        states=STATES,
        swatches=swatches_said(book, plan),
        measures=MEASURES,
        washed=WASHED,
        usual_sureness=book.settings.sureness_pct,
        kinds={word: one.title for word, one in constructions().items()},
    )


def new_plan_page(book: Book, swatch_id: str) -> PlanFormPage:
    """The form of a new plan, its gauge to be taken from a swatch where one led here."""
    values, swatch = plan_values(None, book.settings), swatches_offered(book, None).get(swatch_id)
    if swatch:
        values |= {FIELD: swatch.id, "yarn_id": swatch.yarn_id or ""}
    return plan_form_page(book, None, Filled(values))


def part_form_page(
    book: Book, plan: Plan, part: Part | None, form: Filled | None = None
) -> PartFormPage:
    """The form of a part, as it stands or as it was typed."""
    address = f"/garments/{plan.id}"
    own_rows = part is not None and isinstance(part.shape, Runs)
    form = form or Filled(part_values(part, book.settings), {}, stamp(part) if part else "")
    return PartFormPage(
        plan=plan,
        part=part,
        action=f"{address}/parts/{part.id}/change" if part else f"{address}/parts/new",
        back=address,
        form=form,
        yarns=with_none("the garment's yarn", names_by_id(book.yarns)),
        ways={way: words for way, words in WAYS.items() if way != "runs" or own_rows},
        edges=EDGE_WORDS,
        swatches=swatches_said(book, part),
        measures=MEASURES,
        washed=WASHED,
        changes=_changes(book, part, form),
    )


def _changes(book: Book, part: Part | None, form: Filled) -> ChangesShown:
    return ChangesShown(
        open=is_open(form, book.settings),
        alike=part is None or told_by(part.shape) is not None,
        patterns=pattern_words(part),
        uses=USE_WORDS,
        second=with_none("none", names_by_id(book.yarns)),
        places=place_words(),
    )


def swatches_said(book: Book, record: Plan | Part | None) -> dict[str, str]:
    """The swatches a gauge can be taken from, each with its gauge in words."""
    shown = Shown(book.settings)
    offered = swatches_offered(book, record).values()
    gauges = [(one, gauge) for one in offered if (gauge := gauge_of(one))]
    words = {one.id: f"{one.name}: {gauge_said(gauge, shown)}" for one, gauge in gauges}
    return with_none("none: as typed below", words)
