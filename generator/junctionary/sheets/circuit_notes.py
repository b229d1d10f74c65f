"""What stands under a box on the map of a circuit: its devices, guards, joints, loads, and the drop there."""

from collections.abc import Iterator

from junctionary.house.model import Box
from junctionary.records.words import GUARDS
from junctionary.sheets.circuit_drop import drop_note
from junctionary.sheets.makeup import device_words
from junctionary.sheets.naming import counted, said, several
from junctionary.sheets.survey import Survey
from junctionary.units import Quantity

FEW = 2
"""So many loads of one box are named; more are counted."""


def box_notes(survey: Survey, circuit: str, box_id: str) -> Iterator[str]:
    """Short lines, what it is first and the voltage drop last."""
    box = survey.house.boxes[box_id]
    words = [device_words(each).split(",")[0] for each in box.devices]
    if box.name and box.name not in words:
        yield box.name
    for word in dict.fromkeys(words):
        yield several(words.count(word), word)
    if box.makeup_unknown or box.makeup_unrecorded:
        yield "make-up unknown" if box.makeup_unknown else "make-up not recorded"
    yield from _guards(survey, box)
    yield from _loads(survey, circuit, box)
    joints = sum(circuit in each.circuits for each in box.joints)
    if joints:
        yield counted(joints, "joint")
    yield from drop_note(survey, circuit, box_id)


def _guards(survey: Survey, box: Box) -> Iterator[str]:
    """What a device here guards besides itself, and what device elsewhere guards this box."""
    house, guarded = survey.house, survey.figures.guarded
    own = {each.id for each in box.devices}
    for guard in GUARDS:
        beyond = {
            house.devices[each.device].box: None
            for each in guarded.values()
            if own & set(each.by[guard]) and each.device not in own
        }
        if beyond:
            yield f"its {guard.upper()} guards {', '.join(beyond)} too"
        by = {
            house.devices[each].box: None
            for device in box.devices
            if device.id in guarded
            for each in guarded[device.id].by[guard]
            if each in house.devices and each not in own
        }
        if by:
            yield f"{guard.upper()} at {' and '.join(by)}"


def _loads(survey: Survey, circuit: str, box: Box) -> Iterator[str]:
    """What is plugged in or wired here, with what it draws."""
    house = survey.house
    here = [
        each
        for each in (house.circuits[circuit].loads if circuit in house.circuits else ())
        if any(_is_at(each.plugged or each.wired, device.id) for device in box.devices)
        or each.wired == box.id
    ]
    for load in here[:FEW]:
        draws = f" {said(house, load.draws)}" if isinstance(load.draws, Quantity) else ""
        yield f"{load.name or load.id}{draws}"
    if len(here) > FEW:
        yield f"and {counted(len(here) - FEW, 'load')} more"


def _is_at(at: str | None, device: str) -> bool:
    return at is not None and (at == device or at.startswith(f"{device}."))
