"""Random valid houses, one fault seeded in each: sound before, and found at its place after."""

import pytest
from seeding import found_at_its_place, grave, seeded_house


@pytest.mark.parametrize("seed", range(5000, 5080))
def test_a_seeded_fault_is_found_at_its_place(seed: int) -> None:
    house, seeded = seeded_house(seed)
    assert grave(house) == []
    assert found_at_its_place(seeded), f"{seeded.rule} at {[str(place) for place in seeded.places]}"
