"""The words of "which size?": the answer as a sentence, and the cells of its table."""

from collections.abc import Iterator, Mapping

from app.craft.pattern_gauge import Case
from app.craft.sizes import Measured
from app.craft.working import Step
from app.planning.pattern_fit import Fit
from app.planning.pattern_lengths import ARM, BODY, LengthFit, PieceAsKnit
from app.planning.pattern_yarn import SizeYarn
from app.planning.which_size import SizeAnswer, WhichSize
from app.web.pages.answer import Sentence, Tone
from app.web.pages.effect import NO_METRE
from app.web.pages.gauge_said import counts_said
from app.web.shown import Shown

FACTORS: Mapping[Case, str] = {
    "stitches": "rows own ÷ rows of the pattern × √(S of the pattern ÷ S own)",
    "stitches and rows": "√(S of the pattern ÷ S own)",
    "size": "√(S own ÷ S of the pattern)",
}
OF_LENGTH: Mapping[str, tuple[str, str]] = {
    BODY: ("From neck to lower edge it comes to", "body"),
    ARM: ("Its sleeves come to", "arm to the underarm"),
}
"""How a length of the garment is told, and that of the body."""

MUNDEN = "Munden 1959; S is stitches × rows in an area"


def size_sentence(found: WhichSize, shown: Shown) -> Sentence:
    """ "Cast on for size M: 98 cm, 6 cm of ease; knit the body to 40 cm. It takes 1 010 ± 90 m; the
    shelf covers it 19 times in 20." """
    best = found.best
    whole = f"{_cm(best.whole.garment_cm, shown)}, {ease_said(best.whole, shown)}"
    rest = f" {whole}{_knit_to(best.pieces, shown)}.{_takes(best, shown)}"
    if best.beyond:
        return Sentence(
            "short", f"No size fits as you asked; size {best.size.name} is nearest:", rest
        )
    return Sentence(_tone(best.yarn), f"Cast on for size {best.size.name}:", rest)


def tight_sentence(best: SizeAnswer, shown: Shown) -> str:
    """Where the recommended size is tightest, or that it is wider than was asked."""
    if best.too_wide:
        over = best.beyond * best.whole.body.cm
        return f"It comes out {_cm(over, shown)} wider than the most you asked for."
    one = best.tightest
    body, wide = _cm(one.body.cm, shown), _cm(one.garment_cm, shown)
    source = "" if one.body.standing == "measured" else ", which nobody measured"
    return f"It is tightest at the {one.place}: {wide} around {body}{source}."


def ease_said(fit: Fit, shown: Shown) -> str:
    """ "6 cm of ease", "2 cm tighter than the chest", "no ease"."""
    tenths = round(fit.ease_cm, 1)
    if tenths < 0:
        return f"{_cm(-tenths, shown)} tighter than the {fit.place}"
    return f"{_cm(tenths, shown)} of ease" if tenths else "no ease"


def tightest_said(one: SizeAnswer, shown: Shown) -> str:
    """The tightest place in a cell; its ease where that stands in no other."""
    fit = one.tightest
    return fit.place if fit is one.whole else f"{fit.place}: {ease_said(fit, shown)}"


def piece_said(piece: PieceAsKnit, shown: Shown) -> str:
    """ "cast on 229, 112 rows, 40 cm": the piece as it is knit at the own gauge."""
    count = piece.count
    begun = f"cast on {count.stitches}"
    ended = f", to {count.stitches_to} stitches" if count.stitches_to != count.stitches else ""
    return f"{begun}{ended}, {count.rows} rows, {_piece_cm(piece, shown)}"


def lengths_said(one: SizeAnswer, shown: Shown) -> str:
    """The lengths of the pieces in a cell, and which are longer or shorter than the body."""
    told = ", ".join(f"{piece.name.lower()} {_piece_cm(piece, shown)}" for piece in one.pieces)
    off = [_off(fit, shown) for fit in one.lengths if fit.longer_cm]
    return f"{told}; {' and '.join(off)}" if off else told


def knit_these(one: SizeAnswer, shown: Shown) -> tuple[str, ...]:
    """Each length against the wearer's, and what to knit where they differ: "Body and yoke come to
    62 cm, 3 cm longer than the body, 59 cm. Knit the body 104 rows, 37.1 cm." """
    return tuple(_against(fit, shown) for fit in one.lengths)


