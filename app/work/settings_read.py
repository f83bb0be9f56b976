"""The maker's settings."""

from sqlmodel import Session

from app.book.settings import Settings
from app.store.kept import SETTINGS_ID
from app.store.records import get


def settings_now(session: Session) -> Settings:
    """The settings as they are saved, or the defaults while nothing has been changed."""
    return get(session, Settings, SETTINGS_ID) or Settings()
