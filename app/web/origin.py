"""Who may talk to the program: this machine's own browser, on the program's own pages.

Pure ASGI, outermost first: answer headers, Host, Origin, body size. A page of another site can
neither read an answer (a foreign name that resolves to this machine is refused by Host) nor send
a change (a foreign or missing origin is refused on everything but GET and HEAD).
"""

from collections.abc import Callable, Mapping
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.web.sharing import Sharing

LOOPBACK_NAMES = frozenset({"127.0.0.1", "localhost", "::1"})
SAFE_METHODS = frozenset({"GET", "HEAD"})
BODY_LIMIT = 1 << 20
"""Bytes of a form; pages that take a file have a limit of their own."""

CONTENT_POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "form-action 'self'",
        "frame-ancestors 'none'",
        "base-uri 'none'",
    )
)
# "same-origin" and not "no-referrer": the latter makes browsers send "Origin: null" with a form.
SAFE_HEADERS = {
    "content-security-policy": CONTENT_POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}
KEPT_FOR_A_YEAR = "public, max-age=31536000, immutable"
KEPT_PRIVATELY = "private, max-age=31536000, immutable"
"""A picture is named by what is in it, so it never changes; it is nobody else's to keep."""


class AnswerHeaders:
    """Adds the content policy and says what may be kept: versioned static files and pictures, never
    a page."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.update(SAFE_HEADERS)
                headers["cache-control"] = _cache_control(scope, message["status"])
            await send(message)

        await self.app(scope, receive, send_with_headers)


class LoopbackOnly:
    """Refuses (400) a Host that is not a name of this machine with the program's own port."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http" and not _is_own_host(scope):
            refusal = PlainTextResponse("This address is not the program's own.\n", 400)
            await refusal(scope, receive, send)
            return
        await self.app(scope, receive, send)


class SameOriginOnly:
    """Refuses (403) a change that was not sent by one of the program's own pages."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        changing = scope["type"] == "http" and scope["method"] not in SAFE_METHODS
        if changing and not _is_same_origin(Headers(scope=scope)):
            refusal = PlainTextResponse("A change must come from a page of the program.\n", 403)
            await refusal(scope, receive, send)
            return
        await self.app(scope, receive, send)


class BodyLimit:
    """Refuses (413) a body above the limit; the rest of the program sees it whole or not at all.

    `larger` maps a path that takes files to its own limit in bytes; `refusal` draws the answer.
    """

    def __init__(
        self, app: ASGIApp, larger: Mapping[str, int], refusal: Callable[[Request], Response]
    ) -> None:
        self.app = app
        self.larger = larger
        self.refusal = refusal

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or scope["method"] in SAFE_METHODS:
            await self.app(scope, receive, send)
            return
        limit = self.larger.get(scope["path"], BODY_LIMIT)
        body = await _body_within(limit, Headers(scope=scope), receive)
        if body is None:
            await self.refusal(Request(scope))(scope, receive, send)
            return
        await self.app(scope, _replayed(body, receive), send)


def _cache_control(scope: Scope, status: int) -> str:
    path = scope.get("path", "")
    if status not in (200, 304):
        return "no-store"
    if path.startswith("/photos/file/"):
        return KEPT_PRIVATELY
    versioned = path.startswith("/static/") and scope.get("query_string")
    return KEPT_FOR_A_YEAR if versioned else "no-store"


def _is_own_host(scope: Scope) -> bool:
    hosts = Headers(scope=scope).getlist("host")
    if len(hosts) != 1:
        return False
    try:
        parts = urlsplit(f"//{hosts[0]}")
        port = parts.port or 80
    except ValueError:
        return False
    bound = scope.get("server")
    return (
        parts.hostname in _own_names(scope)
        and parts.netloc == hosts[0]
        and "@" not in hosts[0]
        and bound is not None
        and port == bound[1]
    )


def _own_names(scope: Scope) -> frozenset[str]:
    """Names by which a request may call the program: on an address of the home network, that
    address alone."""
    sharing: Sharing | None = getattr(scope["app"].state, "sharing", None)
    bound = scope.get("server")
    if sharing and bound and bound[0] in sharing.hosts:
        return frozenset({bound[0]})
    return LOOPBACK_NAMES


def _is_same_origin(headers: Headers) -> bool:
    origin = headers.get("origin")
    if origin is not None:
        return origin == f"http://{headers.get('host')}"
    return headers.get("sec-fetch-site") == "same-origin"


async def _body_within(limit: int, headers: Headers, receive: Receive) -> bytes | None:
    stated = headers.get("content-length", "0")
    if not stated.isdecimal() or int(stated) > limit:
        return None
    parts: list[bytes] = []
    size, more = 0, True
    while more:
        message = await receive()
        if message["type"] == "http.disconnect":
            return None
        parts.append(message.get("body", b""))
        size += len(parts[-1])
        more = message.get("more_body", False)
        if size > limit:
            return None
    return b"".join(parts)


def _replayed(body: bytes, receive: Receive) -> Receive:
    waiting = [{"type": "http.request", "body": body, "more_body": False}]

    async def replay() -> Message:
        return waiting.pop() if waiting else await receive()

    return replay
