"""What the documents say is so: README's commands and options, and every field of the exchange."""

import argparse
import re
import tomllib
from dataclasses import fields, is_dataclass
from functools import cache
from pathlib import Path
from typing import get_args, get_type_hints

import pytest

from app import cli
from app.book.book import Book
from app.book.exchange import FORMAT, VERSION

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
ROW = re.compile(r"^\| `([^`]+)` \|", re.MULTILINE)


def section(text: str, heading: str) -> str:
    """What stands under a heading, up to the next of its rank."""
    found = re.search(rf"^## {heading}\n(.*?)(?=^## |\Z)", text, re.MULTILINE | re.DOTALL)
    assert found, f"no section {heading}"
    return found[1]


def shell_commands() -> list[str]:
    return re.findall(r"^```sh\n(.*?)\n```$", README, re.MULTILINE | re.DOTALL)


@cache
def parser_and_commands() -> tuple[argparse.ArgumentParser, dict[str, argparse.ArgumentParser]]:
    parser = cli._parser()
    groups = [one for one in parser._actions if isinstance(one, argparse._SubParsersAction)]
    return parser, dict(groups[0].choices)


def options(parser: argparse.ArgumentParser) -> set[str]:
    return {name for one in parser._actions for name in one.option_strings if name[:2] == "--"}


def test_readme_opens_with_the_job_and_then_two_commands():
    first, second = shell_commands()
    assert first.splitlines() == [first]
    assert first.endswith("tallyhank --demo")
    assert second.endswith("pytest")
    assert README.index("whether the wool is enough") < README.index(first)


def test_every_command_is_in_the_readme_and_no_other():
    told = {row.split()[1] for row in ROW.findall(section(README, "Commands")) if row[:2] != "--"}
    assert told == set(parser_and_commands()[1])


def test_every_option_is_in_the_readme_and_no_other():
    parser, commands = parser_and_commands()
    there = options(parser).union(*(options(one) for one in commands.values()))
    told = {row.split()[0] for row in ROW.findall(section(README, "Commands")) if row[:2] == "--"}
    assert told == there
    assert set(re.findall(r"(?<=[` ])--[a-z-]+", README)) == there


@pytest.mark.parametrize("name", ["backup", "restore", "export", "import", "check", "reckon"])
def test_the_readme_names_what_a_command_must_be_given(name):
    command = parser_and_commands()[1][name]
    given = [one.metavar for one in command._actions if not one.option_strings]
    assert f"`{' '.join(['tallyhank', name, *map(str, given)])}`" in README


def test_the_port_in_the_readme_is_the_usual_one():
    assert f"http://127.0.0.1:{cli.PORT}/" in README
    assert f"another port than {cli.PORT};" in README


def test_the_readme_names_the_folder_of_the_data(monkeypatch):
    from app import paths

    monkeypatch.delenv("XDG_DATA_HOME", raising=False)
    usual = f"~/{paths.own_data().relative_to(Path.home()).as_posix()}"
    assert f"`{usual}`" in section(README, "Your data")


def test_links_of_the_documents_lead_somewhere():
    for text in (README, DEVELOPERS):
        for file, anchor in re.findall(r"\]\(([\w./-]*)(?:#([\w-]+))?\)", text):
            target = ROOT / file if file else None
            assert target is None or target.exists()
            if anchor:
                assert anchor in anchors(target.read_text(encoding="utf-8") if target else text)


def anchors(text: str) -> set[str]:
    return {one.lower().replace(" ", "-") for one in re.findall(r"^#+ (.+)$", text, re.MULTILINE)}


def test_every_dependency_is_accounted_for():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    extras = project["optional-dependencies"].values()
    needed = [*project["dependencies"], *(one for extra in extras for one in extra)]
    told = section(DEVELOPERS, "Dependencies").lower()
    names = {re.match(r"[\w-]+", one)[0].lower() for one in needed}
    assert {name for name in names if not re.search(rf"\b{name}\b", told)} == set()


def records(cls: type) -> dict[str, type]:
    """The dataclasses a book is made of, by name, the book itself left out."""
    found: dict[str, type] = {}
    for hint in get_type_hints(cls).values():
        for inner in _dataclasses(hint):
            if inner.__name__ not in found:
                found |= {inner.__name__: inner} | records(inner)
    return found


def _dataclasses(hint: object) -> list[type]:
    if is_dataclass(hint) and isinstance(hint, type):
        return [hint]
    return [one for inner in get_args(hint) for one in _dataclasses(inner)]


RECORDS = records(Book)


def described(name: str) -> dict[str, str]:
    """The fields of a record as DEVELOPERS.md lists them, with what it says of each."""
    text = section(DEVELOPERS, "The exchange document")
    found = re.search(rf"^### {name}\b.*?\n(.*?)(?=^### |\Z)", text, re.MULTILINE | re.DOTALL)
    assert found, f"DEVELOPERS.md does not describe {name}"
    return dict(re.findall(r"^\| `(\w+)` \| (.+) \|$", found[1], re.MULTILINE))


@pytest.mark.parametrize("name", ["Book", *RECORDS])
def test_every_field_of_the_exchange_document_is_described(name):
    record = RECORDS.get(name, Book)
    assert list(described(name)) == [one.name for one in fields(record)]


def test_no_record_is_described_that_is_not_there():
    text = section(DEVELOPERS, "The exchange document")
    assert re.findall(r"^### (\w+)", text, re.MULTILINE) == ["Book", *RECORDS]


@pytest.mark.parametrize("name", RECORDS)
def test_every_word_a_field_may_hold_is_described(name):
    told = described(name)
    for field, hint in get_type_hints(RECORDS[name]).items():
        for word in _words(hint):
            assert f"`{word}`" in told[field], f"{name}.{field} may be {word!r}"


def _words(hint: object) -> list[str]:
    found = get_args(hint)
    return [
        word for one in found for word in ([one] if isinstance(one, str) and one else _words(one))
    ]


def test_the_format_and_version_are_the_ones_written():
    text = section(DEVELOPERS, "The exchange document")
    assert f'"format": "{FORMAT}"' in text
    assert f'"version": {VERSION}' in text
