"""The door: what the command tallyhank does.

Answers 0 when all went well, 1 when a check found something, 2 when it could not be done; then
a sentence on the error stream says why. Everything heavy is imported by the command that needs it.
"""

import argparse
import gc
import io
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING

from app import __version__, paths
from app.book.errors import BookError

if TYPE_CHECKING:
    from app.store import Store

PORT = 8765
INTERRUPTED = 130
"""What a shell expects of a command that Ctrl-C ended before it was done."""

MOST_SHOWN = 20
"""Lines of a list of problems; the rest is counted."""


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the command line asks."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")  # a terminal may lack a letter of a yarn's name
    arguments = _parser().parse_args(argv)
    try:
        return int(arguments.run(arguments))
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:
        from app.store.errors import StoreError

        if not isinstance(error, BookError | OSError | StoreError):
            raise
        print(_sentence(error), file=sys.stderr)
        return 2


def serve(arguments: argparse.Namespace) -> int:
    """Serve the pages until Ctrl-C."""
    with _uncollected(), suppress(KeyboardInterrupt):
        from app.serve import serve

        demo = paths.DEMO if arguments.demo or arguments.fresh else None
        folder = _folder(arguments)
        serve(folder, arguments.port, arguments.browser, demo, arguments.fresh, arguments.share)
    return 0


@contextmanager
def _uncollected() -> Iterator[None]:
    """No rubbish is looked for until the server is made: modules coming in leave none, and looking
    costs a seventh of the start."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def backup(arguments: argparse.Namespace) -> int:
    """Make a backup and say where it is."""
    from app.work.keep import back_up

    with _opened(arguments) as store:
        print(f"Backed up and verified: {back_up(store.folder)}")
    return 0


def restore(arguments: argparse.Namespace) -> int:
    """Put a backup in the place of the data."""
    from app.store.alone import alone
    from app.store.restore import restore

    folder = _folder(arguments)
    with alone(folder):
        former = restore(arguments.file, folder)
    print(f"Restored from {arguments.file}.")
    if former:
        print(f"What was there before is kept: {former}")
    return 0


def export_(arguments: argparse.Namespace) -> int:
    """Write the whole book to a file, with its pictures where that is to be a .zip."""
    from app.store.places import move_into_place
    from app.work.keep import export_book
    from app.work.photo_zip import write_zip

    place: Path = arguments.file
    part = place.with_name(f"{place.name}.part")
    try:
        with _opened(arguments) as store, store.reading() as session, part.open("wb") as file:
            if place.suffix.lower() == ".zip":
                write_zip(session, file)
            else:
                file.write(export_book(session).encode())
        move_into_place(part, place)
    finally:
        part.unlink(missing_ok=True)
    print(f"Exported to {place}.")
    return 0


def import_(arguments: argparse.Namespace) -> int:
    """Bring a file into a book that is still empty."""
    from app.store import open_store
    from app.work.keep import import_file, without_pictures

    with (
        arguments.file.open("rb") as file,
        closing(open_store(_folder(arguments))) as store,
        store.writing() as session,
    ):
        wanting = without_pictures(session, import_file(session, file))
    print(f"Imported {arguments.file}. {wanting}".rstrip())
    return 0


def check(arguments: argparse.Namespace) -> int:
    """Look everything over and say what is wrong."""
    from app.store.errors import Damaged
    from app.work.look_over import look_over

    try:
        with _opened(arguments) as store, store.reading() as session:
            found = [str(one) for one in look_over(session)]
    except Damaged as error:
        found = [str(error)]
    print("\n".join(found) if found else "Nothing wrong.")
    return 1 if found else 0


def reckon(arguments: argparse.Namespace) -> int:
    """Reckon an exported file and tell the answer."""
    from app.book.exchange import loads
    from app.telling import as_json, as_text

    book = loads(arguments.file.read_bytes())
    print(as_json(book) if arguments.json else as_text(book))
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="tallyhank",
        description="Plan from fleece to finished garment without running out of yarn. "
        "Without a command, opens your own data in the browser.",
    )
    parser.add_argument("--version", action="version", version=f"tallyhank {__version__}")
    _add_serving(parser)
    _add_commands(parser)
    return parser


def _add_serving(parser: argparse.ArgumentParser) -> None:
    demo = parser.add_mutually_exclusive_group()
    demo.add_argument("--demo", action="store_true", help="open an invented shelf to try out")
    demo.add_argument("--fresh", action="store_true", help="the same, begun anew")
    parser.add_argument("--port", type=_port, default=PORT, help=f"default: {PORT}")
    parser.add_argument(
        "--no-browser", dest="browser", action="store_false", help="only print the address"
    )
    parser.add_argument(
        "--share",
        nargs="?",
        const="",
        metavar="ADDRESS",
        help="let paired phones in your home network use it too",
    )
    _add_data(demo, default=None)
    parser.set_defaults(run=serve)


def _add_commands(parser: argparse.ArgumentParser) -> None:
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    _add(commands, backup, "backup", "copy the data to its backups folder, and verify the copy")
    _add(commands, restore, "restore", "put a backup in the place of the data", file=True)
    _add(
        commands,
        export_,
        "export",
        "write everything to one file; a .zip has the photos too",
        file=True,
    )
    _add(commands, import_, "import", "bring an exported file into an empty book", file=True)
    _add(commands, check, "check", "look everything over")
    reckoning = _add(commands, reckon, "reckon", "answer from an exported file", file=True)
    reckoning.add_argument("--json", action="store_true", help="for other programs to read")


def _add(
    commands: "argparse._SubParsersAction[argparse.ArgumentParser]",
    run: Callable[[argparse.Namespace], int],
    name: str,
    what: str,
    file: bool = False,
) -> argparse.ArgumentParser:
    command = commands.add_parser(name, help=what, description=f"{what[0].upper()}{what[1:]}.")
    command.set_defaults(run=run)
    # A default here would undo what was given before the command word.
    _add_data(command, default=argparse.SUPPRESS)
    if file:
        command.add_argument("file", type=Path, metavar="FILE")
    return command


def _add_data(parser: argparse._ActionsContainer, default: str | None) -> None:
    parser.add_argument(
        "--data", type=Path, metavar="FOLDER", default=default, help="another folder for the data"
    )


def _port(text: str) -> int:
    if not text.isdigit() or int(text) > 65535:
        raise argparse.ArgumentTypeError("a port is a whole number up to 65535")
    return int(text)


def _folder(arguments: argparse.Namespace) -> Path:
    demo = arguments.demo or arguments.fresh
    usual = paths.demo_data() if demo else paths.own_data()
    given: Path | None = arguments.data
    return (given or usual).expanduser().absolute()


@contextmanager
def _opened(arguments: argparse.Namespace) -> Iterator["Store"]:
    """The store of data that is there already."""
    from app.store import open_store
    from app.store.errors import StoreError
    from app.store.places import database_file

    folder = _folder(arguments)
    if not database_file(folder).exists():
        raise StoreError(f"There is no data in {folder} yet.")
    with closing(open_store(folder)) as store:
        yield store


def _sentence(error: Exception) -> str:
    if isinstance(error, OSError):
        return f"{error.filename or 'A file'} cannot be used: {error.strerror}."
    lines = str(error).splitlines()
    more = [f"… and {len(lines) - MOST_SHOWN} more."] if len(lines) > MOST_SHOWN else []
    return "\n".join(lines[:MOST_SHOWN] + more)
