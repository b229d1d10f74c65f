"""The boxes: their runs, devices and workmanship, each made up."""

import re
from collections.abc import Iterable, Mapping

from junctionary.house.ends import runs_by_end
from junctionary.house.ids import Ids
from junctionary.house.makeup import Bench, Outcome, make_up, words_of
from junctionary.house.model import Box, Device, PassThrough, Run
from junctionary.house.terminals import terminals_of
from junctionary.house.workmanship import usual
from junctionary.marks import Place
from junctionary.problems import Problem, nearest
from junctionary.records.boxes import BoxesFile, BoxRecord
from junctionary.records.devices import DeviceKind
from junctionary.records.house import HouseRecord

RESERVED = ("box", "feed")
JOINT = re.compile(r"j\d+")


def link_boxes(
    ids: Ids, house: HouseRecord, runs: Mapping[str, Run], ends_missing: bool
) -> tuple[dict[str, Box], list[Problem]]:
    """Every box by its id, in the order of the record.

    ``ends_missing`` when an end of some run names no box: a box that seems
    to lack a run is then not called wrong.
    """
    problems: list[Problem] = []
    boxes = {}
    ending_in = runs_by_end(runs)
    for id_, record in ids.boxes.items():
        file = ids.file_of[id_]
        here = ending_in.get(id_, {})
        problems += _names_of_devices(id_, record, here, ids)
        bench = Bench(
            box=id_,
            record=record,
            runs=here,
            every_run=runs,
            devices={
                local: ids.device_kinds[kind]
                for local, kind in record.devices.items()
                if kind in ids.device_kinds
            },
            kindless=frozenset(
                local for local, kind in record.devices.items() if kind not in ids.device_kinds
            ),
            connectors=ids.connectors,
            usual=usual(record, file.defaults, ids.rooms.get(file.room), house),
            lost=ids.lost,
            ends_missing=ends_missing or "circuits" in ids.lost,
        )
        problems += _marks(bench)
        made, faults = make_up(bench)
        problems += faults
        boxes[id_] = _box(bench, file, made, runs)
    return boxes, problems


def _box(bench: Bench, file: BoxesFile, made: Outcome, runs: Mapping[str, Run]) -> Box:
    record, work = bench.record, bench.usual
    entries = record.makeup or []
    loops = {each.run: each.loop for each in record.passes}
    circuits = [run.circuit for run in bench.runs.values()]
    circuits += [runs[each].circuit for each in made.passing if each in runs]
    written = record.makeup is not None or bool(record.joints or record.terminals)
    return Box(
        id=bench.box,
        room=file.room,
        name=record.name,
        circuits=tuple(dict.fromkeys(circuits)),
        runs=tuple(bench.runs),
        passing=tuple(PassThrough(each, loops[each]) for each in made.passing),
        devices=tuple(_devices(bench, made)),
        joints=made.joints,
        landings=made.landings,
        capped=made.capped,
        loose=made.loose,
        untold=made.untold,
        makeup_words=tuple(dict.fromkeys(word for each in entries for word in words_of(each))),
        makeup_unknown=any(each.word == "unknown" for each in entries),
        makeup_unrecorded=not written and not (bench.runs and not made.untold),
        torque=work.torque,
        free_conductor=work.free_conductor,
        looked_at=work.looked_at,
        stage=work.stage,
        edition=work.edition,
        evidence=work.evidence,
        record=record,
        place=file.key_place("boxes", bench.box),
    )


def _devices(bench: Bench, made: Outcome) -> Iterable[Device]:
    for local, kind in bench.devices.items():
        yield Device(
            id=f"{bench.box}.{local}",
            local=local,
            box=bench.box,
            kind_id=bench.record.devices[local],
            kind=kind,
            circuits=_circuits(bench, local, kind, made),
            split=bench.record.split.get(local),
            labels=tuple(bench.record.labels.get(local, ())),
            guarded_by=bench.record.guarded_by.get(local),
            place=bench.record.key_place("devices", local),
        )


