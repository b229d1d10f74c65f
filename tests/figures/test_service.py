"""The load of the service, the feeders and the legs of small records."""

from collections.abc import Callable

import pytest

from junctionary.figures import Figures

FiguresOf = Callable[[str], Figures]

HOUSE = "[house.yaml]\nhouse: Example\nreference: nec-2023\nfloor_area: 1000 ft2\n"
SERVICE = "service: {system: 120/240 V, rating: 100 A, disconnect: main}\n"
TWO_POLE = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 30 A, feeds: c, says: The circuit}
"""


def circuit(purpose: str, loads: str = "") -> str:
    return f"[circuits/c.yaml]\ncircuit: c\nname: The circuit\npurpose: {purpose}\nloads: [{loads}]\n"


def load(told: str) -> str:
    return f"{{id: it, {told}}}"


def test_the_code_s_least_circuits_count_where_fewer_are_recorded(figures_of: FiguresOf) -> None:
    service = figures_of(HOUSE + circuit("general")).service
    assert (service.dwelling.small_appliance, service.dwelling.laundry) == (2, 1)
    assert any("2 small-appliance circuits" in each for each in service.taken)


def test_an_outlet_s_load_on_a_general_circuit_is_not_counted_twice(figures_of: FiguresOf) -> None:
    bare = figures_of(HOUSE + circuit("general")).service.standard
    plugged = figures_of(HOUSE + circuit("general", load("is: other, draws: 900 W"))).service.standard
    fastened = figures_of(
        HOUSE + circuit("general", load("is: other, draws: 900 W, fastened: true"))
    ).service.standard
    assert plugged.va.value == bare.va.value
    assert fastened.least_va == bare.least_va + 900


@pytest.mark.parametrize(
    ("told", "kind"),
    [
        ("is: range, draws: 9 kW, volts: 240 V", "cooking"),
        ("is: oven, draws: 1400 W", "others"),
        ("is: dryer, draws: 5 kW, volts: 240 V", "dryers"),
        ("is: dryer, draws: 600 W, volts: 120 V", "others"),
        ("is: dishwasher, draws: 1200 W", "appliances"),
        ("is: refrigerator, draws: 200 W", "others"),
        ("is: air-conditioner, draws: 2 kW", "cooling"),
        ("is: space-heater, draws: 2 kW", "heating"),
        ("is: car-charger, draws: 40 A, volts: 240 V", "chargers"),
    ],
)
def test_a_load_of_its_own_circuit_counts_as_what_it_is(told: str, kind: str, figures_of: FiguresOf) -> None:
    dwelling = figures_of(HOUSE + TWO_POLE + circuit("appliance", load(told))).service.dwelling
    kinds = ("cooking", "dryers", "appliances", "others", "heating", "cooling", "chargers")
    assert [each for each in kinds if getattr(dwelling, each)] == [kind]


def test_of_loads_that_never_run_together_the_larger_counts(figures_of: FiguresOf) -> None:
    loads = (
        "{id: hot-tub, is: other, draws: 6 kW, volts: 240 V, fastened: true}, "
        "{id: sauna, is: other, draws: 5 kW, volts: 240 V, fastened: true, instead_of: hot-tub}"
    )
    assert [
        each.va
        for each in figures_of(HOUSE + TWO_POLE + circuit("appliance", loads)).service.dwelling.appliances
    ] == [6000]


@pytest.mark.parametrize(
    ("text", "lacks"),
    [
        (HOUSE.replace("floor_area: 1000 ft2\n", "") + circuit("general"), "the floor area, by outside dimensions"),
        (HOUSE + circuit("appliance"), "which loads circuit c feeds"),
        (HOUSE + circuit("appliance", load("is: other")), "what it draws"),
        (HOUSE + circuit("general").replace("purpose: general\n", ""), "the purpose of circuit c"),
        (
            HOUSE + circuit("general") + TWO_POLE.replace("feeds: c,", "feeds: unknown,"),
            "what breaker main/1+3 feeds",
        ),
    ],
)  # fmt: skip
def test_what_may_hide_a_load_is_asked_for(text: str, lacks: str, figures_of: FiguresOf) -> None:
    service = figures_of(text).service
    assert lacks in service.standard.va.lacks
    assert lacks in service.optional.amps.lacks
    assert service.passes is None


def test_a_breaker_that_is_kept_off_hides_no_load_and_is_told_of(figures_of: FiguresOf) -> None:
    off = TWO_POLE + "  2: {rating: 15 A, feeds: unknown, kept_off: true}\n"
    service = figures_of(HOUSE + off + circuit("general")).service
    assert service.standard.va.lacks == ()
    assert "nothing on breaker main/2, which is kept off" in service.taken


@pytest.mark.parametrize(("draws", "passes"), [("9 kW", True), ("40 kW", False)])
def test_one_method_that_comes_out_small_enough_is_enough(
    draws: str, passes: bool, figures_of: FiguresOf
) -> None:
    heat = circuit("heating", load(f"is: furnace, draws: {draws}, volts: 240 V, fastened: true"))
    assert figures_of(HOUSE + SERVICE + TWO_POLE + heat).service.passes is passes


@pytest.mark.parametrize(("rating", "passes"), [("60 A", False), ("100 A", True)])
def test_a_service_under_100_a_is_not_judged_by_the_optional_method(
    rating: str, passes: bool, figures_of: FiguresOf
) -> None:
    service = SERVICE.replace("100 A", rating)
    loads = load("is: other, draws: 13 kW, volts: 240 V, fastened: true")
    text = HOUSE + service + TWO_POLE + circuit("appliance", loads)
    assert figures_of(text).service.optional.least_a < 60
    assert figures_of(text).service.passes is passes


def test_a_service_of_one_leg_draws_at_120_v(figures_of: FiguresOf) -> None:
    one = HOUSE + "service: {system: 120 V, rating: 30 A}\n" + circuit("general")
    standard = figures_of(one).service.standard
    assert standard.least_a == standard.least_va / 120


def test_a_load_already_too_large_is_so_whatever_is_missing(figures_of: FiguresOf) -> None:
    heat = circuit("heating", load("is: furnace, draws: 40 kW, volts: 240 V, fastened: true"))
    text = HOUSE.replace("floor_area: 1000 ft2\n", "") + SERVICE + TWO_POLE + heat
    assert figures_of(text).service.passes is False


@pytest.mark.parametrize(
    ("built", "existing"), [("built: 1960\n", True), ("built: 2024\n", False), ("", False)]
)
def test_a_house_older_than_its_edition_has_the_method_of_an_existing_one(
    built: str, existing: bool, figures_of: FiguresOf
) -> None:
    assert (figures_of(HOUSE + built + circuit("general")).service.existing is not None) is existing


@pytest.mark.parametrize(
    ("conductors", "fits"),
    [
        ("{size: 2 AWG, metal: aluminium}", True),
        ("{size: 4 AWG, metal: aluminium}", False),
        ("{size: 4 AWG, metal: copper}", True),
        ("{size: 4 AWG}", None),
    ],
)
def test_service_conductors_are_held_against_83_percent_of_the_rating(
    conductors: str, fits: bool | None, figures_of: FiguresOf
) -> None:
    told = SERVICE.replace("rating: 100 A", f"rating: 100 A, conductors: {conductors}")
    wire = figures_of(HOUSE + told + circuit("general")).service.wire
    assert wire is not None
    assert wire.fits is fits


SHED = """
[house.yaml]
house: Example
reference: nec-2023
floor_area: 1000 ft2
buildings: [{id: house}, {id: shed, detached: true}]
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 60 A, feeds: sf, says: The shed}
  2: {rating: 15 A, feeds: c, says: The circuit}
