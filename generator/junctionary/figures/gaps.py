"""Facts that figures find missing, each in one wording."""

from collections.abc import Iterator

from junctionary.house.model import Box, Circuit, House

BEFORE_MAKE_UP = ("planned", "roughed", "covered")
"""Stages at which nothing is joined or landed yet, so that no make-up is missing."""


def unseen_in(box: Box) -> str | None:
    """The gap where a box may hold more than is recorded, or None: its make-up is unknown or not written."""
    only_passed = bool(box.passing) and not box.runs and not box.devices
    unwritten = box.makeup_unrecorded and not only_passed and box.stage not in BEFORE_MAKE_UP
    if box.makeup_unknown or unwritten:
        return f"how box {box.id} is made up"
    return None


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
