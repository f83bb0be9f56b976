"""Serving the pages to this machine's own browser."""

import gc
import socket
from contextlib import ExitStack, closing
from ipaddress import ip_address
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING

from app.store import Store, open_store
from app.store.alone import alone
from app.store.errors import StoreError
from app.store.fill import is_empty
from app.store.photo_sweep import sweep
from app.store.places import remove_database

if TYPE_CHECKING:
    from uvicorn import Server

    from app.web.sharing import Sharing

HOST = "127.0.0.1"
"""Loopback only: no other machine can reach it."""

SHUTDOWN_S = 2
"""How long a page still being sent may hold up the end of the program."""


class PortTaken(StoreError):
    """You meet it when the port cannot be had."""


class NoHome(StoreError):
    """You meet it when there is no home network to share in, or an address is not of one."""


def serve(
    folder: Path,
    port: int,
    browser: bool,
    demo: Path | None = None,
    fresh: bool = False,
    share: str | None = None,
) -> None:
    """Serve the data of a folder until Ctrl-C.

    A folder for the `demo` is filled from that file if it is empty, or emptied first if `fresh`.
    With `share` it also listens on that address of the home network, "" for the one this machine
    has there. StoreError where the folder, the port or the address cannot be used, or another copy
    has the folder.
    """
    with alone(folder), closing(_listen(HOST, port)) as listener, ExitStack() as more:
        if demo and fresh:
            remove_database(folder)
        with closing(open_store(folder)) as store:
            if demo:
                _fill_from(demo, store)
            sweep(store)
            port = listener.getsockname()[1]
            sharing, others = _shared(share, port, more)
            server = _server(store, sharing)
            address = f"http://{HOST}:{port}/"
            print(f"Tallyhank is at {address} (Ctrl-C ends it). Data: {folder}", flush=True)
            if sharing:
                _tell_sharing(sharing)
            if browser:
                _open_browser(address)
            server.run(sockets=[listener, *others])


def _fill_from(demo: Path, store: Store) -> None:
    from app.work.keep import import_book

    with store.reading() as session:
        if not is_empty(session):
            return
    with store.writing() as session:
        import_book(session, demo.read_bytes())


def _shared(
    share: str | None, port: int, more: ExitStack
) -> tuple["Sharing | None", list[socket.socket]]:
    """How the book is shared, and what listens for it."""
    if share is None:
        return None, []
    from app.web.sharing import Sharing

    host = share or home_address()
    _private_only(host)
    listener = more.enter_context(closing(_listen(host, port)))
    return Sharing(frozenset({host}), port), [listener]


def home_address() -> str:
    """This machine's address in the home network; NoHome where it has none."""
    with closing(socket.socket(socket.AF_INET, socket.SOCK_DGRAM)) as probe:
        try:
            # An address reserved for documentation (RFC 5737): choosing a way sends nothing.
            probe.connect(("192.0.2.1", 9))
        except OSError as error:
            raise NoHome("This computer is in no network. Connect it, then try again.") from error
        found: str = probe.getsockname()[0]
        return found


def _private_only(host: str) -> None:
    try:
        address = ip_address(host)
    except ValueError as error:
        raise NoHome(f"{host} is no address; it looks like 192.168.1.20.") from error
    if not address.is_private or address.is_unspecified:
        raise NoHome(
            f"{host} can be reached from the open internet. Sharing is for a home network only."
        )


def _tell_sharing(sharing: "Sharing") -> None:
    import segno

    print(f"On the home network: {sharing.addresses[0]}", flush=True)
    print(f"Pairing code: {sharing.code}", flush=True)
    segno.make(sharing.pairing, micro=False).terminal(compact=True)
    print(
        "Traffic in the home network is not encrypted. This is not for the open internet.",
        flush=True,
    )


def _listen(host: str, port: int) -> socket.socket:
    try:
        listener = socket.create_server((host, port))
    except OSError as error:
        raise PortTaken(
            f"Port {port} cannot be used: {error.strerror}. "
            "Perhaps another program has it; choose another port with --port, for example "
            f"--port {port % 65535 + 1}."
        ) from error
    # Else the body of a page waits 40 ms for the browser to acknowledge its headers.
    listener.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    return listener


def _open_browser(address: str) -> None:
    import webbrowser

    # A browser in the terminal would only come back when it is closed.
    Thread(target=webbrowser.open, args=(address,), daemon=True).start()


def _server(store: Store, sharing: "Sharing | None" = None) -> "Server":
    import uvicorn

    from app.web.server import create_app

    app = create_app(store, at_once=False, sharing=sharing)
    gc.enable()  # the command put it off until all modules are in
    config = uvicorn.Config(
        app,
        log_level="warning",
        access_log=False,
        lifespan="off",
        ws="none",
        server_header=False,
        proxy_headers=False,
        timeout_graceful_shutdown=SHUTDOWN_S,
    )
    return uvicorn.Server(config)
