"""One frozen dataclass a page: the whole context of its template."""
