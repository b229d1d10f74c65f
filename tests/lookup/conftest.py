"""The theme's scripts in a real browser, and houses' lookup data as a manual carries it."""

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import TYPE_CHECKING, Any

import pytest
from random_houses import as_text, random_house

from junctionary.checks.examples import read_example
from junctionary.cli.opening import link_record
from junctionary.house.isolate import isolate
from junctionary.house.model import House
from junctionary.house.network import Network, network
from junctionary.house.suspects import Ways, ways
from junctionary.house.switching_off import Isolation
from junctionary.publish.address import address_book
from junctionary.publish.scripts import off_data, suspect_data

if TYPE_CHECKING:
    from playwright.sync_api import Browser

ROOT = Path(__file__).parents[2]
ASSETS = ROOT / "themes/drafting/assets"
PURE = (
    "address-state.js", "find-search.js", "off-list.js", "spoken.js", "suspects.js", "suspect-scope.js", "next-test.js",
    "free-amperes.js",
)  # fmt: skip

HOUSES = int(os.environ.get("JUNCTIONARY_HOUSES", "25"))
"""How many random houses the lookups are held against; of the demo house five times as many searches."""

Run = Callable[[str, Any], Any]


@pytest.fixture(scope="session")
def run_script(browser: "Browser") -> Run:
    """Runs a function of one argument where the theme's pure scripts are loaded."""
    page = browser.new_page()
    for name in PURE:
        page.add_script_tag(path=ASSETS / name)
    return page.evaluate


@dataclass(frozen=True, slots=True)
class Looked:
    """A house, what is worked out of it, and what its pages are given of that: ``off`` and ``ground``."""

    house: House
    network: Network
    known: Ways
    isolations: dict[str, Isolation]
    off: dict[str, Any]
    ground: dict[str, Any]


def looked(house: House) -> Looked:
    joined = network(house)
    book, known = address_book(()), ways(house, joined)
    isolations = {each: isolate(house, joined, each) for each in house.boxes}
    off = off_data(house, joined, isolations, book)
    return Looked(house, joined, known, isolations, off, suspect_data(house, joined, known, {}, book))


@pytest.fixture(scope="session")
def demo() -> Looked:
    house = link_record(ROOT / "content").house
    assert house is not None
    return looked(house)


@pytest.fixture(scope="session")
def drawn_houses() -> list[Looked]:
    """Random houses, of one circuit or two."""
    return [looked(read_example(as_text(random_house(Random(seed), 1 + seed % 2)))) for seed in range(HOUSES)]
