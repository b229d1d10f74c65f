"""Voltage drop and fault current on random trees, against a circuit simulator (ngspice) and a sparse solve (scipy).

Each tree hangs on both legs of a split-phase service and shares one neutral; some hang behind a
feeder. Neither witness knows of spans, loops or legs that cancel: they get resistances and currents.
"""

import random
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from itertools import count

import numpy as np
import pytest
from scipy.sparse import csr_matrix
from scipy.sparse.linalg import spsolve
from simulator import operating_point, program

from junctionary.figures.drop import Drawn, drops_at
from junctionary.figures.fault import faults_of
from junctionary.house.model import House
from junctionary.tables import table

HouseOf = Callable[[str], House]
VOLTS = {"a": 120.0, "b": -120.0, "n": 0.0}
SOLID = ("14", "12", "10")
SOURCE_OHM = 0.01
"""120 V over 12 kA."""

CABLES = ("14/3 NM-B", "12/3 NM-B", "10/3 NM-B", "8/3 NM-B", "6/3 NM-B")
GROUND_OF = {"8": "10", "6": "10"}


@dataclass(frozen=True)
class Tree:
    """A random house, what is drawn in it, and its wires: two points, ohms; a point is a place and a conductor."""

    text: str
    loads: tuple[Drawn, ...]
    wires: tuple[tuple[str, str, float], ...]
    boxes: tuple[str, ...]


def ohm_per_kft(size: str) -> float:
    made = "solid" if size in SOLID else "stranded"
    return float(table("conductor-resistance").number(f"{size} AWG", f"copper {made}"))


def tree(seed: int) -> Tree:
    rng = random.Random(seed)
    runs, wires, loads = [], [], []
    fed = rng.random() < 0.5
    start = "sub" if fed else "main"

    def run(name: str, cable: str, from_: str, to: str) -> str:
        feet = Fraction(rng.randrange(30, 1500), 10)
        size = cable.split("/")[0]
        for wire in "abng":
            of = GROUND_OF.get(size, size) if wire == "g" else size
            wires.append((f"{from_}{wire}", f"{to}{wire}", ohm_per_kft(of) * float(feet) / 1000))
        return f"  - {{id: {name}, cable: {cable}, from: {from_}, to: {to}, length: {float(feet)} ft}}\n"

    feeder = run("f1", rng.choice(("8/3 NM-B", "6/3 NM-B")), "main", "sub") if fed else ""
    places = [start]
    for number in range(1, rng.randrange(3, 12)):
        runs.append(run(f"r{number}", rng.choice(CABLES), rng.choice(places[-3:]), f"k{number}"))
        places.append(f"k{number}")
    for _ in range(rng.randrange(2, 9)):
        legs = rng.choice((("A",), ("B",), ("A", "B")))
        loads.append(Drawn("c", rng.choice(places[1:]), Fraction(rng.randrange(1, 20000), 1000), legs))
    boxes = "".join(f"  {each}: {{makeup: unknown}}\n" for each in places[1:])
    panels = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nfed_by: service\nbreakers:\n"
        f"  1+3: {{rating: 40 A, feeds: {'f' if fed else 'c'}, says: Out}}\n"
    )
    if fed:
        panels += (
            "[panels/sub.yaml]\npanel: sub\nspaces: 8\nfed_by: f\nbreakers:\n  1+3: {rating: 20 A, feeds: c, says: Out}\n"
            f"[circuits/f.yaml]\ncircuit: f\nname: F\npurpose: feeder\nruns:\n{feeder}"
        )
    text = (
        "[house.yaml]\nhouse: H\nreference: nec-2023\n"
        "service: {system: 120/240 V, fault_level: {line_to_neutral: 12 kA, at: main}}\n"
        f"{panels}[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n{''.join(runs)}[boxes/den.yaml]\nroom: den\nboxes:\n{boxes}"
    )
    return Tree(text, tuple(loads), tuple(wires), tuple(places[1:]))


def injections(made: Tree) -> list[tuple[str, str, float]]:
    """Each load as a current from one point to another."""
    return [
        (
            f"{load.box}{load.legs[0].lower()}",
            f"{load.box}{load.legs[1].lower() if load.legs[1:] else 'n'}",
            float(load.amps),
        )
        if load.legs[0] == "A"
        else (f"{load.box}n", f"{load.box}b", float(load.amps))
        for load in made.loads
    ]


def by_simulator(made: Tree) -> dict[str, float]:
    number = count()
    elements = [f"v{wire} main{wire} 0 {volts}" for wire, volts in VOLTS.items()]
    elements += ["vg maing 0 0"]
    elements += [f"r{next(number)} {a} {b} {ohm!r}" for a, b, ohm in made.wires]
    elements += [f"i{next(number)} {a} {b} {amps!r}" for a, b, amps in injections(made)]
    return {name[2:-1]: value for name, value in operating_point(elements).items() if name.startswith("v(")}


