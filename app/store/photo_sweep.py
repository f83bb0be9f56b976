"""Sweeping away pictures that no photo names any more, and parts of files left by a power cut."""

from contextlib import suppress

from sqlmodel import select

from app.store.engine import Store
from app.store.photos import NAME, file_name, photos_folder
from app.store.tables.photo import PhotoRow


def sweep(store: Store) -> list[str]:
    """Take them away while nobody else can write; answers their names.

    To be done when the program starts: nothing can be undone then, so nothing can want one back.
    Other files that lie there are left alone.
    """
    folder = photos_folder(store.folder)
    if not folder.is_dir():
        return []
    with store.writing() as session:
        wanted = {file_name(digest) for digest in session.exec(select(PhotoRow.sha256))}
        ours = (one for one in folder.iterdir() if _is_ours(one.name))
        unwanted = sorted(one for one in ours if one.name not in wanted)
        for file in unwanted:
            with suppress(OSError):
                file.unlink(missing_ok=True)
        session.rollback()
    return [one.name for one in unwanted]


def _is_ours(name: str) -> bool:
    return NAME.fullmatch(name) is not None or name.endswith(".part")
