"""The rooms of the program: every module in routes/ with a `router`, found by itself.

Bringing in all of them takes as long as all the rest of the start, so the first page is served by
its own room alone; the others follow once it has gone out, or when the first of them is asked for.
"""

from importlib import import_module
from pkgutil import iter_modules
from threading import Lock, Thread

from fastapi import FastAPI
from starlette.concurrency import run_in_threadpool
from starlette.types import ASGIApp, Receive, Scope, Send

from app.web import routes

FIRST = "today"
"""The room of the first page."""


def _is_first(path: str) -> bool:
    return path == "/" or path.startswith("/static/")


class Rooms:
    """The rooms of one application, brought in once each."""

    def __init__(self, app: FastAPI) -> None:
        self.all_open = False
        self._app = app
        self._lock = Lock()
        self._bring_in(FIRST)

    def open_all(self) -> None:
        """Bring in every room that is not open yet; a second caller waits for the first."""
        with self._lock:
            if not self.all_open:
                names = [one.name for one in iter_modules(routes.__path__)]
                for name in names:
                    if name != FIRST:
                        self._bring_in(name)
                self.all_open = True

    def _bring_in(self, name: str) -> None:
        self._app.include_router(import_module(f"{routes.__name__}.{name}").router)


class OpenInTime:
    """Guards the door: no address is answered before its room is open."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        rooms = scope["app"].state.rooms if scope["type"] == "http" else None
        if rooms is None or rooms.all_open:
            await self.app(scope, receive, send)
            return
        first = _is_first(scope["path"])
        if not first:
            await run_in_threadpool(rooms.open_all)
        await self.app(scope, receive, send)
        if first:
            Thread(target=rooms.open_all, daemon=True).start()
