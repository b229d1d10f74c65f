"""What a panel holds against what it may, and the clear space before it against what is asked."""

from dataclasses import dataclass
from typing import Literal

from junctionary.house.model import House, Panel
from junctionary.house.panels import MAIN, SPACE
from junctionary.sources import edition_year
from junctionary.tables import table
from junctionary.units import Quantity, read_quantity

Stands = Literal["enough", "short", "low as old work may be", "not recorded"]

LOW_UP_TO_A = 200
"""Up to this rating the space may be low in an existing dwelling (110.26(A)(3), from memory)."""


@dataclass(frozen=True, slots=True)
class ClearSide:
    """One side of the space before a panel: ``width``, ``depth`` or ``height``, and how it stands."""

    name: str
    has: Quantity | None
    least: Quantity
    stands: Stands
    lacks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PanelLimits:
    """A panel's poles and its clear space.

    ``poles`` counts each pole of each breaker, used or not, but for the main; ``most`` is
    how many it may hold, None where that is not recorded.
    """

    panel: str
    sides: tuple[ClearSide, ...]
    poles: int
    most: int | None
    lacks: tuple[str, ...]


def panel_limits(house: House, panel: Panel) -> PanelLimits:
    """The figures of one panel."""
    printed = table("working-space")
    keys = [space for each in panel.breakers if each.spaces != (MAIN,) for space in each.spaces]
    keys += [space for space, state in panel.fillers.items() if state == "unused"]
    most = _most(panel, keys)
    return PanelLimits(
        panel=panel.id,
        sides=tuple(_side(house, panel, row.text("side"), row.text("least")) for row in printed),
        poles=len(keys),
        most=most,
        lacks=tuple(_lacks(panel, keys, most)),
    )


def _most(panel: Panel, keys: list[str]) -> int | None:
    """What its label allows; without a word of it, its spaces, unless half-size breakers tell of more."""
    if panel.record.circuits is not None:
        return panel.record.circuits
    halves = any(_is_half(each) for each in keys)
    return None if halves and len(keys) > panel.record.spaces else panel.record.spaces


def _lacks(panel: Panel, keys: list[str], most: int | None) -> list[str]:
    if not keys and not panel.fillers:
        return [f"the breakers of panel {panel.id}"]
    if most is None:
        return [f"how many circuits the label of panel {panel.id} allows"]
    return []


def _is_half(space: str) -> bool:
    match = SPACE.fullmatch(space)
    return bool(match and match[2])


def _side(house: House, panel: Panel, name: str, inches: str) -> ClearSide:
    least = read_quantity(f"{inches} in", "length")
    clear = panel.record.clear
    has: Quantity | None = getattr(clear, name) if clear is not None else None
    if has is None:
        return ClearSide(name, None, least, "not recorded", (f"the clear {name} before panel {panel.id}",))
    if has >= least:
        return ClearSide(name, has, least, "enough")
    if name == "height":
        return ClearSide(name, has, least, *_low(house, panel))
    return ClearSide(name, has, least, "short")


def _low(house: House, panel: Panel) -> tuple[Stands, tuple[str, ...]]:
    """A panel built to an edition before the house's is in an existing dwelling."""
    if edition_year(panel.edition) >= edition_year(house.edition):
        return "short", ()
    rating = panel.record.rating
    if not isinstance(rating, Quantity):
        return "not recorded", (f"the rating of panel {panel.id}",)
    return ("short" if rating.to("A") > LOW_UP_TO_A else "low as old work may be"), ()
