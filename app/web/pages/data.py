"""The page of the data: what there is, backups, export and import."""

from dataclasses import dataclass, field
from pathlib import Path

from app.web.forms.filled import Filled
from app.web.pages.answer import Sentence
from app.work.data_count import DataCount

MOST_BACKUPS = 10


@dataclass(frozen=True, slots=True)
class DataPage:
    """`problems` are what is wrong with a document that was to be imported, a line each."""

    sentence: Sentence
    folder: str
    backups: tuple[str, ...]
    more_backups: int
    empty: bool
    form: Filled = field(default_factory=Filled)
    problems: tuple[str, ...] = ()


def data_page(
    found: DataCount, folder: Path, form: Filled | None = None, problems: tuple[str, ...] = ()
) -> DataPage:
    """What the data page shows."""
    return DataPage(
        sentence=_sentence(found),
        folder=str(folder),
        backups=tuple(str(one) for one in found.backups[:MOST_BACKUPS]),
        more_backups=max(0, len(found.backups) - MOST_BACKUPS),
        empty=found.empty,
        form=form or Filled(),
        problems=problems,
    )


def _sentence(found: DataCount) -> Sentence:
    if found.empty:
        return Sentence(
            "idle", "Your book is empty.", " Begin with a fleece, or import a document."
        )
    counts = (
        _counted(found.fleeces, "fleece", "fleeces"),
        _counted(found.skeins, "skein", "skeins"),
        _counted(found.garments, "garment", "garments"),
    )
    return Sentence("idle", "Your book holds", f" {', '.join(counts[:-1])} and {counts[-1]}.")


def _counted(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
