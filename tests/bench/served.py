"""The program's own server with two floor pages more, in a process of its own.

A floor page asks the same rows of plain sqlite3, into named tuples, and draws the program's own
template with them; everything else on the page was made once.

    python -m tests.bench.served FOLDER    prints its port, serves until its input ends
"""

import sqlite3
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path
from threading import Thread, local
from typing import Any

from fastapi import FastAPI, Request, Response
from fastapi.responses import HTMLResponse
from sqlalchemy.dialects import sqlite

from app.book.settings import Settings
from app.serve import _listen
from app.store import Store, open_store
from app.store.places import database_file
from app.store.skein_list import PAGE, SkeinLine
from app.store.skein_query import page_statement
from app.web.forms.skein_filter import read_filter
from app.web.pages.skeins import skeins_page
from app.web.server import create_app
from app.web.templating import draw, page_context, shown_in
from app.work.skein_browse import browse

LIST = "pages/skeins/list.html"
DAY = SkeinLine._fields.index("day")


def with_floor(store: Store) -> FastAPI:
    """The program's application, and `/floor` beside its `/skeins`."""
    app = create_app(store)
    lines = _raw_lines(database_file(store.folder))

    @app.get("/floor")
    def floor(request: Request) -> Response:
        context = made_once(request)
        return HTMLResponse(draw(LIST, {**context, "lines": lines()}))

    kept: dict[str, Any] = {}

    def made_once(request: Request) -> dict[str, Any]:
        if not kept:
            reader, wanted = read_filter({"state": "free"}, Settings())
            with store.reading() as session:
                found = browse(session, wanted)
            page = skeins_page(reader, wanted, found, shown_in(Settings()))
            kept.update(page_context(request, page))
        return kept

    return app


def _raw_lines(file: Path) -> Callable[[], list[SkeinLine]]:
    statement = page_statement("free", "grist", frozenset())
    compiled = statement.compile(dialect=sqlite.dialect(paramstyle="named"))
    text, values = str(compiled), {**compiled.params, "skip": 0}
    threads = local()

    def lines() -> list[SkeinLine]:
        if not hasattr(threads, "connection"):
            threads.connection = sqlite3.connect(file)
            threads.connection.execute("PRAGMA query_only = ON")
        rows = threads.connection.execute(text, values).fetchall()
        return [SkeinLine(*row[:DAY], _day(row[DAY]), *row[DAY + 1 :]) for row in rows][:PAGE]

    return lines


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


def main(folder: Path) -> None:
    """Serve the folder on any free port until the standard input ends."""
    import uvicorn

    listener = _listen("127.0.0.1", 0)
    config = uvicorn.Config(
        with_floor(open_store(folder)), log_level="warning", access_log=False, lifespan="off",
        ws="none",
    )  # fmt: skip
    server = uvicorn.Server(config)
    Thread(target=lambda: (sys.stdin.read(), setattr(server, "should_exit", True))).start()
    print(listener.getsockname()[1], flush=True)
    server.run(sockets=[listener])


if __name__ == "__main__":
    main(Path(sys.argv[1]))
