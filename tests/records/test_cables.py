"""What the words on a sheath say is inside it."""

from collections.abc import Callable

import pytest

from junctionary.records import Records
from junctionary.records.cables import Cable
from junctionary.records.values import UNKNOWN

RecordsOf = Callable[[str, str], Records]


def cable_of(records_of: RecordsOf, said: str) -> object:
    records = records_of("circuits/c.yaml", f"circuit: c\nname: C\nruns: [{{id: a1, cable: {said}}}]\n")
    return records.circuits[0].runs[0].cable


@pytest.mark.parametrize(
    ("said", "inside"),
    [
        ("14/2 NM-B", "14 AWG black, 14 AWG white, 14 AWG bare"),
        ("12/3 NM-B", "12 AWG black, 12 AWG red, 12 AWG white, 12 AWG bare"),
        ("14/2 NM no ground", "14 AWG black, 14 AWG white"),
        ("12/2 MC", "12 AWG black, 12 AWG white, 12 AWG green"),
        ("12/2 AC", "12 AWG black, 12 AWG white, 12 AWG armor"),
        ("6/3 UF-B", "6 AWG black, 6 AWG red, 6 AWG white, 10 AWG bare"),
        ("12/2/2 NM-B", "12 AWG black, 12 AWG white, 12 AWG red, 12 AWG white-red, 12 AWG bare"),
        ("2-2-2-4 SER aluminium", "2 AWG black, 2 AWG red, 2 AWG white, 4 AWG bare"),
        ("2-2-2 SER no ground", "2 AWG black, 2 AWG red, 2 AWG white"),
        ("4/0-4/0-2/0 SEU aluminium", "4/0 AWG black, 4/0 AWG red, 2/0 AWG white"),
        ("{open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}", "14 AWG a, 14 AWG b"),
        (
            "{raceway: 3/4 in EMT, wires: [12 AWG black, 12 AWG white, 12 AWG green], insulation: THHN}",
            "12 AWG black, 12 AWG white, 12 AWG green",
        ),
    ],
)
def test_a_cable_holds_what_its_sheath_says(records_of: RecordsOf, said: str, inside: str) -> None:
    cable = cable_of(records_of, said)
    assert isinstance(cable, Cable)
    assert ", ".join(f"{each.size} {each.colour}" for each in cable.conductors) == inside


def test_a_metal_is_copper_unless_said(records_of: RecordsOf) -> None:
    copper, aluminium = cable_of(records_of, "12/2 NM-B"), cable_of(records_of, "12/2 NM aluminium")
    assert isinstance(copper, Cable)
    assert isinstance(aluminium, Cable)
    assert {each.metal for each in copper.conductors} == {"copper"}
    assert {each.metal for each in aluminium.conductors} == {"aluminium"}


def test_bare_wires_and_armor_are_not_insulated(records_of: RecordsOf) -> None:
    cable = cable_of(records_of, "12/2 NM-B")
    assert isinstance(cable, Cable)
    assert [each.insulated for each in cable.conductors] == [True, True, False]
    assert [each.is_ground for each in cable.conductors] == [False, False, True]


def test_an_unknown_cable_is_a_cable_somebody_looked_for(records_of: RecordsOf) -> None:
    assert cable_of(records_of, "unknown") is UNKNOWN
