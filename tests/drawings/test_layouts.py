"""Each screen is shown the one layout that is drawn for it, and none is wider than its screen."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser

SHOWN = """() => [...document.querySelectorAll('.plate')].map(plate => [...plate.querySelectorAll(':scope > svg')]
  .filter(each => getComputedStyle(each).display !== 'none')
  .map(each => each.classList.contains('narrow') ? 'narrow' : each.classList.contains('middle') ? 'middle' : 'wide'))"""
SMALLEST = """() => Math.min(...[...document.querySelectorAll('.plate > svg')]
  .filter(each => getComputedStyle(each).display !== 'none')
  .flatMap(svg => [...svg.querySelectorAll('text')].map(text =>
    parseFloat(getComputedStyle(text).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width)))"""
PAGES = ("circuit/stairs.html", "loads.html", "one-line.html")


@pytest.mark.browser
@pytest.mark.parametrize(
    ("width", "medium", "due"),
    [
        (390, "screen", "narrow"),
        (760, "screen", "narrow"),
        (761, "screen", "middle"),
        (834, "screen", "middle"),
        (1119, "screen", "middle"),
        (1120, "screen", "wide"),
        (1440, "screen", "wide"),
        (700, "print", "middle"),
    ],
)
def test_the_layout_is_chosen_by_the_width_there_is(
    browser: "Browser", demo_manual: Path, width: int, medium: str, due: str
) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.emulate_media(media=medium)  # type: ignore[arg-type]
    for name in PAGES:
        page.goto((demo_manual / name).as_uri())
        layouts = page.evaluate(SHOWN)
        assert layouts[0] == [due], name
        assert all(len(each) == 1 for each in layouts), name
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        if medium == "screen":
            assert page.evaluate(SMALLEST) >= 9, name
    page.close()
