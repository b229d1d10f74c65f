"""Random valid houses, as the text of their record, drawn from every construct of a house's wiring.

``random_house`` gives the files of a record by name; the same seed gives the
same house. Every conductor end is somewhere, nothing is unknown, and nothing
is wrong by construction: what a check finds in such a house is the check's
fault.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from random import Random

DEVICES = """\
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, lands: [loop], accepts: 14 to 12 AWG copper, torque: 14 in-lb}
  gfci: {is: gfci-receptacle, face: 5-15R, rating: 15 A, lands: {line: clamp-plate, load: clamp-plate, green: loop}, accepts: 14 to 12 AWG copper, torque: 14 in-lb}
  heat: {is: receptacle, face: 6-20R, rating: 20 A, outlets: 1, lands: [loop], accepts: 14 to 10 AWG copper, torque: 14 in-lb}
  stove: {is: receptacle, face: 14-50R, rating: 50 A, outlets: 1, gangs: 2, lands: [lug], accepts: 10 to 4 AWG copper, torque: 35 in-lb}
  switch: {is: switch, ways: 1, rating: 15 A, lands: [loop], accepts: 14 to 12 AWG copper, torque: 14 in-lb}
  three: {is: switch, ways: 3, rating: 15 A, lands: [loop], accepts: 14 to 12 AWG copper, torque: 14 in-lb}
  four: {is: switch, ways: 4, rating: 15 A, lands: [loop], accepts: 14 to 12 AWG copper, torque: 14 in-lb}
  dimmer: {is: dimmer, leads: [16 AWG black, 16 AWG red, 16 AWG green]}
  lamp: {is: luminaire, draws: 12 W, leads: [18 AWG black, 18 AWG white, 18 AWG green], canopy: domed}
  heater: {is: appliance, volts: 240 V, leads: [14 AWG black, 14 AWG red, 14 AWG green]}
  pull: {is: disconnect, poles: 2, rating: 30 A, volts: 240 V, gangs: 2, lands: [lug], accepts: 14 to 8 AWG copper, torque: 25 in-lb}
  inlet: {is: inlet, face: L14-30P, rating: 30 A, gangs: 2, lands: [lug], accepts: 12 to 8 AWG copper, torque: 20 in-lb}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
  lever-5: {is: lever, ports: 5, accepts: 20 to 12 AWG copper}
  block-24: {is: set-screw, ports: 24, accepts: 18 to 6 AWG copper}
