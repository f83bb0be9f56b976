"""Bringing the database of an older version up to date, as a whole or not at all."""

from pathlib import Path

from sqlalchemy import Connection, create_engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import NullPool

from app import paths
from app.store.backup import backup
from app.store.errors import Damaged, StoreError, plain_words
from app.store.examine import HEAD, revision
from app.store.places import database_file


@plain_words()
def bring_up_to_date(folder: Path) -> None:
    """Migrate the database of a folder if it is behind, after a backup; make it if there is none.

    Damaged or Newer where its file cannot be used.
    """
    file = database_file(folder)
    found = revision(file)
    if found == HEAD:
        return
    if found is not None:
        backup(folder)
    try:
        upgrade(file)
    except DBAPIError as error:
        text = f"The data could not be brought up to date ({error.orig}). Nothing was changed."
        raise StoreError(text) from error


@plain_words()
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
        _run_migrations(connection)
        if connection.exec_driver_sql("PRAGMA foreign_key_check").first():
            raise Damaged("Records point to others that are gone. Nothing was changed.")


def _run_migrations(connection: Connection) -> None:
    from alembic.command import upgrade
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(paths.MIGRATIONS).replace("%", "%%"))
    config.attributes["connection"] = connection
    upgrade(config, "head")
