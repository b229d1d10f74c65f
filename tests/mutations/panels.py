"""Slips at the panel: ratings, guards, the words on the door; and devices unfit for their place or circuit."""

import re
from collections.abc import Callable, Iterator

from junctionary.figures.places import gives_light
from mutations.demo import Demo, Seed, Slip
from mutations.kinds import Mutation, breaker_amps, new_boxes, only_device

PLAIN_KIND = """  plain-15: {is: receptacle, face: 5-15R, rating: 15 A, lands: [loop], accepts: 14 to 12 AWG copper, torque: 14 in-lb, strip: 5/8 in, marks: []}
  plain-20: {is: receptacle, face: 5-20R, rating: 20 A, lands: [loop], accepts: 14 to 10 AWG copper, torque: 14 in-lb, strip: 5/8 in, marks: []}
  plain-20-out: {is: receptacle, face: 5-20R, rating: 20 A, lands: [loop], accepts: 14 to 10 AWG copper, torque: 14 in-lb, strip: 5/8 in, marks: [weather-resistant]}
"""
NO_ARC = ("main/26a", "main/26b", "main/36", "main/37", "main/41")
FED_BY_GFCI_BREAKER = {
    "main/21": ("K8",), "main/22": ("K10",), "main/23": ("K11",), "main/24": ("K11",), "main/25": ("L1", "L3"),
    "main/5+7": ("K9",), "main/14+16": ("L2",), "main/36": ("C8",), "main/41": ("Y2", "R2"), "shop/5+7": ("W11",),
}  # fmt: skip
BEYOND_GFCI = {
    "K1": ("K2", "K5", "K6"), "K3": ("K4", "K7"), "U1": ("U2",), "T6": ("F2", "D2"), "W1": ("W2", "W3"), "W5": ("W4",),
}  # fmt: skip


def single_poles(demo: Demo) -> list[str]:
    house = demo.house
    return [
        each.id
        for each in house.breakers.values()
        if each.poles == 1 and isinstance(each.feeds, str) and each.feeds in house.circuits and house.circuits[each.feeds].runs
        and re.fullmatch(r"\d+[ab]?", each.id.partition("/")[2])
    ]  # fmt: skip


def twice_the_rating(demo: Demo) -> Iterator[Seed]:
    for breaker in single_poles(demo):
        circuit = demo.house.circuits[str(demo.house.breakers[breaker].feeds)]
        slip = Slip(demo, breaker).breaker(breaker, rating="40 A")
        yield slip.seed(*map(slip.line_of_run, circuit.runs), any_of=True)


def fed_twice(demo: Demo) -> Iterator[Seed]:
    """The breaker of an appliance at 240 V taken for a second feeder of the workshop."""
    for breaker, circuit in (("main/9+11", "heat-pump"), ("main/14+16", "dryer")):
        slip = Slip(demo, breaker).swap(f"circuits/{circuit}.yaml", "\npurpose: ", "\nnote: Was for ")
        slip.swap(f"circuits/{circuit}.yaml", "\nruns:\n", "\npurpose: feeder\nruns:\n")
        slip.new_run(circuit, "id: zz9, cable: 6/3 NM-B, from: main, to: shop, length: 60 ft")
        yield slip.seed(("panels/shop.yaml", 1))


