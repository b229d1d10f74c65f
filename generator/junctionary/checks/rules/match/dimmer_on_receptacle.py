"""A dimmer governs a receptacle, or the motor of a fan.

Why it matters: whatever is plugged in gets a chopped voltage. A motor hums, overheats and burns out, a
    charger fails, and the dimmer, made for a few lamps, carries a vacuum cleaner.
What to do: put in a plain switch, or for a fan the control made for it; dim only lights that are wired.
Cannot tell: when what the dimmer's wires come to meets something unknown or not recorded. A dimmer that is
    listed for a special receptacle is not known here: accept the finding with its listing. From memory.
Stands: on the dimmer's line, one finding a dimmer.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.places import FAN_LIGHT
from junctionary.house.lamps import LampTable
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.house.terminals import RECEPTACLES
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "404.14(E)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [afci], feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {s1: dimmer}    #! dimmer-on-receptacle
    makeup: {feed: b1, switched: {s1: b2}}
  D2: {at: {wall: north, along: 4 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  dimmer: {is: dimmer, rating: 15 A}
  switch: {is: switch, ways: 1, rating: 15 A}
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("{s1: dimmer}", "{s1: switch}").replace("    #! dimmer-on-receptacle", "")

UNTOLD = FAILS.replace("    #! dimmer-on-receptacle", "").replace(
    "devices: {r1: duplex}, makeup: end-of-run", "devices: {r1: duplex}, makeup: unknown"
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each dimmer by the outlets that it governs."""
    tables: dict[str, list[LampTable]] = {}
    for table in figures.lamps:
        for switch in table.switches:
            tables.setdefault(switch, []).append(table)
    for device in house.devices.values():
        if device.kind.is_ != "dimmer":
            continue
        governed = tables.get(device.id, [])
        bad = tuple(dict.fromkeys(each.device for each in governed if _is_no_light(house, each)))
        unknown = () if governed else _unknown(network, device.id)
        if bad:
            yield Fault(
                place=device.place,
                about=(device.id, *bad),
                found=f"{device.id} is a dimmer, and it governs {listed(bad)}.",
                allowed="A dimmer for lights that are wired.",
                because="What is plugged in or turns gets a chopped voltage, and draws what it likes.",
                do="Put in a plain switch, or for a fan the control made for it.",
                edition=house.boxes[device.box].edition,
            )
        elif unknown:
            yield CannotTell((device.id, *device.circuits), unknown, device.place)


def _is_no_light(house: House, table: LampTable) -> bool:
    kind = house.devices[table.device].kind
    motor = kind.is_ == "fan" and table.outlet.rpartition(".")[2] != FAN_LIGHT
    return kind.is_ in RECEPTACLES or motor


def _unknown(network: Network, device: str) -> tuple[str, ...]:
    names = network.index.carrying.get(device, ())
    return tuple(dict.fromkeys(each.reason for name in names for each in network.unknown_at(name)))
