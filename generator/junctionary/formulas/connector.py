"""Whether a connector's listing holds the conductors of a joint."""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from junctionary.formulas.fit import Fit, Verdict
from junctionary.sources import Citation, cite, cite_in
from junctionary.units import UnitError, WireSize, read_wire_size

COPPER = "copper"
"""What a listing that names no metal is taken for: other metals must be identified (110.14)."""


class ListingError(ValueError):
    """A listing that cannot be read; the message says what was expected."""


@dataclass(frozen=True, slots=True)
class JointWire:
    """One conductor in a joint; None is a fact not recorded."""

    size: WireSize | None
    metal: str | None = COPPER


@dataclass(frozen=True, slots=True)
class Part:
    """``2 to 4 x 14 AWG`` in a listing: from ``least`` to ``most`` conductors of one size and metal."""

    least: int
    most: int
    size: WireSize
    metal: str = COPPER


@dataclass(frozen=True, slots=True)
class Listing:
    """What a connector may hold: by combinations (``holds``), or by ports and a range of sizes.

    ``ports`` None and no ``holds`` means the listing is not recorded.
    """

    holds: tuple[str, ...] = ()
    ports: int | None = None
    smallest: WireSize | None = None
    largest: WireSize | None = None
    metals: tuple[str, ...] = (COPPER,)


def connector_fit(listing: Listing, wires: Sequence[JointWire], edition: str) -> Fit:
    """Whether the listing holds exactly these conductors; raises ListingError where it cannot be read."""
    cites = (
        cite_in(edition, "110.14(B)"),
        cite_in(edition, "110.3(B)"),
        cite("ul-486c", "listed combinations"),
    )
    if not listing.holds and listing.ports is None:
        return Fit("cannot tell", "not recorded", cites, ("what the connector is listed to hold",))
    lacks = tuple(
        phrase
        for phrase, missing in (
            ("the size of every conductor in the joint", any(each.size is None for each in wires)),
            ("the metal of every conductor in the joint", any(each.metal is None for each in wires)),
        )
        if missing
    )
    judge = _by_combination if listing.holds else _by_port
    return judge(listing, wires, cites, lacks)


def read_combination(text: str) -> tuple[Part, ...]:
    """The parts of ``1 x 12 AWG + 2 to 3 x 18 AWG copper``; raises ListingError."""
    parts = []
    for each in text.split("+"):
        match = re.fullmatch(
            r"(\d+)(?: to (\d+))? [x×] (\S+ (?:AWG|kcmil))(?: (copper|aluminium|copper-clad))?", each.strip()
        )
        if match is None:
            raise ListingError(f"{text!r} is none such as 2 to 4 x 14 AWG or 1 x 12 AWG + 2 x 18 AWG")
        try:
            size = read_wire_size(match[3])
        except UnitError as error:
            raise ListingError(str(error)) from None
        least, most = int(match[1]), int(match[2] or match[1])
        if not 1 <= least <= most:
            raise ListingError(f"{text!r}: write the smaller number first, and at least 1")
        parts.append(Part(least, most, size, match[4] or COPPER))
    return tuple(parts)


def _by_port(
    listing: Listing, wires: Sequence[JointWire], cites: tuple[Citation, ...], lacks: tuple[str, ...]
) -> Fit:
    assert listing.ports is not None
    sizes = f", {listing.smallest} to {listing.largest}" if listing.smallest and listing.largest else ""
    allowed = f"{listing.ports} conductors, one a port{sizes} {' or '.join(listing.metals)}".rstrip()
    if len(wires) > listing.ports:
        return Fit("too many", allowed, cites)
    if not wires:
        return Fit("too few", allowed, cites)
    if any(each.metal is not None and each.metal not in listing.metals for each in wires):
        return Fit("metal not listed", allowed, cites)
    if listing.smallest is None or listing.largest is None:
        return Fit("cannot tell", allowed, cites, ("what sizes the connector accepts", *lacks))
    if any(each.size and not listing.smallest <= each.size <= listing.largest for each in wires):
        return Fit("size not listed", allowed, cites)
    return Fit("cannot tell" if lacks else "fits", allowed, cites, lacks)


def _by_combination(
    listing: Listing, wires: Sequence[JointWire], cites: tuple[Citation, ...], lacks: tuple[str, ...]
) -> Fit:
    combinations = [read_combination(each) for each in listing.holds]
    allowed = "; or ".join(listing.holds)
    listed = {(part.size, part.metal) for each in combinations for part in each}
    if any(each.metal is not None and each.metal not in {metal for _, metal in listed} for each in wires):
        return Fit("metal not listed", allowed, cites)
    if any(each.size is not None and each.size not in {size for size, _ in listed} for each in wires):
        return Fit("size not listed", allowed, cites)
    if lacks:
        return Fit("cannot tell", allowed, cites, lacks)
    held = Counter((each.size, each.metal) for each in wires)
    return Fit(_verdict(combinations, held), allowed, cites)


def _verdict(
    combinations: Sequence[tuple[Part, ...]], held: Counter[tuple[WireSize | None, str | None]]
) -> Verdict:
    """Held against each combination of the same sizes; the wrong number only where none takes it."""
    alike = []
    for parts in combinations:
        least: Counter[tuple[WireSize | None, str | None]] = Counter()
        most: Counter[tuple[WireSize | None, str | None]] = Counter()
        for part in parts:
            least[part.size, part.metal] += part.least
            most[part.size, part.metal] += part.most
        if set(most) == set(held):
            alike.append((least, most))
    if any(all(least[each] <= held[each] <= most[each] for each in held) for least, most in alike):
        return "fits"
    if alike and all(any(held[each] > most[each] for each in held) for _, most in alike):
        return "too many"
    if alike and all(any(held[each] < least[each] for each in held) for least, _ in alike):
        return "too few"
    return "mix not listed"
