"""What the skeins already made of a yarn say of the next ones: the sample skein, fed back."""

from dataclasses import dataclass
from math import exp

from app.book.book import Book
from app.book.yarn import Yarn
from app.craft.spinning import drift, sample_correction
from app.craft.working import Step
from app.planning.learning.skeins_seen import grist_seen
from app.planning.spinning_checks import checks_of


@dataclass(frozen=True, slots=True)
class Sample:
    """So many skeins of a yarn came to `tex`; their singles had `spun_tex`, by the checks made on
    the way, or as they were meant. The single's tex is to be multiplied by `factor`."""

    skeins: int
    tex: float
    spun_tex: float
    checked: bool
    factor: float
    step: Step


def sample_of(book: Book, yarn: Yarn, target_tex: float, single_tex: float) -> Sample | None:
    """What a yarn's own finished skeins say, where `single_tex` was meant for the single; None
    before there is one. Skeins count alike, whatever they weigh."""
    seen = [one for one in grist_seen(book) if one.names.yarn == yarn.id]
    if not seen or not yarn.target_tex:
        return None
    tex = yarn.target_tex * sum(one.measured for one in seen) / len(seen)
    last = max(one.day for one in seen)
    checks = [one.tex for one in checks_of(book, yarn.id) if one.day <= last]
    strayed = drift(checks, single_tex)
    spun = single_tex * exp(strayed.value) if strayed else single_tex
    factor = sample_correction(target_tex, tex, single_tex, spun)
    told = "their singles were checked" if strayed else "their singles were as meant"
    how = f"{target_tex:.1f} tex wanted ÷ {tex:.1f} tex of the skeins made, {told}"
    step = Step("Correction by the skeins made", how, factor, "times", None, "", "measured")
    return Sample(len(seen), tex, spun, strayed is not None, factor, step)
