"""Where things lie: what comes with the program, and the maker's own data."""

from pathlib import Path

_HERE = Path(__file__).parent
_BUNDLED = _HERE / "_bundled"
_BESIDE = _BUNDLED if _BUNDLED.is_dir() else _HERE.parent

TEMPLATES = _BESIDE / "templates"
STATIC = _BESIDE / "static"
MIGRATIONS = _BESIDE / "migrations"
DEMO = _BESIDE / "demo_data" / "demo.json"


def own_data() -> Path:
    """The folder of the maker's own data, in the place usual for her system."""
    from platformdirs import user_data_path

    return user_data_path("tallyhank", appauthor=False)


def demo_data() -> Path:
    """The folder of the working copy of the demo, apart from her own data."""
    from platformdirs import user_cache_path

    return user_cache_path("tallyhank", appauthor=False) / "demo"
