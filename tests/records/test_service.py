"""What the record tells of the utility's transformer and the service drop."""

from fractions import Fraction

import pytest

from junctionary.checks.examples import ExampleError, read_example

HOUSE = """
[house.yaml]
house: H
reference: nec-2023
service:
  transformer: {rating: 25 kVA, impedance: IMPEDANCE}
  drop: {size: 1/0 AWG, metal: aluminium, length: 80 ft}
"""


def test_an_impedance_is_read_as_a_part_in_a_hundred() -> None:
    service = read_example(HOUSE.replace("IMPEDANCE", "1.8 %")).record.service
    assert service.transformer.impedance == Fraction("1.8")
    assert service.drop.length.to("ft") == 80


@pytest.mark.parametrize("written", ["1.8", "0 %", "180 %", "much", "1.8 ohm"])
def test_what_is_no_part_is_refused_with_an_example(written: str) -> None:
    with pytest.raises(ExampleError, match=r"1\.8 %"):
        read_example(HOUSE.replace("IMPEDANCE", written))
