"""The form of a part that is knit otherwise from here on: its gauge, its yarn, its rows."""

from collections.abc import Mapping

from app.book.settings import Settings
from app.planning.knitting.split import Otherwise
from app.web.forms.gauge import gauge_values, read_gauge
from app.web.forms.needles import MOST_ROWS
from app.web.forms.reader import Reader


def read_otherwise(
    values: Mapping[str, object], settings: Settings, yarns: Mapping[str, str]
) -> tuple[Reader, Otherwise]:
    """How it is knit from here on, at least one thing of it. `yarns` are names by id."""
    reader = Reader(values, settings)
    gauge = read_gauge(reader)
    yarn_id = reader.choice("yarn_id", ("", *yarns), default="")
    rows = reader.whole("rows", least=1, most=MOST_ROWS)
    how = Otherwise(gauge, yarn_id or None, rows)
    if reader.ok and how == Otherwise():
        reader.refuse("rows", "Say what is to be otherwise: the gauge, the yarn or the rows.")
    return reader, how


def otherwise_values(settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened: nothing is otherwise yet."""
    return gauge_values(None, settings) | {"yarn_id": "", "rows": ""}
