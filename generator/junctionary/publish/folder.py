"""The manual's folder, swapped in whole: a failed or killed run leaves the earlier manual as it was.

The new manual is made beside the old one; files that did not change are
linked, not written. Then two renames put it in place. A run that was stopped
between the two is put right by the next.
"""

import os
import shutil
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from junctionary.publish.digests import DIGESTS, digest_list, read_digests

MARKER = "manual.txt"
FORMAT = 1
_MARKER_TEXT = "junctionary house manual, format "
# What file managers drop into any folder they show.
_LITTER = frozenset({".DS_Store", "Thumbs.db", "desktop.ini", ".directory"})


class NotAManual(ValueError):  # noqa: N818 - it says what the folder is
    """A folder that is not written over, and why."""


def swap_in(files: Mapping[str, bytes], folder: Path) -> None:
    """Makes ``folder`` hold exactly these files, its marker and its digests.

    Raises NotAManual where the folder holds anything that was not published,
    OSError where it cannot be written; either way what was there stays.
    """
    for path in files:
        _checked(path)
    folder = folder.resolve()
    if not folder.name:
        raise NotAManual("is no folder that can be swapped; name one within it")
    stage, old = folder.with_name(f".{folder.name}.new"), folder.with_name(f".{folder.name}.old")
    _recover(folder, stage, old)
    _refuse_what_is_not_ours(folder)
    whole = {**files, MARKER: f"{_MARKER_TEXT}{FORMAT}\n".encode()}
    whole[DIGESTS] = digest_list(whole)
    try:
        _write(whole, stage, folder)
    except BaseException:
        shutil.rmtree(stage, ignore_errors=True)
        raise
    _exchange(folder, stage, old)


def _exchange(folder: Path, stage: Path, old: Path) -> None:
    if not folder.exists():
        stage.rename(folder)
        return
    folder.rename(old)
    try:
        stage.rename(folder)
    except OSError:
        old.rename(folder)
        _remove(stage)
        raise
    _remove(old)


def _recover(folder: Path, stage: Path, old: Path) -> None:
    """Puts right what a stopped run left: the earlier manual moved aside, a stage half made."""
    for left in (old, stage):
        if left.exists() and not _is_made_here(left):
            raise NotAManual(f"{left} is in the way and was not published; move it elsewhere")
    if old.exists():
        if folder.is_dir() and not any(folder.iterdir()):
            folder.rmdir()
        if not folder.exists():
            old.rename(folder)
        elif _format(folder) is not None:
            _remove(old)
    if stage.exists():
        _remove(stage)


def _remove(folder: Path) -> None:
    """Removes a folder, its marker last, so that one half removed is still known for what it is."""
    for entry in folder.iterdir():
        if entry.name == MARKER:
            continue
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        else:
            entry.unlink()
    (folder / MARKER).unlink(missing_ok=True)
    folder.rmdir()


def _is_made_here(folder: Path) -> bool:
    return folder.is_dir() and (not any(folder.iterdir()) or _format(folder) is not None)


def _format(folder: Path) -> int | None:
    """The format of the manual in a folder, or None where there is none."""
    try:
        text = (folder / MARKER).read_text("utf-8").strip()
    except (OSError, UnicodeDecodeError):
        return None
    number = text.removeprefix(_MARKER_TEXT)
    return int(number) if number != text and number.isdecimal() else None


def _refuse_what_is_not_ours(folder: Path) -> None:
    if not folder.exists():
        return
    if not folder.is_dir():
        raise NotAManual("is a file; name a folder")
    if not any(folder.iterdir()):
        return
    format_ = _format(folder)
    if format_ is None:
        raise NotAManual("holds files and is not a manual; name an empty or a new folder")
    if format_ > FORMAT:
        raise NotAManual(
            f"was published by a later version (format {format_}); use that, or name a new folder"
        )
    try:
        published = read_digests((folder / DIGESTS).read_text("utf-8"))
    except (OSError, UnicodeDecodeError):
        raise NotAManual(f"has lost its {DIGESTS}; name a new folder") from None
    known = {*published, DIGESTS}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if (path.is_file() or path.is_symlink()) and name not in known and path.name not in _LITTER:
            raise NotAManual(f"holds {name}, which was not published; move it elsewhere first")


def _write(files: Mapping[str, bytes], stage: Path, earlier: Path) -> None:
    stage.mkdir(parents=True)
    # The marker goes first, so that a stage half made is known for what it is.
    for path, data in sorted(files.items(), key=lambda entry: entry[0] != MARKER):
        target = stage / path
        target.parent.mkdir(parents=True, exist_ok=True)
        if not _linked(earlier / path, target, data):
            target.write_bytes(data)


def _linked(before: Path, target: Path, data: bytes) -> bool:
    """Whether the earlier manual's own file could be taken over: the same bytes, on a drive that links."""
    try:
        if before.is_symlink() or before.stat().st_size != len(data) or before.read_bytes() != data:
            return False
        os.link(before, target)
    except OSError:
        return False
    return True


def _checked(path: str) -> None:
    parts = PurePosixPath(path).parts
    if not parts or path.startswith("/") or "\\" in path or ".." in parts or ":" in path:
        raise ValueError(f"{path!r} is no path within a manual")
