"""Digests of every file of a manual."""

import hashlib
from collections.abc import Mapping

DIGESTS = "digests.txt"


def digest_list(files: Mapping[str, bytes]) -> bytes:
    """One line a file, ``sha256  path``, sorted by path; the list leaves itself out."""
    lines = (
        f"{hashlib.sha256(data).hexdigest()}  {path}\n"
        for path, data in sorted(files.items())
        if path != DIGESTS
    )
    return "".join(lines).encode("utf-8")


def read_digests(text: str) -> dict[str, str]:
    """Path to sha256, from such a list; lines that are none are passed over."""
    found: dict[str, str] = {}
    for each in text.splitlines():
        digest, gap, path = each.partition("  ")
        if gap and len(digest) == 64:
            found[path] = digest
    return found
