"""Makes the small database that stands for a released schema: python -m tests.backups.make

Run it once for a new revision, before its first release; a file that was released stays as it is.
Beside it lies the exchange document of the same book, as that version wrote it.
"""

import sqlite3
import sys
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory

from app.book.exchange import dumps
from app.store.backup import backup
from app.store.examine import HEAD
from tests.store.every_kind import EVERY_KIND, make_data

HERE = Path(__file__).parent


def main() -> int:
    """Write the database and the document of the current revision."""
    with TemporaryDirectory() as folder:
        made = backup(make_data(Path(folder)))
        with closing(sqlite3.connect(made)) as connection:
            connection.execute("PRAGMA page_size = 1024")  # a quarter of the usual size on disk
            connection.execute("VACUUM")
        (HERE / f"{HEAD}.sqlite").write_bytes(made.read_bytes())
    (HERE / f"{HEAD}.json").write_text(dumps(EVERY_KIND), encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