"""
HOUSE = """\
house: Plover House
reference: nec-2023
service: {system: 120/240 V, rating: 200 A, disconnect: main}
practice: {termination: loop, torque: listed, splice: [lever-2, lever-3, lever-5, block-24], free_conductor: 8 in}
"""
TWO, THREE = "14/2 NM-B", "14/3 NM-B"


@dataclass
class Box:
    """A box while it is drawn.

    ``alone`` is its one-word make-up, as long as only one circuit is in it;
    ``old`` of before 2011, when a switch needed no neutral in its box.
    """

    devices: dict[str, str] = field(default_factory=dict)
    entries: list[str] = field(default_factory=list)
    alone: str | None = None
    circuits: set[str] = field(default_factory=set)
    shared: bool = True
    joints: list[list[str]] = field(default_factory=list)
    terminals: dict[str, str] = field(default_factory=dict)
    marked: list[str] = field(default_factory=list)
    capped: list[str] = field(default_factory=list)
    split: list[str] = field(default_factory=list)
    passes: list[str] = field(default_factory=list)
    old: bool = False

    def add(self, kind: str, letter: str) -> str:
        """Another device, by its local id."""
        local = f"{letter}{len(self.devices) + 1}"
        self.devices[local] = kind
        return local

    def text(self) -> str:
        """Its record, as the lines under its id."""
        entries = [self.alone] if self.alone and len(self.entries) == 1 else self.entries
        lines = ["size: {of: plastic, volume: 400 in3, clamps: none}", "cover: plate"]
        if self.old:
            lines.append("built_to: nec-2008")
        if self.devices:
            lines.append(f"devices: {{{', '.join(f'{a}: {b}' for a, b in self.devices.items())}}}")
        if entries:
            lines.append(f"makeup: [{', '.join(entries)}]")
        if self.joints:
            lines += ["joints:", *(f"  - {{join: [{', '.join(each)}]}}" for each in self.joints)]
        if self.terminals:
            lines.append(f"terminals: {{{', '.join(f'{a}: {b}' for a, b in self.terminals.items())}}}")
        if self.marked:
            lines.append(f"marked: {{{', '.join(self.marked)}}}")
        if self.split:
            lines.append(f"split: {{{', '.join(f'{each}: brass' for each in self.split)}}}")
        if self.passes:
            lines.append(f"passes: [{', '.join(f'{{run: {each}}}' for each in self.passes)}]")
        if self.capped:
            lines.append(f"capped: [{', '.join(self.capped)}]")
        return "".join(f"    {line}\n" for line in lines)


@dataclass
class Panel:
    """A panel while it is drawn: the lines of its breakers, the spaces taken, and what is tied."""

    id: str
    head: str
    breakers: list[str] = field(default_factory=list)
    taken: set[int] = field(default_factory=set)
    ties: list[str] = field(default_factory=list)
    interlocks: list[str] = field(default_factory=list)

    def space(self, poles: int = 1) -> list[int]:
        """Free spaces one above another, so that they are of both legs."""
        first = next(n for n in range(1, 999) if not {n, n + 2 * (poles - 1)} & self.taken)
        spaces = [first + 2 * pole for pole in range(poles)]
        self.taken |= set(spaces)
        return spaces

    def text(self) -> str:
        """Its file."""
        spaces = max(self.taken, default=1) + 5
        lines = [f"panel: {self.id}\nname: Panel {self.id}\nlugs: 75 C\nspaces: {spaces}\n{self.head}"]
        lines += ["breakers:\n", *(f"  {each}\n" for each in self.breakers)] if self.breakers else []
        lines += [f"ties: [{', '.join(self.ties)}]\n"] if self.ties else []
        lines += [f"interlocks: [{', '.join(self.interlocks)}]\n"] if self.interlocks else []
        return "".join(lines)


@dataclass
class Draft:
    """A house while it is drawn."""

    chance: Random
    panels: dict[str, Panel] = field(default_factory=dict)
    circuits: dict[str, list[str]] = field(default_factory=dict)
    purposes: dict[str, str] = field(default_factory=dict)
    runs: dict[str, tuple[str, str]] = field(default_factory=dict)
    boxes: dict[str, Box] = field(default_factory=dict)
    sources: str = ""

    def box(self, circuit: str | None = None) -> str:
        """A box for the next thing of a circuit: a new one, or at times one that holds other circuits."""
        if circuit is not None and self.boxes and self.chance.random() < 0.12:
            for id_ in self.chance.choices(list(self.boxes), k=6):
                box = self.boxes[id_]
                if box.shared and box.entries and circuit not in box.circuits:
                    return id_
        id_ = f"K{len(self.boxes) + 1}"
        self.boxes[id_] = Box()
        return id_

    def run(self, circuit: str, cable: str, from_: str, to: str) -> str:
        """A new run, by its id."""
        id_ = f"w{len(self.runs) + 1}"
        self.runs[id_] = (from_, to)
        length = self.chance.randint(5, 60)
        self.circuits[circuit].append(
            f"{{id: {id_}, cable: {cable}, from: {from_}, to: {to}, length: {length} ft}}"
        )
        for end in (from_, to):
            if end in self.boxes:
                self.boxes[end].circuits.add(circuit)
        return id_

    def circuit(self, purpose: str = "") -> str:
        """A new circuit, by its id."""
        id_ = f"c{len(self.circuits) + 1}"
        self.circuits[id_] = []
        self.purposes[id_] = purpose
        return id_


def random_house(chance: Random, circuits: int = 6) -> dict[str, str]:
    """The files of a random valid house of about this many circuits, by name."""
    draft = Draft(chance)
    draft.panels["main"] = Panel("main", "rating: 200 A\nmain: 200 A\nfed_by: service\nbonded: true\n")
    if chance.random() < 0.3:
        _generator(draft)
    for number in range(circuits):
        if number and chance.random() < 0.1:
            _subpanel(draft)
        panel = draft.panels[chance.choice(list(draft.panels))]
        chance.choices((_branch_circuit, _multiwire, _two_pole), (7, 2, 2))[0](draft, panel)
    _spares_and_passing(draft)
    return _files(draft)


def as_text(files: dict[str, str]) -> str:
    """The files as one text, each begun by a line such as ``[panels/main.yaml]``."""
    return "".join(f"[{name}]\n{text}" for name, text in files.items())


def _files(draft: Draft) -> dict[str, str]:
    boxes = "".join(f"  {id_}:\n    name: box {id_}\n{each.text()}" for id_, each in draft.boxes.items())
    files = {"house.yaml": HOUSE + draft.sources}
    files |= {f"panels/{id_}.yaml": each.text() for id_, each in draft.panels.items()}
    for id_, runs in draft.circuits.items():
        purpose = f"purpose: {draft.purposes[id_]}\n" if draft.purposes[id_] else ""
        listed = "runs:\n" + "".join(f"  - {each}\n" for each in runs) if runs else ""
        files[f"circuits/{id_}.yaml"] = f"circuit: {id_}\nname: Circuit {id_}\n{purpose}{listed}"
    files["rooms/den.yaml"] = "room: den\nname: Den\nkind: workshop\n"
    files["boxes/den.yaml"] = f"room: den\nboxes:\n{boxes}" if boxes else "room: den\n"
    files["devices/all.yaml"] = DEVICES
    return files


def _says(circuit: str) -> str:
    return f'says: "Den, wall and ceiling of group {circuit[1:]}"'


def _branch_circuit(draft: Draft, panel: Panel) -> None:
    """A 120 V circuit: a tree of boxes."""
    circuit = draft.circuit()
    [space] = panel.space()
    guards = draft.chance.choice(("[]", "[afci]", "[gfci]", "[gfci, afci]"))
    panel.breakers.append(f"{space}: {{rating: 15 A, guards: {guards}, feeds: {circuit}, {_says(circuit)}}}")
    grow(draft, circuit, panel.id, draft.chance.randint(1, 8))


def _multiwire(draft: Draft, panel: Panel) -> None:
    """Two legs and one neutral, on a two-pole breaker or two tied ones, that part in their last box."""
    circuit = draft.circuit()
    one, other = panel.space(2)
    if draft.chance.random() < 0.5:
        for space, colour in ((one, "black"), (other, "red")):
            panel.breakers.append(
                f"{space}: {{rating: 15 A, guards: [], feeds: {circuit}.{colour}, "
                f'says: "Den, {colour} wire of group {circuit[1:]}"}}'
            )
        panel.ties.append(f"[{one}, {other}]")
    else:
        panel.breakers.append(
            f"{one}+{other}: {{rating: 15 A, guards: [], feeds: {circuit}, {_says(circuit)}}}"
        )
    at = panel.id
    for _ in range(draft.chance.randint(0, 3)):
        to = draft.box(circuit)
        feed = draft.run(circuit, THREE, at, to)
        box, at = draft.boxes[to], to
        receptacle = box.add("duplex", "r")
        leg = draft.chance.choice(("black", "red"))
        box.entries.append(f"{{feed: {feed}, onward: [NEXT], takes: {leg}, devices: [{receptacle}]}}")
        _name_next(draft, box)
    last = draft.box()
    feed = draft.run(circuit, THREE, at, last)
    box = draft.boxes[last]
    box.shared = False
    black, red = (grow(draft, circuit, last, draft.chance.randint(1, 4)) for _ in range(2))
    box.joints += [
        [f"{feed}.black", f"{black}.black"],
        [f"{feed}.red", f"{red}.black"],
        [f"{each}.white" for each in (feed, black, red)],
        [f"{each}.bare" for each in (feed, black, red)],
    ]


def _name_next(draft: Draft, box: Box) -> None:
    box.entries[-1] = box.entries[-1].replace("NEXT", f"w{len(draft.runs) + 1}")


def _two_pole(draft: Draft, panel: Panel) -> None:
    """240 V: a receptacle, an appliance behind a disconnect, or a range outlet."""
    circuit, to = draft.circuit(), draft.box()
    spaces = "+".join(map(str, panel.space(2)))
    box = draft.boxes[to]
    box.shared = False
    if draft.chance.random() < 0.3:
        panel.breakers.append(f"{spaces}: {{rating: 50 A, guards: [], feeds: {circuit}, {_says(circuit)}}}")
        draft.run(circuit, "6/3 NM-B", panel.id, to)
        box.add("stove", "r")
        box.entries.append("end-of-run")
        return
    panel.breakers.append(
        f"{spaces}: {{rating: 20 A, guards: [], feeds: {circuit}, {_says(circuit)}, marked: {{white: black}}}}"
    )
    feed = draft.run(circuit, "12/2 NM-B", panel.id, to)
    box.marked.append(f"{feed}.white: black")
    if draft.chance.random() < 0.5:
        box.add("heat", "r")
        box.entries.append("end-of-run")
        return
    beyond = draft.box()
    onward = draft.run(circuit, "12/2 NM-B", to, beyond)
    box.marked.append(f"{onward}.white: black")
    box.entries.append(f"{{feed: {feed}, through: {box.add('pull', 'd')}, onward: [{onward}]}}")
    end = draft.boxes[beyond]
    end.shared = False
    end.marked.append(f"{onward}.white: black")
    end.add("heater", "h")
    end.entries.append("end-of-run")


def _subpanel(draft: Draft) -> None:
    """Another panel, with or without a main of its own."""
    feeder, id_ = draft.circuit("feeder"), f"sub{len(draft.panels)}"
    before = draft.panels[draft.chance.choice(list(draft.panels))]
    spaces = "+".join(map(str, before.space(2)))
    before.breakers.append(f'{spaces}: {{rating: 50 A, guards: [], feeds: {feeder}, says: "Panel {id_}"}}')
    main = "main: 50 A\n" if draft.chance.random() < 0.5 else ""
    head = f"rating: 100 A\n{main}fed_by: {feeder}\nbonded: false\n"
    draft.panels[id_] = Panel(id_, head)
    draft.run(feeder, "6/3 NM-B", before.id, id_)


def _generator(draft: Draft) -> None:
    """A generator inlet, interlocked with the main."""
    panel = draft.panels["main"]
    spaces = "+".join(map(str, panel.space(2)))
    panel.breakers.append(f"{spaces}: {{rating: 30 A, guards: [], feeds: genny, says: Generator inlet}}")
    panel.interlocks.append(f"[main, {spaces}]")
    id_ = draft.box()
    box = draft.boxes[id_]
    box.shared = False
    box.add("inlet", "i")
    draft.runs["gn1"] = (id_, "main")
    draft.sources = (
        f"sources:\n  - {{id: genny, is: generator-inlet, at: {id_}, rating: 30 A, enters: main/{spaces}, "
        f"without_utility: runs, runs: [{{id: gn1, cable: 10/3 NM-B, from: {id_}, to: main, length: 9 ft}}]}}\n"
    )
    box.terminals |= {"i1.x": "gn1.black", "i1.y": "gn1.red", "i1.w": "gn1.white", "i1.g": "gn1.bare"}


def grow(draft: Draft, circuit: str, start: str, left: int) -> str:
    """A run from ``start`` to one more box, made up by chance, and what hangs on it; gives the run."""
    to = draft.box(circuit)
    feed = draft.run(circuit, TWO, start, to)
    made, weights = zip(*MAKERS, strict=True)
    draft.chance.choices(made, weights)[0](draft, circuit, to, feed, left - 1)
    return feed


def _children(draft: Draft, circuit: str, at: str, left: int) -> list[str]:
    """The runs that go on from a box, with all that hangs on them."""
    runs = []
    while left > 0 and len(runs) < 3:
        share = draft.chance.randint(1, left)
        runs.append(grow(draft, circuit, at, share))
        left -= share
    return runs


def _entry(feed: str, onward: list[str], devices: list[str], more: str = "") -> str:
    goes_on = f", onward: [{', '.join(onward)}]" if onward else ""
    return f"{{feed: {feed}{goes_on}, devices: [{', '.join(devices)}]{more}}}"


def _receptacles(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    onward, box = _children(draft, circuit, at, left), draft.boxes[at]
    device = box.add(draft.chance.choice(("duplex", "duplex", "gfci")), "r")
    more = ""
    if len(onward) == 1 and box.devices[device] == "duplex" and draft.chance.random() < 0.5:
        more = f", through: {device}"
    box.entries.append(_entry(feed, onward, [device], more))
    box.alone = "feed-through" if more else "pigtailed" if onward else "end-of-run"


def _splice(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    onward, box = _children(draft, circuit, at, max(left, 1)), draft.boxes[at]
    box.entries.append(_entry(feed, onward, []))
    box.alone = "splice-through"


def _guarded(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    runs, box = _children(draft, circuit, at, max(left, 1)), draft.boxes[at]
    beside = draft.chance.randint(0, len(runs) - 1)
    device = box.add("gfci", "r")
    box.entries.append(_entry(feed, runs[:beside], [device], f", guarded: [{', '.join(runs[beside:])}]"))


def _lamp_on(draft: Draft, run: str, to: str) -> None:
    """A lamp at the end of a run."""
    box = draft.boxes[to]
    box.shared = False
    box.add("lamp", "f")
    box.entries.append("end-of-run")


def _switched_lamp(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    onward, box = _children(draft, circuit, at, left), draft.boxes[at]
    switch = box.add(draft.chance.choice(("switch", "switch", "dimmer")), "s")
    if draft.chance.random() < 0.3:
        lamp = box.add("lamp", "f")
        box.entries.append(_entry(feed, onward, [switch, lamp], f", switched: {{{switch}: {lamp}.black}}"))
        return
    legs = []
    for _ in range(draft.chance.randint(1, 2)):
        to = draft.box()
        legs.append(draft.run(circuit, TWO, at, to))
        _lamp_on(draft, legs[-1], to)
    box.entries.append(_entry(feed, onward, [switch], f", switched: {{{switch}: [{', '.join(legs)}]}}"))


def _switch_loop(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    onward, box = _children(draft, circuit, at, left), draft.boxes[at]
    wires = draft.chance.choice((TWO, THREE))
    to = draft.box()
    loop = draft.run(circuit, wires, at, to)
    end = draft.boxes[to]
    end.shared = False
    end.add("switch", "s")
    end.entries.append(f"{{loop: {loop}}}")
    if wires == TWO:
        end.old = True
        box.marked.append(f"{loop}.white: black")
        end.marked.append(f"{loop}.white: black")
    else:
        end.capped.append(f"{loop}.white")
    box.entries.append(_entry(feed, onward, [box.add("lamp", "f")], f", loop: {loop}"))


def _half_switched(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    onward, box = _children(draft, circuit, at, left), draft.boxes[at]
    switch = box.add("switch", "s")
    if draft.chance.random() < 0.5:
        half = box.add("duplex", "r")
        box.split.append(half)
        more = f", switched: {{{switch}: {half}.brass-top}}"
        box.entries.append(_entry(feed, onward, [switch, half], more))
        return
    to = draft.box()
    both = draft.run(circuit, THREE, at, to)
    end = draft.boxes[to]
    end.shared = False
    half = end.add("duplex", "r")
    end.split.append(half)
    end.entries.append("end-of-run")
    end.terminals[f"{half}.brass-top"] = f"{both}.red"
    box.entries.append(_entry(feed, [*onward, both], [switch], f", switched: {{{switch}: {both}.red}}"))


def _between(draft: Draft, circuit: str, at: str) -> tuple[str, str]:
    """From one 3-way on to the other, by no, one or two 4-ways: the travelers' run and its last box."""
    to = draft.box()
    run = draft.run(circuit, THREE, at, to)
    for _ in range(draft.chance.choice((0, 0, 1, 2))):
        box, beyond = draft.boxes[to], draft.box()
        box.shared = False
        onward = draft.run(circuit, THREE, to, beyond)
        box.entries.append(f"{{four_way: {{{box.add('four', 's')}: {{in: {run}, out: {onward}}}}}}}")
        run, to = onward, beyond
    return run, to


