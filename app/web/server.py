"""The web application: the rooms of routes/ behind the guards of origin.py."""

from fastapi import FastAPI
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.staticfiles import StaticFiles

from app import paths
from app.store.engine import Store
from app.web.errors import LastResort, add_error_pages, too_large
from app.web.origin import AnswerHeaders, BodyLimit, LoopbackOnly, SameOriginOnly
from app.web.paired import PairedOnly
from app.web.rooms import OpenInTime, Rooms
from app.web.sharing import Sharing

LARGER_BODIES = {
    "/settings/data/import": 64 << 20,
    "/skeins/import": 8 << 20,
    "/photos": 32 << 20,
}
"""Bytes for pages that take a file."""


def create_app(store: Store, at_once: bool = True, sharing: Sharing | None = None) -> FastAPI:
    """The application on one store, with all its rooms; not `at_once`, all but the first page's
    are opened when that has gone out. With `sharing`, paired devices may come in by its address."""
    app = FastAPI(
        docs_url=None,
        redoc_url=None,
        openapi_url=None,
        middleware=[
            Middleware(AnswerHeaders),
            Middleware(LoopbackOnly),
            Middleware(SameOriginOnly),
            Middleware(PairedOnly),
            Middleware(BodyLimit, larger=LARGER_BODIES, refusal=too_large),
            Middleware(GZipMiddleware, compresslevel=4),
            Middleware(LastResort),
            Middleware(OpenInTime),
        ],
    )
    app.state.store = store
    app.state.sharing = sharing
    app.mount("/static", StaticFiles(directory=paths.STATIC), name="static")
    add_error_pages(app)
    app.state.rooms = Rooms(app)
    if at_once:
        app.state.rooms.open_all()
    return app
