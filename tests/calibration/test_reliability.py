"""The score and the picture of the odds in DEVELOPERS.md are what is found."""

from pathlib import Path

import pytest

from tests.calibration.reliability import asked, brier, picture, reliability

pytestmark = pytest.mark.calibration

DEVELOPERS = Path(__file__).parents[2] / "DEVELOPERS.md"


def test_the_docs_show_what_is_found():
    told, docs = list(asked()), DEVELOPERS.read_text(encoding="utf-8")
    assert picture(told) in docs
    assert f"Brier score {brier(told):.3f}" in docs


def test_by_hand():
    told = [(0.1, False), (0.1, True), (0.9, True), (1.0, True)]
    assert brier(told) == pytest.approx((0.01 + 0.81 + 0.01 + 0.0) / 4)
    assert reliability(told) == [
        (pytest.approx(0.1), 0.5, 2),
        (pytest.approx(0.95), 1.0, 2),
    ]
