import pytest

from app.craft.care import DROOPS, PLANT, SILK, UNKNOWN, WOOL, care


@pytest.mark.parametrize(
    ("fibres", "told"),
    [
        (("wool",), (WOOL,)),
        (("Merino", "cotton"), (WOOL,)),
        (("alpaca",), (WOOL, DROOPS)),
        (("wool and silk",), (WOOL, DROOPS, SILK)),
        (("linen", "hemp"), (PLANT,)),
        (("something else",), (UNKNOWN,)),
        ((), (UNKNOWN,)),
    ],
)
def test_the_gentlest_way_that_any_fibre_wants(fibres: tuple[str, ...], told: tuple[str, ...]):
    assert care(fibres) == told
