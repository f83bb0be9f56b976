"""The maker's data in one folder: SQLite, its sessions, records, migrations and backups."""

from app.store.engine import Store, open_store

__all__ = ["Store", "open_store"]
