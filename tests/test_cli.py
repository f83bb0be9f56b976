"""Each command does what it says, in a sentence, and answers 0, 1 or 2."""

import json
import os
import sqlite3
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from app import cli, paths
from app.book.exchange import dumps
from app.store.photos import keep_picture
from app.store.places import database_file
from tests.books import a_book, a_part, a_photo, a_plan, a_promise, a_skein, a_yarn
from tests.pictures import a_picture
from tests.store.every_kind import EVERY_KIND, is_whole, make_data
from tests.store.faults import torn

Told = pytest.CaptureFixture[str]


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return make_data(tmp_path / "data")


@pytest.fixture
def without_photos(tmp_path: Path) -> Path:
    return make_data(tmp_path / "data", replace(EVERY_KIND, photos=()))


@pytest.fixture
def document(tmp_path: Path) -> Path:
    file = tmp_path / "a.json"
    file.write_text(dumps(EVERY_KIND), encoding="utf-8")
    return file


def _run(*words: object) -> int:
    return cli.main([str(word) for word in words])


def _fails(told: Told, *words: object) -> str:
    """What a command that cannot be done says on the error stream, and nothing elsewhere."""
    assert _run(*words) == 2
    out, error = told.readouterr()
    assert out == ""
    assert "Traceback" not in error
    return error


def test_import_check_export_give_the_same_bytes(
    tmp_path: Path, document: Path, capsys: Told
) -> None:
    folder, again = tmp_path / "new", tmp_path / "b.json"
    assert _run("--data", folder, "import", document) == 0
    assert _run("--data", folder, "export", again) == 0
    assert again.read_bytes() == document.read_bytes()
    assert list(tmp_path.glob("*.part")) == []
    assert "Imported" in capsys.readouterr().out


def test_a_zip_carries_the_pictures_and_comes_back_to_the_byte(
    tmp_path: Path, capsys: Told
) -> None:
    data, first, again = tmp_path / "one", tmp_path / "a.zip", tmp_path / "b.ZIP"
    digest = keep_picture(data, a_picture())
    photo = a_photo(sha256=digest, width=60, height=40, bytes=len(a_picture()))
    make_data(data, a_book(photo))
    assert _run("--data", data, "export", first) == 0
    assert _run("--data", tmp_path / "two", "import", first) == 0
    assert _run("--data", tmp_path / "two", "export", again) == 0
    assert again.read_bytes() == first.read_bytes()
    assert _run("--data", tmp_path / "two", "check") == 0
    assert "Nothing wrong" in capsys.readouterr().out


def test_a_zip_without_one_of_its_pictures_is_not_written(
    data: Path, tmp_path: Path, capsys: Told
) -> None:
    error = _fails(capsys, "export", tmp_path / "a.zip", "--data", data)
    assert "is missing. Bring it back from a backup" in error
    assert [one.name for one in tmp_path.iterdir()] == ["data"]


@pytest.mark.parametrize("before", [True, False])
def test_the_folder_is_named_before_or_after_the_command(
    without_photos: Path, before: bool, capsys: Told
) -> None:
    folder = ["--data", str(without_photos)]
    words = [*folder, "check"] if before else ["check", *folder]
    assert cli.main(words) == 0
    assert capsys.readouterr().out == "Nothing wrong.\n"


def test_without_a_folder_her_own_data_is_meant(
    without_photos: Path, monkeypatch: pytest.MonkeyPatch, capsys: Told
) -> None:
    monkeypatch.setattr(paths, "own_data", lambda: without_photos)
    assert _run("check") == 0
    assert capsys.readouterr().out == "Nothing wrong.\n"


def test_backup_and_restore(data: Path, tmp_path: Path, capsys: Told) -> None:
    assert _run("backup", "--data", data) == 0
    (kept,) = (data / "backups").iterdir()
    assert str(kept) in capsys.readouterr().out
    assert _run("restore", kept, "--data", tmp_path / "other") == 0
    assert is_whole(tmp_path / "other")
    assert "before" not in capsys.readouterr().out
    assert _run("restore", kept, "--data", data) == 0
    assert "before is kept" in capsys.readouterr().out


def test_import_into_a_book_with_records_changes_nothing(
    data: Path, document: Path, capsys: Told
) -> None:
    assert "records here already" in _fails(capsys, "import", document, "--data", data)
    assert is_whole(data)


def test_a_document_with_many_faults_is_not_poured_out(tmp_path: Path, capsys: Told) -> None:
    broken = json.loads(dumps(EVERY_KIND))
    broken["errands"] = [{}] * 30
    file = tmp_path / "broken.json"
    file.write_text(json.dumps(broken), encoding="utf-8")
    error = _fails(capsys, "import", file, "--data", tmp_path / "new")
    assert "errands[0].id: missing" in error
    assert "more." in error.splitlines()[-1]
    assert len(error.splitlines()) == cli.MOST_SHOWN + 1


@pytest.mark.parametrize("command", ["check", "backup", "export"])
def test_data_that_is_not_there_is_said_and_not_made(
    tmp_path: Path, command: str, capsys: Told
) -> None:
    words = [command, *([tmp_path / "out.json"] if command == "export" else [])]
    assert "no data" in _fails(capsys, *words, "--data", tmp_path / "typo")
    assert not (tmp_path / "typo").exists()


