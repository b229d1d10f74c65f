"""Which breakers must all be off before anything in a box is dead.

Reckoned from every conductor in the box, those that only pass through and
those that are capped among them, and from all that is joined to them anywhere
short of a panel's bars. It errs one way: in doubt the list is longer, and where a
fact is missing the answer says so beside the list: unknown, so the main off
as well, and still test. It is reckoned from a record, and is no test.
"""

from junctionary.house.model import House, Run
from junctionary.house.network import Network, is_service_panel, is_untraced
from junctionary.house.network.panel_wiring import MAIN, has_main, poles
from junctionary.house.switching_off import InHand, Isolation, Off, told
from junctionary.records.values import UNKNOWN

__all__ = [
    "Isolation", "Off", "isolate", "isolate_circuit", "isolate_panel", "isolate_room", "isolate_run",
]  # fmt: skip


def isolate(house: House, network: Network, box_id: str) -> Isolation:
    """What to switch off before a box is opened; of a box that is not recorded all is unknown."""
    box = house.boxes.get(box_id)
    hand = InHand()
    if box is None:
        hand.doubt(f"no box {box_id} is recorded")
        return told(house, network, box_id, hand)
    hand.doubt(*(each.reason for each in network.index.unknown_of_box.get(box_id, ())))
    for each in box.runs:
        for side in (0, 1):
            if house.runs[each].ends[side].id == box_id:
                _take_run(house, network, house.runs[each], side, hand, "")
    for passing in box.passing:
        _take_run(house, network, house.runs[passing.run], 0, hand, ", which passes through")
    for device in box.devices:
        for name in network.index.carrying.get(device.id, ()):
            group = network.groups.of_zone.get(network.zone_at[name])
            if group is not None and (network.zone_of(name).runs or network.zone_of(name).feeds):
                hand.groups[group] = None
    if not box.runs and not box.passing:
        hand.doubt(f"no run is recorded into {box_id}")
    return told(house, network, box_id, hand)


def isolate_run(house: House, network: Network, run_id: str) -> Isolation:
    """What to switch off before a run is cut or drilled near; of a run not recorded all is unknown."""
    hand = InHand()
    if run_id in house.runs:
        _take_run(house, network, house.runs[run_id], 0, hand, "")
    else:
        hand.doubt(f"no run {run_id} is recorded")
    return told(house, network, run_id, hand)


def isolate_circuit(house: House, network: Network, circuit_id: str) -> Isolation:
    """What to switch off before anything of a circuit is opened, boxes recorded or not."""
    hand = InHand()
    circuit = house.circuits.get(circuit_id)
    if circuit is None or is_untraced(house, circuit_id):
        hand.doubt(f"no circuit {circuit_id} is recorded, of which a breaker is known")
    else:
        for breaker in circuit.breakers:
            hand.labels.setdefault(breaker, {})[circuit_id] = None
        hand.groups[network.groups.of_circuit[circuit_id]] = None
        if not circuit.runs:
            reason = f"no run of {circuit_id} is recorded, so nothing tells what else may be joined to it"
            hand.doubt(reason)
        for each in circuit.runs:
            _take_run(house, network, house.runs[each], 0, hand, "")
    return told(house, network, circuit_id, hand)


def isolate_room(house: House, network: Network, room_id: str) -> Isolation:
    """What to switch off before any box of a room is opened, by its boxes and the circuits that serve it."""
    room = house.rooms.get(room_id)
    circuits = room.circuits if room else ()
    parts = [isolate(house, network, each) for each in (room.boxes if room else ())]
    parts += [isolate_circuit(house, network, each) for each in circuits if not is_untraced(house, each)]
    hand = InHand()
    for part in parts:
        for each in part.breakers:
            hand.why.setdefault(each.id, {}).update(dict.fromkeys(each.why))
        for each in part.sources:
            hand.sources.setdefault(each.id, {}).update(dict.fromkeys(each.why))
        hand.doubt(*(part.unknown))
    if not parts:
        hand.doubt(f"nothing is recorded of what serves {room_id}")
    return told(house, network, room_id, hand)


def isolate_panel(house: House, network: Network, panel_id: str) -> Isolation:
    """What to switch off before a panel is opened, and what in it stays live all the same."""
    hand = InHand()
    panel = house.panels.get(panel_id)
    if panel is None:
        hand.doubt(f"no panel {panel_id} is recorded")
        return told(house, network, panel_id, hand)
    stays: tuple[str, ...] = ()
    main = f"{panel_id}/{MAIN}"
    if is_service_panel(house, panel):
        stays = (f"the service conductors and the line side of {main}: only the utility makes them dead",)
        if has_main(panel):
            hand.off(main, "takes the bus off the service")
        else:
            stays = ("the service conductors and the bus: only the utility makes them dead",)
            hand.doubt(f"no main is recorded in {panel_id}")
    elif panel.feeder is None:
        said = "is unknown" if panel.record.fed_by is UNKNOWN else "is not recorded"
        hand.doubt(f"what feeds {panel_id} {said}")
    else:
        before = isolate_circuit(house, network, panel.feeder)
        for each in before.breakers:
            if each.id != main:
                hand.off(each.id, f"{each.id} feeds {panel_id}" if not each.why else each.why[0])
        for each in before.sources:
            hand.source(each.id, each.why[0])
        hand.doubt(*(before.unknown))
        if not before.breakers:
            hand.doubt(f"no breaker is recorded as feeding {panel_id}")
        if has_main(panel):
            stays = (f"the line side of {main}, until what feeds {panel_id} is off",)
    for breaker in panel.breakers:
        for pole in poles(breaker):
            _from_elsewhere(network, panel_id, pole, hand)
    return told(house, network, panel_id, hand, stays)


def _from_elsewhere(network: Network, panel: str, pole: str, hand: InHand) -> None:
    """What makes a pole of a panel live though the panel itself is dead."""
    zone = network.zone_of(pole)
    for feed in zone.feeds:
        if feed.breaker.partition("/")[0] != panel:
            hand.off(feed.breaker, f"reaches {pole} from another panel")
    for feed in network.zone_of(pole).backfed:
        hand.off(feed.breaker, "a second source can feed back through it")
    for source in zone.sources:
        hand.source(source, f"makes {pole} live itself")


def _take_run(house: House, network: Network, run: Run, side: int, hand: InHand, how: str) -> None:
    """Every conductor of a run, and the circuit the record says it is of."""
    hand.doubt(*(each.reason for each in network.index.unknown_of_run.get(run.id, ())))
    hand.groups.update(dict.fromkeys(network.groups.of_run.get(run.id, ())))
    for edge in network.index.conductors.get(run.id, ()):
        zone = network.zone_of(edge.a if side == 0 else edge.b)
        name = edge.a.rpartition("/")[2]
        for feed in zone.feeds:
            hand.reached.setdefault(feed.breaker, {})[f"{name}{how}"] = None
        for source in zone.sources:
            hand.source(source, f"makes {name} live itself")
    circuit = house.circuits.get(run.circuit)
    if circuit is not None and not is_untraced(house, run.circuit):
        for breaker in circuit.breakers:
            hand.labels.setdefault(breaker, {})[run.circuit] = None
    elif run.circuit in house.sources:
        hand.source(run.circuit, f"{run.id} is its run")
