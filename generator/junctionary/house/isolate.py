"""Which breakers must all be off before anything in a box is dead.

Reckoned from every conductor in the box, those that only pass through and
those that are capped among them, and from all that is joined to them anywhere
short of a panel's bars. It errs one way: in doubt the list is longer, and where a
fact is missing the answer says so beside the list: unknown, so the main off
as well, and still test. It is reckoned from a record, and is no test.
"""

from junctionary.house.model import House, Panel, Run
from junctionary.house.network import Network, called, is_service_panel, is_untraced
from junctionary.house.network.panel_wiring import MAIN, has_main, poles
from junctionary.house.switching_off import BACKFED, InHand, Isolation, Off, told
from junctionary.records.values import UNKNOWN

__all__ = [
    "Isolation", "Off", "isolate", "isolate_circuit", "isolate_panel", "isolate_room", "isolate_run",
]  # fmt: skip


def isolate(house: House, network: Network, box_id: str) -> Isolation:
    """What to switch off before a box is opened; of a box that is not recorded all is unknown."""
    hand = InHand()
    _take_box(house, network, box_id, hand)
    return told(house, network, box_id, hand)


def isolate_run(house: House, network: Network, run_id: str) -> Isolation:
    """What to switch off before a run is cut, or drilled near; of a run not recorded all is unknown."""
    hand = InHand()
    if run_id in house.runs:
        _take_run(house, network, house.runs[run_id], 0, hand, "")
    else:
        hand.doubt(f"no run {run_id} is recorded")
    return told(house, network, run_id, hand)


def isolate_circuit(house: House, network: Network, circuit_id: str) -> Isolation:
    """What to switch off before anything of a circuit is opened, boxes recorded or not."""
    hand = InHand()
    _take_circuit(house, network, circuit_id, hand)
    return told(house, network, circuit_id, hand)


def isolate_room(house: House, network: Network, room_id: str) -> Isolation:
    """What to switch off before any box of a room is opened, by its boxes and the circuits that serve it."""
    hand = InHand()
    room = house.rooms.get(room_id)
    circuits = [each for each in room.circuits if not is_untraced(house, each)] if room else []
    for box in room.boxes if room else ():
        _take_box(house, network, box, hand)
    for circuit in circuits:
        _take_circuit(house, network, circuit, hand)
    if room is None or not (room.boxes or circuits):
        hand.doubt(f"nothing is recorded of what serves {room_id}")
    return told(house, network, room_id, hand)


def _take_box(house: House, network: Network, box_id: str, hand: InHand) -> None:
    """Every run that ends in a box or passes through it, and every device in it."""
    box = house.boxes.get(box_id)
    if box is None:
        hand.doubt(f"no box {box_id} is recorded")
        return
    hand.doubt(*(each.reason for each in network.index.unknown_of_box.get(box_id, ())))
    for each in box.runs:
        run = house.runs[each]
        _take_run(house, network, run, 0 if run.from_.id == box_id else 1, hand, "")
    for passing in box.passing:
        _take_run(house, network, house.runs[passing.run], 0, hand, ", which passes through")
    for device in box.devices:
        for name in network.index.carrying.get(device.id, ()):
            group = network.groups.of_zone.get(network.zone_at[name])
            if group is not None:
                hand.groups[group] = None
    if not box.runs and not box.passing:
        hand.doubt(f"no run is recorded into {box_id}")


def _take_circuit(house: House, network: Network, circuit_id: str, hand: InHand) -> None:
    """The breakers of a circuit by the record's word, and every run of it."""
    circuit = house.circuits.get(circuit_id)
    if circuit is None or is_untraced(house, circuit_id):
        hand.doubt(f"{circuit_id} is no circuit of which a breaker could be recorded")
        return
    for breaker in circuit.breakers:
        hand.labels.setdefault(breaker, {})[circuit_id] = None
    hand.groups[network.groups.of_circuit[circuit_id]] = None
    for each in circuit.runs:
        _take_run(house, network, house.runs[each], 0, hand, "")
    if not circuit.breakers:
        hand.doubt(f"no breaker is recorded as feeding {called(house, (circuit_id,))}")
    if not circuit.runs:
        name = called(house, (circuit_id,))
        hand.doubt(f"no run of {name} is recorded, so nothing tells what else may be joined to it")


def isolate_panel(house: House, network: Network, panel_id: str) -> Isolation:
    """What to switch off before a panel is opened; ``stays_live`` is what in it no list makes dead."""
    hand = InHand()
    panel = house.panels.get(panel_id)
    if panel is None:
        hand.doubt(f"no panel {panel_id} is recorded")
        return told(house, network, panel_id, hand)
    if is_service_panel(house, panel):
        stays = _take_service(panel, hand)
    else:
        stays = _take_feeder(house, network, panel, hand)
    for unknown in network.unknowns:
        if any(point.startswith(f"{panel_id}/") for point in unknown.points):
            hand.doubt(unknown.reason)
    for breaker in panel.breakers:
        for pole in poles(breaker):
            _take_pole(network, panel_id, pole, hand)
    return told(house, network, panel_id, hand, stays)


def _take_service(panel: Panel, hand: InHand) -> tuple[str, ...]:
    """The main of a panel that the utility feeds; gives what stays live before it."""
    if has_main(panel):
        main = f"{panel.id}/{MAIN}"
        hand.off(main, "takes the bus off the service")
        return (f"the service conductors and the line side of {main}: only the utility makes them dead",)
    hand.doubt(f"no main is recorded in {panel.id}")
    return ("the service conductors and the bus: only the utility makes them dead",)


def _take_feeder(house: House, network: Network, panel: Panel, hand: InHand) -> tuple[str, ...]:
    """The breakers of what feeds a subpanel: its own main leaves its lugs live, which is given."""
    if panel.feeder is None:
        said = "is unknown" if panel.record.fed_by is UNKNOWN else "is not recorded"
        hand.doubt(f"what feeds {panel.id} {said}")
    else:
        _take_circuit(house, network, panel.feeder, hand)
    line = f"the line side of {panel.id}/{MAIN}, until what feeds it is off"
    return (line,) if has_main(panel) else ()


def _take_pole(network: Network, panel: str, pole: str, hand: InHand) -> None:
    """What makes a conductor on a pole of a panel live though the panel's own supply is off."""
    zone = network.zone_of(pole)
    for feed in zone.backfed:
        hand.off(feed.breaker, BACKFED)
    for source in zone.sources:
        hand.source(source, f"makes {pole} live itself")
    group = network.groups.each[network.groups.of_zone[network.zone_at[pole]]]
    for breaker in group.breakers:
        if breaker.partition("/")[0] != panel:
            for reason in group.why.get(breaker, (f"reaches what lands on {pole}",)):
                hand.off(breaker, reason)


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
