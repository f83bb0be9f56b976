"""Tallyhank: from fleece to finished garment without running out of yarn."""

__version__ = "0.1.0"
