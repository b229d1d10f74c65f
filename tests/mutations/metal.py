"""Slips in what boxes, panels and devices are made of and for."""

import re
from collections.abc import Iterator
from dataclasses import replace

from mutations.boxes import without_torque
from mutations.demo import Demo, Seed, Slip
from mutations.kinds import Mutation
from mutations.panels import says
from mutations.runs import of_aluminium


def size_line(slip: Slip, box: str) -> str:
    file, number = slip.line_of_box(box, "size:")
    return slip.files[file].splitlines()[number - 1].strip().removeprefix("size: ")


def aluminium_landed(demo: Demo) -> Iterator[Seed]:
    for seed in of_aluminium(demo):
        box = demo.house.runs[seed.where].to.id or ""
        yield replace(seed, stands=(Slip(demo, box).line_of_box(box, "devices:"),))


def shallow_box(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        if box.devices and box.record.size is not None:
            size = size_line(Slip(demo, box.id), box.id)
            if "depth:" in size:
                slip = Slip(demo, box.id).box(box.id, size=re.sub(r"depth: [^,}]*", "depth: 3/4 in", size))
                yield slip.seed(slip.line_of_box(box.id))


def on_device_box(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        lamps = [each for each in box.devices if each.kind.is_ == "luminaire" and each.kind.canopy != "none"]
        if lamps and box.record.at and box.record.at.ceiling:
            size = size_line(Slip(demo, box.id), box.id)
            if "shape: round" in size:
                slip = Slip(demo, box.id).box(box.id, size=size.replace("shape: round", "shape: device"))
                yield slip.seed(slip.line_of_box(box.id))


def not_for_fans(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "M8")
    slip.box("M8", size=size_line(slip, "M8").replace("rated_for_fan: true", "rated_for_fan: false"))
    yield slip.seed(slip.line_of_box("M8"))


def bond_forgotten(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        slip = Slip(demo, box.id)
        file, start, end = slip.block(box.id)
        lines = slip.files[file].splitlines()
        bonds = [n for n in range(start, end) if ", box.screw]" in lines[n]]
        if bonds:
            lines[bonds[0]] = lines[bonds[0]].replace(", box.screw]", "]")
            slip.files[file] = "\n".join(lines) + "\n"
            yield slip.seed(slip.line_of_box(box.id))


def grounds_to_devices(demo: Demo) -> Iterator[Seed]:
    for box, told in (("K11", "{r1.green: dw1.bare, r2.green: dp2.bare}"),):
        slip = Slip(demo, box).box(box, terminals=told)
        yield slip.seed(slip.line_of_box(box, "terminals:"))


def unmarked(demo: Demo) -> Iterator[Seed]:
    for box, run in (
        ("C4", "ah1"),
        ("Y3", "hp1"),
        ("D1", "ev1"),
        ("W12", "sh1"),
        ("W11", "ss1"),
        ("C7", "wh2"),
    ):
        slip = Slip(demo, box).box(box, marked=None)
        yield slip.seed(slip.line_of_run(run))


def torque_measured(demo: Demo) -> Iterator[Seed]:
    for seed in without_torque(demo):
        slip = Slip(demo, seed.where).box(seed.where, torque="9 in-lb")
        yield slip.seed(slip.line_of_box(seed.where, "devices:"))


def odd_rating(demo: Demo) -> Iterator[Seed]:
    for breaker in demo.house.breakers.values():
        rating = str(breaker.rating)
        if rating in ("15 A", "20 A", "30 A", "50 A") and isinstance(breaker.feeds, str):
            slip = Slip(demo, breaker.id).breaker(breaker.id, rating=f"{int(rating.split()[0]) - 1} A")
            yield slip.seed(slip.line_of_breaker(breaker.id))


def bond(demo: Demo, panel: str, was: str, is_: str) -> Iterator[Seed]:
    slip = Slip(demo, panel).swap(f"panels/{panel}.yaml", f"bonded: {was}", f"bonded: {is_}")
    yield slip.seed((f"panels/{panel}.yaml", 1))


def little_space(demo: Demo) -> Iterator[Seed]:
    for panel, depth in (("main", "42 in"), ("shop", "48 in")):
        slip = Slip(demo, panel).swap(f"panels/{panel}.yaml", f"depth: {depth}", "depth: 2 ft")
        yield slip.seed((f"panels/{panel}.yaml", 1))


def label_of_fewer(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "main").swap("panels/main.yaml", "circuits: 60", "circuits: 42")
    yield slip.seed(("panels/main.yaml", 1))


def same_hole(demo: Demo) -> Iterator[Seed]:
    for panel in ("main", "shop"):
        text = demo.files[f"panels/{panel}.yaml"]
        holes = re.findall(r"neutral-bar/\d+", text)
        for hole in holes[1:]:
            slip = Slip(demo, f"{panel} {hole}").swap(f"panels/{panel}.yaml", f"{hole}}}", f"{holes[0]}}}")
            number = next(n for n, line in enumerate(text.splitlines(), 1) if f"{hole}}}" in line)
            yield slip.seed((f"panels/{panel}.yaml", number))


def whose(demo: Demo, breaker: str) -> str:
    return "Mum's corner, by the window"


def another_appliance(demo: Demo, breaker: str) -> str | None:
    circuit = demo.house.breakers[breaker].feeds
    return "Clothes dryer" if circuit not in ("dryer", "laundry", "kitchen-lights", "bath-down") else None


NO_TWENTY = "it is no 20 A circuit any more"
MUTATIONS = (
    Mutation("aluminium-on-copper-terminal", aluminium_landed, {
        "aluminium-on-copper-terminal": "pigtails at the run's other end are taken for its wire",
        "connector-overfilled": "the connectors are for copper", "box-overfilled": "larger wire takes more room",
        "bundle-in-sealed-hole": "aluminium carries less, among other cables",
    }),
    Mutation("box-too-shallow", shallow_box),
    Mutation("luminaire-on-device-box", on_device_box),
    Mutation("fan-on-ordinary-box", not_for_fans),
    Mutation("metal-box-unbonded", bond_forgotten),
    Mutation("grounds-not-joined", grounds_to_devices),
    Mutation("white-used-hot-unmarked", unmarked),
    Mutation("torque-off", torque_measured),
    Mutation("breaker-not-standard", odd_rating, {
        "small-appliance-circuits-few": NO_TWENTY, "laundry-circuit-missing": NO_TWENTY,
        "bathroom-circuit-missing": NO_TWENTY, "receptacle-unfit-for-circuit": NO_TWENTY,
        "continuous-over-eighty-percent": "the car charger's load was just within it",
    }),
    Mutation("service-bond-missing", lambda demo: bond(demo, "main", "true", "false")),
    Mutation("subpanel-neutral-bonded", lambda demo: bond(demo, "shop", "false", "true")),
    Mutation("working-space-short", little_space),
    Mutation("panel-over-full", label_of_fewer),
    Mutation("two-neutrals-one-hole", same_hole),
    Mutation("directory-entry-personal", says(whose)),
    Mutation("directory-entry-wrong", says(another_appliance), {"directory-entry-doubled": "the dryer's breaker says so as well"}),
)  # fmt: skip
