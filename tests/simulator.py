"""A house as a circuit of resistances, solved by a general circuit simulator (ngspice).

An independent witness: it walks the boxes, runs and panels of a House itself
and knows nothing of the network. What is connected is a milliohm, what is
open or not connected leaks to ground, the legs are plus and minus 120 V, and
a load is a resistance. The neutral of the service is the point of 0 V.
"""

import re
import shutil
import subprocess
import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from junctionary.house.model import Box, Device, House, Panel, Run
from junctionary.records.values import NONE

CLOSED_OHM, OPEN_OHM, LEAK_OHM = 1e-3, 1e13, 1e8
LOAD_OHM = 1e4
LIVE_V = 60.0
"""Far from both 0 V and 120 V: a point above it is energised."""

GROUND = "service/neutral"
SOURCES = {"service/A": 120.0, "service/B": -120.0, "service/bus": 120.0}
NEUTRAL = ("white", "grey")
BARE = ("bare", "green", "green-yellow", "armor")
SWITCHES: Mapping[str, tuple[tuple[str, str, int], ...]] = {
    "one": (("brass-1", "brass-2", 1),),
    "three": (("common", "traveler-1", 0), ("common", "traveler-2", 1)),
    "four": (("in-1", "out-1", 0), ("in-2", "out-2", 0), ("in-1", "out-2", 1), ("in-2", "out-1", 1)),
    "two-pole": (("line-1", "load-1", 1), ("line-2", "load-2", 1)),
    "gfci": (("line-brass", "load-brass", 1), ("line-silver", "load-silver", 1)),
    "dimmer": (("line", "load", 1),),
}


@dataclass(frozen=True, slots=True)
class Part:
    """What connects two points: ``of`` names what it is of, ``opens`` what opens it, in which ``state`` it is closed."""

    a: str
    b: str
    of: str
    opens: str | None = None
    state: int | None = None


@dataclass(frozen=True, slots=True)
class Load:
    """A resistance between two points."""

    a: str
    b: str
    ohm: float = LOAD_OHM


def program() -> str | None:
    """Where the simulator is, or None."""
    return shutil.which("ngspice")


def parts_of(house: House) -> list[Part]:
    """Everything that connects, read from the boxes, runs and panels."""
    return [
        *(part for box in house.boxes.values() for part in _of_box(box)),
        *(part for run in house.runs.values() for part in _of_run(house, run)),
        *(part for panel in house.panels.values() for part in _of_panel(house, panel)),
    ]


def loads_of(house: House) -> list[Load]:
    """A load at every lamp, appliance and half of a receptacle."""
    return [load for device in house.devices.values() for load in _loads(device)]


def with_state(
    parts: Sequence[Part], off: Iterable[str] = (), states: Mapping[str, int] | None = None
) -> dict[int, float]:
    """The changes that open these breakers or devices, and put these switches in these states."""
    off, states = set(off), states or {}
    return {
        number: OPEN_OHM
        for number, part in enumerate(parts)
        if part.opens in off or (part.opens in states and part.state != states[part.opens or ""])
    }


def solved(
    parts: Sequence[Part], loads: Sequence[Load], cases: Sequence[Mapping[int, float]]
) -> list[dict[str, float]]:
    """The voltage of every point to the service's neutral, in each case.

    A case gives the ohms of parts that are other than closed, by their number.
    """
    names = dict.fromkeys(point for part in parts for point in (part.a, part.b))
    names |= dict.fromkeys(point for load in loads for point in (load.a, load.b))
    nodes = {
        name: number for number, name in enumerate((GROUND, *(each for each in names if each != GROUND)))
    }
    lines = ["a house", *(f"rp{n} {nodes[p.a]} {nodes[p.b]} {CLOSED_OHM}" for n, p in enumerate(parts))]
    lines += [f"rl{n} {nodes[each.a]} {nodes[each.b]} {each.ohm}" for n, each in enumerate(loads)]
    lines += [f"rk{node} {node} 0 {LEAK_OHM}" for node in nodes.values() if node]
    lines += [
        f"v{n} {nodes[name]} 0 {volt}" for n, (name, volt) in enumerate(SOURCES.items()) if name in nodes
    ]
    with tempfile.TemporaryDirectory() as folder:
        lines += [".control", "set filetype=ascii", "set numdgt=14", "option reltol=1e-9 abstol=1e-15"]
        for number, case in enumerate(cases):
            before = cases[number - 1] if number else {}
            lines += [f"alter rp{each} = {CLOSED_OHM}" for each in before if each not in case]
            lines += [f"alter rp{each} = {ohm}" for each, ohm in case.items() if before.get(each) != ohm]
            lines += ["op", f"write {folder}/case{number}.raw", "destroy all"]
        deck = Path(folder) / "house.cir"
        deck.write_text("\n".join([*lines, "quit", ".endc", ".end", ""]), "utf-8")
        done = subprocess.run(["ngspice", "-b", str(deck)], capture_output=True, text=True, check=False)
        return [_volts(Path(folder) / f"case{number}.raw", nodes, done) for number in range(len(cases))]


