"""What the maker's own measurements tell of her yields, losses, shrinkage, grist and pace."""

from app.planning.learning.learnt import Learnt, learn

__all__ = ["Learnt", "learn"]
