"""Knob-and-tube wiring, whose taps are made in the open and soldered by design."""

from junctionary.house.model import House, Joint, Run
from junctionary.records.cables import Cable

OPEN_WIRING = "knob-and-tube"


def is_knob_and_tube(run: Run) -> bool:
    """Whether a run is recorded as knob-and-tube."""
    return isinstance(run.cable, Cable) and run.cable.kind == OPEN_WIRING


def is_open_wiring(house: House, joint: Joint) -> bool:
    """Whether every run in a joint is knob-and-tube."""
    runs = [house.runs[each.run] for each in joint.members if each.run is not None]
    return bool(runs) and all(map(is_knob_and_tube, runs))
