"""How likely a kind of place is to be the fault: an ordering by common practice, not a probability.

Every figure here is practice: no publication backs it. It only says where to look first.
"""

from collections.abc import Mapping

WEIGHTS: Mapping[str, int] = {
    "push-in termination": 10,
    "joint without a connector": 10,
    "feed-through screw": 5,
    "termination not recorded": 5,
    "joint of unknown connector": 5,
    "place outdoors or damp": 4,
    "splice": 3,
    "screw": 3,
    "breaker": 2,
    "landing on a bar or bus": 2,
    "device's own contact": 2,
    "device's own tab": 2,
    "hidden cable": 1,
    "utility's side": 1,
}
"""By kind of place."""

CHANGED = 5
"""By how much a place counts more when the log says it was changed within ``RECENT_DAYS``."""

RECENT_DAYS = 365
"""How long before the newest date in the record a change counts as recent."""

DAMP_ROOMS = ("outdoors", "porch", "deck", "crawlspace")
"""Kinds of room that count as outdoors or damp where the box does not say itself."""
