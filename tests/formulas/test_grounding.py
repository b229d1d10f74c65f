from fractions import Fraction

import pytest

from junctionary.formulas.grounding import GroundSize, electrode_conductor, equipment_ground
from junctionary.formulas.sums import evaluate
from junctionary.units import WireSize


def ground(device, circuit, least=None, metal="copper", edition="nec-2023") -> GroundSize:
    sizes = WireSize(circuit), WireSize(least or circuit)
    return equipment_ground(Fraction(device), metal, *sizes, edition)


def electrode(kind, service="4/0 AWG", service_metal="aluminium", metal="copper") -> GroundSize:
    return electrode_conductor(WireSize(service), service_metal, metal, kind, "nec-2023")


@pytest.mark.parametrize(
    ("device", "circuit", "least", "size"),
    [
        (20, "12 AWG", "12 AWG", "12 AWG"),
        (20, "14 AWG", "12 AWG", "14 AWG"),  # never larger than the circuit, even one too small
        (21, "10 AWG", "10 AWG", "10 AWG"),
        (50, "6 AWG", "6 AWG", "10 AWG"),
        (50, "4 AWG", "6 AWG", "8 AWG"),  # 16 511 of a table that prints 16 510 for 8 AWG
        (40, "6 AWG", "8 AWG", "8 AWG"),
        (40, "1/0 AWG", "8 AWG", "2 AWG"),  # eight gauge numbers from 8, as 2 is from 10
    ],
)
def test_a_ground_follows_the_breaker_and_grows_with_its_circuit(device, circuit, least, size):
    assert ground(device, circuit, least).size == WireSize(size)


def test_every_line_of_the_sum_works_out_to_what_it_shows():
    steps = ground(20, "14 AWG", "14 AWG").worked.steps
    assert [each.value for each in steps] == [evaluate(each.sum) for each in steps] == [6530, 4110]
    assert [str(each.cite) for each in steps] == ["NEC 2023, 250.122", "NEC 2023, 250.122(A)"]


def test_without_a_breaker_a_ground_as_large_as_the_circuit_will_do_and_a_smaller_one_cannot_be_told():
    unknown = equipment_ground(None, "copper", WireSize("10 AWG"), None, "nec-2023")
    assert unknown.worked.value is None
    assert "the rating of the breaker" in unknown.worked.lacks
    assert unknown.suits(WireSize("10 AWG")) is True
    assert unknown.suits(WireSize("12 AWG")) is None


def test_a_device_or_a_size_the_tables_do_not_print_is_missing_and_no_crash():
    assert ground(600, "500 kcmil").worked.lacks == ("a table row for a device of 600 A",)
    assert ground(20, "7 AWG").worked.lacks == ("the tabulated area of 7 AWG",)
    assert electrode("rod", "750 kcmil", "copper").worked.value is None


def test_copper_clad_is_sized_as_aluminium():
    assert ground(60, "4 AWG", metal="copper-clad").size == WireSize("8 AWG")


@pytest.mark.parametrize(
    ("kind", "size"),
    [("rod", "6 AWG"), ("plate", "6 AWG"), ("concrete-encased", "4 AWG"), ("water-pipe", "4 AWG")],
)
def test_an_electrode_asks_for_its_own_size_or_for_the_services(kind, size):
    assert electrode(kind).size == WireSize(size)


def test_a_small_service_asks_for_less_than_the_electrode_might():
    assert electrode("concrete-encased", "4 AWG", "copper").size == WireSize("8 AWG")


def test_a_ring_and_an_unknown_electrode_are_told_only_by_the_services_size():
    assert electrode("ring").worked.value is None
    assert electrode("ring").suits(WireSize("4 AWG")) is True
    assert electrode("ring").suits(WireSize("6 AWG")) is None
    assert "what kind of electrode it is" in electrode(None).worked.lacks


def test_a_rod_wants_no_more_than_its_own_size_whatever_the_service():
    unknown = electrode_conductor(None, None, "copper", "rod", "nec-2023")
    assert unknown.suits(WireSize("6 AWG")) is True
    assert unknown.suits(WireSize("8 AWG")) is None
