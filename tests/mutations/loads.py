"""Slips in loads, ratings and sizes: what draws too much, what is too small for it, what is far away."""

import re
from collections.abc import Iterator

from junctionary.house.model import Circuit
from mutations.demo import Demo, Line, Seed, Slip
from mutations.kinds import Mutation, breaker_amps, cable_of, only_device

HEAVY = (
    "counter-north", "counter-west", "microwave", "dishwasher", "disposer", "laundry", "sump", "bath-down",
    "range", "dryer", "heat-pump", "air-handler", "charger", "water-heater", "shop-bench", "shop-heater", "shop-saw", "shop-wall",
)  # fmt: skip
"""Circuits on which a recorded load draws 500 W or more."""
PLAIN = ("receptacle-15", "receptacle-20")


def with_load(slip: Slip, circuit: str, load: str) -> Line:
    """One more load at the end of a circuit's list, and the line it stands on."""
    file = f"circuits/{circuit}.yaml"
    text = slip.files[file]
    slip.files[file] = text + ("" if "\nloads:\n" in text else "loads:\n") + f"  - {{{load}}}\n"
    return file, len(slip.files[file].splitlines())


def receptacle_circuits(demo: Demo) -> Iterator[tuple[Circuit, list[str], int]]:
    """Circuits with two or more plain receptacles, those receptacles, and the breaker's rating in A."""
    for circuit in demo.house.circuits.values():
        plain = [each for each in circuit.boxes if only_device(demo.house.boxes[each], *PLAIN)]
        if len(plain) > 1 and len(circuit.breakers) == 1:
            yield (
                circuit,
                [f"{each}.r1" for each in plain],
                breaker_amps(demo.house, demo.house.boxes[plain[0]]),
            )


def two_heaters(demo: Demo) -> Iterator[Seed]:
    for circuit, devices, amps in receptacle_circuits(demo):
        slip = Slip(demo, circuit.id)
        watts = 1300 if amps == 15 else 1500
        for number, device in enumerate(devices[:2]):
            with_load(
                slip, circuit.id, f"id: zz{number}, is: other, draws: {watts} W, plugged: {device}.bottom"
            )
        yield slip.seed((f"circuits/{circuit.id}.yaml", 1))


def one_large_heater(demo: Demo) -> Iterator[Seed]:
    for circuit, devices, amps in receptacle_circuits(demo):
        for device in devices:
            slip = Slip(demo, device)
            watts = 1600 if amps == 15 else 2100
            yield slip.seed(
                with_load(slip, circuit.id, f"id: zz9, is: other, draws: {watts} W, plugged: {device}.bottom")
            )


def fastened_heater(demo: Demo) -> Iterator[Seed]:
    for circuit, devices, amps in receptacle_circuits(demo):
        slip = Slip(demo, circuit.id)
        watts = 1000 if amps == 15 else 1300
        load = f"id: zz9, is: space-heater, draws: {watts} W, plugged: {devices[0]}, fastened: true, continuous: false"
        yield slip.seed(with_load(slip, circuit.id, load))


def hungrier(demo: Demo) -> Iterator[Seed]:
    """A continuous load above four fifths of its breaker."""
    for circuit, was, is_, breaker in (
        ("charger", "draws: 40 A", "draws: 44 A", "main/18+20"),
        ("water-heater", "draws: 4500 W", "draws: 6000 W", "main/13+15"),
        ("shop-heater", "draws: 3000 W", "draws: 4000 W", "shop/6+8"),
    ):
        slip = Slip(demo, circuit).swap(f"circuits/{circuit}.yaml", was, is_)
        yield slip.seed(slip.line_of_breaker(breaker))


def wire_for_less(demo: Demo) -> Iterator[Seed]:
    slip = (
        Slip(demo, "charger")
        .swap("circuits/charger.yaml", "draws: 40 A", "draws: 48 A")
        .breaker("main/18+20", rating="60 A")
    )
    yield slip.seed(slip.line_of_run("ev1"))


def thin_feeder(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "sf1").swap(
        "circuits/shop-feeder.yaml",
        "[6 AWG black, 6 AWG red, 6 AWG white",
        "[10 AWG black, 10 AWG red, 10 AWG white",
    )
    yield slip.seed(slip.line_of_run("sf1"))
    slip = Slip(demo, "service").swap("house.yaml", "size: 4/0 AWG", "size: 1/0 AWG")
    yield slip.seed(_line(slip, "house.yaml", "  conductors:"))


def _line(slip: Slip, file: str, starts: str) -> Line:
    return file, 1 + next(
        n for n, each in enumerate(slip.files[file].splitlines()) if each.startswith(starts)
    )


