"""A house from the text of its files, for the tests of this folder and of those beside it."""

from collections.abc import Callable

import pytest

from junctionary.house.link import link
from junctionary.house.model import Box, House
from junctionary.problems import Problem
from junctionary.read.loader import load
from junctionary.records import understand

HOUSE = "house: Tern Cottage\nreference: nec-2023\n"
DEVICES = """\
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A}
  single: {is: receptacle, face: 5-20R, rating: 20 A, outlets: 1}
  gfci: {is: gfci-receptacle, face: 5-20R, rating: 20 A, lands: {line: clamp-plate, green: loop}}
  heat: {is: receptacle, face: 6-20R, rating: 20 A, outlets: 1}
  stove: {is: receptacle, face: 14-50R, rating: 50 A, outlets: 1}
  switch: {is: switch, ways: 1}
  three: {is: switch, ways: 3}
  four: {is: switch, ways: 4}
  dimmer: {is: dimmer, leads: [16 AWG black, 16 AWG red, 16 AWG green]}
  smart: {is: dimmer, leads: [16 AWG black, 16 AWG red, 16 AWG white, 16 AWG green]}
  dimmer-3: {is: dimmer, ways: 3, leads: [16 AWG black, 16 AWG red, 16 AWG blue, 16 AWG green]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
  fan: {is: fan, leads: [18 AWG black, 18 AWG blue, 18 AWG white, 18 AWG green]}
  alarm: {is: smoke-alarm, leads: [18 AWG black, 18 AWG white, 18 AWG orange]}
  heater: {is: appliance, leads: [14 AWG black, 14 AWG red, 14 AWG green]}
  pull: {is: disconnect, poles: 2}
  inlet: {is: inlet, rating: 30 A}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
  lever-5: {is: lever, ports: 5, accepts: 20 to 12 AWG copper}
"""
PANEL = "panel: main\nspaces: 20\nbreakers: {1: {rating: 15 A, feeds: c}}\n"
ROOM = "room: den\nname: Den\nkind: den\n"


def files_of(text: str) -> dict[str, str]:
    """The files of a record written in one text, each begun by a line such as ``[panels/main.yaml]``."""
    files: dict[str, str] = {}
    name = ""
    for line in text.splitlines(keepends=True):
        if line.startswith("[") and line.rstrip().endswith(".yaml]"):
            name = line.strip()[1:-1]
            files[name] = ""
        elif name:
            files[name] += line
    return files


def linked(files: dict[str, str]) -> tuple[House | None, list[Problem]]:
    """The house of these files, and every problem from the first to the last stage."""
    problems: list[Problem] = []
    trees = []
    for name, text in files.items():
        tree, wrong = load(text, name)
        problems += wrong
        trees.append((name, tree))
    records, wrong = understand(trees)
    problems += wrong
    if records is None:
        return None, problems
    house, wrong = link(records)
    return house, problems + wrong


@pytest.fixture
def house_of() -> Callable[[str], House]:
    """From the text of a record's files to its house; house.yaml is supplied where there is none."""

    def made(text: str) -> House:
        house, problems = linked({"house.yaml": HOUSE} | files_of(text))
        assert house is not None, "\n".join(map(str, problems))
        assert not [each for each in problems if each.stops]
        return house

    return made


@pytest.fixture
def problems_of() -> Callable[[str], list[str]]:
    """From the text of a record's files to what is wrong with it, each as ``file:line:column: found``."""

    def found(text: str) -> list[str]:
        return [f"{each.place}: {each.found}" for each in linked({"house.yaml": HOUSE} | files_of(text))[1]]

    return found


@pytest.fixture
def house_problems() -> Callable[[str], list[str]]:
    """From the text of a record's files to its problems, each in full."""

    def found(text: str) -> list[str]:
        return [str(each) for each in linked({"house.yaml": HOUSE} | files_of(text))[1]]

    return found


@pytest.fixture
def stopping() -> Callable[[str], list[str]]:
    """From the text of a record's files to the problems that stop it, each in full."""

    def found(text: str) -> list[str]:
        return [str(each) for each in linked({"house.yaml": HOUSE} | files_of(text))[1] if each.stops]

    return found


