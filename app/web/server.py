"""The web application: every room found in routes/, behind the guards of origin.py."""

from importlib import import_module
from pkgutil import iter_modules

from fastapi import FastAPI
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.staticfiles import StaticFiles

from app import paths
from app.store.engine import Store
from app.web import routes
from app.web.errors import LastResort, add_error_pages, too_large
from app.web.origin import AnswerHeaders, BodyLimit, LoopbackOnly, SameOriginOnly

LARGER_BODIES = {"/settings/data/import": 64 << 20, "/skeins/import": 8 << 20}
"""Bytes for pages that take a file."""


def create_app(store: Store) -> FastAPI:
    """The application on one store. A module in routes/ with a `router` is a room of it."""
    app = FastAPI(
        docs_url=None,
        redoc_url=None,
        openapi_url=None,
        middleware=[
            Middleware(AnswerHeaders),
            Middleware(LoopbackOnly),
            Middleware(SameOriginOnly),
            Middleware(BodyLimit, larger=LARGER_BODIES, refusal=too_large),
            Middleware(GZipMiddleware, compresslevel=4),
            Middleware(LastResort),
        ],
    )
    app.state.store = store
    app.mount("/static", StaticFiles(directory=paths.STATIC), name="static")
    add_error_pages(app)
    for room in iter_modules(routes.__path__, f"{routes.__name__}."):
        app.include_router(import_module(room.name).router)
    return app