def larger_receptacle(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        if only_device(box, "receptacle-15") and breaker_amps(demo.house, box) == 15:
            slip = Slip(demo, box.id).box(box.id, devices="{r1: receptacle-20}")
            yield slip.seed(slip.line_of_box(box.id, "devices:"))


def smaller_single(demo: Demo) -> Iterator[Seed]:
    for box in ("C8", "K10"):
        slip = Slip(demo, box).box(box, devices="{r1: single-15}")
        yield slip.seed(slip.line_of_box(box, "devices:"))


def says(words: Callable[[Demo, str], str | None]) -> Callable[[Demo], Iterator[Seed]]:
    def sites(demo: Demo) -> Iterator[Seed]:
        for breaker in demo.house.breakers.values():
            word = words(demo, breaker.id)
            if (
                breaker.says
                and isinstance(breaker.feeds, str)
                and breaker.feeds in demo.house.circuits
                and word
            ):
                slip = Slip(demo, breaker.id).breaker(breaker.id, says=f'"{word}"')
                yield slip.seed(slip.line_of_breaker(breaker.id))

    return sites


def as_another(demo: Demo, breaker: str) -> str | None:
    """What an earlier breaker of the same panel says: the later of two is at fault."""
    panel = demo.house.panels[demo.house.breakers[breaker].panel]
    earlier = [
        each for each in panel.breakers[: [each.id for each in panel.breakers].index(breaker)] if each.says
    ]
    return earlier[0].says if earlier else None


def without_guard(
    guard: str, lines: Callable[[Slip, str], list[tuple[str, int]]]
) -> Callable[[Demo], Iterator[Seed]]:
    def sites(demo: Demo) -> Iterator[Seed]:
        for breaker in demo.house.breakers.values():
            old = (
                demo.house.circuits[breaker.feeds].edition != "nec-2023"
                if breaker.feeds in demo.house.circuits
                else True
            )
            if guard in (breaker.guards or ()) and not old:
                left = ", ".join(each for each in breaker.guards or () if each != guard)
                slip = Slip(demo, breaker.id).breaker(breaker.id, guards=f"[{left}]")
                if stands := lines(slip, breaker.id):
                    yield slip.seed(*stands)

    return sites


def outlets_of_breaker(slip: Slip, breaker: str) -> list[tuple[str, int]]:
    return [slip.line_of_box(each, "devices:") for each in FED_BY_GFCI_BREAKER.get(breaker, ())]


def breaker_line(slip: Slip, breaker: str) -> list[tuple[str, int]]:
    return [] if breaker in NO_ARC else [slip.line_of_breaker(breaker)]


def gfci_missing(demo: Demo) -> Iterator[Seed]:
    yield from without_guard("gfci", outlets_of_breaker)(demo)
    for box, beyond in BEYOND_GFCI.items():
        slip = Slip(demo, box)
        file, number = slip.line_of_box(box, "makeup:")
        line = slip.files[file].splitlines()[number - 1].strip()
        onward = (
            line.removeprefix("makeup: ")
            .replace("onward: [ld2], guarded: [ld3]", "onward: [ld2, ld3]")
            .replace("guarded", "onward")
        )
        slip.box(box, makeup=onward)
        yield slip.seed(*(slip.line_of_box(each, "devices:") for each in beyond))
    slip = Slip(demo, "C17").box("C17", devices="{r1: receptacle-20}")
    yield slip.seed(slip.line_of_box("C17", "devices:"))


def of_the_list(demo: Demo) -> Iterator[Seed]:
    """What is wired or plugged into an outlet that nothing guards, taken for an appliance that asks a guard."""
    for circuit, was, box in (("water-heater", "is: water-heater", "C7"), ("network", "is: network", "H7")):
        slip = Slip(demo, circuit).swap(f"circuits/{circuit}.yaml", was, "is: microwave")
        yield slip.seed(slip.line_of_box(box, "devices:"))


def wired_in_the_open(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "D1").breaker("main/18+20", guards="[]")
    yield slip.seed(slip.line_of_box("D1", "devices:"))
    slip = Slip(demo, "W12").swap("circuits/shop-heater.yaml", "is: space-heater", "is: other")
    yield slip.seed(slip.line_of_box("W12", "devices:"))
    slip = Slip(demo, "late heater").swap(
        "circuits/shop-heater.yaml", "installed: 2026-05", "installed: 2026-10"
    )
    yield slip.seed(slip.line_of_box("W12", "devices:"))


def crawlspace_lamp(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "R1").breaker("main/37", guards="[afci]")
    yield slip.seed(slip.line_of_box("R1", "devices:"))


def without_shutters(demo: Demo) -> Iterator[Seed]:
    for box in new_boxes(demo):
        device = only_device(box, "receptacle-15", "receptacle-20", "receptacle-20-out")
        height = box.record.at.up if box.record.at else None
        stays = any(
            device is not None and load.plugged == device.id
            for c in demo.house.circuits.values()
            for load in c.loads
        )
        room = demo.house.rooms[box.room].record.kind
        if (
            device is not None
            and height is not None
            and height.to("in") <= 66
            and not stays
            and room not in ("crawlspace", "attic")
        ):
            slip = Slip(demo, box.id).box(
                box.id, devices="{r1: " + device.kind_id.replace("receptacle", "plain") + "}"
            )
            slip.files["devices/receptacles.yaml"] += PLAIN_KIND
            yield slip.seed(slip.line_of_box(box.id, "devices:"))


def indoor_kind(demo: Demo) -> Iterator[Seed]:
    for box in ("F2", "D2", "Y2"):
        slip = Slip(demo, box).box(box, devices="{r1: receptacle-20}")
        yield slip.seed(slip.line_of_box(box, "devices:"))


def three_holes(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        if only_device(box, "two-slot"):
            slip = Slip(demo, box.id).box(box.id, devices="{r1: receptacle-15-1998}")
            yield slip.seed(slip.line_of_box(box.id, "devices:"))
    slip = Slip(demo, "G3").box("G3", labels=None)
    yield slip.seed(slip.line_of_box("G3", "devices:"))


def hung_elsewhere(demo: Demo) -> Iterator[Seed]:
    for room in ("bath-down", "bath-up", "backstair"):
        slip = Slip(demo, room).swap("panels/main.yaml", "at: {room: laundry,", f"at: {{room: {room},")
        yield slip.seed(("panels/main.yaml", 1))


def smaller_panel(demo: Demo) -> Iterator[Seed]:
    for panel, was, rating in (("main", "rating: 200 A", "125 A"), ("shop", "rating: 100 A", "50 A")):
        slip = Slip(demo, panel).swap(f"panels/{panel}.yaml", f"\n{was}\n", f"\nrating: {rating}\n")
        yield slip.seed((f"panels/{panel}.yaml", 1))


def small_service(demo: Demo) -> Iterator[Seed]:
    for where, file, was, is_ in (
        ("service", "house.yaml", "\n  rating: 200 A\n", "\n  rating: 60 A\n"),
        ("main", "panels/main.yaml", "\nmain: 200 A\n", "\nmain: 90 A\n"),
    ):
        yield Slip(demo, where).swap(file, was, is_).seed(("panels/main.yaml", 1))


def inlet_on_fifty(demo: Demo) -> Iterator[Seed]:
    for rating in ("40 A", "50 A"):
        slip = Slip(demo, rating).breaker("main/1+3", rating=rating)
        yield slip.seed(slip.line_of_breaker("main/1+3"))


def second_supply(demo: Demo) -> Iterator[Seed]:
    """A circuit of the house taken to serve a place in the workshop's building too."""
    place = 1 + next(
        n for n, each in enumerate(demo.files["house.yaml"].splitlines()) if "{id: shed," in each
    )
    for room in ("back-yard", "drive", "crawl"):
        slip = Slip(demo, room).swap(f"rooms/{room}.yaml", "building: house\n", "building: shed\n")
        yield slip.seed(("house.yaml", place))


def no_electrode(demo: Demo) -> Iterator[Seed]:
    lines = demo.files["house.yaml"].splitlines()
    rods = "electrodes: [{is: rod, wire: 6 AWG copper}, {is: rod, wire: 6 AWG copper}]}"
    slip = Slip(demo, "shed").swap("house.yaml", rods, "electrodes: []}")
    yield slip.seed(("house.yaml", 1 + next(n for n, each in enumerate(lines) if "{id: shed," in each)))
    told = next(each for each in lines if each.startswith("  electrodes: [{is: concrete-encased"))
    slip = Slip(demo, "service").swap("house.yaml", told, "  electrodes: []")
    yield slip.seed(("house.yaml", 1 + lines.index("service:")))


def guarded_pole_by_pole(demo: Demo) -> Iterator[Seed]:
    for breaker in ("main/6", "main/8"):
        for guard in ("gfci", "afci"):
            slip = Slip(demo, f"{breaker} {guard}").breaker(breaker, guards=f"[{guard}]")
            yield slip.seed(slip.line_of_breaker(breaker))


def lights_on_thirty(demo: Demo) -> Iterator[Seed]:
    for breaker in single_poles(demo):
        circuit = demo.house.circuits[str(demo.house.breakers[breaker].feeds)]
        lights = [each for each in circuit.devices if gives_light(demo.house.devices[each].kind)]
        if lights:
            slip = Slip(demo, breaker).breaker(breaker, rating="30 A")
            yield slip.seed(*(slip.line_of_box(demo.house.devices[each].box, "devices:") for each in lights))


def old_face(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "L2").swap("devices/receptacles.yaml", "face: 14-30R", "face: 10-30R")
    (run,) = demo.house.boxes["L2"].runs
    slip.box("L2", capped=f"[{run}.bare]")
    yield slip.seed(slip.line_of_box("L2", "devices:"))


def space_left_open(demo: Demo) -> Iterator[Seed]:
    for space in ("4", "9", "10", "11", "12"):
        slip = Slip(demo, f"shop/{space}")
        (line,) = [
            each
            for each in slip.files["panels/shop.yaml"].splitlines()
            if each.split() == [f"{space}:", "blank"]
        ]
        yield slip.swap("panels/shop.yaml", f"\n{line}\n", f"\n  {space}: open\n").seed(
            ("panels/shop.yaml", 1)
        )


def weak_breaker(demo: Demo) -> Iterator[Seed]:
    for breaker in single_poles(demo):
        if breaker.startswith("main/"):
            slip = Slip(demo, breaker).breaker(breaker, kind="weak")
            slip.files["devices/switches.yaml"] += "breakers:\n  weak: {interrupts: 5 kA}\n"
            yield slip.seed(slip.line_of_breaker(breaker))


def the_sun_enters(demo: Demo) -> Iterator[Seed]:
    """A solar plant taken to enter where the generator does, with nothing between it and the main."""
    slip = Slip(demo, "genny").swap("house.yaml", "is: generator-inlet", "is: solar")
    slip.swap("house.yaml", "without_utility: runs", "without_utility: stops")
    slip.swap("panels/main.yaml", "interlocks: [[main, 1+3]]\n", "").breaker("main/1+3", rating="50 A")
    yield slip.seed(slip.line_of_breaker("main/1+3"))


def guard_too_high(demo: Demo) -> Iterator[Seed]:
    for box in ("K1", "K3", "B1", "U1", "T6", "C17", "W1", "W5"):
        file, number = Slip(demo, box).line_of_box(box, "at:")
        at = demo.files[file].splitlines()[number - 1].strip().removeprefix("at: ")
        slip = Slip(demo, box).box(box, at=re.sub(r"up: [^,}]*", "up: 7 ft", at))
        yield slip.seed(slip.line_of_box(box, "devices:"))


TOO_LARGE = {
    "receptacle-unfit-for-circuit": "the receptacles are too small as well",
    "single-receptacle-underrated": "the receptacles are too small as well",
    "fuse-or-breaker-over-old-wire": "the wire that was only assumed is too small as well",
    "bathroom-circuit-missing": "it is no 20 A circuit any more",
    "small-appliance-circuits-few": "it is no 20 A circuit any more",
    "laundry-circuit-missing": "it is no 20 A circuit any more",
}
"""What follows from a breaker that is too large."""

MUTATIONS = (
    Mutation("breaker-outrates-wire", twice_the_rating, {
        **TOO_LARGE, "light-on-large-circuit": "the lights are on too large a breaker as well",
    }),
    Mutation("light-on-large-circuit", lights_on_thirty, {
        **TOO_LARGE, "breaker-outrates-wire": "the wire is too small as well",
    }),
    Mutation("panel-in-wrong-room", hung_elsewhere),
    Mutation("panel-guarded-too-high", smaller_panel),
    Mutation("service-too-small", small_service, {"service-overloaded": "it cannot carry the load either"}),
    Mutation("electrode-missing", no_electrode),
    Mutation("building-fed-twice", second_supply),
    Mutation("shared-neutral-under-two-guards", guarded_pole_by_pole),
    Mutation("panel-space-open", space_left_open),
    Mutation("breaker-interrupts-too-little", weak_breaker),
    Mutation("bus-fed-from-two-sides", the_sun_enters, {"source-breaker-too-large": "its cable was for 30 A"}),
    Mutation("source-breaker-too-large", inlet_on_fifty),
    Mutation("guard-out-of-reach", guard_too_high, {
        "counter-without-receptacle": "it serves no counter up there",
        "wall-space-without-receptacle": "it serves no wall up there",
        "basin-receptacle-far": "it serves no basin up there",
    }),
    Mutation("frame-on-neutral", old_face, {"metal-box-unbonded": "the ground that its box had is capped"}),
    Mutation("panel-fed-twice", fed_twice, {
        "ground-wire-too-small": "the breaker was for smaller wires than those of the new run",
        "gfci-missing": "a feeder's breaker guards nothing in the circuit it was for",
    }),
    Mutation("receptacle-unfit-for-circuit", larger_receptacle),
    Mutation("single-receptacle-underrated", smaller_single),
    Mutation("directory-entry-vague", says(lambda demo, breaker: "Lights")),
    Mutation("directory-entry-doubled", says(as_another)),
    Mutation("gfci-missing", gfci_missing),
    Mutation("appliance-without-gfci", of_the_list),
    Mutation("outdoor-outlet-without-gfci", wired_in_the_open),
    Mutation("crawlspace-light-without-gfci", crawlspace_lamp),
    Mutation("afci-missing", without_guard("afci", breaker_line)),
    Mutation("tamper-resistant-missing", without_shutters),
    Mutation("weather-resistant-missing", indoor_kind),
    Mutation("three-hole-on-no-ground", three_holes),
)  # fmt: skip
