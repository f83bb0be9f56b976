"""A grist asked for in an address: a question, not a record."""

from collections.abc import Mapping

from app.book.settings import Settings
from app.craft.counts import from_tex, to_tex
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.shown import Shown, nearest

FINEST_TEX, THICKEST_TEX = 15.0, 10_000.0


def filled_grist(tex: float, settings: Settings) -> Filled:
    """The field with a grist in whole numbers of her unit."""
    return Filled(
        {"grist": Shown(settings).field_number(nearest(from_tex(settings.grist_unit, tex)))}
    )


def read_grist(asked: Mapping[str, str], settings: Settings, usual: float) -> tuple[Reader, float]:
    """The linear density in tex that was asked for, or `usual` where nothing was or it is wrong."""
    reader = Reader(asked, settings)
    unit = settings.grist_unit
    ends = sorted(from_tex(unit, tex) for tex in (FINEST_TEX, THICKEST_TEX))
    number = reader.number("grist", least=float(nearest(ends[0])), most=float(nearest(ends[1])))
    return reader, to_tex(unit, number) if number else usual
