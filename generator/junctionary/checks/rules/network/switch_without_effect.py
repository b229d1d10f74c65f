"""A switch changes nothing, or a 3-way or 4-way switch only at some positions of the others.

Why it matters: at the top of a dark stair the light cannot be had. It is most often a traveler on the
    common terminal; whoever mends it by trying joins something worse.
What to do: with the circuit proved dead, find the common by its marking or darker screw, and land on it the
    feed or the lamp's wire; both travelers go on the other two.
Cannot tell: when what the switch or its lamp is joined to meets something unknown or not recorded, or when
    more than ten switches bear on one lamp. Other single-pole switches count as closed.
Stands: on the line of the switch that, rewired, sets its chain right; where several or none would, on
    the first that fails. One finding a chain.
"""

from collections import ChainMap
from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import product

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import doubts_in
from junctionary.figures import Figures
from junctionary.house.lamps import MOST_SWITCHES, LampTable, lamp_table, outlets_of
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (cite("practice", "Every switch of a chain changes its lamp, however the others stand."),),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: t1, cable: 14/3 NM-B, from: D1, to: D2}
  - {id: l1, cable: 14/2 NM-B, from: D2, to: D3}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {s1: three}
    joints:
      - {join: [a1.white, t1.white]}
      - {join: [a1.bare, t1.bare, s1.green]}
    terminals:
      s1.common: a1.black
      s1.traveler-1: t1.black
      s1.traveler-2: t1.red
  D2:
    devices: {s1: three}    #! switch-without-effect
    joints:
      - {join: [t1.white, l1.white]}
      - {join: [t1.bare, l1.bare, s1.green]}
    terminals:
      s1.common: t1.red
      s1.traveler-1: t1.black
      s1.traveler-2: l1.black
  D3:
    devices: {f1: lamp}
    makeup: end-of-run
[devices/all.yaml]
devices:
  three: {is: switch, ways: 3}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = (
    FAILS.replace("    #! switch-without-effect", "")
    .replace("s1.common: t1.red", "s1.common: l1.black")
    .replace("s1.traveler-2: l1.black", "s1.traveler-2: t1.red")
)  # fmt: skip

UNTOLD = (
    PASSES.replace("from: D2, to: D3", "from: D2, to: unknown")
    .partition("  D3:")[0]
    + """[devices/all.yaml]
devices:
  three: {is: switch, ways: 3}
"""
)  # fmt: skip

SWITCHES = ("switch", "dimmer", "timer", "sensor", "disconnect")
CHAINED = (("common", "traveler-1", "traveler-2"), ("in-2", "out-1", "out-2"))
"""The terminal that may have been taken for one of the others, and those others."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each switch, by the tables of the outlets it bears on."""
    by_switch: dict[str, list[LampTable]] = {}
    for table in figures.lamps:
        for each in table.switches:
            by_switch.setdefault(each, []).append(table)
    said: set[str] = set()
    for box in house.boxes.values():
        for device in box.devices:
            if device.id in said or device.kind.is_ not in SWITCHES:
                continue
            if not _is_live(network, device.id):
                # What is known to be dead, or to stand in the neutral, other rules speak of.
                if needs := (*_needs(network, device.id, []), *doubts_in(network, box)):
                    yield CannotTell((device.id, box.id), needs, device.place)
                continue
            tables = by_switch.get(device.id, [])
            if _has_effect(network, device.id, tables) or _no_neutral(house, network, tables):
                continue
            if needs := _needs(network, device.id, tables):
                yield CannotTell((device.id, box.id), needs, device.place)
                continue
            chain = dict.fromkeys((device.id, *(each for table in tables for each in table.switches)))
            failing = [each for each in chain if not _has_effect(network, each, by_switch.get(each, []))]
            said.update(failing)
            yield _told(house, network, failing, tables)


def _is_live(network: Network, device: str) -> bool:
    names = network.index.carrying.get(device, ())
    contacts = [edge for name in names for edge in network.at[name] if edge.kind == "switch"]
    return any(network.zone_of(edge.a).feeds for edge in contacts)


def is_chained(network: Network, device: str) -> bool:
    """Whether a switch is one of a chain: it has travelers, and one is landed at least."""
    names = (f"{device}.{each}" for each in ("common", "in-1", "traveler"))
    return any(len(network.at.get(each, ())) > (1 if each.endswith("traveler") else 0) for each in names)


