"""The law of the house, held by a machine: what may be imported, sizes, templates, words."""

import ast
import json
import re
import subprocess
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Literal, get_args, get_origin

import pytest

from app.book import words
from app.planning.shelf_covers import Standing
from app.store.skein_list import SkeinState
from app.web.templating import NAVIGATION
from app.work import fleece_put_away, skein_put_away

ROOT = Path(__file__).parents[1]
APP = sorted((ROOT / "app").rglob("*.py"))
TEMPLATES = sorted((ROOT / "templates").rglob("*.html"))
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")

LONGEST_FILE = 300
LONGEST_FUNCTION = 35
"""Lines; nine functions in ten stay under it."""


def name(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


# Imports


def loaded_after(code: str) -> set[str]:
    """The top-level modules a fresh interpreter has loaded after some code."""
    told = (
        f"{code}\nimport json, sys\nprint(json.dumps(sorted(m.split('.')[0] for m in sys.modules)))"
    )
    run = subprocess.run(
        [sys.executable, "-c", told], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return set(json.loads(run.stdout.splitlines()[-1]))


WEB = {"fastapi", "starlette", "uvicorn", "jinja2", "pydantic"}
DATABASE = {"sqlmodel", "sqlalchemy", "sqlite3", "alembic"}
HEAVY = {"pint", "coloraide", "alembic", "numpy", "scipy", "highspy", "PIL", "uncertainties"}

FIRST_PAGE = """
import asyncio, sys
from pathlib import Path
from app.store import open_store
from app.web.server import create_app

async def first_page(app):
    begun = []
    async def receive():
        return {"type": "http.request"}
    async def send(message):
        begun.append(message.get("status"))
    scope = {
        "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": "GET",
        "path": "/", "raw_path": b"/", "query_string": b"", "root_path": "", "scheme": "http",
        "headers": [(b"host", b"127.0.0.1:8765")], "client": ("127.0.0.1", 9),
        "server": ("127.0.0.1", 8765),
    }
    await app(scope, receive, send)
    assert begun[0] == 200, begun

store = open_store(Path(%r))
asyncio.run(first_page(create_app(store)))
store.close()
"""


@pytest.mark.parametrize("room", ["app.craft.typed", "app.book.exchange", "app.planning"])
def test_the_core_knows_no_web_and_no_database(room):
    assert loaded_after(f"import {room}") & (WEB | DATABASE | HEAVY) == set()


def test_the_command_line_imports_nothing_heavy_to_parse_its_arguments():
    assert loaded_after("import app.cli") & (WEB | DATABASE | HEAVY) == set()


def test_the_first_page_of_a_current_database_needs_nothing_heavy(tmp_path):
    code = FIRST_PAGE % str(tmp_path / "data")
    loaded_after(code)
    assert loaded_after(code) & HEAVY == set()


# Sizes


@pytest.mark.parametrize("path", [*APP, *TEMPLATES], ids=name)
def test_a_file_is_short_enough_to_read(path):
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LONGEST_FILE


def functions() -> Iterator[tuple[str, int]]:
    for path in APP:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.end_lineno:
                yield f"{name(path)}:{node.name}", node.end_lineno - node.lineno + 1


def test_functions_are_short_enough_to_read():
    lengths = dict(functions())
    long = {one: length for one, length in lengths.items() if length > LONGEST_FUNCTION}
    assert len(long) <= len(lengths) / 10, long


@pytest.mark.parametrize("path", APP, ids=name)
def test_a_file_says_what_it_is_for(path):
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))


# What nothing in the repository may hold


WRITTEN = {".py", ".html", ".css", ".js", ".md", ".toml", ".json", ".csv", ".txt", ".svg"}
ROOMS = ("app", "templates", "static", "migrations", "demo_data", "tests")


def texts() -> Iterator[tuple[Path, str]]:
    paths = [*ROOT.glob("*.*"), *(one for room in ROOMS for one in (ROOT / room).rglob("*.*"))]
    for path in sorted(paths):
        theirs = "vendor" in path.parts or path == Path(__file__)
        if path.suffix in WRITTEN and not theirs:
            yield path, path.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("what", "pattern"),
    [
        ("a path of somebody's machine", r"(?<![\w.}])/(?:work|root|home|Users|mnt|tmp)/"),
        ("something left to do", r"\b(?:TODO|FIXME|XXX|HACK)\b"),
        ("a test that is passed over", r"pytest\.(?:skip|mark\.skip|xfail|mark\.xfail)"),
        ("a debugger", r"\bbreakpoint\(\)"),
    ],
)
def test_no_file_holds(what, pattern):
    allowed = {"tests/browser/conftest.py"} if "passed over" in what else set()
    found = {name(path) for path, text in texts() if re.search(pattern, text)}
    assert found <= allowed, f"{what} in {sorted(found - allowed)}"