def _through_four_ways(draft: Draft, circuit: str, at: str) -> tuple[str, str]:
    """The same where black is no traveler but goes through: red and the re-marked white travel."""
    to = draft.box()
    run = draft.run(circuit, THREE, at, to)
    for _ in range(draft.chance.choice((0, 0, 1, 2))):
        box, beyond = draft.boxes[to], draft.box()
        box.shared, box.old = False, True
        onward = draft.run(circuit, THREE, to, beyond)
        switch = box.add("four", "s")
        box.joints += [
            [f"{run}.black", f"{onward}.black"],
            [f"{run}.bare", f"{onward}.bare", f"{switch}.green"],
        ]
        for side, cable in (("in", run), ("out", onward)):
            box.terminals |= {f"{switch}.{side}-1": f"{cable}.red", f"{switch}.{side}-2": f"{cable}.white"}
            box.marked.append(f"{cable}.white: red")
        run, to = onward, beyond
    return run, to


def _far_three_way(draft: Draft, run: str, to: str) -> None:
    """The last 3-way of a chain whose black is its common."""
    box = draft.boxes[to]
    box.shared, box.old = False, True
    switch = box.add("three", "s")
    box.marked.append(f"{run}.white: red")
    box.entries.append(
        f"{{three_way: {{{switch}: {{common: {run}.black, travelers: [{run}.red, {run}.white]}}}}}}"
    )


