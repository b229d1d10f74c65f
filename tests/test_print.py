"""On paper: nothing is cut on Letter or A4, and a link is the number of the sheet it leads to."""

import re
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import unquote

import pytest
from test_manual import one_of_each_kind

if TYPE_CHECKING:
    from playwright.sync_api import Browser

MM = 96 / 25.4
PRINTED_PX = {"Letter": (215.9 - 24) * MM, "A4": (210 - 24) * MM}
"""Width between the margins of the style sheet, in px."""

CUT = """width => [...document.querySelectorAll('main *')].filter(each => {
  const box = each.getBoundingClientRect();
  return box.width && (box.right > width + 1 || box.left < -1);
}).map(each => `${each.tagName} ${each.getAttribute('class')} ${each.textContent.slice(0, 40)}`)"""


@pytest.mark.browser
@pytest.mark.parametrize("paper", PRINTED_PX)
def test_nothing_is_cut(browser: "Browser", demo_manual: Path, paper: str) -> None:
    width = int(PRINTED_PX[paper])
    context = browser.new_context(viewport={"width": width, "height": 1000})
    page = context.new_page()
    page.emulate_media(media="print")
    for path in one_of_each_kind(demo_manual):
        page.goto(path.as_uri())
        assert page.evaluate(CUT, width) == [], path.name
    context.close()


def number(html: str) -> str:
    """The number in the title block of a page."""
    found = re.search(r'class="number"><dt>No.</dt><dd[^>]*>([^<]*)<', html)
    assert found
    return found[1]


def test_a_link_carries_the_number_of_the_sheet_it_leads_to(demo_manual: Path) -> None:
    for path in one_of_each_kind(demo_manual):
        html = path.read_text("utf-8")
        for href, told in re.findall(r'<a href="([^"#]+)[^"]*" data-sheet="([^"]+)"', html):
            target = path.parent / unquote(href)
            assert told == number(target.read_text("utf-8")), f"{path.name}: {href}"


def test_a_sheet_is_numbered_once_on_a_page_however_many_links_lead_there(demo_manual: Path) -> None:
    html = (demo_manual / "box/K1.html").read_text("utf-8")
    told = re.findall(r'data-sheet="([^"]+)"', html)
    assert told
    assert len(told) == len(set(told))
    assert number(html) not in told


@pytest.mark.browser
def test_the_number_is_seen_on_paper_and_not_on_a_screen(browser: "Browser", demo_manual: Path) -> None:
    page = browser.new_page()
    page.goto((demo_manual / "box/K1.html").as_uri())
    shown = "getComputedStyle(document.querySelector('main a[data-sheet]'), '::after').content"
    assert page.evaluate(shown) == "none"
    page.emulate_media(media="print")
    assert "E-" in page.evaluate(shown)
    page.close()