def _volts(path: Path, nodes: Mapping[str, int], done: subprocess.CompletedProcess[str]) -> dict[str, float]:
    if not path.exists():
        raise RuntimeError(done.stdout[-2000:] + done.stderr[-2000:])
    head, _, body = path.read_text("utf-8").partition("Values:")
    order = re.findall(r"^\s*\d+\s+v\((\d+)\)\s+voltage", head, re.MULTILINE)
    values = [float(each) for each in body.split()[1:]]
    volts = {"0": 0.0} | dict(zip(order, values, strict=False))
    return {name: volts[str(node)] for name, node in nodes.items()}


def operating_point(elements: Sequence[str]) -> dict[str, float]:
    """Every voltage and current of a circuit of these elements, as ``v(name)`` and ``i(name)``."""
    with tempfile.TemporaryDirectory() as folder:
        raw, deck = Path(folder) / "point.raw", Path(folder) / "point.cir"
        control = [
            ".control",
            "set filetype=ascii",
            "set numdgt=16",
            "option reltol=1e-12 abstol=1e-18 gmin=1e-30",
        ]
        ending = ["op", f"write {raw}", "quit", ".endc", ".end", ""]
        deck.write_text("\n".join(["a circuit", *elements, *control, *ending]), "utf-8")
        done = subprocess.run(["ngspice", "-b", str(deck)], capture_output=True, text=True, check=False)
        if not raw.exists():
            raise RuntimeError(done.stdout[-2000:] + done.stderr[-2000:])
        head, _, body = raw.read_text("utf-8").partition("Values:")
        names = re.findall(r"^\s*\d+\s+([vi]\(\w+\))\s+(?:voltage|current)", head, re.MULTILINE)
        return dict(zip(names, map(float, body.split()[1:]), strict=True))


def energised(volts: Mapping[str, float]) -> set[str]:
    """The points that are live."""
    return {name for name, volt in volts.items() if abs(volt) > LIVE_V}


def _of_box(box: Box) -> Iterator[Part]:
    for joint in box.joints:
        yield from (Part(joint.id, each.name, joint.id) for each in joint.members)
    for landing in box.landings:
        yield from (Part(landing.terminal, each.name, landing.terminal) for each in landing.wires)
    for device in box.devices:
        yield from _of_device(device)


def _of_device(device: Device) -> Iterator[Part]:
    kind, id_ = device.kind, device.id
    if (
        kind.is_ == "receptacle"
        and kind.outlets != 1
        and not (kind.face or "").startswith(("6-", "14-", "10-"))
    ):
        for side in ("brass", "silver"):
            if device.split not in (side, "both"):
                yield Part(f"{id_}.{side}-top", f"{id_}.{side}-bottom", id_)
    what = {
        "gfci-receptacle": "gfci", "gfci-device": "gfci", "disconnect": "two-pole",
        "dimmer": "dimmer", "timer": "dimmer", "sensor": "dimmer",
    }.get(kind.is_)  # fmt: skip
    if kind.is_ == "switch":
        what = "two-pole" if kind.poles == 2 else {3: "three", 4: "four"}.get(kind.ways or 1, "one")
    for a, b, state in SWITCHES.get(what or "", ()):
        yield Part(f"{id_}.{a}", f"{id_}.{b}", id_, id_, state)


