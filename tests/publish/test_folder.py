"""The folder is swapped in whole: what was there is never lost, nothing foreign written over."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from junctionary.publish import folder as module
from junctionary.publish.folder import MARKER, NotAManual, swap_in

OLD = {"index.html": b"old", "box/K1.html": b"same"}
NEW = {"index.html": b"new", "box/K1.html": b"same", "box/K2.html": b"two"}


def content(folder: Path) -> dict[str, bytes]:
    return {
        each.relative_to(folder).as_posix(): each.read_bytes()
        for each in folder.rglob("*")
        if each.is_file() and each.name not in (MARKER, "digests.txt")
    }


@pytest.fixture
def manual(tmp_path: Path) -> Path:
    folder = tmp_path / "house-manual"
    swap_in(OLD, folder)
    return folder


def test_a_new_folder_is_made(tmp_path: Path) -> None:
    swap_in(NEW, tmp_path / "deep/house-manual")
    assert content(tmp_path / "deep/house-manual") == NEW


def test_an_empty_folder_is_taken(tmp_path: Path) -> None:
    (tmp_path / "m").mkdir()
    swap_in(NEW, tmp_path / "m")
    assert content(tmp_path / "m") == NEW


def test_the_earlier_manual_is_replaced_whole(manual: Path) -> None:
    swap_in({"index.html": b"new"}, manual)
    assert content(manual) == {"index.html": b"new"}


def test_nothing_is_left_beside_it(manual: Path) -> None:
    swap_in(NEW, manual)
    assert [each.name for each in manual.parent.iterdir()] == ["house-manual"]


def test_a_file_that_did_not_change_is_not_written_again(manual: Path) -> None:
    before = (manual / "box/K1.html").stat()
    swap_in(NEW, manual)
    after = (manual / "box/K1.html").stat()
    assert (after.st_ino, after.st_mtime_ns) == (before.st_ino, before.st_mtime_ns)


def test_a_published_file_that_was_changed_by_hand_is_put_right(manual: Path) -> None:
    (manual / "box/K1.html").write_bytes(b"SAME")
    swap_in(NEW, manual)
    assert content(manual) == NEW


def test_digests_tell_every_file_but_their_own(manual: Path) -> None:
    lines = (manual / "digests.txt").read_text().splitlines()
    assert [each.split("  ")[1] for each in lines] == ["box/K1.html", "index.html", MARKER]


def a_stranger(folder: Path) -> None:
    (folder / "tax-2026.txt").write_text("mine")


def an_edited_marker(folder: Path) -> None:
    (folder / MARKER).write_text("shopping list")


def a_later_format(folder: Path) -> None:
    (folder / MARKER).write_text("junctionary house manual, format 99\n")


def lost_digests(folder: Path) -> None:
    (folder / "digests.txt").unlink()


@pytest.mark.parametrize("spoil", [a_stranger, an_edited_marker, a_later_format, lost_digests])
def test_a_folder_that_is_not_wholly_ours_is_refused_and_left(
    manual: Path, spoil: Callable[[Path], None]
) -> None:
    spoil(manual)
    before = {each: each.read_bytes() for each in manual.rglob("*") if each.is_file()}
    with pytest.raises(NotAManual):
        swap_in(NEW, manual)
    assert {each: each.read_bytes() for each in manual.rglob("*") if each.is_file()} == before


def test_a_folder_of_somebodys_files_is_refused(tmp_path: Path) -> None:
    (tmp_path / "m").mkdir()
    (tmp_path / "m/letter.txt").write_text("dear")
    with pytest.raises(NotAManual, match="not a manual"):
        swap_in(NEW, tmp_path / "m")
    assert (tmp_path / "m/letter.txt").read_text() == "dear"


def test_a_file_in_its_place_is_refused(tmp_path: Path) -> None:
    (tmp_path / "m").write_text("a file")
    with pytest.raises(NotAManual):
        swap_in(NEW, tmp_path / "m")
    assert (tmp_path / "m").read_text() == "a file"


def test_what_a_file_manager_dropped_does_not_stand_in_the_way(manual: Path) -> None:
    (manual / ".DS_Store").write_bytes(b"x")
    swap_in(NEW, manual)
    assert content(manual) == NEW


@pytest.mark.parametrize("path", ["../out.html", "/etc/x", "a\\b", "C:x", ""])
def test_no_path_leads_out_of_the_folder(manual: Path, path: str) -> None:
    with pytest.raises(ValueError, match="no path"):
        swap_in({path: b""}, manual)
    assert content(manual) == OLD


def test_a_write_that_fails_leaves_the_earlier_manual(manual: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(self: Path, data: bytes) -> int:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(OSError, match="No space"):
        swap_in(NEW, manual)
    monkeypatch.undo()
    assert content(manual) == OLD
    assert [each.name for each in manual.parent.iterdir()] == ["house-manual"]


def test_a_second_rename_that_fails_puts_the_earlier_manual_back(
    manual: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rename = Path.rename

    def once(self: Path, target: Path) -> Path:
        if self.name.endswith(".new"):
            raise OSError(5, "Input/output error")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", once)
    with pytest.raises(OSError, match="Input/output"):
        swap_in(NEW, manual)
    monkeypatch.undo()
    assert content(manual) == OLD


def kill_in(monkeypatch: pytest.MonkeyPatch, name: str, after: int) -> None:
    """The run stops dead in a call of ``name``, with nothing put in order."""
    calls = 0
    real = getattr(module, name)

    def dying(*args: object) -> object:
        nonlocal calls
        calls += 1
        if calls > after:
            os._exit(9)
        return real(*args)

    monkeypatch.setattr(module, name, dying)


@pytest.mark.parametrize(
    ("name", "after"), [("_linked", 0), ("_linked", 2), ("_exchange", 0), ("_remove", 0)]
)
def test_a_killed_run_loses_nothing_and_the_next_finishes(
    manual: Path, monkeypatch: pytest.MonkeyPatch, name: str, after: int
) -> None:
    child = os.fork()
    if child == 0:
        kill_in(monkeypatch, name, after)
        swap_in(NEW, manual)
        os._exit(0)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 9
    assert content(manual) in (OLD, NEW)
    swap_in(NEW, manual)
    assert content(manual) == NEW
    assert [each.name for each in manual.parent.iterdir()] == ["house-manual"]


def test_a_run_stopped_between_the_renames_is_put_right(manual: Path) -> None:
    manual.rename(manual.with_name(".house-manual.old"))
    with pytest.raises(ValueError, match="no path"):
        swap_in({"": b""}, manual)
    swap_in(NEW, manual)
    assert content(manual) == NEW


def test_the_earlier_manual_comes_back_even_if_its_name_was_taken_by_an_empty_folder(
    manual: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    manual.rename(manual.with_name(".house-manual.old"))
    manual.mkdir()

    def full(*args: object) -> bool:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(module, "_linked", full)
    with pytest.raises(OSError, match="No space"):
        swap_in(NEW, manual)
    assert content(manual) == OLD


def test_somebodys_files_beside_it_are_not_taken_for_a_leftover(manual: Path) -> None:
    beside = manual.with_name(".house-manual.new")
    beside.mkdir()
    (beside / "mine.txt").write_text("mine")
    with pytest.raises(NotAManual, match="in the way"):
        swap_in(NEW, manual)
    assert (beside / "mine.txt").read_text() == "mine"
    assert content(manual) == OLD


def test_a_drive_without_links_is_written_in_full(manual: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def cannot(source: Path, target: Path) -> None:
        raise OSError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", cannot)
    swap_in(NEW, manual)
    assert content(manual) == NEW


def test_a_link_to_the_folder_stays_a_link(manual: Path) -> None:
    link = manual.parent / "latest"
    link.symlink_to(manual, target_is_directory=True)
    swap_in(NEW, link)
    assert link.is_symlink()
    assert content(manual) == NEW
    shutil.rmtree(manual)
