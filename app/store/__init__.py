"""The shelf on disk: SQLite, migrated and backed up, to and from the book."""
