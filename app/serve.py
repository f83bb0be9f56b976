"""Serving the pages to this machine's own browser."""

import gc
import socket
from contextlib import closing
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

HOST = "127.0.0.1"
"""Loopback only: no other machine can reach it."""

SHUTDOWN_S = 2
"""How long a page still being sent may hold up the end of the program."""


class PortTaken(StoreError):
    """You meet it when the port cannot be had."""


def serve(
    folder: Path, port: int, browser: bool, demo: Path | None = None, fresh: bool = False
) -> None:
    """Serve the data of a folder until Ctrl-C.

    A folder for the `demo` is filled from that file if it is empty, or emptied first if `fresh`.
    StoreError where the folder or the port cannot be used, or another copy has the folder.
    """
    with alone(folder), closing(_listen(port)) as listener:
        if demo and fresh:
            remove_database(folder)
        with closing(open_store(folder)) as store:
            if demo:
                _fill_from(demo, store)
            sweep(store)
            server = _server(store)
            address = f"http://{HOST}:{listener.getsockname()[1]}/"
            print(f"Tallyhank is at {address} (Ctrl-C ends it). Data: {folder}", flush=True)
            if browser:
                _open_browser(address)
            server.run(sockets=[listener])


def _fill_from(demo: Path, store: Store) -> None:
    from app.work.keep import import_book

    with store.reading() as session:
        if not is_empty(session):
            return
    with store.writing() as session:
        import_book(session, demo.read_bytes())


def _listen(port: int) -> socket.socket:
    try:
        listener = socket.create_server((HOST, port))
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


def _server(store: Store) -> "Server":
    gc.disable()  # modules coming in leave nothing to collect; looking costs a seventh of the start
    import uvicorn

    from app.web.server import create_app

    app = create_app(store, at_once=False)
    gc.enable()
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
