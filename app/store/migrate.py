"""Bringing the database of an older version up to date, as a whole or not at all."""

import sqlite3
from contextlib import closing
from pathlib import Path

from sqlalchemy import Connection, create_engine, event
from sqlalchemy.pool import NullPool

from app import paths
from app.store.errors import Damaged, Newer
from app.store.places import database_file

HEAD = "0001"
"""The revision this program works with: the last file in migrations/versions."""


def revision(file: Path) -> str | None:
    """The revision of a database file, None for one with nothing in it; Damaged if not ours."""
    with closing(sqlite3.connect(file)) as connection:
        tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
        if "alembic_version" not in tables:
            if tables:
                raise Damaged(f"{file} is not a data file of Tallyhank.")
            return None
        found: str = connection.execute("SELECT version_num FROM alembic_version").fetchone()[0]
        return found


def bring_up_to_date(folder: Path) -> None:
    """Migrate the database of a folder if it is behind, making it if there is none."""
    file = database_file(folder)
    found = revision(file)
    if found == HEAD:
        return
    refuse_newer(found)
    upgrade(file)


def refuse_newer(found: str | None) -> None:
    """Newer where `found` is a revision this program does not know yet."""
    if found is not None and found > HEAD:
        raise Newer("This data was written by a newer version of Tallyhank. Install that version.")


def upgrade(file: Path) -> None:
    """Run the migrations a database file lacks, in one transaction.

    Foreign keys are off meanwhile, because a table that is rebuilt would take the rows that point
    to it along; they are checked before anything is kept.
    """
    engine = create_engine(
        f"sqlite:///{file}", poolclass=NullPool, connect_args={"isolation_level": None}
    )

    @event.listens_for(engine, "begin")
    def send_begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE")

    with engine.begin() as connection:
        _run(connection)
        if connection.exec_driver_sql("PRAGMA foreign_key_check").first():
            raise Damaged("Records point to others that are gone. Nothing was changed.")


def _run(connection: Connection) -> None:
    from alembic.command import upgrade
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(paths.MIGRATIONS).replace("%", "%%"))
    config.attributes["connection"] = connection
    upgrade(config, "head")
