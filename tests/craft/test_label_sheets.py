"""Every sheet fits its paper, with labels that do not overlap and type that fits a label."""

import re

import pytest

from app.craft.label_sheets import (
    LINES,
    PADDING_MM,
    PAPERS,
    SHEETS,
    LabelSheet,
    sheet_of,
    usual_sheet,
)

EACH = pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.key)
NARROWEST_QR_MM = 20
"""A code of 33 modules and its quiet zone at half a millimetre each."""


@EACH
def test_labels_lie_on_the_paper_alike_from_both_sides(sheet: LabelSheet):
    for size, first, number, step, extent in (
        (sheet.width_mm, sheet.left_mm, sheet.columns, sheet.across_mm, sheet.paper_mm[0]),
        (sheet.height_mm, sheet.top_mm, sheet.rows, sheet.down_mm, sheet.paper_mm[1]),
    ):
        last = first + (number - 1) * step + size
        assert first >= 0
        assert extent - last == pytest.approx(first, abs=0.2)


@EACH
def test_labels_do_not_overlap(sheet: LabelSheet):
    assert sheet.across_mm >= sheet.width_mm
    assert sheet.down_mm >= sheet.height_mm


@EACH
def test_there_is_room_for_a_code_and_for_lines_that_can_be_read(sheet: LabelSheet):
    assert NARROWEST_QR_MM <= sheet.qr_mm <= sheet.height_mm - 2 * PADDING_MM
    assert sheet.width_mm - sheet.qr_mm - 2 * PADDING_MM >= 30
    assert sheet.text_pt >= 6.5
    assert (LINES - 1) * sheet.text_pt * 25.4 / 72 * 1.22 <= sheet.height_mm - 2 * PADDING_MM


@EACH
def test_a_name_is_count_and_size(sheet: LabelSheet):
    assert re.fullmatch(
        r"(A4|Letter): \d+ (labels|tags) of [\d.]+ × [\d.]+ mm, (\d × \d+|plain paper, to cut)",
        sheet.name,
    )


def test_names_and_keys_tell_them_apart():
    assert len({one.key for one in SHEETS}) == len({one.name for one in SHEETS}) == len(SHEETS)
    assert {one.paper for one in SHEETS} == set(PAPERS)


def test_a_worked_example():
    """Three of 63.5 mm with 2.5 mm between them on 210 mm: (210 − 195.5) / 2 = 7.25 mm each side;
    eight of 33.9 mm on 297 mm: (297 − 271.2) / 2 = 12.9 mm."""
    sheet = sheet_of("a4-24")
    assert sheet is not None
    assert sheet.name == "A4: 24 labels of 63.5 × 33.9 mm, 3 × 8"
    assert (sheet.count, sheet.left_mm, sheet.top_mm) == (24, 7.25, 12.9)
    assert (sheet.qr_mm, sheet.text_pt) == (28.6, 8.7)


def test_by_key_and_by_paper():
    assert sheet_of("another") is None
    assert usual_sheet("Letter").paper == "Letter"
    assert usual_sheet("parchment") == usual_sheet("A4")
    tags = sheet_of("a4-tags")
    assert tags is not None
    assert tags.name == "A4: 10 tags of 85 × 50 mm, plain paper, to cut"