# Templates


class Tags(HTMLParser):
    """Every start tag of a template with the attributes it has, and the forms it lies in."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None], bool]] = []
        self.scripts: list[str] = []
        self.forms = 0
        text = path.read_text(encoding="utf-8")
        self.feed(re.sub(r"{#.*?#}|{%.*?%}", "", re.sub(r"{{.*?}}", "J", text), flags=re.DOTALL))

    def handle_starttag(self, tag, attrs):
        self.forms += tag == "form"
        self.found.append((tag, dict(attrs), self.forms > 0))

    def handle_endtag(self, tag):
        self.forms -= tag == "form"

    def handle_data(self, data):
        if self.lasttag == "script":
            self.scripts.append(data.strip())


@pytest.mark.parametrize("path", TEMPLATES, ids=name)
def test_a_template_needs_no_exception_from_the_content_policy(path):
    tags = Tags(path)
    assert [script for script in tags.scripts if script] == []
    for tag, attributes, _ in tags.found:
        assert tag not in {"style", "base", "iframe", "object", "embed"}
        assert tag != "script" or "src" in attributes
        for attribute, value in attributes.items():
            assert attribute != "style", f"<{tag} style>"
            assert not attribute.startswith(("on", "hx-on")), f"<{tag} {attribute}>"
            assert not (value or "").startswith(("js:", "javascript:")), f"<{tag} {attribute}>"
            assert not re.match(r"(https?:)?//", value or ""), f"<{tag} {attribute}={value}>"


@pytest.mark.parametrize("path", TEMPLATES, ids=name)
def test_whatever_htmx_does_a_plain_link_or_form_does_too(path):
    for tag, attributes, in_form in Tags(path).found:
        if re.search(r"\bhx-(get|post|put|patch|delete)", " ".join(attributes)):
            assert in_form or {"href", "action", "formaction"} & set(attributes), (tag, attributes)


@pytest.mark.parametrize("path", TEMPLATES, ids=name)
def test_a_template_escapes_everything(path):
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"\|\s*safe\b|autoescape\s+false", text)


# Words


def listed() -> dict[str, str]:
    """The words of DEVELOPERS.md with their origin."""
    part = DEVELOPERS.split("## Words on the screens")[1].split("\n## ")[0]
    rows = re.findall(r"^\| (.+?) \| (.+?) \| (.+?) \|$", part, re.MULTILINE)
    return {word: origin for word, _, origin in rows if word != "word"}


def state_words() -> set[str]:
    lists = [one for one in vars(words).values() if get_origin(one) is Literal]
    shelf = (SkeinState, fleece_put_away.Going, skein_put_away.Going, Standing)
    return {word for one in (*lists, *shelf) for word in get_args(one) if word}


PAGES = sorted((ROOT / "app").rglob("*.py"))


def state_words_of_templates() -> set[str]:
    """What the macros named for a state can write."""
    found = set()
    for path in TEMPLATES:
        text = path.read_text(encoding="utf-8")
        for macro in re.findall(r"{%-? macro \w*state\w*\(.*?{%-? endmacro", text, re.DOTALL):
            bare = re.split(r"{%.*?%}|{{.*?}}|{%-? (?:end)?macro.*", macro, flags=re.DOTALL)
            found |= {word.strip(" ,\n") for word in bare}
    return found - {""}


def test_every_word_of_the_navigation_is_listed():
    assert {word for _, word in NAVIGATION} <= set(listed())


def test_every_state_word_is_listed():
    assert state_words() - set(listed()) == set()
    assert state_words_of_templates() - set(listed()) == set()


def test_every_listed_word_is_used():
    used = {word for _, word in NAVIGATION} | state_words() | state_words_of_templates()
    said = [path.read_text(encoding="utf-8").lower() for path in (*TEMPLATES, *PAGES)]
    other = {word for word in set(listed()) - used if any(word.lower() in one for one in said)}
    assert set(listed()) - used - other == set()


def test_every_listed_word_has_its_origin():
    for word, origin in listed().items():
        assert re.match(r"(handbook|standard|ours)\b", origin), word
