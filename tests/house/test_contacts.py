"""What a device connects inside itself."""

from typing import Any

import pytest

from junctionary.house.contacts import Contact, contacts_of
from junctionary.marks import MarkedMap, Place
from junctionary.records.devices import DeviceKind


def kind(**keys: Any) -> DeviceKind:
    """A kind of device with these keys."""
    made = MarkedMap(Place("devices/all.yaml", 1, 1))
    made.update(keys)
    return DeviceKind.model_validate(made)


def pairs(
    made: DeviceKind, split: str | None = None, wired: tuple[str, ...] = ()
) -> list[tuple[str, str, str]]:
    return [(each.a, each.b, each.kind) for each in contacts_of(made, split, wired)]


DUPLEX = {"is": "receptacle", "face": "5-15R"}


def test_the_tabs_of_a_duplex_join_its_halves() -> None:
    assert pairs(kind(**DUPLEX)) == [
        ("brass-top", "brass-bottom", "tab"),
        ("silver-top", "silver-bottom", "tab"),
    ]


@pytest.mark.parametrize(
    ("split", "left"),
    [("brass", ["silver"]), ("silver", ["brass"]), ("both", []), ("upper", ["brass", "silver"])],
)
def test_a_removed_tab_joins_nothing_and_one_in_doubt_counts_as_there(split: str, left: list[str]) -> None:
    assert pairs(kind(**DUPLEX), split) == [(f"{each}-top", f"{each}-bottom", "tab") for each in left]


def test_a_gfci_opens_both_poles_to_its_load_side() -> None:
    assert pairs(kind(**{"is": "gfci-receptacle"})) == [
        ("line-brass", "load-brass", "protector"),
        ("line-silver", "load-silver", "protector"),
    ]


def test_a_three_way_connects_its_common_to_one_traveler_at_a_time() -> None:
    first, second = contacts_of(kind(**{"is": "switch", "ways": 3}), None, ())
    assert (first.a, first.b, second.a, second.b) == ("common", "traveler-1", "common", "traveler-2")
    assert first.state != second.state


def test_a_four_way_goes_straight_in_one_position_and_across_in_the_other() -> None:
    by_state: dict[int | None, set[tuple[str, str]]] = {}
    for each in contacts_of(kind(**{"is": "switch", "ways": 4}), None, ()):
        by_state.setdefault(each.state, set()).add((each.a, each.b))
    assert sorted(map(sorted, by_state.values())) == [
        [("in-1", "out-1"), ("in-2", "out-2")],
        [("in-1", "out-2"), ("in-2", "out-1")],
    ]


def test_a_disconnect_opens_both_of_its_poles() -> None:
    assert pairs(kind(**{"is": "disconnect"})) == [
        ("line-1", "load-1", "switch"),
        ("line-2", "load-2", "switch"),
    ]


def test_a_dimmer_is_a_three_way_only_where_its_traveler_is_wired() -> None:
    dimmer = kind(**{"is": "dimmer"})
    assert pairs(dimmer) == [("line", "load", "switch")]
    assert pairs(dimmer, None, ("traveler",)) == [("line", "load", "switch"), ("line", "traveler", "switch")]


@pytest.mark.parametrize("load", ["luminaire", "fan", "smoke-alarm", "appliance", "inlet"])
def test_nothing_leads_through_a_load(load: str) -> None:
    assert contacts_of(kind(**{"is": load}), None, ()) == ()


def test_a_single_receptacle_has_no_tabs() -> None:
    assert contacts_of(kind(**{"is": "receptacle", "outlets": 1}), None, ()) == ()


def test_a_single_pole_switch_is_closed_when_on() -> None:
    assert contacts_of(kind(**{"is": "switch"}), None, ()) == (Contact("brass-1", "brass-2", "switch", 1),)
