"""The sheet of a plan, to print: its page, and besides the work in words, fibre and care."""

from dataclasses import dataclass, fields
from datetime import date

from app.planning.plan_sheet import PlanSheet, plan_sheet
from app.web.pages.garment import GarmentPage, garment_page
from app.web.shown import Shown
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class SheetPage(GarmentPage):
    """`sheet` is what the paper tells beside the figures."""

    sheet: PlanSheet


def sheet_page(known: Known, shown: Shown, plan_id: str, today: date) -> SheetPage:
    """The sheet of a plan. KeyError if it is gone."""
    page = garment_page(known, shown, plan_id, today)
    told = {one.name: getattr(page, one.name) for one in fields(page)}
    return SheetPage(**told, sheet=plan_sheet(known.book, known.book.plan[plan_id]))
