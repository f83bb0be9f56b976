"""Who may come in over the home network: paired devices, and nobody else.

A request that came in by an address of the home network needs the cookie of a paired device.
Without it there is the form that pairs one, and its stylesheet. This machine's own browser needs
none.
"""

from datetime import date

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from app.store.engine import Store
from app.web.sharing import COOKIE, Sharing

PAIR = "/pair"
OPEN = frozenset({PAIR, "/static/css/pair.css"})


class PairedOnly:
    """Sends a device that is not paired to the form that pairs it."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app
        self._seen: dict[str, date] = {}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http" and shared(scope) and scope["path"] not in OPEN:
            store: Store = scope["app"].state.store
            cookie = Request(scope).cookies.get(COOKIE, "")
            if not await run_in_threadpool(self._may, store, cookie):
                await RedirectResponse(PAIR, 303)(scope, receive, send)
                return
        await self.app(scope, receive, send)

    def _may(self, store: Store, cookie: str) -> bool:
        from app.work.device_pair import known_device, note_seen

        with store.reading() as session:
            device = known_device(session, cookie)
        if device and self._seen.get(device) != date.today():
            with store.writing() as session:
                note_seen(session, device, date.today())
            self._seen[device] = date.today()
        return device is not None


def shared(scope: Scope) -> bool:
    """Whether a request came in by the home network."""
    sharing: Sharing | None = getattr(scope["app"].state, "sharing", None)
    server = scope.get("server")
    return sharing is not None and server is not None and server[0] in sharing.hosts
