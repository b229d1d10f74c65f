"""How deep each box is, and must be for the devices in it."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.fill import ON_A_YOKE
from junctionary.figures.gaps import unseen_in
from junctionary.formulas.box_depth import least_depth
from junctionary.formulas.worked import Worked
from junctionary.house.model import Box, House
from junctionary.records.boxes import BoxSize
from junctionary.records.values import NONE
from junctionary.units import Quantity, UnitError, read_quantity

_TRADE_SIZE = re.compile(r"\S+(?: x \S+)? x (\S+) \w+")


@dataclass(frozen=True, slots=True)
class BoxDepth:
    """A box that encloses devices: its depth in inches, and the least it may have.

    ``has_in`` is None where it is not recorded; with a ring or cover on the box it is a least
    value, and ``with_more`` names what adds to it. ``least_in`` is what is wanted by the known
    things alone. ``fits`` is None where it cannot be told.
    """

    box: str
    edition: str
    has_in: Fraction | None
    with_more: str | None
    wanted: Worked
    least_in: Fraction
    fits: bool | None
    lacks: tuple[str, ...]


def depth_of(house: House, box: Box) -> BoxDepth | None:
    """The depth of a box; None for one with no device in it, or no box at all."""
    devices = [each for each in box.devices if each.kind.is_ in ON_A_YOKE]
    if not devices or box.record.size is NONE:
        return None
    size = box.record.size if isinstance(box.record.size, BoxSize) else None
    sizes = [wire.size for run in box.runs for wire in house.runs[run].conductors]
    untold = unseen_in(box) or any(not house.runs[run].conductors for run in box.runs) or not box.runs
    depths = {each.id: each.kind.depth for each in devices}
    known = [each.to("in") for each in depths.values() if each is not None]
    shallow = [id_ for id_, depth in depths.items() if depth is None]
    largest = max(sizes, default=None)
    wanted = least_depth(None if untold else largest, None if shallow else max(known), box.edition)
    sure = least_depth(largest, max(known, default=Fraction(0)), box.edition)
    if shallow and largest is not None:
        names = f"how deep {' and '.join(shallow)} {'is' if len(shallow) == 1 else 'are'}"
        wanted = replace(wanted, lacks=tuple(names if "devices" in each else each for each in wanted.lacks))
    least = sure.value or max(known, default=Fraction(0))
    has, more = _has(box, size)
    fits = None
    if has is not None and wanted.value is not None and has >= wanted.value:
        fits = True
    elif has is not None and more is None and has < least:
        fits = False
    lacks = wanted.lacks
    if has is None:
        lacks = (f"how deep box {box.id} is", *lacks)
    elif more is not None and fits is None:
        lacks = (f"how deep box {box.id} is with its {more}", *lacks)
    return BoxDepth(box.id, box.edition, has, more, wanted, least, fits, lacks)


def _has(box: Box, size: BoxSize | None) -> tuple[Fraction | None, str | None]:
    """The depth as recorded, or by the trade size, and what stands on the box besides."""
    recorded = box.record.depth or (size.depth if size else None)
    if recorded is not None:
        return recorded.to("in"), None
    if size is None or size.standard is None:
        return None, None
    match = _TRADE_SIZE.match(size.standard)
    try:
        found: Quantity | None = read_quantity(f"{match[1]} in", "length") if match else None
    except UnitError:
        found = None
    return (found.to("in") if found else None), (size.adds[0].what if size.adds else None)
