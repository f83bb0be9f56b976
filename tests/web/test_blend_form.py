"""A blend on the form of a fleece."""

from dataclasses import replace

import pytest

from app.book.settings import Settings
from app.book.spinning import FibreShare
from app.web.forms.blend import blend_values, read_blend
from app.web.forms.reader import Reader
from app.web.shown import Shown

COMMA = replace(Settings(), decimal=",")
WOOL_SILK = (FibreShare("wool", 70), FibreShare("silk", 30))


def read(text: str, settings: Settings | None = None) -> tuple[Reader, tuple[FibreShare, ...]]:
    reader = Reader({"blend": text}, settings or Settings())
    return reader, read_blend(reader)


@pytest.mark.parametrize(
    "text",
    [
        "70 wool, 30 silk",
        "70% Wool,30 % silk",
        "wool 70; silk 30",
        "70 wool;30 silk;",
        "wool 70 %, silk 30 %",
    ],
)
def test_a_blend_is_read_as_people_write_it(text):
    reader, blend = read(text)
    assert reader.ok, reader.errors
    assert blend == WOOL_SILK


def test_a_decimal_comma_is_no_comma_between_fibres():
    reader, blend = read("62,5 wool, 37,5 silk", COMMA)
    assert reader.ok
    assert blend == (FibreShare("wool", 62.5), FibreShare("silk", 37.5))


def test_what_is_shown_is_read_again():
    for settings in (Settings(), COMMA):
        blend = (FibreShare("wool", 62.5), FibreShare("silk", 30))
        assert read(blend_values(blend, Shown(settings))["blend"], settings)[1] == blend
    assert read("")[1] == ()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("wool and silk", "Write each fibre with its percent"),
        ("0 wool", "Write each fibre with its percent"),
        ("170 wool", "Write each fibre with its percent"),
        ("50 wool, 50 wool", "Name each fibre once."),
        ("70 wool, 40 silk", "This comes to 110"),
        ("7..0 wool", ""),
        ("; ".join(f"5 fibre{chr(97 + one)}" for one in range(13)), "Name at most 12 fibres"),
    ],
)
def test_what_is_no_blend_is_said(text, said):
    reader, _ = read(text)
    assert said in reader.errors["blend"]
