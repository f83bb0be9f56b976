"""What the content policy forbids stands in no template, so that no page breaks under it."""

import re
from pathlib import Path

import pytest

from app import paths

TEMPLATES = sorted(paths.TEMPLATES.rglob("*.html"))
FORBIDDEN = {
    "a style attribute": r"\sstyle\s*=",
    "a style element": r"<style\b",
    "an inline handler": r"\son[a-z]+\s*=",
    "an inline handler of htmx": r"hx-on\b",
    "a script without a source": r"<script(?![^>]*\bsrc=)",
    "a value in script": r"""["']js:""",
    "an address of another site": r"""(?:src|href|action)\s*=\s*["']?(?:https?:)?//""",
    "an unescaped value": r"\|\s*safe\b|autoescape\s+false",
    "a script address": r"javascript:",
}


@pytest.mark.parametrize(
    "file", TEMPLATES, ids=lambda file: file.relative_to(paths.TEMPLATES).as_posix()
)
def test_a_template_holds_nothing_the_policy_forbids(file: Path):
    text = file.read_text(encoding="utf-8")
    found = [name for name, pattern in FORBIDDEN.items() if re.search(pattern, text, re.I)]
    assert found == []


def test_htmx_always_stands_beside_a_plain_address():
    for file in TEMPLATES:
        for tag in re.findall(r"<(?:a|form)\b[^>]*\bhx-(?:get|post)\b[^>]*>", file.read_text()):
            assert re.search(r"\b(?:href|action)=", tag), (file.name, tag)


def test_the_style_sheets_load_nothing_from_outside():
    for file in paths.STATIC.rglob("*.css"):
        assert not re.search(r"@import|url\(", file.read_text()), file.name
