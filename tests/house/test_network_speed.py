"""The network and every list of a house are there before anybody would wait for them."""

from collections.abc import Callable
from time import perf_counter

from junctionary.house.isolate import isolate
from junctionary.house.model import House
from junctionary.house.network import network

CIRCUITS, BOXES = 26, 5
SECONDS = 0.3


def chains() -> str:
    """A house of many circuits, each a chain of boxes; the middle box of each is crossed by its neighbour's run."""
    breakers = "".join(f"  {each + 1}: {{feeds: c{each}}}\n" for each in range(CIRCUITS))
    text = f"[panels/main.yaml]\npanel: main\nmain: 200 A\nspaces: 42\nbonded: true\nbreakers:\n{breakers}"
    boxes = ""
    for circuit in range(CIRCUITS):
        text += f"[circuits/c{circuit}.yaml]\ncircuit: c{circuit}\nname: c{circuit}\nruns:\n"
        first = circuit * BOXES
        for box in range(first, first + BOXES):
            supply = "main" if box == first else f"K{box - 1}"
            text += f"  - {{id: w{box}, cable: 12/2 NM-B, from: {supply}, to: K{box}}}\n"
            onward = "end-of-run" if box == first + BOXES - 1 else f"{{feed: w{box}, onward: w{box + 1}}}"
            passes = f", passes: [w{first - BOXES}]" if circuit and box == first + 2 else ""
            boxes += f"  K{box}: {{devices: {{r1: duplex}}, makeup: {onward}{passes}}}\n"
    text += "[devices/all.yaml]\ndevices:\n  duplex: {is: receptacle, face: 5-20R}\n"
    return f"{text}[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n[boxes/den.yaml]\nroom: den\nboxes:\n{boxes}"


def test_what_to_switch_off_for_every_box_of_a_house_is_there_at_once(
    house_of: Callable[[str], House],
) -> None:
    house = house_of(chains())
    start = perf_counter()
    net = network(house)
    lists = [isolate(house, net, box) for box in house.boxes]
    assert perf_counter() - start < SECONDS
    assert max(len(each.breakers) for each in lists) == 2
