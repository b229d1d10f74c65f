"""The published manual of the demo house: whole, linked both ways, quiet, readable without scripts."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import unquote, urlsplit

import pytest

from junctionary.cli.opening import Result, open_record
from junctionary.sheets.wording import on_sheet

if TYPE_CHECKING:
    from playwright.sync_api import Browser

ROOT = Path(__file__).parents[1]


class Page(HTMLParser):
    """What a page links to, what can be linked to in it, and its text."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.loaded: list[str] = []
        self.ids: list[str] = []
        self.text = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if given.get("id"):
            self.ids.append(str(given["id"]))
        if tag == "a" and given.get("href"):
            self.links.append(str(given["href"]))
        if tag in ("img", "script", "iframe", "source") and given.get("src"):
            self.loaded.append(str(given["src"]))
        if tag == "link" and given.get("href"):
            self.loaded.append(str(given["href"]))

    def handle_data(self, data: str) -> None:
        self.text += data + " "


@pytest.fixture(scope="module")
def pages(demo_manual: Path) -> dict[Path, Page]:
    return {path: Page(path.read_text("utf-8")) for path in demo_manual.rglob("*.html")}


@pytest.fixture(scope="module")
def demo() -> Result:
    result = open_record(ROOT / "content").result
    assert result is not None
    return result


def targets(pages: dict[Path, Page]) -> Iterator[tuple[Path, str, Path, str]]:
    for path, page in pages.items():
        for href in [*page.links, *page.loaded]:
            parts = urlsplit(href)
            if not parts.scheme and not parts.netloc:
                target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
                yield path, href, target, unquote(parts.fragment)


def test_every_internal_link_resolves(pages: dict[Path, Page]) -> None:
    broken = [
        f"{path.name}: {href}"
        for path, href, target, fragment in targets(pages)
        if not target.is_file()
        or (fragment and target.suffix == ".html" and not (fragment in pages[target].ids or "=" in fragment))
    ]
    assert broken == []


def test_what_a_link_asks_of_a_lookup_is_of_this_house(demo: Result, pages: dict[Path, Page]) -> None:
    known = {"at": demo.house.devices, "box": demo.house.boxes, "dead": demo.house.devices}
    asked = [fragment.partition("=") for _, _, target, fragment in targets(pages) if "=" in fragment]
    assert {name for name, _, _ in asked} == set(known)
    assert [value for name, _, value in asked if value not in known[name]] == []


def test_no_id_stands_twice_on_a_page(pages: dict[Path, Page]) -> None:
    twice = {
        path.name: {each for each in page.ids if page.ids.count(each) > 1} for path, page in pages.items()
    }
    assert {name: ids for name, ids in twice.items() if ids} == {}


def test_nothing_is_loaded_from_elsewhere(pages: dict[Path, Page], demo_manual: Path) -> None:
    for page in pages.values():
        assert [each for each in page.loaded if urlsplit(each).scheme or each.startswith("//")] == []
    for style in demo_manual.rglob("*.css"):
        text = style.read_text("utf-8")
        assert "@import" not in text
        assert not re.search(r"url\(\s*['\"]?(https?:)?//", text)


def test_every_page_can_be_reached_from_the_cover(pages: dict[Path, Page], demo_manual: Path) -> None:
    reached, ahead = set(), [demo_manual / "index.html"]
    links: dict[Path, set[Path]] = {}
    for path, _, target, _ in targets(pages):
        links.setdefault(path.resolve(), set()).add(target.resolve())
    while ahead:
        path = ahead.pop().resolve()
        if path not in reached:
            reached.add(path)
            ahead += links.get(path, ())
    assert {path.name for path in pages if path.resolve() not in reached} == set()


def anchor(pages: dict[Path, Page], identifier: str) -> bool:
    return any(identifier in page.ids for page in pages.values())


def page_saying(pages: dict[Path, Page], kind: str, name: str) -> Page:
    return next(page for path, page in pages.items() if path.parent.name == kind and path.stem == name)


