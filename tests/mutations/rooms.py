"""Slips in what a room has: receptacles, lights, alarms, circuits of its own; and in what was tested."""

import re
from collections.abc import Callable, Iterator

from mutations.demo import Demo, Seed, Slip
from mutations.kinds import Mutation, only_device


def purpose(was: str) -> Callable[[Demo], Iterator[Seed]]:
    return lambda demo: _purpose(demo, was)


def _purpose(demo: Demo, was: str) -> Iterator[Seed]:
    rooms = {"small-appliance": "kitchen", "laundry": "laundry"}
    for circuit in demo.house.circuits.values():
        if circuit.record.purpose == was:
            file = f"circuits/{circuit.id}.yaml"
            slip = Slip(demo, circuit.id).swap(file, f"purpose: {was}\n", "purpose: general\n")
            yield slip.seed((f"rooms/{rooms[was]}.yaml", 1))


def counters_on_general(demo: Demo) -> Iterator[Seed]:
    for circuit, boxes in (("counter-north", "K1 K2 K5 K6"), ("counter-west", "K3 K4 K7")):
        slip = Slip(demo, circuit).swap(
            f"circuits/{circuit}.yaml", "purpose: small-appliance\n", "purpose: general\n"
        )
        yield slip.seed(*(slip.line_of_box(each, "devices:") for each in boxes.split()))


def small_breaker_in_bath(demo: Demo) -> Iterator[Seed]:
    for breaker, room in (("main/26a", "bath-down"), ("main/26b", "bath-up")):
        slip = Slip(demo, room).breaker(breaker, rating="15 A")
        yield slip.seed((f"rooms/{room}.yaml", 1))


def shed_is_a_garage(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "workshop").swap("rooms/workshop.yaml", "kind: workshop\n", "kind: garage\n")
    yield slip.seed(("rooms/workshop.yaml", 1))


def more_bays(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "workshop").swap("rooms/workshop.yaml", "kind: workshop\n", "kind: garage\nbays: 9\n")
    yield slip.seed(("rooms/workshop.yaml", 1))


def for_another_purpose(demo: Demo) -> Iterator[Seed]:
    """A circuit kept for the kitchen that feeds all that it feeds now."""
    for circuit in demo.house.circuits.values():
        was = circuit.record.purpose
        rooms = {demo.house.rooms[demo.house.boxes[each].room].record.kind for each in circuit.boxes}
        if (
            was in ("general", "receptacles", "lighting", "workshop", "outdoor", "pump", "laundry")
            and circuit.edition == "nec-2023"
            and rooms - {"kitchen"}
        ):
            file = f"circuits/{circuit.id}.yaml"
            slip = Slip(demo, circuit.id).swap(file, f"purpose: {was}\n", "purpose: small-appliance\n")
            yield slip.seed((file, 1))


def out_of_reach_of_walls(demo: Demo) -> Iterator[Seed]:
    """Every receptacle of a room set higher than counts."""
    for room in ("kitchen", "living", "main-bed", "north-bed"):
        slip = Slip(demo, room)
        for id_ in demo.house.rooms[room].boxes:
            box = demo.house.boxes[id_]
            if any(each.kind.is_ in ("receptacle", "gfci-receptacle") for each in box.devices):
                at = _at(slip, id_)
                slip.box(id_, at=re.sub(r"up: [^}]*", "up: 70 in", at))
        yield slip.seed((f"rooms/{room}.yaml", 1))


def _at(slip: Slip, box: str) -> str:
    file, number = slip.line_of_box(box, "at:")
    return slip.files[file].splitlines()[number - 1].strip().removeprefix("at: ")


def below_the_counter(demo: Demo) -> Iterator[Seed]:
    for box in ("K1", "K2", "K3", "K4"):
        slip = Slip(demo, box).box(box, at=re.sub(r"up: [^}]*", "up: 16 in", _at(Slip(demo, box), box)))
        yield slip.seed(("rooms/kitchen.yaml", 1))


