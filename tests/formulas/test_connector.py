import pytest

from junctionary.formulas.connector import JointWire, Listing, ListingError, connector_fit, read_combination
from junctionary.units import WireSize

TWIST = Listing(holds=("2 to 4 x 14 AWG", "2 x 12 AWG", "1 x 12 AWG + 2 x 18 AWG"))
LEVER = Listing(ports=3, smallest=WireSize("20 AWG"), largest=WireSize("12 AWG"))


def wires(*counts, metal="copper"):
    return [JointWire(WireSize(f"{size} AWG"), metal) for count, size in counts for _ in range(count)]


@pytest.mark.parametrize(
    ("joint", "verdict"),
    [
        ([(2, 14)], "fits"),
        ([(4, 14)], "fits"),
        ([(5, 14)], "too many"),
        ([(1, 14)], "too few"),
        ([(2, 12)], "fits"),
        ([(3, 12)], "too many"),
        ([(1, 12), (2, 18)], "fits"),
        ([(1, 12), (3, 18)], "too many"),
        ([(1, 12), (1, 18)], "too few"),
        ([(1, 12), (1, 14)], "mix not listed"),
        ([(2, 18)], "mix not listed"),
        ([(2, 10)], "size not listed"),
    ],
)
def test_a_twist_on_holds_the_combinations_it_lists_and_no_others(joint, verdict):
    assert connector_fit(TWIST, wires(*joint), "nec-2023").verdict == verdict


@pytest.mark.parametrize(
    ("joint", "verdict"),
    [
        ([(3, 12)], "fits"),
        ([(1, 14), (1, 18)], "fits"),
        ([(4, 14)], "too many"),
        ([], "too few"),
        ([(2, 10)], "size not listed"),
        ([(1, 22), (1, 14)], "size not listed"),
    ],
)
def test_a_ported_connector_holds_one_conductor_a_port_within_its_sizes(joint, verdict):
    assert connector_fit(LEVER, wires(*joint), "nec-2023").verdict == verdict


@pytest.mark.parametrize("listing", [TWIST, LEVER])
def test_aluminium_needs_a_connector_that_names_it(listing):
    assert connector_fit(listing, wires((2, 12), metal="aluminium"), "nec-2023").verdict == "metal not listed"


def test_a_listing_may_name_both_metals():
    both = Listing(holds=("1 x 12 AWG aluminium + 1 to 2 x 12 AWG copper",))
    joint = [*wires((1, 12), metal="aluminium"), *wires((2, 12))]
    assert connector_fit(both, joint, "nec-2023").verdict == "fits"


def test_no_listing_cannot_be_judged():
    found = connector_fit(Listing(), wires((2, 12)), "nec-2023")
    assert (found.verdict, found.lacks) == ("cannot tell", ("what the connector is listed to hold",))


@pytest.mark.parametrize("listing", [TWIST, LEVER])
def test_a_wire_of_unknown_size_or_metal_leaves_the_joint_unjudged(listing):
    for unknown in (JointWire(None), JointWire(WireSize("12 AWG"), None)):
        assert connector_fit(listing, [*wires((1, 12)), unknown], "nec-2023").verdict == "cannot tell"


def test_too_many_for_the_ports_is_too_many_whatever_their_size():
    assert connector_fit(LEVER, [JointWire(None)] * 4, "nec-2023").verdict == "too many"


def test_ports_of_unknown_range_leave_the_joint_unjudged():
    assert connector_fit(Listing(ports=3), wires((2, 12)), "nec-2023").lacks == (
        "what sizes the connector accepts",
    )


@pytest.mark.parametrize(
    "text", ["2 of 14 AWG", "4 to 2 x 14 AWG", "0 x 14 AWG", "2 x 41 AWG", "", "2 x 14 AWG +"]
)
def test_a_combination_that_cannot_be_read_is_refused(text):
    with pytest.raises(ListingError):
        read_combination(text)