@pytest.mark.parametrize("command", ["import", "restore", "reckon"])
def test_a_file_that_is_not_there_is_said(tmp_path: Path, command: str, capsys: Told) -> None:
    file = tmp_path / "nowhere.json"
    assert str(file) in _fails(capsys, command, file, "--data", tmp_path / "new")


def test_a_folder_that_cannot_be_made_is_said(document: Path, capsys: Told) -> None:
    error = _fails(capsys, "import", document, "--data", document / "under a file")
    assert "cannot be made" in error


def test_a_place_that_cannot_be_written_is_said(data: Path, tmp_path: Path, capsys: Told) -> None:
    error = _fails(capsys, "export", tmp_path / "no such folder" / "a.json", "--data", data)
    assert "cannot be used" in error


def test_check_names_what_is_wrong(data: Path, capsys: Told) -> None:
    connection = sqlite3.connect(database_file(data))
    connection.execute("UPDATE balance SET mg = mg + 1000 WHERE holding_id = 'G-1'")
    connection.execute("UPDATE promise SET mm = 900000")
    connection.commit()
    connection.close()
    assert _run("check", "--data", data) == 1
    out = capsys.readouterr().out
    assert "G-1, balance: The balance says 97 g" in out
    assert "pullover, body" in out or "skein G-1, promises" in out


def test_check_finds_a_damaged_file(data: Path, capsys: Told) -> None:
    file = database_file(data)
    file.write_bytes(torn(file.read_bytes()))
    assert _run("check", "--data", data) == 1
    assert "damaged" in capsys.readouterr().out


def test_check_finds_a_broken_link(data: Path, capsys: Told) -> None:
    connection = sqlite3.connect(database_file(data))
    connection.execute("DELETE FROM person")
    connection.commit()
    connection.close()
    assert _run("check", "--data", data) == 1
    assert "points to one of person that is gone" in capsys.readouterr().out


SHORT = a_book(
    a_yarn(), a_skein(), a_plan(), a_part(copies=2), a_promise(), held={"G-1": (96, 213)}
)


def test_reckon_prints_json_and_nothing_else(tmp_path: Path, capsys: Told) -> None:
    file = tmp_path / "short.json"
    file.write_text(dumps(SHORT), encoding="utf-8")
    assert _run("reckon", file, "--json") == 0
    out, error = capsys.readouterr()
    assert error == ""
    told = json.loads(out)
    (plan,) = told["plans"]
    assert plan.keys() == {
        *("name", "need_m", "need_u_m", "promised_m", "odds", "short_m", "left_m"),
        *("left_at_least_m", "losses_m", "parts"),
    }
    (part,) = plan["parts"]
    assert part.keys() == {"name", "copies", "stitches", "rows", "need_m", "need_u_m", "skeins"}
    assert (part["name"], part["copies"], part["skeins"]) == ("body", 2, ["G-1"])
    assert plan["need_m"] == pytest.approx(part["need_m"] + plan["losses_m"])
    assert plan["promised_m"] == 100.0
    assert told["work_list"]
    for line in told["work_list"]:
        assert line.keys() == {*("kind", "yarn", "m", "g", "prepared_g", "raw_g", "fleece", "plan")}


def test_reckon_needs_no_database(tmp_path: Path) -> None:
    file = tmp_path / "short.json"
    file.write_text(dumps(SHORT), encoding="utf-8")
    code = (
        f"import sys; from app.cli import main; main(['reckon', {str(file)!r}, '--json']);"
        "assert not {'sqlalchemy', 'sqlite3', 'fastapi', 'uvicorn', 'alembic'} & {*sys.modules}"
    )
    subprocess.run([sys.executable, "-c", code], capture_output=True, check=True)


@pytest.mark.parametrize("port", ["99999", "-1", "eight"])
def test_a_port_that_cannot_be_is_refused(port: str, capsys: Told) -> None:
    with pytest.raises(SystemExit) as ended:
        _run("--port", port)
    assert ended.value.code == 2
    assert "whole number" in capsys.readouterr().err


def test_the_demo_and_a_folder_of_her_own_do_not_go_together(capsys: Told) -> None:
    with pytest.raises(SystemExit):
        _run("--demo", "--data", "somewhere")
    assert "not allowed" in capsys.readouterr().err


def test_an_error_nobody_expected_is_not_hidden(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_arguments: object) -> Path:
        raise ZeroDivisionError

    monkeypatch.setattr(cli, "_folder", fail)
    with pytest.raises(ZeroDivisionError):
        _run("check")


def test_a_command_that_was_interrupted_did_not_go_well(monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupt(_arguments: object) -> Path:
        raise KeyboardInterrupt

    monkeypatch.setattr(cli, "_folder", interrupt)
    assert _run("check") == cli.INTERRUPTED


def test_a_letter_the_terminal_lacks_stops_nothing(tmp_path: Path) -> None:
    file = tmp_path / "short.json"
    file.write_text(dumps(a_book(a_yarn(), a_plan("Strickjäckchen ✿"))), encoding="utf-8")
    told = subprocess.run(
        [sys.executable, "-m", "app", "reckon", str(file)],
        capture_output=True,
        check=True,
        env={**os.environ, "PYTHONIOENCODING": "ascii"},
    )
    assert told.stdout.startswith(b"Strickj?ckchen ? (intended)")


def test_the_version_is_told(capsys: Told) -> None:
    with pytest.raises(SystemExit) as ended:
        _run("--version")
    assert ended.value.code == 0
    assert capsys.readouterr().out.startswith("tallyhank ")
