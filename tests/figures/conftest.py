"""Houses for the figures' tests: a record in one text, as the rules' examples are written."""

from collections.abc import Callable

import pytest

from junctionary.checks.examples import read_example, split
from junctionary.figures import Figures, work_out
from junctionary.house.model import House
from junctionary.house.network import network

COMMON = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: c, says: The circuit}
[rooms/den.yaml]
room: den
name: Den
kind: den
[rooms/attic.yaml]
room: attic
name: Attic
kind: attic
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, torque: 14 in-lb}
  single: {is: receptacle, face: 5-20R, outlets: 1}
  switch: {is: switch, ways: 1}
  wide: {is: receptacle, face: 14-50R, gangs: 2}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green], canopy: domed}
  pendant: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green], canopy: none}
  bare-lamp: {is: luminaire}
connectors:
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""


@pytest.fixture
def house_of() -> Callable[[str], House]:
    """A house from a record that adds to the common files, or tells one of them anew."""

    def house(text: str) -> House:
        files = split(COMMON) | split(text)
        return read_example("".join(f"[{file}]\n{lines}" for file, lines in files.items()))

    return house


@pytest.fixture
def figures_of(house_of: Callable[[str], House]) -> Callable[[str], Figures]:
    def figures(text: str) -> Figures:
        house = house_of(text)
        return work_out(house, network(house))

    return figures