[panels/shed.yaml]
panel: shed
spaces: 4
fed_by: sf
at: {room: shed-room}
breakers:
  1: {rating: 15 A, feeds: s, says: Shed}
[rooms/shed.yaml]
room: shed-room
name: Shed
kind: workshop
building: shed
[circuits/sf.yaml]
circuit: sf
name: Feeder to the shed
purpose: feeder
runs: [{id: sf1, cable: 6/3 NM-B, from: main, to: shed, length: 40 ft}]
[circuits/s.yaml]
circuit: s
name: Shed
purpose: lighting
loads: [{id: lathe, is: tool, draws: 1200 W, motor: true}]
[circuits/c.yaml]
circuit: c
name: The circuit
purpose: general
"""


def test_a_detached_building_is_no_part_of_the_floor_area_and_its_loads_all_count(
    figures_of: FiguresOf,
) -> None:
    figures = figures_of(SHED)
    assert figures.feeders["shed"].load.va.value == 1200 + 300
    assert [each.what for each in figures.service.dwelling.others] == ["Shed"]


def test_a_panel_within_the_house_takes_its_share_of_the_lighting(figures_of: FiguresOf) -> None:
    within = SHED.replace("detached: true", "detached: false").replace(
        "loads: [{id: lathe", "note: x\nloads: [{id: lathe"
    )
    assert figures_of(within).feeders["shed"].load.va.value == 1500


@pytest.mark.parametrize(
    ("cable", "breaker", "fits"),
    [
        ("6/3 NM-B", "60 A", True),
        ("8/3 NM-B", "60 A", False),
        ("unknown", "60 A", None),
        ("6/3 NM-B", "unknown", None),
    ],
)
def test_a_feeder_s_conductors_are_held_against_its_breaker(
    cable: str, breaker: str, fits: bool | None, figures_of: FiguresOf
) -> None:
    text = SHED.replace("6/3 NM-B", cable).replace("rating: 60 A", f"rating: {breaker}")
    assert figures_of(text).feeders["shed"].wire_fits is fits


def test_a_feeder_too_small_for_its_load_is_so_behind_any_breaker(figures_of: FiguresOf) -> None:
    text = SHED.replace("6/3 NM-B", "14/3 NM-B").replace("draws: 1200 W", "draws: 6 kW")
    assert figures_of(text.replace("rating: 60 A", "rating: unknown")).feeders["shed"].wire_fits is False


def test_conductors_of_a_whole_dwelling_may_have_a_larger_breaker(figures_of: FiguresOf) -> None:
    whole = (
        SHED.replace("detached: true", "detached: false")
        .replace(
            "floor_area: 1000 ft2\n", "floor_area: 1000 ft2\nservice: {system: 120/240 V, rating: 200 A}\n"
        )
        .replace("  2: {rating: 15 A, feeds: c, says: The circuit}\n", "")
        .replace("rating: 60 A", "rating: 200 A")
        .replace("cable: 6/3 NM-B", "cable: 2/0-2/0-1-4 SER copper")
    )
    feeder = figures_of(whole).feeders["shed"]
    assert (feeder.whole, feeder.ampacity.value, feeder.allowed.value, feeder.wire_fits) == (
        True,
        175,
        200,
        True,
    )


LEGS = """
[house.yaml]
house: Example
reference: nec-2023
floor_area: 100 ft2
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  1: {rating: 20 A, feeds: c, says: The circuit}
  3: {rating: 15 A, feeds: d, says: The den}
  2+4: {rating: 30 A, feeds: e, says: The heater}
