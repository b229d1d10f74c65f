"""Slips in a cable: where it lies, how it is held, what it is of."""

from collections.abc import Iterator
from itertools import pairwise
from random import Random

from junctionary.house.model import Run
from junctionary.records.boxes import BoxSize
from junctionary.records.cables import Cable
from mutations.demo import Demo, Seed, Slip
from mutations.kinds import Mutation, cable_of, only_device

RECEPTACLES = ("receptacle-15", "receptacle-20", "receptacle-20-out")
OLD_CABLE = "14/2 NM no ground"
KNOBS = "{open: knob-and-tube, wires: [14 AWG black, 14 AWG white]}"


def in_walls(demo: Demo) -> list[Run]:
    return [
        each
        for each in demo.house.runs.values()
        if each.stage != "as-found"
        and isinstance(each.cable, Cable)
        and each.cable.kind in ("NM-B", "UF-B")
        and each.circuit in demo.house.circuits
    ]


def close_to_face(demo: Demo) -> Iterator[Seed]:
    for run in in_walls(demo):
        if not run.record.protected:
            slip = Slip(demo, run.id).run(run.id, from_edge="3/4 in")
            yield slip.seed(slip.line_of_run(run.id))


def held_seldom(demo: Demo) -> Iterator[Seed]:
    for run in in_walls(demo):
        slip = Slip(demo, run.id).run(run.id, supported="{first: 8 in, every: 6 ft}")
        yield slip.seed(slip.line_of_run(run.id))


def held_far_from_plain_box(demo: Demo) -> Iterator[Seed]:
    """Near enough for a box with clamps, too far from a single-gang plastic one without."""
    for run in in_walls(demo):
        boxes = [demo.house.boxes[each.id] for each in run.ends if each.id in demo.house.boxes]
        sizes = [each.record.size for each in boxes if isinstance(each.record.size, BoxSize)]
        if any((each.gangs, each.of, each.clamps) == (1, "plastic", "none") for each in sizes):
            slip = Slip(demo, run.id).run(run.id, supported="{first: 10 in, every: 4 ft}")
            yield slip.seed(slip.line_of_run(run.id))


def shallow(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "sf1").swap("circuits/shop-feeder.yaml", "buried: 20 in", "buried: 10 in")
    yield slip.seed(slip.line_of_run("sf1"))
    for id_ in ("ev1", "hp1"):
        slip = Slip(demo, id_).run(id_, buried="10 in")
        yield slip.seed(slip.line_of_run(id_))


def roughed_only(demo: Demo) -> Iterator[Seed]:
    for run in in_walls(demo):
        if not run.record.route:
            slip = Slip(demo, run.id).run(run.id, stage="roughed")
            yield slip.seed(slip.line_of_run(run.id))


def five_in_a_hole(demo: Demo) -> Iterator[Seed]:
    """Five cables, each loaded to what it may carry alone, in one foamed hole."""
    house = demo.house
    full = [
        run.id
        for circuit in house.circuits.values()
        if len(circuit.breakers) == 1
        for run in (house.runs[each] for each in circuit.runs)
        if isinstance(run.cable, Cable) and run.cable.kind == "NM-B" and run.stage != "as-found"
        and (str(run.conductors[0].size), str(house.breakers[circuit.breakers[0]].rating)) == ("12 AWG", "20 A")
    ]  # fmt: skip
    chance = Random(7)
    for number in range(60):
        five = sorted(chance.sample(full, 5))
        slip = Slip(demo, f"hole-{number}")
        slip.swap(
            "rooms/laundry.yaml",
            "bundles: [",
            f"bundles: [{{id: hole-9, is: sealed-hole, with: foam, runs: [{', '.join(five)}]}}, ",
        )
        yield slip.seed(*map(slip.line_of_run, five))


def of_aluminium(demo: Demo) -> Iterator[Seed]:
    house = demo.house
    for circuit in house.circuits.values():
        for run in (house.runs[each] for each in circuit.runs):
            box = house.boxes.get(run.to.id or "")
            if (
                run.stage != "as-found"
                and cable_of(demo, run.id) == "14/2 NM-B"
                and box is not None
                and box.landings
                and len(box.runs) == 1
            ):
                slip = Slip(demo, run.id).run(run.id, cable="12/2 NM aluminium")
                yield slip.seed((f"circuits/{circuit.id}.yaml", 1))