def _against(fit: LengthFit, shown: Shown) -> str:
    what, body = OF_LENGTH[fit.place]
    source = "" if fit.body.standing == "measured" else ", which nobody measured"
    comes = f"{what} {_cm(fit.garment_cm, shown)}"
    whose = f"the {body}, {_cm(fit.body.cm, shown)}{source}"
    if not fit.longer_cm:
        return f"{comes}: as long as {whose}."
    by = f"{_cm(abs(fit.longer_cm), shown)} {'longer' if fit.longer_cm > 0 else 'shorter'}"
    knit = f"knit the {fit.piece.lower()} {fit.rows} rows, {_cm(fit.knit_cm, shown)}"
    return f"{comes}, {by} than {whose}; to fit, {knit}."


def _off(fit: LengthFit, shown: Shown) -> str:
    _, body = OF_LENGTH[fit.place]
    way = "longer" if fit.longer_cm > 0 else "shorter"
    return f"{_cm(abs(fit.longer_cm), shown)} {way} than the {body}"


def metres_said(yarn: SizeYarn | None, shown: Shown) -> str:
    """What a size takes, tails and swatch with it."""
    return "not told" if yarn is None else shown.length_give_or_take(yarn.need)


def shelf_said(yarn: SizeYarn | None, shown: Shown) -> str:
    """How often what is free of the yarn covers a size, and what it is short of."""
    if yarn is None:
        return ""
    if yarn.odds is None or yarn.short_m is None:
        return "no yarn chosen yet"
    short = f", short by {shown.short_length(yarn.short_m)}" if yarn.short_m >= NO_METRE else ""
    return f"{shown.odds(yarn.odds)}{short}"


def both_said(best: SizeAnswer, shown: Shown) -> str:
    """Counts and stated amount side by side, where they contradict each other."""
    counts, stated = metres_said(best.counted, shown), metres_said(best.stated, shown)
    return (
        f"By its counts it takes {counts}; by the amount the pattern states, {stated}. They differ "
        "by more than both can be wrong. Is a part missing from the table, is the stated amount of "
        "another yarn or size, is the gauge in 4 inches? Look, then choose the one you trust."
    )


def steps(found: WhichSize, shown: Shown) -> tuple[Step, ...]:
    """How the recommended size was worked out."""
    best, pattern, own = found.best, found.pattern.gauge, found.own
    gauges = (
        f"from {counts_said(pattern.stitches, pattern.rows, shown)}"
        f" to {counts_said(own.stitches, own.rows, shown)}"
    )
    factor = Step(
        "Yarn, as a share of the pattern's own",
        f"{FACTORS[found.case]}, {gauges}",
        round(found.factor, 3),
        "",
        source=MUNDEN,
        standing="derived",
    )
    return (factor, *_places(best))


def _places(best: SizeAnswer) -> Iterator[Step]:
    for fit in best.fits:
        wanted = f"at least {fit.least_cm:.1f} cm of ease wanted"
        how = f"garment {fit.garment_cm:.1f} cm, {wanted}"
        yield _of_body(f"Around the {fit.place}", how, fit.body)
    for length in best.lengths:
        how = f"the garment comes to {length.garment_cm:.1f} cm by your rows"
        yield _of_body(length.place.capitalize(), how, length.body)


def _of_body(what: str, how: str, one: Measured) -> Step:
    return Step(what, how, one.cm, "cm", one.u or None, one.source, one.standing)


def _takes(best: SizeAnswer, shown: Shown) -> str:
    yarn = best.yarn
    if yarn is None:
        return " The pattern does not tell what it takes."
    shelf = ""
    if yarn.odds is not None:
        times = shown.odds(yarn.odds)
        shelf = f"; the shelf covers it {times}"
        shelf = f"; the shelf {times} covers it" if times == "hardly ever" else shelf
    return f" It takes {metres_said(yarn, shown)}{shelf}."


def _tone(yarn: SizeYarn | None) -> Tone:
    """A size that fits is good news only where the wool is there too."""
    covered = yarn is not None and yarn.short_m is not None and yarn.short_m < NO_METRE
    return "enough" if covered else "idle"


def _knit_to(pieces: tuple[PieceAsKnit, ...], shown: Shown) -> str:
    """The length of the piece that is cast on first."""
    if not pieces:
        return ""
    return f"; knit the {pieces[0].name.lower()} to {_piece_cm(pieces[0], shown)}"


def _piece_cm(piece: PieceAsKnit, shown: Shown) -> str:
    return _cm(piece.length_cm, shown)


def _cm(cm: float, shown: Shown) -> str:
    return shown.size(10 * cm)
