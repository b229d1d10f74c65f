"""The plain theme: every sheet, in large letters, in black, white and greys alone."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from test_manual import Page, one_of_each_kind

if TYPE_CHECKING:
    from playwright.sync_api import Browser
    from playwright.sync_api import Page as Tab

ROOT = Path(__file__).parents[1]
FEWEST_PX = 20

COLOURED = """() => {
  const found = new Set();
  const named = ['color', 'fill', 'stroke', 'backgroundColor', 'borderTopColor', 'borderRightColor',
    'borderBottomColor', 'borderLeftColor', 'outlineColor', 'textDecorationColor', 'caretColor', 'accentColor'];
  for (const each of document.querySelectorAll('*')) for (const pseudo of [null, '::before', '::after']) {
    const style = getComputedStyle(each, pseudo);
    if (pseudo && style.content === 'none') continue;
    for (const name of named) {
      const [r, g, b] = (style[name].match(/[\\d.]+/g) || []).map(Number);
      if (style[name].startsWith('rgb') ? r !== g || g !== b : /^(color|lab|lch|ok|hsl)/.test(style[name]))
        found.add(`${each.tagName} ${each.getAttribute('class')}: ${name} ${style[name]}`);
    }
  }
  return [...found];
}"""

SMALL = """least => {
  const found = new Set(), said = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (said.nextNode()) {
    const each = said.currentNode.parentElement;
    if (!said.currentNode.data.trim() || /^(SCRIPT|TEMPLATE|TITLE|DESC)$/i.test(each.tagName)) continue;
    if (!each.getClientRects().length) continue;
    const drawing = each.closest('svg');
    const scale = drawing ? drawing.getBoundingClientRect().width / drawing.viewBox.baseVal.width : 1;
    const size = parseFloat(getComputedStyle(each).fontSize) * scale;
    if (size < least - 0.01) found.add(`${each.tagName} ${each.getAttribute('class')}: ${size.toFixed(1)} px, ${said.currentNode.data.trim()}`);
  }
  return [...found];
}"""


@pytest.fixture(scope="module")
def plain_manual(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo house in the plain theme, published by the command."""
    folder = tmp_path_factory.mktemp("plain") / "house-manual"
    command = [sys.executable, "-m", "junctionary", "publish", str(ROOT / "content")]
    done = subprocess.run(
        [*command, "--theme", "plain", "-o", str(folder)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return folder


@pytest.fixture(params=["light", "dark"])
def tab(request: pytest.FixtureRequest, browser: "Browser") -> "Iterator[Tab]":
    context = browser.new_context(color_scheme=request.param, viewport={"width": 1280, "height": 900})
    yield context.new_page()
    context.close()


def words(path: Path) -> list[str]:
    return Page(path.read_text("utf-8")).text.split()


def test_every_sheet_is_published_and_says_the_same(plain_manual: Path, demo_manual: Path) -> None:
    plain = {path.relative_to(plain_manual): path for path in plain_manual.rglob("*.html")}
    drafted = {path.relative_to(demo_manual): path for path in demo_manual.rglob("*.html")}
    assert plain.keys() == drafted.keys()
    differ = [name for name, path in plain.items() if words(path) != words(drafted[name])]
    assert differ == []


@pytest.mark.browser
def test_nothing_has_a_colour_of_its_own(tab: "Tab", plain_manual: Path) -> None:
    for path in one_of_each_kind(plain_manual):
        tab.goto(path.as_uri())
        assert tab.evaluate(COLOURED) == [], path.name


@pytest.mark.browser
def test_the_drafting_theme_has_colours_the_same_test_would_see(
    browser: "Browser", demo_manual: Path
) -> None:
    page = browser.new_page()
    page.goto((demo_manual / "terms.html").as_uri())
    assert any("c-red" in each for each in page.evaluate(COLOURED))
    page.close()


@pytest.mark.browser
@pytest.mark.parametrize("width", [390, 1280])
def test_every_letter_is_large_and_no_page_is_wider_than_the_screen(
    browser: "Browser", plain_manual: Path, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 900})
    page = context.new_page()
    for path in one_of_each_kind(plain_manual):
        page.goto(path.as_uri())
        assert page.evaluate(SMALL, FEWEST_PX) == [], path.name
        assert page.evaluate("document.documentElement.scrollWidth") <= width, path.name
    context.close()


LAYOUTS = """() => [...document.querySelectorAll('.plate')].filter(each => each.getClientRects().length).map(each =>
  [...each.querySelectorAll('svg.drawing')].filter(one => one.getClientRects().length).map(one => one.getAttribute('class')))"""


@pytest.mark.browser
@pytest.mark.parametrize("theme", ["drafting", "plain"])
def test_a_drawing_is_shown_in_one_layout_on_every_screen_and_on_paper(
    browser: "Browser", request: pytest.FixtureRequest, theme: str
) -> None:
    manual: Path = request.getfixturevalue("demo_manual" if theme == "drafting" else "plain_manual")
    page = browser.new_page()
    for path in one_of_each_kind(manual):
        page.goto(path.as_uri())
        for media, width in (("screen", 390), ("screen", 834), ("screen", 1440), ("print", 718)):
            page.emulate_media(media=media)
            page.set_viewport_size({"width": width, "height": 900})
            shown = page.evaluate(LAYOUTS)
            assert all(len(each) == 1 for each in shown), (path.name, media, width, shown)
    page.close()
