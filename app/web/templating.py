"""From a page dataclass to HTML: its fields are the template's context, and nothing else is."""

from collections.abc import Mapping
from dataclasses import fields
from functools import cache, lru_cache
from hashlib import sha256
from typing import Any

from fastapi import Request, Response
from fastapi.responses import HTMLResponse, RedirectResponse
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from app import paths
from app.book.settings import Settings
from app.web.said import Said, forget, heard, say
from app.web.session import give_up_changes, settings_of_request
from app.web.shown import Shown

NAVIGATION = (
    ("/", "Today"),
    ("/fleeces", "Fleeces"),
    ("/skeins", "Skeins"),
    ("/swatches", "Swatches"),
    ("/garments", "Garments"),
    ("/work-list", "Work list"),
    ("/tables", "Tables"),
    ("/settings", "Settings"),
)
ROOM_OF = {
    "/yarns": "/skeins",
    "/bobbins": "/skeins",
    "/quick": "/",
    "/help": "/garments",
    "/patterns": "/garments",
    "/wool-book": "/fleeces",
    "/labels": "/skeins",
    "/shelf": "/garments",
}
"""Addresses that belong to a room of another name."""


def render(
    request: Request,
    template: str,
    page: Any,
    status: int = 200,
    block: str | None = None,
    headers: Mapping[str, str] | None = None,
) -> HTMLResponse:
    """A page, or for a request by htmx only its `block`; an answer of 400 or more saves nothing."""
    whole = block is None or not wants_fragment(request)
    context = page_context(request, page)
    if status >= 400:
        give_up_changes(request)
    html = draw(template, context, None if whole else block)
    answer = HTMLResponse(html, status, {"vary": "HX-Request", **(headers or {})})
    if whole and context["said"]:
        forget(answer)
    return answer


def after_save(request: Request, url: str, message: str, undo: int | str | None = None) -> Response:
    """On to `url`, which says `message` and offers to undo the event or change `undo`."""
    answer: Response = RedirectResponse(url, 303)
    if request.headers.get("hx-request") == "true":
        answer = Response(headers={"hx-redirect": url})
    say(answer, Said(message, undo))
    return answer


def wants_fragment(request: Request) -> bool:
    """True for a swap by htmx; false for a whole page, a boosted link or a step back."""
    headers = request.headers
    return (
        headers.get("hx-request") == "true"
        and headers.get("hx-request-type") != "full"
        and "hx-boosted" not in headers
        and "hx-history-restore-request" not in headers
    )


def page_context(request: Request, page: Any) -> dict[str, Any]:
    """The fields of the page, and what every page has: `shown`, the rooms, what was just said."""
    settings = settings_of_request(request)
    context = {field.name: getattr(page, field.name) for field in fields(page)}
    return context | {
        "shown": shown_in(settings),
        "settings_paper": settings.paper,
        "said": heard(request),
        "rooms": NAVIGATION,
        "room": room_of(request.url.path),
        "path": request.url.path,
    }


def draw(template: str, context: Mapping[str, Any], block: str | None = None) -> str:
    """The HTML of a template, or of one block of it with the same context.

    A block that is drawn alone must import its macros itself.
    """
    found = environment().get_template(template)
    if block is None:
        return found.render(context)
    return "".join(found.blocks[block](found.new_context(dict(context))))


def room_of(path: str) -> str:
    """The address of the room a path lies in, or an empty string outside all rooms."""
    first = "/" + path.split("/")[1]
    first = ROOM_OF.get(first, first)
    return first if first in dict(NAVIGATION) else ""


@lru_cache(maxsize=8)
def shown_in(settings: Settings) -> Shown:
    """The formats of these settings."""
    return Shown(settings)


@cache
def environment() -> Environment:
    """Templates with everything escaped, where a name that is not in the page is an error."""
    found = Environment(
        loader=FileSystemLoader(paths.TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    found.globals["static"] = static_url
    return found


@cache
def static_url(name: str) -> str:
    """The address of a static file with its version, so that browsers may keep it."""
    digest = sha256((paths.STATIC / name).read_bytes()).hexdigest()[:10]
    return f"/static/{name}?v={digest}"
