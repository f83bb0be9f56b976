from app.book.settings import Settings
from app.planning.trace_layers import layers
from app.planning.trace_streams import Stream
from app.web.pages.wool_flow import way_picture
from app.web.shown import Shown
from tests.books import a_book, a_holding


def test_a_long_name_is_told_by_what_tells_it_from_the_others():
    book = a_book(
        a_holding("A", code="Bramble 2026"),
        a_holding("B", "fibre", code="Bramble 2026, combed 2"),
        a_holding("C", "fibre", code="The neighbour's ewe"),
        a_holding("weighing and moisture", "weighing and moisture", code="weighing and moisture"),
    )
    ends = ("B", "C", "weighing and moisture")
    streams = [Stream("A", end, 1000 - place, place) for place, end in enumerate(ends)]
    way = way_picture(streams, layers(streams), book, Shown(Settings()))
    assert way
    assert [one.name for one in way.blocks] == [
        "Bramble 2026",
        "combed 2",
        "The neighbour'…",
        "weighing",
    ]
    assert way.words[0] == "Bramble 2026 → Bramble 2026, combed 2: 1\u202fg"
