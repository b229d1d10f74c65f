"""Nothing on a page moves once it stands: what a finger is about to meet stays where it is seen."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from test_manual import one_of_each_kind

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser
LED_TO = (
    "make-dead.html#box=K12,X1&off=main/24",
    "where-to-look.html#dead=K2.r1",
    "where-to-look.html#signs=none&dead=K2,K5&live=K1",
    "one-more.html#at=K2.r1&watts=1500&hours=yes",
    "panel/main.html#space-main/14",
)
"""Lookups as a link or a reload meets them: what was asked stands in the address."""

SHIFTED = """() => new Promise(told => {
  let sum = 0;
  new PerformanceObserver(list => list.getEntries().forEach(each => { sum += each.value; }))
    .observe({ type: 'layout-shift', buffered: true });
  setTimeout(() => told(sum), 300);
})"""
"""The part of the window that moved times how far it moved (Layout Instability, W3C), after the first paint."""


@pytest.mark.parametrize("width", [390, 1440])
def test_nothing_moves_on_a_page_once_it_stands(browser: "Browser", demo_manual: Path, width: int) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    addresses = [path.as_uri() for path in one_of_each_kind(demo_manual)]
    addresses += [f"{demo_manual.as_uri()}/{each}" for each in LED_TO]
    moved = {}
    for address in addresses:
        page.goto("about:blank")
        page.goto(address)
        moved[address] = page.evaluate(SHIFTED)
    page.close()
    assert {address: shift for address, shift in moved.items() if shift > 0} == {}