def _three_ways_in_line(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    """Feed at the first 3-way, lamp beyond the last."""
    onward, box = _children(draft, circuit, at, left), draft.boxes[at]
    switch = box.add("three", "s")
    first = f"w{len(draft.runs) + 1}"
    travelers, far = _between(draft, circuit, at)
    box.entries.append(
        _entry(feed, onward, [switch], f", three_way: {{{switch}: {{common: feed, travelers: {first}}}}}")
    )
    end, lamp = draft.boxes[far], draft.box()
    leg = draft.run(circuit, TWO, far, lamp)
    end.shared = False
    end.entries.append(
        f"{{three_way: {{{end.add('three', 's')}: {{common: {leg}, travelers: {travelers}}}}}}}"
    )
    _lamp_on(draft, leg, lamp)


def _three_ways_beyond_lamp(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    """Feed at the lamp, both switches beyond it: supply goes down a re-marked white, black returns."""
    if draft.boxes[at].entries:
        _receptacles(draft, circuit, at, feed, left)
        return
    onward, box, near = _children(draft, circuit, at, left), draft.boxes[at], draft.box()
    box.shared = False
    down = draft.run(circuit, TWO, at, near)
    lamp = box.add("lamp", "f")
    box.marked.append(f"{down}.white: black")
    box.joints += [
        [f"{feed}.black", f"{down}.white", *(f"{each}.black" for each in onward)],
        [f"{down}.black", f"{lamp}.black"],
        [f"{feed}.white", f"{lamp}.white", *(f"{each}.white" for each in onward)],
        [f"{feed}.bare", f"{down}.bare", f"{lamp}.green", *(f"{each}.bare" for each in onward)],
    ]
    first = f"w{len(draft.runs) + 1}"
    last, far = _through_four_ways(draft, circuit, near)
    switches = draft.boxes[near]
    switches.shared, switches.old = False, True
    switch = switches.add("three", "s")
    switches.marked += [f"{down}.white: black", f"{first}.white: red"]
    switches.joints += [
        [f"{down}.black", f"{first}.black"],
        [f"{down}.bare", f"{first}.bare", f"{switch}.green"],
    ]
    switches.terminals |= {
        f"{switch}.common": f"{down}.white",
        f"{switch}.traveler-1": f"{first}.red",
        f"{switch}.traveler-2": f"{first}.white",
    }
    _far_three_way(draft, last, far)


def _three_ways_around_lamp(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    """Feed at the lamp between the two switches: supply to one on black, from the other on black."""
    if draft.boxes[at].entries:
        _receptacles(draft, circuit, at, feed, left)
        return
    onward, box = _children(draft, circuit, at, left), draft.boxes[at]
    box.shared = False
    lamp = box.add("lamp", "f")
    ways = []
    for _ in range(2):
        ways.append(f"w{len(draft.runs) + 1}")
        _far_three_way(draft, *_through_four_ways(draft, circuit, at))
    one, other = ways
    box.marked += [f"{each}.white: red" for each in ways]
    box.joints += [
        [f"{feed}.black", f"{one}.black", *(f"{each}.black" for each in onward)],
        [f"{other}.black", f"{lamp}.black"],
        [f"{one}.red", f"{other}.red"],
        [f"{one}.white", f"{other}.white"],
        [f"{feed}.white", f"{lamp}.white", *(f"{each}.white" for each in onward)],
        [f"{each}.bare" for each in (feed, one, other, *onward)] + [f"{lamp}.green"],
    ]


def _three_way_dead_end(draft: Draft, circuit: str, at: str, feed: str, left: int) -> None:
    """Feed and lamp leg in one switch box, the other switch beyond: black carries supply to it."""
    if draft.boxes[at].entries:
        _receptacles(draft, circuit, at, feed, left)
        return
    onward, box, to = _children(draft, circuit, at, left), draft.boxes[at], draft.box()
    box.shared = False
    switch = box.add("three", "s")
    leg = draft.run(circuit, TWO, at, to)
    _lamp_on(draft, leg, to)
    first = f"w{len(draft.runs) + 1}"
    _far_three_way(draft, *_through_four_ways(draft, circuit, at))
    box.marked.append(f"{first}.white: red")
    box.joints += [
        [f"{feed}.black", f"{first}.black", *(f"{each}.black" for each in onward)],
        [f"{feed}.white", f"{leg}.white", *(f"{each}.white" for each in onward)],
        [f"{each}.bare" for each in (feed, leg, first, *onward)] + [f"{switch}.green"],
    ]
    box.terminals |= {
        f"{switch}.common": f"{leg}.black",
        f"{switch}.traveler-1": f"{first}.red",
        f"{switch}.traveler-2": f"{first}.white",
    }


Maker = Callable[[Draft, str, str, str, int], None]
MAKERS: tuple[tuple[Maker, int], ...] = (
    (_receptacles, 8),
    (_splice, 2),
    (_guarded, 2),
    (_switched_lamp, 4),
    (_switch_loop, 2),
    (_half_switched, 2),
    (_three_ways_in_line, 1),
    (_three_ways_beyond_lamp, 1),
    (_three_ways_around_lamp, 1),
    (_three_way_dead_end, 1),
)


def _spares_and_passing(draft: Draft) -> None:
    """Cables left for later, capped at both ends, and cables that pass through other circuits' boxes."""
    wired = [(id_, each) for id_, each in draft.boxes.items() if each.circuits]
    for id_, box in wired:
        light = sorted(each for each in box.circuits if "14/" in draft.circuits[each][0])
        if light and draft.chance.random() < 0.04:
            circuit, end = draft.chance.choice(light), draft.box()
            spare = draft.run(circuit, TWO, id_, end)
            box.capped.append(spare)
            draft.boxes[end].capped.append(spare)
        if draft.chance.random() < 0.06:
            others = [run for run, ends in draft.runs.items() if id_ not in ends]
            if others:
                box.passes.append(draft.chance.choice(others))
