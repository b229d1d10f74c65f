"""A device is past the date by which it is to be replaced.

Why it matters: the sensor of a smoke alarm ages, and its button tests the horn and not the sensor. One that
    is past its date may sleep through a fire and still sound when it is pressed.
What to do: put in a new one, and record the date on its back as `replace_by`.
Cannot tell: when a smoke alarm's date is not recorded, for it or for its kind, or when the record itself is
    not dated: what is past is reckoned to the date of the record. The date is the maker's, as recorded. Of
    other devices only those are judged that have one.
Stands: on the device's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.dates import later, replace_by
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.values import Said
from junctionary.sources import cite

RULE = Rule(
    ADVICE, (cite("practice", "A device is replaced by the date that its maker prints on it."),), ENERGISED
)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
recorded: 2026-08-01
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall, smoke alarm"}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    devices: {a1: alarm}    #! device-past-its-date
    makeup: end-of-run
    replace_by: {a1: 2026-05}
[devices/all.yaml]
devices:
  alarm: {is: smoke-alarm, leads: [18 AWG black, 18 AWG white]}
"""

PASSES = FAILS.replace("a1: 2026-05", "a1: 2036-05").replace("    #! device-past-its-date", "")

UNTOLD = PASSES.replace("    replace_by: {a1: 2036-05}\n", "")

DATED = ("smoke-alarm",)
"""Devices of which every one has such a date printed on it."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device that has a date, and each that must have one."""
    today = house.record.recorded
    for device in house.devices.values():
        by = replace_by(house.boxes[device.box], device)
        if by is None and device.kind.is_ not in DATED:
            continue
        needs = (
            []
            if isinstance(by, str) and not isinstance(by, Said)
            else [f"by when {device.id} is to be replaced"]
        )
        needs += [] if today is not None else ["the date of the record"]
        if needs:
            yield CannotTell((device.id, *device.circuits), tuple(needs), device.place)
        elif later(str(today), str(by)):
            yield Fault(
                place=device.place,
                about=(device.id, *device.circuits),
                found=f"{device.id} was to be replaced by {by}; the record is of {today}.",
                allowed="A device no older than the date its maker prints on it.",
                because="Past it the sensor may be dead, and the button does not show it.",
                do="Put in a new one, and record the date on its back.",
                edition=house.boxes[device.box].edition,
            )