[circuits/c.yaml]
circuit: c
name: Counter
purpose: small-appliance
[circuits/d.yaml]
circuit: d
name: Den
purpose: general
[circuits/e.yaml]
circuit: e
name: Heater
purpose: water-heater
loads: [{id: tank, is: water-heater, draws: 4500 W, volts: 240 V}]
"""


def test_a_load_at_240_v_is_on_both_legs_and_one_at_120_v_on_its_own(figures_of: FiguresOf) -> None:
    a, b = figures_of(LEGS).service.legs.legs
    assert (a.load.value, b.load.value) == (1500 + 2250, 300 + 2250)
    assert figures_of(LEGS).service.legs.unbalance.value == 32


@pytest.mark.parametrize(
    ("area", "percent", "balanced"), [("100 ft2", 51, False), ("500 ft2", 28, True), ("900 ft2", 5, True)]
)
def test_legs_are_unbalanced_by_a_fifth_of_the_heavier_and_a_circuit_s_worth(
    area: str, percent: int, balanced: bool, figures_of: FiguresOf
) -> None:
    another = "[circuits/f.yaml]\ncircuit: f\nname: Other counter\npurpose: small-appliance\n"
    two = LEGS.replace("  3:", "  5: {rating: 20 A, feeds: f, says: The other}\n  3:") + another
    legs = figures_of(two.replace("100 ft2", area)).service.legs
    assert int(legs.unbalance.value or 0) == percent
    assert legs.balanced is balanced


def test_the_lesser_of_heating_and_cooling_is_on_no_leg(figures_of: FiguresOf) -> None:
    both = LEGS.replace("purpose: water-heater", "purpose: heating").replace(
        "loads: [{id: tank, is: water-heater, draws: 4500 W, volts: 240 V}]",
        "loads: [{id: heat, is: space-heater, draws: 4 kW, volts: 240 V, fastened: true},"
        " {id: cool, is: air-conditioner, draws: 2 kW, volts: 240 V, fastened: true}]",
    )
    a, _ = figures_of(both).service.legs.legs
    assert [each.part.what for each in a.on_it] == ["Counter", "Space heater"]


def test_a_leg_nobody_can_tell_leaves_the_balance_untold(figures_of: FiguresOf) -> None:
    fuses = LEGS.replace("panel: main\n", "panel: main\nkind: fuse-panel\n")
    assert "which leg feeds circuit c" in figures_of(fuses).service.legs.unbalance.lacks
