"""The device of an entry whose own terminals carry the circuit on, or that guards what lies beyond it."""

from junctionary.house.makeup.sides import is_switch
from junctionary.house.makeup.supply import Supply
from junctionary.house.terminals import GFCI


def carrier_told(work: Supply) -> str | None:
    """The device named by ``through:``, or the only one of a ``feed-through``."""
    plan = work.plan
    if plan.through in work.bench.devices:
        return plan.through
    return plan.devices[0] if plan.word == "feed-through" and len(plan.devices) == 1 else None


def find_carrier(work: Supply) -> str | None:
    """The carrier of an entry, or None, with a doubt noted where a word asks for one that is not there."""
    told = carrier_told(work)
    if told is None and work.plan.word == "feed-through":
        work.doubt(
            [],
            work.plan.place,
            f"feed-through in {work.bench.box}, whose devices are: {', '.join(work.plan.devices) or 'none'}",
            "one device",
            "name it: {through: r1}, or write pigtailed",
        )
        return None
    if work.plan.guarded or work.plan.guarded_devices:
        return _guard(work, told)
    return told if told is None or _can_carry(work, told) else None


def goes_through(work: Supply) -> bool:
    """Whether what goes onward hangs on the far side of the carrier."""
    return work.carrier is not None and work.carrier == carrier_told(work) and not work.plan.guarded


def _guard(work: Supply, told: str | None) -> str | None:
    guards = [each for each in work.plan.devices if work.bench.devices[each].is_ in GFCI]
    if told in guards:
        return told
    if len(guards) == 1:
        return guards[0]
    if work.bench.kindless:
        return None  # what kind they are is not known, and told where it is missing
    work.doubt(
        [],
        work.plan.entry.place_of("guarded"),
        f"guarded: in {work.bench.box}, whose GFCI devices are: {', '.join(guards) or 'none'}",
        "one GFCI device",
        "name it: through: r1, or write onward:",
    )
    return None


def _can_carry(work: Supply, device: str) -> bool:
    kind = work.bench.devices[device]
    if (is_switch(kind) and kind.is_ != "disconnect") or not work.sides(device).far_hot:
        work.doubt(
            work.of(device, work.sides(device).hot),
            work.plan.place,
            f"{device} has no terminals of its own to carry the circuit on",
            "a receptacle, or a disconnect",
            "write pigtailed, or write its terminals out",
        )
        return False
    if kind.is_ == "receptacle" and "brass" in work.bench.record.split.get(device, ""):
        work.doubt(
            work.of(device, ("brass-top", "brass-bottom")),
            work.plan.place,
            f"{device} carries the circuit on, but its brass tab is removed",
            "which half each wire lands on",
            "write its brass terminals out",
        )
        return False
    return True