def away_from_basin(demo: Demo) -> Iterator[Seed]:
    for box, along, room in (("B1", "1 ft", "bath-down"), ("U1", "8 ft 9 in", "bath-up")):
        slip = Slip(demo, box).box(
            box, at=re.sub(r"along: [^,]*", f"along: {along}", _at(Slip(demo, box), box))
        )
        yield slip.seed((f"rooms/{room}.yaml", 1))


def receptacle_out(slip: Slip, demo: Demo, box: str) -> Slip:
    """The receptacle of a box taken out, its cables capped or joined through."""
    runs = demo.house.boxes[box].runs
    for device in demo.house.boxes[box].devices:
        slip.forget(device.id)
    if len(runs) == 1:
        return slip.box(box, devices=None, makeup=None, capped=f"[{runs[0]}]", cover="blank", guarded_by=None)
    return slip.box(box, devices=None, makeup="splice-through", cover="blank")


def without_receptacles(demo: Demo) -> Iterator[Seed]:
    for room, boxes in (("hall", ("H5", "H7")), ("laundry", ("L1", "L3"))):
        slip = Slip(demo, room)
        for box in boxes:
            receptacle_out(slip, demo, box)
        yield slip.seed((f"rooms/{room}.yaml", 1))


def hall_bare(demo: Demo) -> Iterator[Seed]:
    yield next(each for each in without_receptacles(demo) if each.where == "hall")


def laundry_bare(demo: Demo) -> Iterator[Seed]:
    yield next(each for each in without_receptacles(demo) if each.where == "laundry")


def too_high_on_porch(demo: Demo) -> Iterator[Seed]:
    yield next(each for each in too_high_outdoors(demo) if each.where == "F2")


def too_high_outdoors(demo: Demo) -> Iterator[Seed]:
    for box, room in (("Y2", "back-yard"), ("F2", "porch")):
        slip = Slip(demo, box).box(box, at=re.sub(r"up: [^}]*", "up: 7 ft", _at(Slip(demo, box), box)))
        yield slip.seed((f"rooms/{room}.yaml", 1))


def dug_deeper(demo: Demo) -> Iterator[Seed]:
    """A room without a receptacle that turns out to be a basement."""
    for room, was in (("attic", "attic"), ("backstair", "stair")):
        slip = Slip(demo, room).swap(f"rooms/{room}.yaml", f"kind: {was}\n", "kind: basement\n")
        yield slip.seed((f"rooms/{room}.yaml", 1))


def lamp_gone(demo: Demo) -> Iterator[Seed]:
    for box, room in (("N7", "north-bed"), ("S2", "backstair")):
        yield receptacle_out(Slip(demo, box), demo, box).seed((f"rooms/{room}.yaml", 1))


def alarm_gone(demo: Demo) -> Iterator[Seed]:
    for box, room in (("M9", "main-bed"), ("N8", "north-bed"), ("C9", "cellar")):
        yield receptacle_out(Slip(demo, box), demo, box).seed((f"rooms/{room}.yaml", 1))


def landing_silent(demo: Demo) -> Iterator[Seed]:
    """The alarm outside two bedrooms gone."""
    (box,) = [
        each
        for each in demo.house.rooms["landing"].boxes
        if only_device(demo.house.boxes[each], "smoke-alarm")
    ]
    slip = receptacle_out(Slip(demo, box), demo, box)
    yield slip.seed(("rooms/main-bed.yaml", 1), ("rooms/north-bed.yaml", 1))


def alarm_alone(demo: Demo) -> Iterator[Seed]:
    for box, run in (("M9", "sa3"), ("N8", "sa4"), ("G6", "sa6"), ("C9", "sa7")):
        slip = Slip(demo, box).box(
            box,
            makeup=None,
            joints=f"\n      - {{join: [{run}.black, a1.black], by: lever-2}}\n      - {{join: [{run}.white, a1.white], by: lever-2}}",
            capped=f"[{run}.red, {run}.bare, a1.orange]",
        )
        yield slip.seed(slip.line_of_box(box, "devices:"))


def stage_of_room(demo: Demo) -> Iterator[Seed]:
    for room in demo.house.rooms.values():
        file = f"rooms/{room.id}.yaml"
        boxes = [demo.house.boxes[each].record.at for each in room.boxes]
        if "stage: verified\n" in demo.files[file] and any(each and each.wall for each in boxes):
            slip = Slip(demo, room.id).swap(file, "stage: verified\n", "stage: roughed\n")
            yield slip.seed((file, 1))


