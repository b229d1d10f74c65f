"""The checks: one rule a file, found by its folder; what a house is held against, and what cannot be told."""