def _loads(device: Device) -> Iterator[Load]:
    kind, id_ = device.kind, device.id
    if kind.is_ in ("luminaire", "fan", "appliance", "smoke-alarm"):
        leads = [each.colour for each in kind.leads or ()] or ["black", "white"]
        hot = [each for each in leads if each in ("black", "red", "blue")]
        if "white" in leads:
            yield from (Load(f"{id_}.{each}", f"{id_}.white") for each in hot)
        elif len(hot) == 2:
            yield Load(f"{id_}.{hot[0]}", f"{id_}.{hot[1]}")
    elif kind.is_ == "gfci-receptacle":
        yield Load(f"{id_}.load-brass", f"{id_}.load-silver")
    elif kind.is_ == "receptacle" and (kind.face or "").startswith(("6-", "14-", "10-")):
        yield Load(f"{id_}.x", f"{id_}.y")
        if not (kind.face or "").startswith("6-"):
            yield from (Load(f"{id_}.{each}", f"{id_}.w") for each in ("x", "y"))
    elif kind.is_ == "receptacle":
        for half in ("",) if kind.outlets == 1 else ("-top", "-bottom"):
            yield Load(f"{id_}.brass{half}", f"{id_}.silver{half}")


def _end(run: Run, side: int, colour: str) -> str:
    end = run.ends[side]
    return f"{end.id or f'{end.kind}-{side}'}/{run.id}.{colour}"


def _of_run(house: House, run: Run) -> Iterator[Part]:
    colours = [each.colour for each in run.conductors]
    for colour in colours:
        yield Part(_end(run, 0, colour), _end(run, 1, colour), run.id)
    for side, end in enumerate(run.ends):
        panel = house.panels.get(end.id or "") if end.kind == "panel" else None
        if panel is not None:
            yield from _in_panel(house, run, side, panel, colours)


def _in_panel(house: House, run: Run, side: int, panel: Panel, colours: list[str]) -> Iterator[Part]:
    """A cable in a panel: hots on the poles, or on the bus it feeds; the others on the bars."""
    hots = [each for each in ("black", "red") if each in colours]
    if run.circuit == panel.feeder:
        main = f"{panel.id}/main" if _has_main(panel) else None
        for colour, leg in zip(hots, "AB", strict=True):
            yield Part(_end(run, side, colour), f"{panel.id}/{leg}", f"{panel.id}/main", main)
    else:
        enters = getattr(house.sources.get(run.circuit), "enters", None)
        mine = [each for each in panel.breakers if each.feeds == run.circuit or each.id == enters]
        spaces = [(each, space) for each in mine for space in each.spaces]
        if len(hots) == 1 and len(spaces) == 2:
            hots = ["black", "white"]
        for breaker, space in spaces:
            colour = breaker.conductor or (hots.pop(0) if hots else None)
            if colour is not None:
                yield Part(_end(run, side, colour), f"{panel.id}/{space}", run.id)
                colours = [each for each in colours if each != colour]
    for colour in colours:
        bar = "neutral" if colour in NEUTRAL else "ground" if colour in BARE else None
        if bar is not None:
            yield Part(_end(run, side, colour), f"{panel.id}/{bar}", run.id)


def _has_main(panel: Panel) -> bool:
    return panel.record.main not in (None, NONE)


def _of_panel(house: House, panel: Panel) -> Iterator[Part]:
    for breaker in panel.breakers:
        if breaker.spaces != ("main",):
            for leg, space in zip(breaker.legs, breaker.spaces, strict=True):
                yield Part(f"{panel.id}/{leg or 'bus'}", f"{panel.id}/{space}", breaker.id, breaker.id)
    if panel.record.bonded is True:
        yield Part(f"{panel.id}/neutral", f"{panel.id}/ground", panel.id)
    if panel.record.fed_by == "service":
        main = f"{panel.id}/main" if _has_main(panel) else None
        for leg in "AB":
            yield Part(f"service/{leg}", f"{panel.id}/{leg}", f"{panel.id}/main", main)
        yield Part(GROUND, f"{panel.id}/neutral", "service")
