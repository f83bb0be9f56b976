"""Migrating: after a backup, as a whole or not at all, and no row is lost on the way."""

import shutil
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest

from app import paths
from app.store import engine, examine, migrate
from app.store.backup import backups
from app.store.engine import open_store
from app.store.errors import Busy, Damaged, NotSaved, StoreError
from app.store.places import database_file
from app.store.restore import restore
from tests.store.every_kind import EVERY_KIND, is_whole, make_data
from tests.store.faults import no_file_longer_than

NOW, NEXT = examine.HEAD, "9998"

REBUILT = f"""
from alembic import op
import sqlalchemy as sa

revision = "{NEXT}"
down_revision = "{NOW}"


def upgrade():
    with op.batch_alter_table("fleece", recreate="always") as fleece:
        fleece.alter_column("staple_mm", new_column_name="staple_mm")
"""
"""A migration that makes the table of fleeces anew, to which yarns and holdings point."""

TORN = (
    REBUILT
    + """
    op.execute("DELETE FROM yarn")
    op.execute("SELECT lost FROM nowhere")
"""
)
BREAKS_LINKS = (
    REBUILT
    + """
    op.execute("DELETE FROM fleece")
"""
)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return make_data(tmp_path / "data")


@pytest.fixture
def next_version(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The program as if it had one more migration; answers the file to write it to."""
    migrations = tmp_path / "migrations 100% new"
    shutil.copytree(paths.MIGRATIONS, migrations)
    monkeypatch.setattr(paths, "MIGRATIONS", migrations)
    for module in (migrate, examine):
        monkeypatch.setattr(module, "HEAD", NEXT)
    return migrations / "versions" / "9998_next.py"


def _now_of(folder: Path) -> str:
    connection = sqlite3.connect(database_file(folder))
    found: str = connection.execute("SELECT version_num FROM alembic_version").fetchone()[0]
    assert not connection.execute(
        "SELECT name FROM sqlite_master WHERE name LIKE '_alembic_tmp%'"
    ).fetchall()
    connection.close()
    return found


def test_a_table_made_anew_loses_no_row_that_points_to_it(folder: Path, next_version: Path) -> None:
    next_version.write_text(REBUILT)
    assert is_whole(folder, EVERY_KIND)
    assert _now_of(folder) == NEXT


def test_the_data_is_backed_up_first(folder: Path, next_version: Path, tmp_path: Path) -> None:
    assert backups(folder) == []
    next_version.write_text(REBUILT)
    open_store(folder).close()
    (kept,) = backups(folder)
    assert sqlite3.connect(kept).execute("SELECT * FROM alembic_version").fetchone() == (NOW,)
    restore(kept, tmp_path / "again")
    assert is_whole(tmp_path / "again", EVERY_KIND)
    open_store(folder).close()
    assert backups(folder) == [kept]


def test_a_migration_torn_in_the_middle_never_was(
    folder: Path, next_version: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    next_version.write_text(TORN)
    with pytest.raises(StoreError, match=r"nowhere.*Nothing was changed"):
        open_store(folder)
    assert _now_of(folder) == NOW
    _back_to_now(monkeypatch)
    assert is_whole(folder, EVERY_KIND)


def test_a_migration_that_breaks_links_never_was(
    folder: Path, next_version: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    next_version.write_text(BREAKS_LINKS)
    with pytest.raises(Damaged, match="Nothing was changed"):
        open_store(folder)
    _back_to_now(monkeypatch)
    assert is_whole(folder, EVERY_KIND)


def test_without_a_backup_there_is_no_migration(
    folder: Path, next_version: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_folder: Path) -> None:
        raise NotSaved("The disk is full.")

    next_version.write_text(REBUILT)
    monkeypatch.setattr(migrate, "backup", fail)
    with pytest.raises(NotSaved):
        open_store(folder)
    assert _now_of(folder) == NOW


def test_a_disk_without_room_leaves_the_old_version(
    folder: Path, next_version: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    next_version.write_text(REBUILT)
    for limit in range(0, database_file(folder).stat().st_size, 40_000):
        with pytest.raises(StoreError), no_file_longer_than(limit):
            open_store(folder)
        assert _now_of(folder) == NOW
    _back_to_now(monkeypatch)
    assert is_whole(folder, EVERY_KIND)


def test_a_locked_database_is_not_migrated(folder: Path, next_version: Path) -> None:
    next_version.write_text(REBUILT)
    other = sqlite3.connect(database_file(folder))
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(Busy):
        open_store(folder)
    other.close()
    assert _now_of(folder) == NOW


def test_a_new_folder_gets_no_backup(tmp_path: Path) -> None:
    open_store(tmp_path / "new").close()
    assert not (tmp_path / "new" / "backups").exists()


def test_a_current_database_needs_no_migration_library(folder: Path) -> None:
    code = (
        "import sys; from pathlib import Path; from app.store import open_store;"
        f"open_store(Path({str(folder)!r})).close(); print('alembic' in sys.modules)"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "False"


def _back_to_now(monkeypatch: pytest.MonkeyPatch) -> None:
    for module in (migrate, examine):
        monkeypatch.setattr(module, "HEAD", NOW)
    assert engine.bring_up_to_date is migrate.bring_up_to_date
