"""One yoke has two circuits, and one of them can be switched off alone.

Why it matters: half of the device is dead, and whoever takes it out has the other half's hot beside his
    fingers.
What to do: tie the two breakers, or feed both halves from one. Until then, write both breakers on the
    plate.
Cannot tell: when what feeds a hot terminal of the yoke meets something unknown or not recorded. A tie that
    is not written counts as none; breakers in two panels cannot be tied.
Stands: on the device's line; of several devices on one strap, on the first.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import open_together
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.7"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
  3: {rating: 15 A, feeds: hall, says: "Hall"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}    #! yoke-fed-twice-untied
    split: {r1: both}
    joints:
      - {join: [b1.bare, h1.bare, r1.green]}
    terminals:
      r1.brass-top: b1.black
      r1.silver-top: b1.white
      r1.brass-bottom: h1.black
      r1.silver-bottom: h1.white
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("breakers:\n", "ties: [[1, 3]]\nbreakers:\n").replace(
    "    #! yoke-fed-twice-untied", ""
)

UNTOLD = PASSES.replace("id: h1, cable: 14/2 NM-B, from: main", "id: h1, cable: 14/2 NM-B, from: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device, and each strap that several devices share, by the breakers that come to it."""
    for box in house.boxes.values():
        shared = [tuple(f"{box.id}.{each}" for each in strap) for strap in box.record.yoke]
        alone = [(each.id,) for each in box.devices if not any(each.id in strap for strap in shared)]
        for strap in (*shared, *alone):
            yield from _judged(house, network, box, [each for each in box.devices if each.id in strap])


def _judged(house: House, network: Network, box: Box, devices: list[Device]) -> Iterator[Fault | CannotTell]:
    names = [name for each in devices for name in network.index.carrying.get(each.id, ())]
    hot = [each for each in names if network.terminals[each].role != "neutral"]
    breakers = tuple(dict.fromkeys(each for name in hot for each in network.breakers_of(name)))
    unknown = tuple(dict.fromkeys(reason for name in hot for reason in network.roles(name).unknown))
    about = (*(each.id for each in devices), box.id, *breakers)
    # Breakers that meet on one conductor are circuits-joined, at the place where they meet.
    joined = any(set(breakers) <= set(network.breakers_of(name)) for name in hot)
    if len(breakers) > 1 and not joined and not open_together(house, breakers):
        yield Fault(
            place=devices[0].place,
            about=about,
            found=f"Breakers {listed(breakers)} come to one yoke, and nothing ties their handles.",
            allowed="All circuits of one yoke open together where they begin.",
            because="With one of them off, the other half stays live beside it.",
            do="Tie the breakers, or feed both halves from one; until then switch off both.",
            edition=box.edition,
        )
    elif unknown and breakers and len({network.zone_at[each] for each in hot}) > 1:
        yield CannotTell(about, unknown, devices[0].place)
