"""Patterns are written down under names of their own, put away and taken out."""

from dataclasses import replace
from datetime import date

import pytest

from app.store.records import load_book
from app.work.pattern_save import put_pattern_away, save_pattern, take_pattern_out
from app.work.refusal import Refusal
from tests.patterns import five_sizes

DAY = date(2026, 11, 1)


def test_saved_changed_and_unchanged(writing):
    save_pattern(writing, five_sizes())
    assert load_book(writing).patterns == (five_sizes(),)
    save_pattern(writing, five_sizes(source="an old leaflet"))
    assert load_book(writing).pattern["yoke pattern"].source == "an old leaflet"


def test_two_patterns_have_two_names(writing):
    save_pattern(writing, five_sizes())
    with pytest.raises(Refusal, match="already a pattern called ROUND-YOKE PULLOVER") as refused:
        save_pattern(writing, five_sizes("other", name="ROUND-YOKE PULLOVER"))
    assert refused.value.field == "name"
    assert len(load_book(writing).patterns) == 1


def test_put_away_and_taken_out(writing):
    pattern = save_pattern(writing, five_sizes())
    put_pattern_away(writing, pattern, DAY)
    away = load_book(writing).pattern[pattern.id]
    assert away == replace(pattern, put_away=DAY)
    take_pattern_out(writing, away)
    assert load_book(writing).pattern[pattern.id] == pattern
