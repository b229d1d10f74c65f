"""Figures that warn: what is allowed, and still not as it should be."""
