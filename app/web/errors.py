"""What a page may refuse, and the pages that say so.

PageRefusal
├── Missing   the address names a record that is not in the book: 404
├── Stale     the record was changed since the form was opened: 409, nothing overwritten
└── NotNow    what was asked cannot be done as things stand: 409, nothing changed

Anything else that goes wrong is logged in full and answered with a plain page (500).
"""

import logging
from dataclasses import dataclass
from http import HTTPStatus

from fastapi import FastAPI, Request, Response
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.store.errors import Refused, StoreError
from app.web.templating import render

log = logging.getLogger(__name__)

UNTYPED = ("stamp", "back")
"""Fields of a form that nobody types."""


class PageRefusal(Exception):
    """A page that cannot be shown or a change that was not made."""

    def __init__(self, what: str, back: str = "/") -> None:
        super().__init__(what)
        self.what = what
        self.back = back


class Missing(PageRefusal):
    """Met when an address names something that is not there; `what` as in "This fleece"."""


class Stale(PageRefusal):
    """Met when a form was filled in from a record that has changed; `back` shows it as it is."""


class NotNow(PageRefusal):
    """Met when a change cannot be made as things stand; `what` says why."""


@dataclass(frozen=True, slots=True)
class ErrorPage:
    """What happened, in a sentence; what to do, in another; where to go; what was `typed`."""

    title: str
    happened: str
    advice: str
    back: str = "/"
    back_to: str = "Today"
    typed: tuple[tuple[str, str], ...] = ()


def add_error_pages(app: FastAPI) -> None:
    """Let every refusal be answered by a page of the house."""
    app.add_exception_handler(Missing, _missing)
    app.add_exception_handler(Stale, _stale)
    app.add_exception_handler(NotNow, _not_now)
    app.add_exception_handler(StoreError, _not_saved)
    app.add_exception_handler(HTTPException, _http)
    app.add_exception_handler(RequestValidationError, _not_found)


class LastResort:
    """Innermost middleware: an error nobody expected becomes a page without a traceback."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        begun = False

        async def watched(message: Message) -> None:
            nonlocal begun
            begun = True
            await send(message)

        try:
            await self.app(scope, receive, watched)
        except Exception:
            if begun or scope["type"] != "http":
                raise
            log.exception("%s %s failed", scope["method"], scope["path"])
            await _broken(Request(scope))(scope, receive, send)


def too_large(request: Request) -> Response:
    """The page for more than an address can take (413)."""
    page = ErrorPage(
        "Too large", "That is more than this page can take.", "Nothing of it was saved."
    )
    return render(request, "errors/error.html", page, status=413)


def _missing(request: Request, error: Exception) -> Response:
    what = error.what if isinstance(error, Missing) else "This page"
    page = ErrorPage(
        "Not found",
        f"{what} is not in the book.",
        "The address may be mistyped, or it belongs to another book.",
    )
    return render(request, "errors/error.html", page, status=404)


def _stale(request: Request, error: Exception) -> Response:
    what, back = (error.what, error.back) if isinstance(error, Stale) else ("This", "/")
    page = ErrorPage(
        "Changed meanwhile",
        f"{what} was changed meanwhile, in another window or on another device.",
        "Nothing was overwritten and what you sent was not saved. Look at it as it is now, then "
        "enter your change again.",
        back,
        "it as it is now",
        _typed(request),
    )
    return render(request, "errors/error.html", page, status=409)


def _typed(request: Request) -> tuple[tuple[str, str], ...]:
    """What somebody typed, field by field, so that it can be entered again; nothing hidden."""
    sent: dict[str, str] = getattr(request.state, "typed", {})
    told = {name: text for name, text in sent.items() if text.strip() and name not in UNTYPED}
    named = ((name.replace("_", " ").capitalize(), text) for name, text in told.items())
    return tuple((name, text) for name, text in named if not name.endswith(" id"))


def _not_now(request: Request, error: Exception) -> Response:
    why, back = (error.what, error.back) if isinstance(error, NotNow) else ("", "/")
    page = ErrorPage("Not done", why, "Nothing was changed.", back, "the page you came from")
    return render(request, "errors/error.html", page, status=409)


def _not_saved(request: Request, error: Exception) -> Response:
    log.warning("%s %s: %s", request.method, request.url.path, error)
    page = ErrorPage("Not done", str(error), "Nothing of this was saved.")
    status = 409 if isinstance(error, Refused) else 503
    return render(request, "errors/error.html", page, status=status)


def _http(request: Request, error: Exception) -> Response:
    status = error.status_code if isinstance(error, HTTPException) else 500
    if status == 404:
        return _not_found(request, error)
    page = ErrorPage(
        HTTPStatus(status).phrase.capitalize(),
        "This address does not take that." if status == 405 else "What was sent could not be read.",
        "Go back to the page and try again. Nothing was saved.",
    )
    headers = getattr(error, "headers", None)
    return render(request, "errors/error.html", page, status=status, headers=headers)


def _not_found(request: Request, _: Exception) -> Response:
    page = ErrorPage(
        "Not found", "There is no page at this address.", "Check the address, or start from Today."
    )
    return render(request, "errors/error.html", page, status=404)


def _broken(request: Request) -> Response:
    page = ErrorPage(
        "Something went wrong",
        "The program met an error it did not expect.",
        "Nothing of this was saved. Go back and try again; if it happens again, the program's "
        "window shows the details to pass on.",
    )
    return render(request, "errors/error.html", page, status=500)
