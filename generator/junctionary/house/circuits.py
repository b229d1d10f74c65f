"""The circuits: their breakers, their runs, and their boxes from the panel outward."""

from collections import deque
from collections.abc import Iterable, Mapping

from junctionary.house.ids import Ids
from junctionary.house.model import Box, Breaker, Circuit, Panel, Run
from junctionary.problems import Problem, nearest
from junctionary.records.circuits import CircuitRecord
from junctionary.records.house import HouseRecord


def link_circuits(
    ids: Ids,
    house: HouseRecord,
    runs: Mapping[str, Run],
    boxes: Mapping[str, Box],
    panels: Mapping[str, Panel],
) -> tuple[dict[str, Circuit], list[Problem]]:
    """Every circuit by its id, in the order of the record."""
    problems: list[Problem] = []
    breakers = [each for panel in panels.values() for each in panel.breakers]
    circuits = {}
    runs_of: dict[str, list[Run]] = {}
    for run in runs.values():
        runs_of.setdefault(run.circuit, []).append(run)
    devices_of: dict[str, list[str]] = {}
    for box in boxes.values():
        for device in box.devices:
            for circuit in dict.fromkeys(device.circuits):
                devices_of.setdefault(circuit, []).append(device.id)
    for id_, record in ids.circuits.items():
        feeding = [each for each in breakers if each.feeds == id_]
        own = runs_of.get(id_, [])
        problems += _serves_nothing_known(record, ids)
        problems += _poles_in_dispute(record, feeding, own)
        outward = boxes_outward(own)
        rooms = [*(record.serves or ()), *(boxes[box].room for box in outward if box in boxes)]
        circuits[id_] = Circuit(
            id=id_,
            name=record.name,
            breakers=tuple(each.id for each in feeding),
            runs=tuple(run.id for run in own),
            boxes=outward,
            rooms=tuple(dict.fromkeys(rooms)),
            devices=tuple(devices_of.get(id_, ())),
            loads=tuple(record.loads),
            edition=record.built_to or house.reference,
            record=record,
            place=record.place,
        )
    return circuits, problems


def boxes_outward(runs: Iterable[Run]) -> tuple[str, ...]:
    """The boxes in which these runs end, nearest the panel first, those with no known way to it last."""
    runs = list(runs)
    neighbours: dict[str, list[str]] = {}
    for run in runs:
        for here, there in (run.ends, run.ends[::-1]):
            if here.id is not None:
                neighbours.setdefault(here.id, [])
                if there.id is not None:
                    neighbours[here.id].append(there.id)
    boxes = {end.id: None for run in runs for end in run.ends if end.kind == "box"}
    queue = deque(dict.fromkeys(end.id for run in runs for end in run.ends if end.kind == "panel" and end.id))
    reached: dict[str, None] = {}
    while queue:
        here_id = queue.popleft()
        if here_id not in reached:
            reached[here_id] = None
            queue.extend(neighbours.get(here_id, ()))
    return tuple(dict.fromkeys(each for each in (*reached, *boxes) if each in boxes and each is not None))


def _serves_nothing_known(record: CircuitRecord, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for number, room in enumerate(record.serves or ()):
        problems += ids.missing("room", room, record.value_place("serves", number))
    return problems


def _poles_in_dispute(record: CircuitRecord, feeding: list[Breaker], runs: list[Run]) -> list[Problem]:
    """Breakers that feed one circuit must each name a conductor of it, which its home run must have."""
    problems: list[Problem] = []
    seen: dict[str | None, str] = {}
    for breaker in feeding:
        place = breaker.record.value_place("feeds")
        problems += _no_such_conductor(record, breaker, runs)
        if (
            breaker.conductor in seen
            or (None in seen and breaker.conductor)
            or (seen and breaker.conductor is None)
        ):
            first = seen.get(breaker.conductor, next(iter(seen.values())))
            told = f"{record.circuit}.{breaker.conductor}" if breaker.conductor else record.circuit
            problems.append(
                Problem(
                    place,
                    f"{told} is fed by {breaker.id}, and already by {first}",
                    "one breaker for each ungrounded conductor of a circuit",
                    f"name the conductor each feeds, such as {record.circuit}.black and {record.circuit}.red",
                )
            )
        seen.setdefault(breaker.conductor, breaker.id)
    return problems


def _no_such_conductor(record: CircuitRecord, breaker: Breaker, runs: list[Run]) -> list[Problem]:
    home = [run for run in runs if any(end.id == breaker.panel for end in run.ends) and run.conductors]
    colours = [conductor.colour for run in home for conductor in run.conductors]
    told = [(breaker.conductor, "feeds")] if breaker.conductor else []
    told += [(colour, "lands") for colour in breaker.record.lands or ()]
    problems = []
    for colour, key in told:
        if colours and colour not in colours:
            place = (
                breaker.record.value_place("feeds")
                if key == "feeds"
                else breaker.record.key_place(key, colour)
            )
            near = nearest(colour, colours)
            problems.append(
                Problem(
                    place,
                    f"the run of {record.circuit} from {breaker.panel} has no {colour} conductor",
                    f"one of {', '.join(dict.fromkeys(colours))}",
                    f"write {near}" if near else "name a conductor that it has",
                )
            )
    return problems