def test_every_box_is_on_its_page_with_its_devices_joints_and_runs(
    demo: Result, pages: dict[Path, Page]
) -> None:
    for box in demo.house.boxes.values():
        page = page_saying(pages, "box", box.id)
        for device in box.devices:
            assert device.local in page.text
        for joint in box.joints:
            assert any(joint.id.split("/")[-1] in each for each in page.ids), joint.id
        for run in box.runs:
            assert run in page.text


def test_every_circuit_and_room_is_on_its_page(demo: Result, pages: dict[Path, Page]) -> None:
    for circuit in demo.house.circuits.values():
        page = page_saying(pages, "circuit", circuit.id)
        assert circuit.name in page.text
        for run in circuit.runs:
            assert run in page.text
        for breaker in circuit.breakers:
            assert breaker.split("/")[-1] in page.text
    for room in demo.house.rooms.values():
        page = page_saying(pages, "room", room.id)
        for box in room.boxes:
            assert box in page.text


def test_every_joint_is_on_the_splices_sheet(demo: Result, pages: dict[Path, Page]) -> None:
    page = next(page for path, page in pages.items() if path.name == "splices.html")
    for joint in demo.house.joints():
        assert joint.box in page.text


def test_from_a_box_it_is_one_click_to_its_breakers_circuits_and_room(
    demo: Result, pages: dict[Path, Page]
) -> None:
    linked: dict[Path, set[tuple[str, str]]] = {}
    for path, _, target, _ in targets(pages):
        linked.setdefault(path, set()).add((target.parent.name, target.stem))
    for path in pages:
        if path.parent.name != "box":
            continue
        box = demo.house.boxes[path.stem]
        assert ("room", box.room) in linked[path]
        for circuit in box.circuits:
            assert ("circuit", circuit) in linked[path]
        if any(
            demo.house.circuits[circuit].breakers
            for circuit in box.circuits
            if circuit in demo.house.circuits
        ):
            assert any(kind == "panel" for kind, _ in linked[path]), box.id


def test_cautions_stand_before_the_make_up_of_every_box(pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        if path.parent.name == "box":
            said = page.text.lower()
            assert "before opening" in said, path.name
            assert said.index("before opening") < said.index("make-up"), path.name
            assert "known live source" in said, path.name


def test_every_finding_and_every_missing_fact_is_on_its_sheet(demo: Result, pages: dict[Path, Page]) -> None:
    findings = next(page for path, page in pages.items() if path.name == "findings.html")
    missing = next(page for path, page in pages.items() if path.name == "not-recorded.html")
    for finding in demo.judgement.findings:
        assert (
            f"{finding.place.file}:{finding.place.line}" in findings.text.replace(" ", "")
            or str(finding.place) in findings.text
        )
    for each in demo.judgement.unrecorded:
        assert on_sheet(demo.house, each.about[0]) in missing.text


@pytest.mark.browser
@pytest.mark.parametrize("width", [390, 1280])
def test_no_page_is_wider_than_the_screen(browser: "Browser", demo_manual: Path, width: int) -> None:
    context = browser.new_context(
        viewport={"width": width, "height": 900}, java_script_enabled=True, offline=True
    )
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    wide = []
    for path in one_of_each_kind(demo_manual):
        page.goto(path.as_uri())
        if page.evaluate("document.documentElement.scrollWidth") > width:
            wide.append(path.name)
    context.close()
    assert wide == []
    assert [url for url in asked if not url.startswith(("file://", "data:"))] == []


def one_of_each_kind(manual: Path) -> list[Path]:
    """Every sheet at the top, and of each folder the largest page."""
    chosen = sorted(manual.glob("*.html"))
    for folder in sorted(path for path in manual.iterdir() if path.is_dir()):
        within = sorted(folder.glob("*.html"), key=lambda path: path.stat().st_size)
        chosen += within[-1:]
    return chosen


def test_the_cover_leads_to_every_box_room_and_panel(
    demo_manual: Path, pages: dict[Path, Page], demo: Result
) -> None:
    cover = demo_manual / "index.html"
    led = {unquote(urlsplit(each).path) for each in pages[cover].links}
    house = demo.house
    due = [("box", house.boxes), ("room", house.rooms), ("panel", house.panels)]
    assert [each for kind, ids in due for each in ids if f"{kind}/{each}.html" not in led] == []
