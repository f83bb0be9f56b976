"""Where the parts of the maker's data lie in her folder."""

from pathlib import Path

from app.store.errors import NotSaved


def database_file(folder: Path) -> Path:
    return folder / "tallyhank.sqlite"


def backups_folder(folder: Path) -> Path:
    return folder / "backups"


def make_folder(folder: Path) -> None:
    """Make the folder if it is not there; NotSaved where that is not possible."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise NotSaved(
            f"The folder {folder} cannot be made or written: {error.strerror}."
        ) from None
