"""A device's screws are not on record as tightened to the listed torque.

Why it matters: a loose screw is the commonest cause of a burnt terminal, and one too tight cuts the
    wire. Afterwards torque cannot be looked up on the screw: what was not written down is lost.
What to do: with the breakers off and the box proved dead, loosen the screw and tighten it anew with
    a torque tool, as the device lists; then record the value, or ``torque: listed``.
Cannot tell: when the torque is written ``unknown``, or nothing is written and it is not known whether
    the box was made up; or when its make-up, or where some conductor in it is landed, is unknown
    or not recorded. Editions before 2017 do not ask for it, and a box that is not made up yet
    has nothing to tighten. Push-in terminals and leads have no screw.
Stands: on the terminal's line, or the device's where the landing comes from a word of make-up; one
    finding a device, at the first of its terminals.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures, Tightened
from junctionary.figures.gaps import untold_in
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "110.14(D)"),), MADE_UP)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
stage: made-up
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}    #! torque-not-recorded
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, torque: 14 in-lb}
"""

PASSES = FAILS.replace("room: den\nboxes:", "room: den\ndefaults: {torque: listed}\nboxes:").replace(
    "    #! torque-not-recorded", ""
)

UNTOLD = PASSES.replace("torque: listed", "torque: unknown")

ASKED_SINCE = 2017
NOT_MADE_UP = ("planned", "roughed", "covered")
DONE = ("made-up", "energised", "verified")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device with screws, box by box."""
    loose: dict[str, list[Tightened]] = {}
    for each in figures.torques.values():
        if not each.recorded:
            loose.setdefault(each.device, []).append(each)
    for box in house.boxes.values():
        if edition_year(box.edition) < ASKED_SINCE or box.stage in NOT_MADE_UP:
            continue
        if untold := untold_in(box):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
        for device in box.devices:
            yield from _judged(box, device, loose.get(device.id, []))


def _judged(box: Box, device: Device, screws: list[Tightened]) -> Iterator[Fault | CannotTell]:
    place = {each.terminal: each.place for each in box.landings}
    short = [each for each in screws if each.said is NONE or (each.said is None and box.stage in DONE)]
    if short:
        first = min(short, key=lambda each: place[each.terminal])
        listed = f"{first.listed} is listed" if first.listed else "the device's own listing"
        none = "No torque was used on" if first.said is NONE else "No torque is recorded for"
        yield Fault(
            place=place[first.terminal],
            about=(device.id, box.id, *(each.terminal for each in short)),
            found=f"{none} {', '.join(each.terminal for each in short)}.",
            allowed=f"Tightened to the listed torque: {listed}.",
            because="A loose screw heats and burns, and it cannot be told afterwards how tight one was.",
            do="With the box proved dead, tighten it anew with a torque tool and record it.",
            edition=box.edition,
        )
    elif screws:
        needs = tuple(
            f"the torque of {each.terminal}"
            if each.said is UNKNOWN
            else f"the torque of {each.terminal}, or the stage of {box.id}"
            for each in screws
        )
        yield CannotTell((device.id, box.id), needs, place[screws[0].terminal])