def not_logged(demo: Demo) -> Iterator[Seed]:
    """One breaker taken out of every entry that says what died."""
    said = [
        (number, breaker)
        for number, line in enumerate(demo.files["log.yaml"].splitlines())
        if "test: breaker-off" in line
        for breaker in re.findall(r"(?:main|shop)/[0-9ab+]+", line.split("died")[0].split("result")[0])
    ]
    for number, breaker in said:
        circuit = demo.house.circuits[str(demo.house.breakers[breaker].feeds)]
        if any(
            demo.house.boxes[each].stage == "verified"
            for each in circuit.boxes
            if demo.house.boxes[each].devices
        ):
            slip = Slip(demo, breaker)
            lines = slip.files["log.yaml"].splitlines()
            lines[number] = (
                lines[number]
                .replace(f"about: {breaker},", "about: main/42,")
                .replace(f"{breaker},", "main/42,", 1)
                .replace(f"{breaker}]", "main/42]")
            )
            slip.files["log.yaml"] = "\n".join(lines) + "\n"
            yield slip.seed(slip.line_of_breaker(breaker))


def taken_from_log(demo: Demo, test: str, last: bool) -> Iterator[tuple[Slip, str]]:
    lines = demo.files["log.yaml"].splitlines()
    entries = [number for number, line in enumerate(lines) if f"test: {test}," in line]
    for number in entries[-1:] if last else entries:
        for device in re.findall(r"[A-Z]+\d+\.[a-z]\d", lines[number].split("result")[0]):
            slip = Slip(demo, device)
            told = slip.files["log.yaml"].splitlines()
            told[number] = re.sub(
                rf"(?<=[\[ ]){re.escape(device)}(?=[,\]])", "main/42", told[number], count=1
            )
            slip.files["log.yaml"] = "\n".join(told) + "\n"
            yield slip, device


def not_tested(demo: Demo) -> Iterator[Seed]:
    for slip, device in taken_from_log(demo, "polarity", last=False):
        box = demo.house.boxes[device.partition(".")[0]]
        if box.stage == "verified":
            yield slip.seed((f"circuits/{box.device(device.partition('.')[2]).circuits[0]}.yaml", 1))


def overdue(demo: Demo) -> Iterator[Seed]:
    for test in ("gfci-button", "smoke-alarm"):
        for slip, device in taken_from_log(demo, test, last=True):
            if (
                sum(
                    f"test: {test}," in line and device in line
                    for line in demo.files["log.yaml"].splitlines()
                )
                < 2
            ):
                continue  # never tested before: that cannot be told, and is no test overdue
            yield slip.seed(slip.line_of_box(device.partition(".")[0], "devices:"))


def past_their_date(demo: Demo) -> Iterator[Seed]:
    """One alarm whose own date has passed, whatever that of its kind is."""
    for box in demo.boxes():
        device = only_device(box, "smoke-alarm")
        if device is not None:
            slip = Slip(demo, box.id).box(box.id, replace_by=f"{{{device.local}: 2025}}")
            yield slip.seed(slip.line_of_box(box.id, "devices:"))


def hall_is_a_foyer(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "hall").swap("rooms/hall.yaml", "kind: hall\n", "kind: foyer\n")
    yield slip.seed(("rooms/hall.yaml", 1))


def far_from_washer(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "L1").box("L1", at="{wall: north, along: 1 ft, up: 42 in}")
    yield slip.seed(("rooms/laundry.yaml", 1))
    slip = Slip(demo, "laundry").swap(
        "rooms/laundry.yaml", "washer, wall: south, along: 3 in", "washer, wall: north, along: 1 ft"
    )
    yield slip.seed(("rooms/laundry.yaml", 1))


