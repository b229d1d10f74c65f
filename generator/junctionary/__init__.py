"""A house's as-built electrical record: read, checked, worked out, published."""

__version__ = "0.1.0"