def by_sparse_solve(made: Tree) -> dict[str, float]:
    known = {f"main{wire}": volts for wire, volts in VOLTS.items()} | {"maing": 0.0}
    return solved(made, known, injections(made))


def solved(made: Tree, known: dict[str, float], currents: list[tuple[str, str, float]]) -> dict[str, float]:
    """Kirchhoff's current law at every point that no source holds, solved at once."""
    points = list(dict.fromkeys(each for a, b, _ in made.wires for each in (a, b) if each not in known))
    place = {each: number for number, each in enumerate(points)}
    rows, columns, values, right = [], [], [], np.zeros(len(points))
    for a, b, ohm in made.wires:
        for here, there in ((a, b), (b, a)):
            if here in place:
                rows.append(place[here]), columns.append(place[here]), values.append(1 / ohm)
                if there in place:
                    rows.append(place[here]), columns.append(place[there]), values.append(-1 / ohm)
                else:
                    right[place[here]] += known[there] / ohm
    for out, back, amps in currents:
        right[place[out]] -= amps
        right[place[back]] += amps
    matrix = csr_matrix((values, (rows, columns)), shape=(len(points), len(points)))
    return known | dict(zip(points, spsolve(matrix.tocsc(), right), strict=True))


def drop_between(volts: dict[str, float], box: str, legs: tuple[str, ...]) -> float:
    a, b, n = (volts[f"{box}{wire}"] for wire in "abn")
    return {("A",): 120 - (a - n), ("B",): 120 - (n - b), ("A", "B"): 240 - (a - b)}[legs]


WITNESSES = {
    "a sparse solve": by_sparse_solve,
    "a circuit simulator": pytest.param(
        by_simulator, marks=pytest.mark.skipif(program() is None, reason="ngspice is not installed")
    ),
}


@pytest.mark.parametrize("seed", range(30))
@pytest.mark.parametrize("witness", WITNESSES.values(), ids=list(WITNESSES))
def test_the_drop_at_every_box_is_what_the_witness_finds(
    witness: Callable[[Tree], dict[str, float]], seed: int, house_of: HouseOf
) -> None:
    made = tree(seed)
    found = drops_at(house_of(made.text), made.loads)["c"]
    volts = witness(made)
    assert set(found.recorded) == set(made.boxes)
    for box, lost in found.recorded.items():
        theirs = drop_between(volts, box, lost.legs)
        # Two numbers near 120 V are taken from one another: below a tenth of a volt their own digits end.
        assert float(lost.from_service.value) == pytest.approx(theirs, rel=1e-9, abs=1e-10), box


def loop_by_sparse_solve(made: Tree, box: str, back: str) -> float:
    known = {f"main{wire}": 0.0 for wire in "abng"}
    volts = solved(made, known, [(f"{box}{back}", f"{box}a", 1.0)])
    return 120 / (SOURCE_OHM + volts[f"{box}a"] - volts[f"{box}{back}"])


def loop_by_simulator(made: Tree, box: str, back: str) -> float:
    wires = [f"r{number} {a} {b} {ohm!r}" for number, (a, b, ohm) in enumerate(made.wires)]
    bond = ["vbond maing 0 0", "vneutral mainn 0 0", f"rsource held maina {SOURCE_OHM}", "vheld held 0 120"]
    return operating_point([*wires, *bond, "rb mainb 0 1", f"vshort {box}a {box}{back} 0"])["i(vshort)"]


LOOPS = {
    "a sparse solve": loop_by_sparse_solve,
    "a circuit simulator": pytest.param(
        loop_by_simulator, marks=pytest.mark.skipif(program() is None, reason="ngspice is not installed")
    ),
}


@pytest.mark.parametrize("seed", range(100, 112))
@pytest.mark.parametrize("witness", LOOPS.values(), ids=list(LOOPS))
def test_the_fault_current_at_every_box_is_what_the_witness_finds(
    witness: Callable[[Tree, str, str], float], seed: int, house_of: HouseOf
) -> None:
    made = tree(seed)
    found = faults_of(house_of(made.text))["c"]
    assert set(found.boxes) == set(made.boxes)
    for box, end in found.boxes.items():
        assert float(end.to_neutral.flows.value) == pytest.approx(witness(made, box, "n"), rel=1e-9)
        assert float(end.to_ground.flows.value) == pytest.approx(witness(made, box, "g"), rel=1e-9)
