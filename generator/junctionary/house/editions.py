"""A house as if all its work had been built under one edition."""

from dataclasses import replace

from junctionary.house.model import House


def editions(house: House) -> frozenset[str]:
    """Every edition that some part of the house was built under."""
    return frozenset(
        (
            *(each.edition for each in house.boxes.values()),
            *(each.edition for each in house.runs.values()),
            *(each.edition for each in house.rooms.values()),
            *(each.edition for each in house.circuits.values()),
            *(each.edition for each in house.panels.values()),
        )
    )


def built_today(house: House) -> House | None:
    """The same house with every part under the reference edition; None where every part is already."""
    if editions(house) <= {house.edition}:
        return None
    today = house.edition
    return replace(
        house,
        panels={id_: replace(each, edition=today) for id_, each in house.panels.items()},
        circuits={id_: replace(each, edition=today) for id_, each in house.circuits.items()},
        runs={id_: replace(each, edition=today) for id_, each in house.runs.items()},
        rooms={id_: replace(each, edition=today) for id_, each in house.rooms.items()},
        boxes={id_: replace(each, edition=today) for id_, each in house.boxes.items()},
    )