def thin_ground(demo: Demo) -> Iterator[Seed]:
    for run, circuit in (("sf1", "shop-feeder"), ("hp2", "heat-pump"), ("ah2", "air-handler")):
        slip = Slip(demo, run).swap(f"circuits/{circuit}.yaml", "10 AWG green]", "14 AWG green]")
        yield slip.seed(slip.line_of_run(run))


def no_ground_in_feeder(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "sf1").swap("circuits/shop-feeder.yaml", ", 10 AWG green]", "]")
    yield slip.seed(slip.line_of_run("sf1"))


def thick_home_run(demo: Demo) -> Iterator[Seed]:
    """A home run of 12 AWG on a 15 A circuit of 14 AWG."""
    for circuit in demo.house.circuits.values():
        first = next((each for each in circuit.runs if demo.house.runs[each].from_.kind == "panel"), None)
        thin = [each for each in circuit.runs if cable_of(demo, each).startswith("14/")]
        ratings = {str(demo.house.breakers[each].rating) for each in circuit.breakers}
        if (
            first is not None
            and cable_of(demo, first) == "14/2 NM-B"
            and len(thin) > 1
            and ratings == {"15 A"}
        ):
            slip = Slip(demo, circuit.id).run(first, cable="12/2 NM-B")
            yield slip.seed(*(slip.line_of_run(each) for each in thin if each != first), any_of=True)


def far_away(demo: Demo) -> Iterator[Seed]:
    """A home run of a thousand feet: little comes out at its end, in use and in a fault."""
    for circuit in demo.house.circuits.values():
        first = next((each for each in circuit.runs if demo.house.runs[each].from_.kind == "panel"), None)
        if first is not None and circuit.id in HEAVY:
            slip = Slip(demo, circuit.id).run(first, length="1000 ft")
            yield slip.seed(slip.line_of_run(first))


def strong_supply(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "service").swap("house.yaml", "line_to_neutral: 7.6 kA", "line_to_neutral: 90 kA")
    yield slip.seed(*(slip.line_of_run(each) for each in demo.house.runs if each != "gn1"), any_of=True)


def in_the_ground(demo: Demo) -> Iterator[Seed]:
    for run in demo.house.runs.values():
        if cable_of(demo, run.id).endswith("NM-B") and run.stage != "as-found":
            slip = Slip(demo, run.id).run(run.id, buried="24 in")
            yield slip.seed(slip.line_of_run(run.id))


def half_the_voltage(demo: Demo) -> Iterator[Seed]:
    for circuit in demo.house.circuits.values():
        file = f"circuits/{circuit.id}.yaml"
        lines = demo.files[file].splitlines()
        for number, line in enumerate(lines):
            if "volts: 240 V" in line:
                slip = Slip(demo, f"{circuit.id}:{number}")
                slip.files[file] = (
                    "\n".join([*lines[:number], line.replace("240 V", "120 V"), *lines[number + 1 :]]) + "\n"
                )
                yield slip.seed((file, number + 1))


def one_pole(demo: Demo) -> Iterator[Seed]:
    for spaces, one in (("14+16", "14"), ("5+7", "5")):
        slip = Slip(demo, f"main/{spaces}").swap("panels/main.yaml", f"\n  {spaces}:", f"\n  {one}:")
        slip.files["log.yaml"] = slip.files["log.yaml"].replace(f"main/{spaces}", f"main/{one}")
        yield slip.seed(slip.line_of_breaker(f"main/{one}"))


def small_range_breaker(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "range").breaker("main/5+7", rating="30 A")
    yield slip.seed(slip.line_of_breaker("main/5+7"))


def one_leg_heavy(demo: Demo) -> Iterator[Seed]:
    for circuit, was in (("fridge", "180 W"), ("microwave", "1550 W"), ("sump", "600 W")):
        slip = Slip(demo, circuit).swap(f"circuits/{circuit}.yaml", f"draws: {was}", "draws: 20 kW")
        yield slip.seed(("panels/main.yaml", 1))


def small_service(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "service").swap("house.yaml", "\n  rating: 200 A\n", "\n  rating: 60 A\n")
    yield slip.seed(("panels/main.yaml", 1))


def small_feeder_breaker(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "shop").breaker("main/2+4", rating="15 A")
    yield slip.seed(("panels/shop.yaml", 1))


def of_lighting(demo: Demo) -> Iterator[Seed]:
    for circuit in ("main-bed", "north-bed"):
        slip = Slip(demo, circuit).swap(
            f"circuits/{circuit}.yaml", "purpose: general\n", "purpose: lighting\n"
        )
        yield slip.seed((f"circuits/{circuit}.yaml", 1))


def thin_electrode(demo: Demo) -> Iterator[Seed]:
    text = demo.files["house.yaml"]
    for number, line in enumerate(text.splitlines()):
        if "wire:" in line and "is:" in line:
            for told in re.finditer(r"\{is: ([\w-]+), wire: (\d+(?:/0)? AWG)", line):
                slip = Slip(demo, told[1])
                lines = text.splitlines()
                lines[number] = line[: told.start(2)] + "10 AWG" + line[told.end(2) :]
                slip.files["house.yaml"] = "\n".join(lines) + "\n"
                yield slip.seed(("house.yaml", number + 1))


