"""Change how things are reckoned and shown."""

from sqlmodel import Session

from app.book.settings import Settings
from app.store.records import put


def change_settings(session: Session, settings: Settings) -> None:
    """Put the settings in the place of the older ones."""
    put(session, settings)
