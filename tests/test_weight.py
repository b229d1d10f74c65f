"""A page opens at once on a poor connection: what it loads at its start is small, and all from its own folder."""

import gzip
import re
from functools import cache
from pathlib import Path

from test_manual import Page

MOST_BYTES = 60_000
REACHES_OUT = re.compile(
    r"https?:|\bwss?:|['\"]//|\bfetch\s*\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts|\bimport\s*\("
    r"|\bWorker\s*\(|\bRTC|\.open\s*\("
)


@cache
def packed(path: Path) -> int:
    """Bytes of a file as a server would send it: gzip, level 6."""
    return len(gzip.compress(path.read_bytes(), 6))


def weight(path: Path) -> int:
    """Bytes of a page with its style sheets, its scripts and its pictures but photos, all packed."""
    loaded = {(path.parent / each).resolve() for each in Page(path.read_text("utf-8")).loaded}
    return packed(path) + sum(packed(each) for each in loaded if "photos" not in each.parts)


def test_no_page_weighs_more_than_60_kb_with_all_it_loads_at_its_start(demo_manual: Path) -> None:
    weights = {path.relative_to(demo_manual): weight(path) for path in demo_manual.rglob("*.html")}
    assert {str(name): each for name, each in weights.items() if each > MOST_BYTES} == {}


def test_what_a_page_loads_is_counted(demo_manual: Path) -> None:
    page = demo_manual / "make-dead.html"
    assert weight(page) > packed(page) + packed(demo_manual / "lookup/off-data.js")


def test_no_script_can_ask_anything_of_anywhere(demo_manual: Path) -> None:
    scripts = sorted((demo_manual / "assets").glob("*.js"))
    assert scripts
    reaching = {path.name: REACHES_OUT.findall(path.read_text("utf-8")) for path in scripts}
    assert {name: found for name, found in reaching.items() if found} == {}


def test_every_page_holds_a_policy_that_lets_nothing_in_but_its_own_folder(demo_manual: Path) -> None:
    for path in demo_manual.rglob("*.html"):
        policy = re.search(r'Content-Security-Policy" content="([^"]*)"', path.read_text("utf-8"))
        assert policy, path.name
        assert policy[1].startswith("default-src 'none';"), path.name
        assert "http" not in policy[1], path.name
