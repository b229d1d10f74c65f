"""What a meter shows at one dead point, and what it tells: the table, as data.

Readings are taken with a low-impedance tester between the hot slot (H), the
neutral slot (N) and ground (G), at 120 V. Where there is no ground the long
lead to another, proved circuit stands for it. The table is common practice.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from junctionary.house.model import Role


@dataclass(frozen=True, slots=True)
class Reading:
    """One row: what is shown between the slots, what that means, and what tells it further.

    ``roles`` are those in which the fault may lie, none where it is no open
    conductor. ``whole`` says whether one conductor alone is gone (False),
    both at one place (True), or that nothing tells (None). ``stops`` when the
    search ends there and help is called.
    """

    shows: str
    means: str
    roles: tuple[Role, ...]
    then: str
    whole: bool | None = None
    stops: bool = False


READINGS: Mapping[str, Reading] = {
    "healthy": Reading(
        "H-N 120, H-G 120, N-G 0 to 2",
        "hot, neutral and ground are whole here",
        (),
        "load it with about 10 A and read again",
    ),
    "hot-only": Reading(
        "H-N 0, H-G 120, N-G 0 with nothing on",
        "open neutral upstream",
        ("neutral",),
        "a load switched on beyond the break makes the white live: treat every white as hot",
        whole=False,
    ),
    "hot-only-loaded": Reading(
        "H-N 0, H-G 120, N-G 120",
        "open neutral with a load on: the white is live",
        ("neutral",),
        "unplug everything; N-G then falls to 0",
        whole=False,
    ),
    "nothing": Reading(
        "H-N 0, H-G 0, N-G 0",
        "open hot, or a breaker or a GFCI device open",
        ("hot",),
        "breaker off (both, of a pair), proved dead: is N to G one piece? Yes is neutral-only, no is neither",
    ),
    "neutral-only": Reading(
        "H-N 0, H-G 0, and with the breaker off N to G is one piece",
        "open hot, or the breaker open; the neutral is whole",
        ("hot",),
        "look along the hot alone",
        whole=False,
    ),
    "neither": Reading(
        "H-N 0, H-G 0, and with the breaker off N to G is not one piece",
        "a GFCI device open in both poles, or both conductors lost in one place",
        ("hot", "neutral"),
        "reset the GFCI device; then look where both conductors pass",
        whole=True,
    ),
    "sags-with-neutral": Reading(
        "H-N 120 but sags more than 5 % loaded, H-G steady, N-G rises",
        "a neutral joint of high resistance",
        ("neutral",),
        "compare with the drop that the length explains",
        whole=False,
    ),
    "sags-with-hot": Reading(
        "H-N 120 but sags more than 5 % loaded, H-G sags with it, N-G small",
        "a hot joint of high resistance: 5 V at 12 A is 60 W of heat in the joint",
        ("hot",),
        "switch it off now; the joint is hot while it is loaded",
        whole=False,
    ),
    "open-ground": Reading(
        "H-N 120, H-G 0, N-G 0",
        "open ground, if the ground is really open",
        ("ground",),
        "read again by a long lead to a proved ground",
        whole=False,
    ),
    "reversed": Reading(
        "H-N 120, H-G 0, N-G 120",
        "hot and neutral reversed: no open conductor",
        (),
        "compare its box with the record, after switching off all that isolate lists",
    ),
    "out-of-range": Reading(
        "H-N above 130 or below 105",
        "the service neutral or a shared neutral is failing",
        (),
        "main off, unplug electronics, and call the utility or a licensed electrician",
        stops=True,
    ),
    "phantom": Reading(
        "20 to 80, steady",
        "a phantom voltage on an open wire",
        ("hot", "neutral"),
        "read again with a low-impedance tester: it falls to 0",
    ),
}
"""Every reading by its name."""
