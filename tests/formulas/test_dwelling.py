from fractions import Fraction

import pytest

from junctionary.formulas.cooking import cooking_steps
from junctionary.formulas.dwelling import Dwelling, Heater, Item, Leg
from junctionary.formulas.dwelling_optional import existing_load, optional_load
from junctionary.formulas.dwelling_service import (
    LegPart,
    least_conductor,
    least_service,
    leg_load,
    lighting_circuits,
    whole_load_ampacity,
)
from junctionary.formulas.dwelling_standard import neutral_load, standard_load
from junctionary.formulas.sums import evaluate
from junctionary.units import WireSize

NEC = "nec-2023"


def item(va: int | None, what: str = "it", **told: bool) -> Item:
    return Item(what, None if va is None else Fraction(va), **told)  # type: ignore[arg-type]


def items(*va: int) -> tuple[Item, ...]:
    return tuple(item(each, f"load {number}") for number, each in enumerate(va))


def cooked(*va: int, edition: str = NEC) -> Fraction:
    return sum((each.value for each in cooking_steps(items(*va), edition)), Fraction(0))


def test_lighting_above_120_kva_counts_a_quarter() -> None:
    load = standard_load(Dwelling(area_ft2=Fraction(50_000)), NEC)
    assert load.va.value == 3000 + evaluate("35 % × 117000") + evaluate("25 % × 30000")


@pytest.mark.parametrize(("edition", "va"), [("nec-1999", 3000), ("nec-2023", 3000), ("nec-2026", 2000)])
def test_general_lighting_is_by_the_edition(edition: str, va: int) -> None:
    assert standard_load(Dwelling(area_ft2=Fraction(1000)), edition).va.value == va


@pytest.mark.parametrize(("edition", "va"), [("nec-2023", 10_400), ("nec-2026", 9_200)])
def test_the_first_tier_of_the_optional_method_is_smaller_from_2026(edition: str, va: int) -> None:
    assert optional_load(Dwelling(appliances=items(11_000)), edition).va.value == va


@pytest.mark.parametrize(
    ("edition", "clauses"),
    [
        ("nec-2020", ["NEC 2020, 220.12", "NEC 2020, 220.42"]),
        ("nec-2023", ["NEC 2023, 220.41", "NEC 2023, 220.45"]),
        ("nec-2026", ["NEC 2026, 120.41", "NEC 2026, 120.45"]),
    ],
)
def test_a_step_names_its_clause_as_the_edition_numbers_it(edition: str, clauses: list[str]) -> None:
    load = standard_load(Dwelling(area_ft2=Fraction(500)), edition)
    assert [str(each.cite) for each in load.va.steps if each.cite][:2] == clauses


@pytest.mark.parametrize(("count", "va"), [(3, 3000), (4, 3000)])
def test_from_four_on_fastened_appliances_count_at_three_quarters(count: int, va: int) -> None:
    assert standard_load(Dwelling(appliances=items(*[1000] * count)), NEC).va.value == va


def test_a_gap_that_may_hide_a_fourth_appliance_lowers_what_is_certain() -> None:
    load = standard_load(Dwelling(appliances=items(1000, 1000, 1000), lacks=("what main/9 feeds",)), NEC)
    assert (load.va.value, load.least_va) == (None, 2250)
    assert load.amps.lacks == ("what main/9 feeds",)


def test_an_unknown_floor_area_lowers_nothing_else() -> None:
    load = standard_load(Dwelling(area_ft2=None, appliances=items(1000, 1000, 1000)), NEC)
    assert (load.least_va, load.va.lacks) == (3000, ("the floor area, by outside dimensions",))


@pytest.mark.parametrize(("nameplate", "va"), [(4200, 5000), (5500, 5500), (None, 5000)])
def test_a_dryer_counts_at_least_5000_va(nameplate: int | None, va: int) -> None:
    assert standard_load(Dwelling(dryers=(item(nameplate),)), NEC).least_va == va


@pytest.mark.parametrize(("edition", "va"), [("nec-2020", 3800), ("nec-2023", 7200)])
def test_a_car_charger_counts_at_least_7200_va_from_2023(edition: str, va: int) -> None:
    assert standard_load(Dwelling(chargers=items(3800)), edition).va.value == va


def test_only_the_larger_of_heating_and_cooling_counts() -> None:
    both = Dwelling(heating=(Heater(item(5000), "separate"),), cooling=items(3000))
    assert standard_load(both, NEC).va.value == 5000


def test_a_heat_pump_is_in_heating_and_in_cooling() -> None:
    pump = item(4000, "heat pump")
    load = standard_load(Dwelling(heating=(Heater(pump, "compressor"),), cooling=(pump, item(2000))), NEC)
    assert load.va.value == 6000


def test_the_largest_motor_counts_a_quarter_more() -> None:
    motors = (item(1000, motor=True), item(600, motor=True), item(9000))
    assert standard_load(Dwelling(others=motors), NEC).va.value == 10_600 + 250


@pytest.mark.parametrize(("pieces", "va"), [(3, 5850), (4, 3600)])
def test_from_four_on_heaters_with_their_own_control_count_at_40_percent(pieces: int, va: int) -> None:
    house = Dwelling(heating=(Heater(item(9000), "separate", pieces),))
    assert optional_load(house, NEC).va.value == va


def test_heating_counts_in_full_where_the_dwelling_stood_before() -> None:
    house = Dwelling(appliances=items(10_000), heating=(Heater(item(9000), "separate", 4),))
    assert existing_load(house, NEC).va.value == 8000 + 800 + 9000