def larger_over_old_wire(demo: Demo) -> Iterator[Seed]:
    for breaker in ("main/27", "main/39"):
        slip = Slip(demo, breaker).breaker(breaker, rating="30 A")
        circuit = demo.house.circuits[str(demo.house.breakers[breaker].feeds)]
        assumed = [
            each for each in circuit.runs if (e := demo.house.runs[each].evidence) and e.how == "assumed"
        ]
        yield slip.seed(*map(slip.line_of_run, assumed), any_of=True)


def fed_from_knobs(demo: Demo) -> Iterator[Seed]:
    house = demo.house
    for run in house.runs.values():
        beyond = [
            each.id
            for each in house.runs.values()
            if each.from_.id == run.to.id and each.circuit == run.circuit
        ]
        if beyond and cable_of(demo, run.id) == OLD_CABLE and run.to.kind == "box":
            slip = Slip(demo, run.id).run(run.id, cable=KNOBS)
            for each in beyond:
                slip.run(each, built_to="nec-1971")
            yield slip.seed(*map(slip.line_of_run, beyond))


def run_around(demo: Demo) -> Iterator[Seed]:
    """A second cable between two boxes of one circuit, joined in as both are."""
    house = demo.house
    for circuit in house.circuits.values():
        if "runs:" not in demo.files[f"circuits/{circuit.id}.yaml"] or circuit.id == "untraced":
            continue
        joined = [
            each
            for each in circuit.boxes
            if house.boxes[each].makeup_words == ("pigtailed",)
            and only_device(house.boxes[each], *RECEPTACLES)
        ]
        for one, other in pairwise(joined):
            cable = cable_of(demo, house.boxes[one].runs[0])
            slip = Slip(demo, f"{one}-{other}").new_run(
                circuit.id, f"id: zz9, cable: {cable}, from: {one}, to: {other}, length: 9 ft"
            )
            lines = [slip.line_of_run(each) for each in ("zz9", *circuit.runs)]
            yield slip.seed(*lines, any_of=True)


def spare_left_live(demo: Demo) -> Iterator[Seed]:
    """A cable joined in at a box of pigtails and capped at its far end."""
    house = demo.house
    for box in house.boxes.values():
        if box.makeup_words == ("pigtailed",) and len(box.circuits) == 1:
            cable = cable_of(demo, box.runs[0])
            slip = Slip(demo, box.id).new_run(
                box.circuits[0], f"id: zz9, cable: {cable}, from: {box.id}, to: A9, length: 9 ft"
            )
            slip.swap(
                "boxes/attic.yaml",
                "boxes:\n",
                "boxes:\n  A9: {at: {floor: [20 ft, 2 ft]}, size: {of: plastic, volume: 20 in3, clamps: none}, capped: [zz9], cover: blank}\n",
            )
            yield slip.seed(slip.line_of_run("zz9"))


MORE_WIRE = "one more cable in a box"
MUTATIONS = (
    Mutation("cable-near-stud-face", close_to_face),
    Mutation("cable-unsupported", held_seldom),
    Mutation("cable-unsupported", held_far_from_plain_box),
    Mutation("burial-too-shallow", shallow),
    Mutation("run-without-route", roughed_only),
    Mutation(
        "bundle-in-sealed-hole",
        five_in_a_hole,
        {"continuous-load-over-wire": "what runs for hours warms it there as well"},
    ),
    Mutation("aluminium-branch-untreated", of_aluminium, {
        "connector-overfilled": "the connectors are for copper",
        "aluminium-on-copper-terminal": "the terminals are for copper",
        "breaker-outrates-wire": "aluminium carries less, in the warmth of an attic",
        "bundle-in-sealed-hole": "aluminium carries less, among other cables",
        "box-overfilled": "larger wire takes more room",
    }),
    Mutation("fuse-or-breaker-over-old-wire", larger_over_old_wire, {
        "breaker-outrates-wire": "the wire that was seen is too small as well",
        "receptacle-unfit-for-circuit": "the receptacles are of 15 A",
    }),
    Mutation("knob-and-tube-extended", fed_from_knobs),
    Mutation("circuit-loops-back", run_around, {"box-overfilled": MORE_WIRE, "connector-overfilled": MORE_WIRE}),
    Mutation("unused-run-live", spare_left_live, {"box-overfilled": MORE_WIRE, "connector-overfilled": MORE_WIRE}),
)  # fmt: skip