def over_the_tub(demo: Demo) -> Iterator[Seed]:
    """A bathroom's receptacle moved into the space of its tub or shower, or beside it."""
    for box, at in (
        ("B1", "{wall: east, along: 3 ft, up: 42 in}"),
        ("B1", "{wall: south, along: 4 ft, up: 42 in}"),
        ("U1", "{wall: west, along: 5 ft, up: 42 in}"),
        ("U2", "{wall: north, along: 3 ft, up: 42 in}"),
    ):
        slip = Slip(demo, box).box(box, at=at)
        yield slip.seed(slip.line_of_box(box, "devices:"))


def dark_outside(demo: Demo) -> Iterator[Seed]:
    yield receptacle_out(Slip(demo, "F1"), demo, "F1").seed(("rooms/porch.yaml", 1))
    slip = receptacle_out(receptacle_out(Slip(demo, "Y1"), demo, "Y1"), demo, "W10")
    yield slip.seed(("rooms/back-yard.yaml", 1))


def large_and_new(demo: Demo) -> Iterator[Seed]:
    for area in ("14600 ft2", "19600 ft2"):
        slip = Slip(demo, area).swap("house.yaml", "built: 1957\n", "built: 2024\n")
        yield slip.swap("house.yaml", "floor_area: 1960 ft2", f"floor_area: {area}").seed(
            ("panels/main.yaml", 1)
        )


OUTLET_GONE = "an outlet has gone with the device"
MUTATIONS = (
    Mutation("small-appliance-circuits-few", purpose("small-appliance"), {"kitchen-receptacle-on-other-circuit": "its receptacles hang on a general circuit"}),
    Mutation("kitchen-receptacle-on-other-circuit", counters_on_general, {"small-appliance-circuits-few": "one circuit is left"}),
    Mutation("laundry-circuit-missing", purpose("laundry")),
    Mutation("bathroom-circuit-missing", small_breaker_in_bath, {"receptacle-unfit-for-circuit": "its receptacles are of 20 A"}),
    Mutation("garage-circuit-missing", shed_is_a_garage, {"bay-without-receptacle": "a garage has bays"}),
    Mutation("bay-without-receptacle", more_bays, {"garage-circuit-missing": "none of its circuits is for a garage"}),
    Mutation("circuit-strays-from-purpose", for_another_purpose, {"laundry-circuit-missing": "the laundry's is for another purpose"}),
    Mutation("wall-space-without-receptacle", out_of_reach_of_walls, {"counter-without-receptacle": "those over the counter are too high as well"}),
    Mutation("counter-without-receptacle", below_the_counter),
    Mutation("basin-receptacle-far", away_from_basin, {"receptacle-over-tub": "it is beside the shower then"}),
    Mutation("receptacle-over-tub", over_the_tub, {"basin-receptacle-far": "it has gone from its basin"}),
    Mutation("washer-receptacle-far", far_from_washer),
    Mutation("foyer-wall-without-receptacle", hall_is_a_foyer),
    Mutation("entrance-without-light", dark_outside, {"switch-without-effect": "its switch is left with nothing"}),
    Mutation("general-circuits-few", large_and_new, {"service-overloaded": "the lighting of a house so large is too much"}),
    Mutation("hallway-without-receptacle", hall_bare),
    Mutation("laundry-receptacle-missing", laundry_bare),
    Mutation("outdoor-receptacle-missing", too_high_outdoors, {"deck-without-receptacle": "the porch's is too high for both"}),
    Mutation("deck-without-receptacle", too_high_on_porch, {"outdoor-receptacle-missing": "it is the one at the front"}),
    Mutation("basement-receptacle-missing", dug_deeper, {"smoke-alarm-missing": "a basement makes a storey of its level"}),
    Mutation("lighting-outlet-missing", lamp_gone, {"switch-without-effect": "its switch is left with nothing"}),
    Mutation("smoke-alarm-missing", alarm_gone),
    Mutation("smoke-alarm-missing", landing_silent),
    Mutation("smoke-alarms-not-interconnected", alarm_alone),
    Mutation("wall-without-photo", stage_of_room),
    Mutation("breaker-off-proof-missing", not_logged),
    Mutation("polarity-test-missing", not_tested),
    Mutation("test-overdue", overdue),
    Mutation("device-past-its-date", past_their_date),
)  # fmt: skip