def box_files(runs: str, box: str, circuits: str = "") -> dict[str, str]:
    """A record of one box K1 with the runs of circuit c, one a line such as ``a1: 14/2 NM-B, main, K1``."""
    return {
        "house.yaml": HOUSE,
        "panels/main.yaml": PANEL,
        "circuits/c.yaml": f"circuit: c\nname: C\nruns:\n{run_lines(runs)}",
        "rooms/den.yaml": ROOM,
        "boxes/den.yaml": "room: den\nboxes:\n  K1:\n" + indented(box) + "  K2: {}\n  K3: {}\n  K4: {}\n",
        "devices/all.yaml": DEVICES,
    } | ({"circuits/d.yaml": f"circuit: d\nname: D\nruns:\n{run_lines(circuits)}"} if circuits else {})


def run_lines(runs: str) -> str:
    """Lines such as ``a1: 14/2 NM-B, main, K1`` as the runs of a circuit."""
    lines = []
    for line in runs.strip().splitlines():
        id_, _, rest = line.strip().partition(": ")
        cable, from_, to = rest.rsplit(", ", 2)
        lines.append(f"  - {{id: {id_}, cable: {cable}, from: {from_}, to: {to}}}\n")
    return "".join(lines)


def indented(text: str) -> str:
    """A block moved in under its key."""
    return "".join(f"    {line}\n" for line in text.strip("\n").splitlines())


Made = Callable[..., tuple[list[str], list[str], list[str]]]


@pytest.fixture
def made_up() -> Made:
    """A function from the runs and the record of box K1 to its joints, landings and untold ends.

    A joint reads ``a1.black a2.black -> r1.brass-top``, a landing
    ``r1.silver-top: a1.white``; what hangs on a pigtail is not said again.
    """

    def made(runs: str, box: str, other_circuit: str = "") -> tuple[list[str], list[str], list[str]]:
        house, problems = linked(box_files(runs, box, other_circuit))
        assert house is not None, "\n".join(map(str, problems))
        k1 = house.boxes["K1"]
        joints = []
        for joint in k1.joints:
            wires = [short(each.name) for each in joint.members if each.kind != "pigtail"]
            pigtails = [short(each.name) for each in joint.members if each.kind == "pigtail"]
            joints.append(" ".join(wires) + (f" -> {' '.join(pigtails)}" if pigtails else ""))
        landings = [
            f"{short(each.terminal)}: {' '.join(short(wire.name) for wire in each.wires)}"
            for each in k1.landings
            if not each.wires[0].name.startswith("K1/j")
        ]
        return joints, landings, [short(each) for each in k1.untold]

    return made


def short(name: str) -> str:
    """A name within box K1."""
    return name.removeprefix("K1/").removeprefix("K1.")


@pytest.fixture(scope="session")
def linked_box() -> Callable[[str, str], House | None]:
    """From the runs and the record of box K1, on one line, to the house; None where it is refused."""

    def made(runs: str, box: str) -> House | None:
        files = box_files(runs, "PLACE")
        files["boxes/den.yaml"] = files["boxes/den.yaml"].replace("\n    PLACE\n", f" {box}\n")
        return linked(files)[0]

    return made


@pytest.fixture
def box_of() -> Callable[..., Box]:
    """From the runs and the record of box K1 to the box, linked."""

    def made(runs: str, box: str, other_circuit: str = "", house: str = "") -> Box:
        files = box_files(runs, box, other_circuit)
        linked_house, problems = linked(files | {"house.yaml": HOUSE + house})
        assert linked_house is not None, "\n".join(map(str, problems))
        return linked_house.boxes["K1"]

    return made


@pytest.fixture
def refused() -> Callable[..., list[str]]:
    """From the runs and the record of box K1 to the problems, as ``line:column found`` in its file."""

    def found(runs: str, box: str, other_circuit: str = "") -> list[str]:
        house, problems = linked(box_files(runs, box, other_circuit))
        assert house is None
        return [f"{each.place.line}:{each.place.column} {each.found}" for each in problems]

    return found