def _has_effect(network: Network, switch: str, tables: list[LampTable]) -> bool:
    """Whether it toggles some outlet: of a chain, however the rest of the chain stands."""
    if not is_chained(network, switch):
        return any(switch not in table.never for table in tables if table.rows)
    others = dict.fromkeys(each for table in tables for each in table.switches if each != switch)
    turned = [each for each in others if is_chained(network, each)]
    if not tables or len(turned) > MOST_SWITCHES:
        return False
    for states in product((0, 1), repeat=len(turned)):
        setting = dict.fromkeys(others, 1) | dict(zip(turned, states, strict=True))
        if not any(_changes(table, setting, switch) for table in tables):
            return False
    return True


def _changes(table: LampTable, setting: Mapping[str, int], switch: str) -> bool:
    if not table.rows:
        return False
    at = {row.states: row.works for row in table.rows}
    off, on = (tuple({**setting, switch: to}[each] for each in table.switches) for to in (0, 1))
    return at[off] is not at[on]


def _no_neutral(house: House, network: Network, tables: list[LampTable]) -> bool:
    """Whether all these outlets lack a way back, of which another rule speaks."""
    backs = [
        [each for each in network.index.carrying[table.device] if network.terminals[each].role == "neutral"]
        for table in tables
    ]
    return bool(tables) and all(
        each and not any(network.roles(one).neutral for one in each) for each in backs
    )


def _needs(network: Network, switch: str, tables: list[LampTable]) -> tuple[str, ...]:
    names = network.index.carrying.get(switch, ())
    reasons = dict.fromkeys(reason for each in names for reason in network.roles(each).unknown)
    reasons |= dict.fromkeys(reason for table in tables for reason in table.unknown)
    many = (f"what {table.outlet} does: too many switches bear on it" for table in tables if not table.rows)
    return (*reasons, *many)


def _told(house: House, network: Network, failing: list[str], tables: list[LampTable]) -> Fault:
    culprits = [each for each in dict.fromkeys(failing) if _would_mend(house, network, each, tables)]
    switch = house.devices[culprits[0] if len(culprits) == 1 else failing[0]]
    outlets = [table.outlet for table in tables]
    some = " at some positions of the others" if is_chained(network, switch.id) else ""
    verb = "changes" if len(failing) == 1 else "change"
    at = f" at {listed(outlets)}{some}" if outlets else ", whatever it is set to"
    return Fault(
        place=switch.place,
        about=(switch.id, switch.box, *(each for each in failing if each != switch.id), *outlets),
        found=f"{listed(failing)} {verb} nothing{at}.",
        allowed="A switch changes its lamp, however the others stand.",
        because="The light cannot be had from there, and trying joins something worse.",
        do=f"With {switch.box} proved dead, find the common of {switch.id} and land its wires anew.",
    )


def _would_mend(house: House, network: Network, switch: str, tables: list[LampTable]) -> bool:
    """Whether the chain is right when two wires of this switch change places."""
    for first, *others in CHAINED:
        for other in others:
            names = {f"{switch}.{first}": f"{switch}.{other}", f"{switch}.{other}": f"{switch}.{first}"}
            if all(each in network.at for each in names):
                changed = _with_wires_changed(network, switch, names)
                again = [_again(house, changed, table) for table in tables]
                chain = dict.fromkeys(each for table in again for each in table.switches)
                if len(chain) > 1 and all(_has_effect(network, each, again) for each in chain):
                    return True
    return False


def _again(house: House, network: Network, table: LampTable) -> LampTable:
    device = house.devices[table.device]
    back = dict(outlets_of(device))[table.outlet]
    return lamp_table(network, device, table.outlet, back)


def _with_wires_changed(network: Network, switch: str, names: Mapping[str, str]) -> Network:
    """The network as if the contacts of one switch were between its other terminals."""
    own = {edge for name in network.index.carrying[switch] for edge in network.at[name] if edge.of == switch}
    moved = [replace(each, a=names.get(each.a, each.a), b=names.get(each.b, each.b)) for each in own]
    at = {
        name: (
            *(edge for edge in network.at[name] if edge not in own),
            *(edge for edge in moved if name in (edge.a, edge.b)),
        )
        for name in network.index.carrying[switch]
    }
    return replace(network, at=ChainMap(at, dict(network.at)))
