"""Sessions: reading never writes, writing is all or nothing, and both say what went wrong."""

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest
from sqlmodel import Session

from app.store import engine
from app.store.engine import Store, open_store
from app.store.errors import Busy, Damaged, Newer, NotSaved
from app.store.examine import HEAD
from app.store.places import database_file
from app.store.records import data_version, load_book, put
from tests.books import a_fleece
from tests.store.every_kind import EVERY_KIND, is_whole, make_data


def _pragma(session: Session, name: str) -> object:
    return session.connection().exec_driver_sql(f"PRAGMA {name}").scalar_one()


def test_connections_are_set_up_for_safety(store: Store) -> None:
    wanted = {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}
    with store.reading() as session:
        assert {name: _pragma(session, name) for name in wanted} == wanted
        assert _pragma(session, "query_only") == 1
    with store.writing() as session:
        assert {name: _pragma(session, name) for name in wanted} == wanted
        assert _pragma(session, "query_only") == 0


def test_a_reading_session_cannot_write(store: Store) -> None:
    with pytest.raises(NotSaved), store.reading() as session:
        put(session, a_fleece())


def test_a_reading_session_sees_one_state(store: Store) -> None:
    with store.reading() as before:
        first = data_version(before)
        with store.writing() as session:
            put(session, a_fleece())
        assert load_book(before).fleeces == ()
        assert data_version(before) == first
    with store.reading() as after:
        assert load_book(after).fleeces == (a_fleece(),)
        assert data_version(after) > first


def test_an_error_leaves_nothing_half_saved(store: Store) -> None:
    with suppress(ZeroDivisionError), store.writing() as session:
        put(session, a_fleece())
        raise ZeroDivisionError
    with store.reading() as session:
        assert load_book(session).fleeces == ()


def test_a_rollback_inside_leaves_nothing_saved(store: Store) -> None:
    with store.writing() as session:
        put(session, a_fleece())
        session.rollback()
    with store.reading() as session:
        assert load_book(session).fleeces == ()


def test_a_second_writer_is_told_to_wait(
    store: Store, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(engine, "WAIT_S", 0.05)
    other = Store(tmp_path / "data")
    with store.writing() as first:
        put(first, a_fleece())
        with pytest.raises(Busy, match="try again"), other.writing():
            pass
    with other.writing() as second:
        assert load_book(second).fleeces == (a_fleece(),)
    other.close()


def test_a_change_within_a_change_is_told_to_wait(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(engine, "WAIT_S", 0.05)
    store = open_store(tmp_path)
    with store.writing(), pytest.raises(Busy), store.writing():
        pass
    store.close()


def test_many_at_once_lose_nothing(store: Store) -> None:
    def add(number: int) -> None:
        with store.writing() as session:
            (other,) = load_book(session).fleeces or (a_fleece(staple_mm=0),)
            put(session, replace(other, staple_mm=(other.staple_mm or 0) + number))

    with ThreadPoolExecutor(8) as crowd:
        list(crowd.map(add, range(50)))
    with store.reading() as session:
        assert load_book(session).fleeces == (a_fleece(staple_mm=sum(range(50))),)


def test_a_commit_that_fails_is_told(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_session: Session) -> None:
        raise OSError("the plug was pulled")

    monkeypatch.setattr(Session, "commit", fail)
    with pytest.raises(OSError, match="plug"), store.writing() as session:
        put(session, a_fleece())
    with store.reading() as session:
        assert load_book(session).fleeces == ()


def test_a_full_disk_is_told_and_the_old_data_is_whole(tmp_path: Path) -> None:
    folder = make_data(tmp_path / "data")
    store = open_store(folder)
    with store.writing() as session:
        session.connection().exec_driver_sql("PRAGMA max_page_count = 1")
    with pytest.raises(NotSaved, match="disk is full"), store.writing() as session:
        _put_many(session)
    store.close()
    assert is_whole(folder)


def test_each_state_has_its_own_number(store: Store) -> None:
    seen = []
    with store.writing() as session:
        seen.append(data_version(session))
        put(session, a_fleece())
        seen.append(data_version(session))
        put(session, a_fleece(micron=27.0))
        seen.append(data_version(session))
        session.rollback()
        assert data_version(session) == seen[0]
    with store.writing() as session:
        put(session, a_fleece(micron=29.0))
        seen.append(data_version(session))
    with store.reading() as session:
        seen.append(data_version(session))
    assert len(set(seen)) == len(seen)
    assert seen[0] < seen[-1]


def test_a_file_of_something_else_is_refused(tmp_path: Path) -> None:
    database_file(tmp_path).write_bytes(b"a shopping list, not a database" * 50)
    with pytest.raises(Damaged, match="restore FILE"):
        open_store(tmp_path)
    assert b"shopping list" in database_file(tmp_path).read_bytes()


def test_a_torn_page_is_told_with_what_to_do(tmp_path: Path) -> None:
    file = database_file(make_data(tmp_path))
    content = file.read_bytes()
    file.write_bytes(content[:8192] + b"\xa5" * (len(content) - 8192))
    store = Store(tmp_path)
    with pytest.raises(Damaged, match="restore FILE"), store.reading() as session:
        load_book(session)
    store.close()


def test_a_database_of_something_else_is_refused(tmp_path: Path) -> None:
    connection = sqlite3.connect(database_file(tmp_path))
    connection.execute("CREATE TABLE recipes (name)")
    connection.close()
    with pytest.raises(Damaged, match="not a data file"):
        open_store(tmp_path)


def test_data_of_a_newer_program_is_refused(tmp_path: Path) -> None:
    folder = make_data(tmp_path)
    _write(folder, "UPDATE alembic_version SET version_num = '9999'")
    with pytest.raises(Newer, match="newer version"):
        open_store(folder)
    _write(folder, f"UPDATE alembic_version SET version_num = '{HEAD}'")
    assert is_whole(folder, EVERY_KIND)


def test_data_without_a_version_is_refused(tmp_path: Path) -> None:
    folder = make_data(tmp_path)
    _write(folder, "DELETE FROM alembic_version")
    with pytest.raises(Damaged, match="which version"):
        open_store(folder)


def test_a_folder_that_cannot_be_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(NotSaved, match="cannot be made"):
        open_store(tmp_path / "file" / "data")
    monkeypatch.setattr("os.access", lambda *_: False)
    with pytest.raises(NotSaved, match="--data FOLDER"):
        open_store(tmp_path)


def _put_many(session: Session) -> None:
    for number in range(1_000):
        put(session, a_fleece(f"F{number}", notes="x" * 500))


def _write(folder: Path, statement: str) -> None:
    connection = sqlite3.connect(database_file(folder))
    connection.execute(statement)
    connection.commit()
    connection.close()
