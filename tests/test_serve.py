"""Starting, meeting a second copy or a taken port, and ending."""

import socket
import subprocess
from contextlib import closing
from pathlib import Path
from threading import Event
from unittest.mock import Mock

import pytest

from app import cli, paths, serve
from app.book.exchange import dumps
from app.store.engine import open_store
from app.store.fill import is_empty
from app.store.records import put, remove
from tests.books import an_errand
from tests.running import command, running
from tests.store.every_kind import EVERY_KIND, is_whole, make_data


def test_it_serves_a_page_and_ctrl_c_ends_it_quietly(tmp_path: Path) -> None:
    with running("--data", tmp_path / "data") as program:
        assert str(tmp_path / "data") in program.greeting
        assert "<h1" in program.page()
        assert program.interrupt() == (0, "")


def test_a_second_copy_on_the_folder_says_so(tmp_path: Path) -> None:
    with running("--data", tmp_path / "data"):
        again = command("--no-browser", "--port", 0, "--data", tmp_path / "data")
        told = subprocess.run(again, capture_output=True, text=True, check=False)
    assert told.returncode == 2
    assert told.stdout == ""
    assert "already running" in told.stderr
    assert len(told.stderr.splitlines()) == 1


def test_a_taken_port_is_said_with_what_to_do(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        words = ["--data", str(tmp_path), "--port", str(port), "--no-browser"]
        assert cli.main(words) == 2
    error = capsys.readouterr().err
    assert f"Port {port} cannot be used" in error
    assert f"--port {port + 1}" in error


def test_only_this_machine_can_reach_it(tmp_path: Path) -> None:
    with running("--data", tmp_path) as program:
        port = int(program.address.rstrip("/").rsplit(":", 1)[1])
        with pytest.raises(OSError, match="refused"):
            socket.create_connection(("127.0.0.2", port), timeout=5).close()


@pytest.fixture
def quiet(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """Serving ends at once, the demo is a small book; answers where its copy lies."""
    monkeypatch.setattr(serve, "_server", lambda _store, _sharing=None: Mock())
    monkeypatch.setattr(paths, "DEMO", tmp_path / "demo.json")
    monkeypatch.setattr(paths, "demo_data", lambda: tmp_path / "demo")
    monkeypatch.setattr(paths, "own_data", lambda: tmp_path / "own")
    (tmp_path / "demo.json").write_text(dumps(EVERY_KIND), encoding="utf-8")
    return tmp_path / "demo"


def _start(*words: str) -> int:
    return cli.main([*words, "--port", "0", "--no-browser"])


def test_the_demo_is_a_copy_apart(quiet: Path, tmp_path: Path) -> None:
    assert _start("--demo") == 0
    assert is_whole(quiet)
    assert not (tmp_path / "own").exists()


def test_the_demo_keeps_what_was_tried_until_it_is_begun_anew(quiet: Path) -> None:
    _start("--demo")
    store = open_store(quiet)
    with store.writing() as session:
        remove(session, an_errand())
    store.close()
    _start("--demo")
    assert not is_whole(quiet)
    assert _start("--fresh") == 0
    assert is_whole(quiet)


def test_a_demo_that_cannot_be_read_leaves_an_empty_copy(quiet: Path) -> None:
    paths.DEMO.write_text("{}", encoding="utf-8")
    assert _start("--demo") == 2
    paths.DEMO.write_text(dumps(EVERY_KIND), encoding="utf-8")
    assert _start("--demo") == 0
    assert is_whole(quiet)


def test_her_own_data_is_never_filled_with_the_demo(quiet: Path, tmp_path: Path) -> None:
    assert _start() == 0
    assert not quiet.exists()
    store = open_store(tmp_path / "own")
    with store.reading() as session:
        assert is_empty(session)
    store.close()


def test_the_browser_is_opened_unless_told_not_to(
    quiet: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[str] = []
    monkeypatch.setattr(serve, "_open_browser", opened.append)
    assert not quiet.exists()
    _start()
    assert opened == []
    cli.main(["--port", "0"])
    assert opened[0].startswith("http://127.0.0.1:")


def test_opening_the_browser_does_not_hold_up_the_start(monkeypatch: pytest.MonkeyPatch) -> None:
    opened, closed = Event(), Event()

    def open_in_terminal(_address: str) -> None:
        opened.set()
        closed.wait(5)

    monkeypatch.setattr("webbrowser.open", open_in_terminal)
    serve._open_browser("http://127.0.0.1:1/")
    assert opened.wait(5)
    closed.set()


def test_a_folder_with_records_is_served_as_it_is(quiet: Path, tmp_path: Path) -> None:
    folder = make_data(tmp_path / "own")
    store = open_store(folder)
    with store.writing() as session:
        put(session, an_errand())
    store.close()
    assert _start() == 0
    assert not quiet.exists()


def test_a_page_is_sent_without_waiting_for_its_headers_to_be_acknowledged() -> None:
    with closing(serve._listen("127.0.0.1", 0)) as listener:
        address = listener.getsockname()
        with socket.create_connection(address), closing(listener.accept()[0]) as accepted:
            assert accepted.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY)


def test_shared_it_listens_on_one_more_address_and_says_what_that_means(tmp_path: Path) -> None:
    with running("--data", tmp_path / "data", "--share", "127.0.0.3") as program:
        port = int(program.address.rstrip("/").rsplit(":", 1)[1])
        with socket.create_connection(("127.0.0.3", port), timeout=5):
            pass
        assert "<h1" in program.page()


@pytest.mark.usefixtures("quiet")
def test_a_shared_program_tells_its_code_and_that_nothing_is_encrypted(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert _start("--demo", "--share", "127.0.0.3") == 0
    told = capsys.readouterr().out
    assert "On the home network: http://127.0.0.3:" in told
    assert "Pairing code: " in told
    assert "not encrypted" in told
    assert "not for the open internet" in told


@pytest.mark.usefixtures("quiet")
@pytest.mark.parametrize(
    ("address", "words"),
    [
        ("8.8.8.8", "open internet"),
        ("0.0.0.0", "open internet"),
        ("my-phone", "is no address"),
    ],
)
def test_it_is_not_shared_with_the_open_internet(
    capsys: pytest.CaptureFixture[str], address: str, words: str
) -> None:
    assert _start("--demo", "--share", address) == 2
    assert words in capsys.readouterr().err


@pytest.mark.usefixtures("quiet")
def test_shared_without_an_address_it_takes_its_own_in_the_home_network(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(serve, "home_address", lambda: "127.0.0.4")
    assert _start("--demo", "--share") == 0
    assert "http://127.0.0.4:" in capsys.readouterr().out


def test_without_a_network_there_is_nothing_to_share(monkeypatch: pytest.MonkeyPatch) -> None:
    def unreachable(*_: object) -> None:
        raise OSError(101, "Network is unreachable")

    monkeypatch.setattr(serve.socket.socket, "connect", unreachable)
    with pytest.raises(serve.NoHome, match="no network"):
        serve.home_address()
