"""What a swatch tells, in sentences."""

from app.craft.cloth import Fullness
from app.craft.figure import Figure
from app.craft.loop_ways import LoopFound
from app.planning.needle_line import NeedleAsked
from app.planning.swatches import SwatchAnswer, Washing
from app.web.pages.answer import Sentence, listed
from app.web.pages.gauge_said import counts_said, gauge_said, measure_said, stitches_said
from app.web.shown import Shown

WAY_WORDS = {"thread": "the thread, unravelled", "weight": "its weight", "gauge": "its gauge"}
CM_PER_IN = 2.54


def swatch_sentence(answer: SwatchAnswer, shown: Shown) -> Sentence:
    """ "22 × 30 in 10 cm, washed: 1.81 cm of yarn in a stitch ± 2 %; ordinary fabric …" """
    if answer.found is None:
        return Sentence("idle", "Nothing measured yet:", " count its stitches and rows.")
    lead = f"{gauge_said(answer.gauge, shown)}:" if answer.gauge else "Not counted yet:"
    rest = f" {loop_said(answer.found.loop, shown)}"
    if answer.fullness:
        rest += f"; {firmness_said(answer.fullness, shown)}"
    return Sentence("idle", lead, f"{rest}.")


def loop_said(loop: Figure, shown: Shown) -> str:
    """ "1.81 cm of yarn in a stitch ± 2 %"."""
    return f"{loop_length(loop, shown)} of yarn in a stitch ± {share_said(loop, shown)}"


def loop_length(loop: Figure, shown: Shown) -> str:
    """A loop in cm, or in inches beside yards, to a hundredth."""
    in_unit = loop.value if shown.size_unit == "cm" else loop.value / CM_PER_IN
    return f"{shown.number(in_unit, 2)}\u202f{shown.size_unit}"


def share_said(figure: Figure, shown: Shown) -> str:
    """How unsure a figure is, in percent of it."""
    percent = 100 * figure.u / figure.value
    return shown.percent(percent, 1 if percent < 5 else 0)


def firmness_said(full: Fullness, shown: Shown) -> str:
    """ "ordinary fabric, firmness 11.7"."""
    return f"{full.word} fabric, firmness {shown.number(full.by_weight, 1)}"


def loft_said(full: Fullness, shown: Shown) -> str:
    """What wraps add where they tell of another firmness; empty where they agree."""
    if not full.loft or full.by_wraps is None:
        return ""
    by_wraps = shown.number(full.by_wraps, 1)
    return f"By its wraps the firmness is {by_wraps}: the yarn is {full.loft} than usual."


def disagreement_said(found: LoopFound) -> str:
    """Ways further apart than their errors allow, and what to do."""
    if not found.disagree:
        return ""
    pairs = [f"{WAY_WORDS[one]} and {WAY_WORDS[other]}" for one, other in found.disagree]
    text = listed(pairs)
    return f"{text[:1].upper()}{text[1:]} lie further apart than their errors: measure once more."


def washing_said(answer: SwatchAnswer, shown: Shown) -> str:
    """What washing did to the swatch, or is expected to do."""
    if answer.washing:
        return _washed(answer.washing, shown)
    if answer.once_washed:
        stitches, rows = answer.once_washed
        counts = counts_said(stitches.value, rows.value, shown)
        share = share_said(stitches, shown)
        return f"Once washed expect about {counts}, each give or take {share}. Wash it to know."
    return ""


def needle_said(asked: NeedleAsked, shown: Shown) -> Sentence:
    """The needle to try for a gauge that was asked for, with its range."""
    if asked.needle is None:
        return Sentence("waiting", "No telling yet:", f" {asked.why[:1].lower()}{asked.why[1:]}")
    low, high = (shown.number(one, 1) for one in asked.between)
    stitches = f"{stitches_said(asked.stitches, shown)} stitches in {measure_said(shown)}"
    sold = " and ".join(f"{shown.field_number(one)}\u202fmm" for one in asked.sold)
    beside = f"; the sizes beside it are {sold}" if len(asked.sold) > 1 else ""
    lead = f"{shown.number(asked.needle.value, 1)}\u202fmm"
    rest = f" for {stitches}, between {low} and {high}\u202fmm 9 times in 10{beside}."
    if asked.beyond:
        rest += " That is beyond the needles you tried."
    return Sentence("idle", lead, rest)


def _washed(washing: Washing, shown: Shown) -> str:
    width = _change(washing.width, "narrower", "wider", shown)
    height = _change(washing.height, "shorter", "longer", shown)
    if not width and not height:
        return "Washing left it as wide and as high as it was, as far as the tape can tell."
    return f"Washing made it {listed([one for one in (width, height) if one])}."


def _change(share: Figure, less: str, more: str, shown: Shown) -> str:
    """ "4 % narrower"; empty where the tape cannot tell."""
    change = share.value - 1
    if abs(change) <= share.u:
        return ""
    return f"{shown.percent(100 * abs(change))} {less if change < 0 else more}"
