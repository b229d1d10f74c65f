"""Slips in a box: what is in it, how it is closed, how its wires were landed and looked at."""

import re
from collections.abc import Callable, Iterator

from junctionary.house.model import Box
from junctionary.units import WireSize
from mutations.demo import Demo, Seed, Slip
from mutations.kinds import Mutation, breaker_amps, is_new, is_word, new_boxes, only_device, runs_by_end

PLAIN = ("receptacle-15", "receptacle-20")
SEEN = "{sheath: sound, insulation: sound, copper: sound, strip: to gauge, loops: clockwise}"


def key_of(boxes: Callable[[Demo], list[Box]], key: str, value: str) -> Callable[[Demo], Iterator[Seed]]:
    """One key of each of these boxes written otherwise; the rule stands on the box's key."""

    def sites(demo: Demo) -> Iterator[Seed]:
        for box in boxes(demo):
            slip = Slip(demo, box.id).box(box.id, **{key: value})
            yield slip.seed(slip.line_of_box(box.id))

    return sites


def with_volume(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        slip = Slip(demo, box.id)
        file, number = slip.line_of_box(box.id, "size:")
        line = slip.files[file].splitlines()[number - 1]
        if "volume:" in line and "standard:" not in line and box.runs:
            slip.box(box.id, size=re.sub(r"volume: [\d.]+ in3", "volume: 2 in3", line.split("size: ")[1]))
            yield slip.seed(slip.line_of_box(box.id))


def another_circuit(demo: Demo) -> Iterator[Seed]:
    """A cable of another circuit that turns out to pass through a box."""
    for box in new_boxes(demo):
        if len(box.circuits) == 1 and "landing" not in box.circuits:
            slip = Slip(demo, box.id).box(box.id, passes="[{run: ld1}]")
            yield slip.seed(slip.line_of_box(box.id))


def smaller_gfci(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        if only_device(box, "gfci-20") and breaker_amps(demo.house, box) == 20:
            slip = Slip(demo, box.id).box(box.id, devices="{r1: gfci-15}")
            yield slip.seed(slip.line_of_box(box.id, "devices:"))


def wires_left_bare(demo: Demo) -> Iterator[Seed]:
    """A device taken out, and its hot left bare in the box."""
    for box in new_boxes(demo):
        device = only_device(box, *PLAIN)
        if device is not None and is_word(box, "end-of-run"):
            (run,) = box.runs
            slip = (
                Slip(demo, box.id)
                .box(
                    box.id,
                    devices=None,
                    makeup=None,
                    guarded_by=None,
                    loose=f"[{run}.black]",
                    capped=f"[{run}.white, {run}.bare]",
                    cover="blank",
                )
                .forget(device.id)
            )
            yield slip.seed(slip.line_of_box(box.id))


def turned_backwards(demo: Demo) -> Iterator[Seed]:
    for box in new_boxes(demo):
        if any(each.how == "loop" and each.turn is None for each in box.landings):
            seen = SEEN.replace("clockwise", "counter-clockwise")
            slip = Slip(demo, box.id).box(box.id, looked_at=seen)
            yield slip.seed(slip.line_of_box(box.id))


def stripped_long(demo: Demo) -> Iterator[Seed]:
    for box in new_boxes(demo):
        if any(each.bare is None for each in box.landings):
            slip = Slip(demo, box.id).box(box.id, looked_at=SEEN.replace("to gauge", "an inch too long"))
            yield slip.seed(slip.line_of_box(box.id))


def old_switch_of_today(demo: Demo) -> Iterator[Seed]:
    """A two-wire switch loop of the old wing, made under an edition that asks a neutral."""
    for id_ in ("G4", "O6", "P4"):
        slip = Slip(demo, id_).box(id_, built_to="nec-2017")
        yield slip.seed(slip.line_of_box(id_, "devices:"))


def pushed_in(amps: int) -> Callable[[Demo], Iterator[Seed]]:
    def sites(demo: Demo) -> Iterator[Seed]:
        for box in new_boxes(demo):
            if only_device(box, *PLAIN) and is_word(box, "end-of-run"):
                (run,) = (demo.house.runs[each] for each in box.runs)
                if run.conductors[0].size == WireSize("14 AWG" if amps == 15 else "12 AWG"):
                    slip = Slip(demo, box.id).box(
                        box.id, devices="{r1: receptacle-15-1998}", termination="push-in"
                    )
                    yield slip.seed(slip.line_of_box(box.id, "devices:"))

    return sites


def neutral_on_device(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "C1").box("C1", makeup=None)
    for line in reversed((
        "    joints:",
        "      - {join: [ce1.red, ce2.red], by: lever-2}",
        "      - {join: [ce1.black, ce2.black, r1.line-brass], by: lever-3}",
        "      - {join: [ce1.bare, ce2.bare, r1.green, box.screw], by: lever-5}",
        "    terminals:",
        "      r1.line-silver: {wire: [ce1.white, ce2.white], how: clamp-plate}",
    )):  # fmt: skip
        file, number = slip.line_of_box("C1")
        lines = slip.files[file].splitlines()
        lines.insert(number, line)
        slip.files[file] = "\n".join(lines) + "\n"
    yield slip.seed(slip.line_of_box("C1", "r1.line-silver"))


def box_left_out(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        if box.joints and not box.devices:
            slip = Slip(demo, box.id).box(box.id, size="none")
            yield slip.seed(slip.line_of_box(box.id))


def taped(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        written = [each for each in box.joints if each.expanded is None and isinstance(each.by, str)]
        for joint in written:
            slip = Slip(demo, joint.id)
            file, first = slip.line_of_box(box.id, "joints:")
            number = first + 1 + written.index(joint)
            lines = slip.files[file].splitlines()
            if f"by: {joint.by}" in lines[number - 1]:
                lines[number - 1] = lines[number - 1].replace(f"by: {joint.by}", "by: tape")
                slip.files[file] = "\n".join(lines) + "\n"
                yield slip.seed((file, number))


def without_torque(demo: Demo) -> Iterator[Seed]:
    logged = {each for entry in demo.house.log if entry.test == "torque" for each in entry.about or ()}
    for box in new_boxes(demo):
        if any(each.id in logged for each in box.devices):
            continue  # what was measured afterwards wins over the box
        device = only_device(
            box, *PLAIN, "gfci-20", "switch", "three-way", "single-15", "single-20", "receptacle-20-out"
        )
        if device is not None and not any(
            each.torque is not None and each.expanded is None for each in box.landings
        ):
            slip = Slip(demo, box.id).box(box.id, torque="none")
            yield slip.seed(slip.line_of_box(box.id, "devices:"), any_of=True)


def two_under_a_screw(demo: Demo) -> Iterator[Seed]:
    for box in new_boxes(demo):
        device = only_device(box, *PLAIN, "receptacle-20-out")
        came, went = runs_by_end(demo.house, box)
        if device is None or not is_word(box, "pigtailed") or len(came) != 1 or len(went) != 1:
            continue
        one, other = came[0], went[0]
        slip = Slip(demo, box.id).box(
            box.id,
            makeup=None,
            joints=f"\n      - {{join: [{one}.bare, {other}.bare, r1.green], by: lever-3}}",
            terminals=f"{{r1.brass: {{wire: [{one}.black, {other}.black], how: loop}}, r1.silver-top: {{wire: {one}.white, how: loop}}, r1.silver-bottom: {{wire: {other}.white, how: loop}}}}",
        )
        yield slip.seed(slip.line_of_box(box.id, "terminals:"))


def strap_of_two(demo: Demo) -> Iterator[Seed]:
    for id_, yoke in (("K11", "[r1, r2]"), ("K12", "[s1, s2]")):
        slip = Slip(demo, id_).box(id_, yoke=yoke)
        yield slip.seed(slip.line_of_box(id_, "devices:"), slip.line_of_box(id_, "yoke:"), any_of=True)


def untraced_cable(demo: Demo) -> Iterator[Seed]:
    for box in demo.boxes():
        if not box.record.capped:
            slip = Slip(demo, box.id).box(box.id, capped="[ut9]")
            slip.files["circuits/untraced.yaml"] += (
                "runs: [{id: ut9, cable: 14/2 NM-B, from: unknown, to: " + box.id + ", length: unknown}]\n"
            )
            yield slip.seed(slip.line_of_box(box.id))


def of_kind(*kinds: str) -> Callable[[Demo], list[Box]]:
    return lambda demo: [each for each in demo.boxes() if only_device(each, *kinds)]


def wired(demo: Demo) -> list[Box]:
    return [each for each in demo.boxes() if each.runs]


def with_device(demo: Demo) -> list[Box]:
    return [each for each in new_boxes(demo) if each.devices]


def reached(demo: Demo) -> list[Box]:
    return [each for each in wired(demo) if each.record.reach is None]


OUTLET_GONE = "an outlet has gone with the device"
BROUGHT_A_GROUND = "with it a ground comes into an old box of metal, and joins nothing there"
MUTATIONS = (
    Mutation("box-overfilled", with_volume),
    Mutation(
        "two-circuits-in-box", another_circuit, {"box-overfilled": "the cable that passes counts in the box"}
    ),
    Mutation("box-not-reachable", key_of(reached, "reach", "{behind: plasterboard}")),
    Mutation(
        "box-uncovered",
        key_of(with_device, "cover", "none"),
        {"wet-cover-missing": "no cover is no in-use cover"},
    ),
    Mutation("box-set-back", key_of(with_device, "set_back", "3/8 in")),
    Mutation(
        "clamp-plate-on-twenty",
        smaller_gfci,
        {"one-cord-load-too-large": "the smaller face carries less for one load"},
    ),
    Mutation(
        "conductor-damaged", key_of(wired, "looked_at", SEEN.replace("copper: sound", "copper: nicked"))
    ),
    Mutation("free-conductor-short", key_of(wired, "free_conductor", "4 in")),
    Mutation(
        "live-end-uncapped",
        wires_left_bare,
        {
            "wall-space-without-receptacle": OUTLET_GONE,
            "laundry-receptacle-missing": OUTLET_GONE,
            "counter-without-receptacle": OUTLET_GONE,
            "basin-receptacle-far": OUTLET_GONE,
            "metal-box-unbonded": "the ground that bonds the box is capped",
        },
    ),
    Mutation("loop-turned-backwards", turned_backwards),
    Mutation("neutral-missing-at-switch", old_switch_of_today),
    Mutation("push-in-termination", pushed_in(15)),
    Mutation(
        "push-in-with-large-wire",
        pushed_in(20),
        {"one-cord-load-too-large": "the older face carries less for one load"},
    ),
    Mutation("shared-neutral-through-device", neutral_on_device),
    Mutation("splice-outside-box", box_left_out),
    Mutation("splice-without-connector", taped),
    Mutation("strip-length-off", stripped_long),
    Mutation("torque-not-recorded", without_torque),
    Mutation("two-wires-one-terminal", two_under_a_screw),
    Mutation(
        "workmanship-not-looked-at",
        key_of(lambda demo: [each for each in wired(demo) if is_new(each)], "looked_at", "{}"),
    ),
    Mutation("yoke-fed-twice-untied", strap_of_two),
    Mutation(
        "unknown-circuit-in-box",
        untraced_cable,
        {
            "box-overfilled": "one more cable in it",
            "metal-box-unbonded": BROUGHT_A_GROUND,
            "ground-missing": BROUGHT_A_GROUND,
        },
    ),
    Mutation(
        "wet-cover-missing",
        lambda demo: key_of(lambda demo: [demo.house.boxes[each] for each in ("Y2", "D2")], "cover", "plate")(
            demo
        ),
    ),
)
