"""Boxes: their volume and what is mounted on them."""