def _circuits(bench: Bench, local: str, kind: DeviceKind, made: Outcome) -> tuple[str, ...]:
    """The circuits whose hot or neutral conductors come to a device; its ground says nothing of them."""
    own = {f"{bench.box}.{local}.{each.name}" for each in terminals_of(kind) if each.role != "ground"}
    found: list[str] = []
    for joint in made.joints:
        if any(member.name in own for member in joint.members):
            found += joint.circuits
    for landing in made.landings:
        if landing.terminal in own:
            found += bench.circuits(wire.run for wire in landing.wires)
    return tuple(dict.fromkeys(found))


def _names_of_devices(box: str, record: BoxRecord, here: Mapping[str, Run], ids: Ids) -> list[Problem]:
    """Kinds nobody told, and a device, a jumper or a run of one name where they meet."""
    problems: list[Problem] = []
    for key, names in (("devices", record.devices), ("jumpers", record.jumpers)):
        for local in names:
            place = record.key_place(key, local)
            if local in here:
                stands = here[local].record.value_place("id")
                problems.append(
                    _one_name(place, f"{local} is a {key[:-1]} of {box} and a run that ends there", stands)
                )
            elif key == "jumpers" and local in record.devices:
                stands = record.key_place("devices", local)
                problems.append(_one_name(place, f"{local} is a jumper of {box} and a device of it", stands))
            if local in RESERVED or (key == "jumpers" and JOINT.fullmatch(local)):
                expected = "an id that means nothing else in a box"
                problems.append(
                    Problem(place, f"{local!r} has a meaning of its own", expected, "choose another id")
                )
    for local, kind in record.devices.items():
        problems += ids.missing("kind of device", kind, record.value_place("devices", local))
    return problems


def _one_name(place: Place, found: str, stands: Place) -> Problem:
    return Problem(
        place, f"{found} ({stands})", "a name of its own for each thing in a box", "rename one of the two"
    )


def _marks(bench: Bench) -> list[Problem]:
    """What the box says of devices and conductors it does not have."""
    record = bench.record
    said: list[tuple[str, Place]] = []
    for key in ("split", "labels", "guarded_by", "replace_by"):
        said += [(local, record.key_place(key, local)) for local in getattr(record, key)]
    for number, strap in enumerate(record.yoke):
        for position, local in enumerate(strap):
            nested = record.value_place("yoke", number, position)
            said.append((local, nested if len(record.yoke) > 1 else record.value_place("yoke", position)))
    known = [*bench.devices, *bench.kindless]
    problems = [_no_device(bench, local, place) for local, place in said if local not in known]
    for name in record.marked:
        run, _, colour = name.partition(".")
        place = record.key_place("marked", name)
        if run not in bench.runs and not ("circuits" in bench.lost and run not in bench.every_run):
            problems.append(_no_run(bench, name, place))
        elif run in bench.runs:
            colours = [each.colour for each in bench.runs[run].conductors]
            if colours and colour not in colours:
                found = f"run {run} has no {colour or 'such'} conductor"
                expected = f"one of {', '.join(colours)}"
                problems.append(Problem(place, found, expected, "name a conductor that it has"))
    return problems


def _no_device(bench: Bench, local: str, place: Place) -> Problem:
    known = [*bench.devices, *bench.kindless]
    near = nearest(local, known)
    expected = (
        f"{near!r}, the nearest known"
        if near
        else f"one of {', '.join(known) or 'its devices, of which it has none'}"
    )
    return Problem(
        place, f"{bench.box} has no device {local!r}", expected, f"write {near}" if near else "correct the id"
    )


def _no_run(bench: Bench, name: str, place: Place) -> Problem:
    return Problem(
        place,
        f"{name} is no conductor of a run that ends in {bench.box}",
        f"a run that ends here: {', '.join(bench.runs) or 'none does'}",
        "correct the id, or the from: or to: of the run",
    )
