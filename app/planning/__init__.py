"""The reckoning: needs against the shelf. Pure: a book goes in, frozen answers come out."""

from app.planning.reckoning import reckon

__all__ = ["reckon"]
