"""Whether one thing suits another, where the answer is a word and no number."""

from dataclasses import dataclass
from typing import Literal

from junctionary.sources import Citation

Verdict = Literal[
    "fits", "too small", "too large", "too many", "too few", "size not listed", "metal not listed",
    "mix not listed", "not allowed", "cannot tell",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Fit:
    """What was found; ``allowed`` says in words what would fit, ``lacks`` what cannot be told without."""

    verdict: Verdict
    allowed: str
    cites: tuple[Citation, ...]
    lacks: tuple[str, ...] = ()

    @property
    def fits(self) -> bool | None:
        """True, False, or None where it cannot be told."""
        return None if self.verdict == "cannot tell" else self.verdict == "fits"
