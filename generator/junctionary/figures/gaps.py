"""Facts that figures find missing, each in one wording."""

from collections.abc import Iterator

from junctionary.house.model import Box, Circuit, House, Room
from junctionary.house.network import is_ground

BEFORE_MAKE_UP = ("planned", "roughed", "covered")
"""Stages at which nothing is joined or landed yet, so that no make-up is missing."""


def unseen_in(box: Box) -> str | None:
    """The gap where a box may hold more than is recorded, or None.

    Its make-up is unknown or not written, or it needs a device and none is told.
    """
    only_passed = bool(box.passing) and not box.runs and not box.devices
    unwritten = box.makeup_unrecorded and not only_passed and box.stage not in BEFORE_MAKE_UP
    if box.makeup_unknown or unwritten:
        return f"how box {box.id} is made up"
    wants_device = bool(_untold(box, grounds=False)) or "pigtailed" in box.makeup_words
    if wants_device and not box.devices and box.stage not in BEFORE_MAKE_UP:
        return f"which devices are in box {box.id}"
    return None


def boxes_untold(room: Room) -> tuple[str, ...]:
    """The gap where a room may have boxes that are not recorded: till then nothing is missed there."""
    return () if room.record.complete is True else (f"whether every box of room {room.id} is recorded",)


def untold_in(box: Box, *, grounds: bool = True) -> tuple[str, ...]:
    """The gaps where something may be joined or landed in a box that the record does not tell.

    Its make-up is unknown or not written, or some conductor ends are told
    nowhere; those of equipment grounds count where ``grounds`` is set.
    """
    if gap := unseen_in(box):
        return (gap,)
    ends = _untold(box, grounds=grounds)
    if not ends or box.stage in BEFORE_MAKE_UP:
        return ()
    return (f"where {', '.join(ends)} {'is' if len(ends) == 1 else 'are'} joined or landed",)


def _untold(box: Box, *, grounds: bool) -> list[str]:
    return [each for each in box.untold if grounds or not is_ground(each.rpartition(".")[2])]


def unseen_on(house: House, circuit: Circuit) -> Iterator[str]:
    """The gaps where a circuit may have cables or devices that are not recorded."""
    if not circuit.runs:
        yield f"the cables of circuit {circuit.id}"
        return
    runs = [house.runs[each] for each in circuit.runs]
    panels = {house.breakers[each].panel for each in circuit.breakers}
    if panels and not any(end.id in panels for run in runs for end in run.ends):
        yield f"the cable of circuit {circuit.id} that starts in {' or '.join(sorted(panels))}"
    for run in runs:
        if any(end.kind in ("unknown", "unrecorded") for end in run.ends):
            yield f"where run {run.id} ends"
    for box in circuit.boxes:
        if gap := unseen_in(house.boxes[box]):
            yield gap