def yellow_ground(demo: Demo) -> Iterator[Seed]:
    for run, circuit in (("hp2", "heat-pump"), ("ah2", "air-handler")):
        slip = Slip(demo, run).swap(f"circuits/{circuit}.yaml", "10 AWG green]", "10 AWG yellow]")
        slip.files = {
            file: text.replace(f"{run}.green", f"{run}.yellow") for file, text in slip.files.items()
        }
        yield slip.seed(slip.line_of_run(run))


MORE_DRAWN = "more is drawn than there is a place for"
LARGER_THAN_ASKED = "wires larger than the breaker asks for need a larger ground"


def too_weak_a_switch(demo: Demo) -> Iterator[Seed]:
    for kind, was, boxes in (("dimmer", "5 A", ("V10",)), ("fan-timer", "10 A", ("B2", "U3"))):
        line = next(each for each in demo.files[SWITCHES].splitlines() if each.startswith(f"  {kind}:"))
        slip = Slip(demo, kind).swap(SWITCHES, line, line.replace(f"rating: {was}", "rating: 0.1 A"))
        yield slip.seed(*(slip.line_of_box(each, "devices:") for each in boxes))


def dimmed_wrongly(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "V10").swap("boxes/living.yaml", "{s1: lv4.red, s2: lv9}", "{s1: lv9, s2: lv4.red}")
    yield slip.seed(slip.line_of_box("V10", "devices:"))
    for box in ("B2", "U3"):
        slip = Slip(demo, box).box(box, devices="{s1: switch, s2: dimmer}")
        yield slip.seed(slip.line_of_box(box, "devices:"))


SWITCHES = "devices/switches.yaml"
MUTATIONS = (
    Mutation("switch-overloaded", too_weak_a_switch),
    Mutation("dimmer-on-receptacle", dimmed_wrongly),
    Mutation("circuit-overloaded", two_heaters),
    Mutation("one-cord-load-too-large", one_large_heater, {"circuit-overloaded": MORE_DRAWN}),
    Mutation("fixed-load-over-half", fastened_heater, {"circuit-overloaded": MORE_DRAWN}),
    Mutation("continuous-over-eighty-percent", hungrier, {"continuous-load-over-wire": "the wire is for no more"}),
    Mutation("continuous-load-over-wire", wire_for_less),
    Mutation("conductor-too-small-for-feeder", thin_feeder),
    Mutation("ground-wire-too-small", thin_ground, {"connector-overfilled": "the mix is in no listing"}),
    Mutation("feeder-without-ground", no_ground_in_feeder, {"ground-missing": "all behind the feeder is without a ground"}),
    Mutation("mixed-gauge", thick_home_run, {
        "box-overfilled": "larger wire takes more room", "connector-overfilled": "the mix is in no listing",
    }),
    Mutation("voltage-drop-high", far_away),
    Mutation("breaker-slow-at-end", far_away),
    Mutation("fault-heat-over-wire", strong_supply),
    Mutation("cable-in-wrong-place", in_the_ground),
    Mutation("voltage-mismatch", half_the_voltage, {
        "circuit-overloaded": MORE_DRAWN, "continuous-over-eighty-percent": MORE_DRAWN,
        "continuous-load-over-wire": MORE_DRAWN, "one-cord-load-too-large": MORE_DRAWN,
        "fixed-load-over-half": MORE_DRAWN, "switch-overloaded": MORE_DRAWN,
    }),
    Mutation("pole-count-mismatch", one_pole),
    Mutation("range-circuit-too-small", small_range_breaker, {
        "receptacle-unfit-for-circuit": "the receptacle is of 50 A",
        "ground-wire-too-small": LARGER_THAN_ASKED,
    }),
    Mutation("legs-unbalanced", one_leg_heavy, {
        "circuit-overloaded": MORE_DRAWN, "one-cord-load-too-large": MORE_DRAWN, "service-overloaded": MORE_DRAWN,
    }),
    Mutation("service-overloaded", small_service, {"service-too-small": "a house may not have so small a one either"}),
    Mutation("feeder-overloaded", small_feeder_breaker, {"ground-wire-too-small": LARGER_THAN_ASKED}),
    Mutation("lighting-wire-feeds-receptacles", of_lighting),
    Mutation("electrode-wire-too-small", thin_electrode),
    Mutation("colour-against-role", yellow_ground, {
        "breaker-outrates-wire": "by its colour it is taken for a wire that carries, and it is the smallest",
        "colour-against-role": "by its colour the ground it is joined to is taken for a neutral as well",
    }),
)  # fmt: skip
