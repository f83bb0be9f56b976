"""The form of a garment plan."""

from collections.abc import Mapping
from dataclasses import replace

from app.book.ids import new_id
from app.book.plan import Losses, Plan, RoleYarn
from app.book.settings import Settings
from app.book.swatch import Swatch
from app.book.words import PLAN_STATES
from app.web.forms.gauge import gauge_values
from app.web.forms.gauge_swatch import read_gauge_or_swatch
from app.web.forms.reader import Reader
from app.web.shown import Shown

STATES: dict[str, str] = {state: state for state in PLAN_STATES}
LEAST_SURE, MOST_SURE = 50.0, 99.0
"""Percent between which a wanted sureness makes sense."""

MOST_UNUSABLE = 50.0
MAIN = "main"


def read_plan(
    values: Mapping[str, object],
    settings: Settings,
    people: Mapping[str, str],
    yarns: Mapping[str, str],
    swatches: Mapping[str, Swatch],
    old: Plan | None = None,
) -> tuple[Reader, Plan]:
    """What was typed and the plan it describes; the plan counts only where the reader is ok.

    `people` and `yarns` are names by id, `swatches` those its gauge can be taken from.
    """
    reader = Reader(values, settings)
    plan = replace(
        old or Plan(id=new_id(), name=""),
        name=reader.text("name", required=True, longest=80),
        person_id=reader.choice("person_id", {"": "", **people}) or None,
        wanted_by=reader.day("wanted_by"),
        state=reader.choice("state", PLAN_STATES) or "intended",
        gauge=read_gauge_or_swatch(reader, swatches, old.gauge if old else None),
        yarns=read_yarns(reader, yarns, old.yarns if old else ()),
        sureness_pct=_sureness(reader),
        losses=_losses(reader, settings),
        notes=reader.text("notes", longest=4000),
    )
    return reader, plan


def plan_values(plan: Plan | None, settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened; a new plan is blank."""
    plan = plan or Plan(id="", name="")
    return {
        "name": plan.name,
        "person_id": plan.person_id or "",
        "wanted_by": plan.wanted_by.isoformat() if plan.wanted_by else "",
        "state": plan.state,
        "yarn_id": main_yarn(plan.yarns),
        "sureness_pct": Shown(settings).field_number(plan.sureness_pct),
        "notes": plan.notes,
        **gauge_values(plan.gauge, settings),
        **_loss_values(plan.losses, settings),
    }


def read_yarns(
    reader: Reader, yarns: Mapping[str, str], old: tuple[RoleYarn, ...]
) -> tuple[RoleYarn, ...]:
    """The main yarn chosen, before the yarns of the other roles, which stay as they were."""
    chosen = reader.choice("yarn_id", {"": "", **yarns})
    if chosen == main_yarn(old):
        return old
    others = tuple(one for one in old if one.role != MAIN)
    return (RoleYarn(MAIN, chosen), *others) if chosen else others


def main_yarn(yarns: tuple[RoleYarn, ...]) -> str:
    """The id of the main yarn, or an empty string while it is to be chosen."""
    return next((one.yarn_id for one in yarns if one.role == MAIN), "")


def _sureness(reader: Reader) -> float | None:
    asked = reader.number("sureness_pct")
    if asked is not None and not LEAST_SURE <= asked <= MOST_SURE:
        limits = f"{LEAST_SURE:g} and {MOST_SURE:g} %"
        reader.errors.setdefault("sureness_pct", f"Ask for something between {limits}.")
    return asked


def _losses(reader: Reader, settings: Settings) -> Losses | None:
    """The losses typed; a field left blank takes the setting, all blank take all of them."""
    tail = reader.size("tail")
    swatch = reader.length("swatch")
    unusable = reader.number("unusable_pct")
    mending = reader.length("mending")
    if unusable is not None and not 0 <= unusable <= MOST_UNUSABLE:
        limits = f"0 and {MOST_UNUSABLE:g} %"
        reader.errors.setdefault("unusable_pct", f"Say something between {limits}.")
    if all(one is None for one in (tail, swatch, unusable, mending)):
        return None
    usual = settings.losses
    return Losses(
        tail_mm=usual.tail_mm if tail is None else tail,
        swatch_mm=usual.swatch_mm if swatch is None else swatch,
        unusable_pct=usual.unusable_pct if unusable is None else unusable,
        mending_mm=usual.mending_mm if mending is None else mending,
    )


def _loss_values(losses: Losses | None, settings: Settings) -> dict[str, str]:
    if losses is None:
        return dict.fromkeys(("tail", "swatch", "unusable_pct", "mending"), "")
    shown = Shown(settings)
    return {
        "tail": shown.field_size(losses.tail_mm),
        "swatch": shown.field_length(losses.swatch_mm),
        "unusable_pct": shown.field_number(losses.unusable_pct),
        "mending": shown.field_length(losses.mending_mm),
    }
