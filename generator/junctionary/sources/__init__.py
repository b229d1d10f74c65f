"""Published authority: which clause says what, and how well that is confirmed.

One YAML file per publication lies beside this module; a new file or a new
line in one is found without being registered anywhere.
"""

from junctionary.sources.citing import (
    Citation,
    Clause,
    Publication,
    UnknownSourceError,
    cite,
    cite_for,
    cite_in,
    edition_year,
    known_edition,
    publication,
    publications,
)

__all__ = [
    "Citation",
    "Clause",
    "Publication",
    "UnknownSourceError",
    "cite",
    "cite_for",
    "cite_in",
    "edition_year",
    "known_edition",
    "publication",
    "publications",
]