def test_a_car_charger_counts_in_full_beside_the_general_load() -> None:
    house = Dwelling(appliances=items(11_000), chargers=items(9600))
    assert (optional_load(house, NEC).va.value, existing_load(house, NEC).va.value) == (20_000, 18_800)


def test_what_a_load_draws_is_asked_for_and_what_is_known_is_a_least_value() -> None:
    load = optional_load(Dwelling(others=(item(None, "the pump"), item(1200))), NEC)
    assert (load.va.lacks, load.least_va, load.least_a) == (("what the pump draws",), 1200, 5)


@pytest.mark.parametrize(
    ("va", "demand"),
    [
        ((10_200,), 8000),
        ((12_000,), 8000),
        ((13_600,), 8800),
        ((14_400,), 8800),
        ((30_000,), 30_000),
        ((3000,), 2400),
        ((4000, 6000), 6500),
        ((9000, 9000), 11_000),
        ((4000, 12_000), 3200 + 8000),
        ((3000, 3000), 6000),
    ],
)
def test_cooking_counts_by_its_column(va: tuple[int, ...], demand: int) -> None:
    assert cooked(*va) == demand


def test_a_row_from_memory_says_so() -> None:
    one, two = (cooking_steps(items(*[9000] * count), NEC)[0].what for count in (1, 2))
    assert ("from memory" in one, "from memory" in two) == (False, True)


def test_the_neutral_carries_what_runs_at_120_v_and_seven_tenths_of_range_and_dryer() -> None:
    house = Dwelling(
        cooking=items(12_000),
        dryers=items(5000),
        appliances=(item(1200, neutral=True), item(4500)),
        others=(item(600, neutral=True),),
    )
    assert neutral_load(house, NEC).amps.value == evaluate("(70 % × 8000 + 70 % × 5000 + 1200 + 600) / 240")


@pytest.mark.parametrize(
    ("legs", "volt_amperes"),
    [
        (("A", "B"), "2 × 1200"),
        (("A", "A"), "2 × (1200 + 600)"),
        (("B", "B"), "2 × (1200 + 600)"),
        (("A", "either"), "2 × (1200 + 600)"),
        (("either", "B"), "2 × (1200 + 600)"),
    ],
)
def test_what_runs_on_one_leg_loads_the_neutral_with_all_of_it(
    legs: tuple[Leg, Leg], volt_amperes: str
) -> None:
    one = Item("one", Fraction(1200), neutral=True, leg=legs[0])
    other = Item("other", Fraction(600), neutral=True, leg=legs[1])
    house = Dwelling(laundry=1, others=(one, other))
    assert neutral_load(house, NEC).va.value == evaluate(f"1500 + {volt_amperes}")


def test_four_fastened_appliances_count_three_quarters_on_the_neutral_s_leg_too() -> None:
    fastened = tuple(
        Item(f"{each}", Fraction(each), neutral=True, leg="A") for each in (1000, 1100, 1200, 1300)
    )
    assert neutral_load(Dwelling(appliances=fastened), NEC).va.value == evaluate("2 × 75 % × 4600")


def test_two_loads_that_are_alike_load_the_neutral_twice_and_one_in_heating_and_cooling_once() -> None:
    freezers = tuple(Item("freezer", Fraction(600), neutral=True, leg="A") for _ in range(2))
    assert neutral_load(Dwelling(others=freezers), NEC).va.value == evaluate("2 × (600 + 600)")
    fan = Item("fan", Fraction(500), neutral=True, leg="A")
    both = Dwelling(heating=(Heater(fan, "compressor"),), cooling=(fan,))
    assert neutral_load(both, NEC).va.value == evaluate("2 × 500")


def test_a_service_of_one_leg_has_nothing_to_balance() -> None:
    lamp = Item("lamp", Fraction(1200), neutral=True, leg="A")
    assert neutral_load(Dwelling(others=(lamp,), volts=120), NEC).amps.value == 10


def test_lighting_circuits_are_rounded_up_and_want_the_area() -> None:
    assert lighting_circuits(Fraction(601), Fraction(15), NEC).value == 2
    assert lighting_circuits(None, Fraction(15), NEC).lacks == ("the floor area, by outside dimensions",)


@pytest.mark.parametrize(("amps", "rating"), [("57", 100), ("100.4", 100), ("100.5", 110), ("145", 150)])
def test_a_service_is_the_next_standard_rating_and_100_a_at_least(amps: str, rating: int) -> None:
    assert least_service(Fraction(amps), NEC).value == rating


@pytest.mark.parametrize(
    ("rating", "metal", "size"),
    [
        (100, "copper", "4 AWG"),
        (100, "aluminium", "2 AWG"),
        (200, "copper", "2/0 AWG"),
        (200, "aluminium", "4/0 AWG"),
    ],
)
def test_conductors_of_a_whole_dwelling_need_83_percent_of_the_rating(
    rating: int, metal: str, size: str
) -> None:
    assert least_conductor(Fraction(rating), metal, NEC) == WireSize(size)


def test_the_83_percent_hold_from_100_to_400_a() -> None:
    assert whole_load_ampacity(Fraction(60), NEC).lacks
    assert whole_load_ampacity(Fraction(100), NEC).value == 83


def test_a_leg_without_motors_is_the_sum_of_its_loads() -> None:
    parts = (LegPart("a", Fraction(10)), LegPart("b", Fraction(4), motor=True))
    assert leg_load(parts[:1], "A", NEC).value == 10
    assert leg_load(parts, "A", NEC).value == 15
