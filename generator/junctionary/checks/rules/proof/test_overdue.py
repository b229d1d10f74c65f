"""A test that a device asks for is overdue.

Why it matters: a GFCI or a smoke alarm that no longer works looks like one that does.
What to do: test it as its kind says, and log it.
Cannot tell: when the interval of the kind is not recorded or cannot be read as a number of days, weeks,
    months or years, or when the record itself is not dated: what is overdue is reckoned to the date of the
    record; and when no test of the device is logged.
Stands: on the device's line.
"""

import re
from collections.abc import Iterator
from datetime import date

from junctionary.checks.finding import ADVICE, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.house.proved import TESTS, tests_of
from junctionary.sources import cite

RULE = Rule(ADVICE, (cite("practice", "A device is tested as often as its maker asks."),), ENERGISED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
recorded: 2026-08-01
[log.yaml]
- {date: 2026-05-20, test: gfci-button, about: H1.r1, result: pass}
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall"}
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
    devices: {r1: gfci}    #! test-overdue
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
  gfci: {is: gfci-receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant], interval: every month}
"""

PASSES = FAILS.replace("2026-05-20", "2026-07-20").replace("    #! test-overdue", "")

UNTOLD = PASSES.replace("every month", "now and then")

DAYS = {"day": 1, "week": 7, "month": 31, "year": 366}
_EVERY = re.compile(r"every (?:(\d+) )?(day|week|month|year)s?")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device of a kind that is to be tested."""
    today = house.record.recorded
    for device in house.devices.values():
        test, asked = TESTS.get(device.kind.is_), device.kind.interval
        if test is None:
            continue
        every = _EVERY.search(asked) if asked is not None else None
        last = _last(house, device, test)
        needs = []
        if every is None:
            needs.append(f"how often {device.kind_id} is to be tested")
        if today is None:
            needs.append("the date of the record")
        if last is None:
            needs.append(f"when {device.id} was last tested")
        if needs:
            yield CannotTell((device.id, *device.circuits), tuple(needs), device.place)
        elif every and today and last and asked:
            days = (date.fromisoformat(today) - date.fromisoformat(last)).days
            most = int(every[1] or 1) * DAYS[every[2]]
            if days > most:
                yield _fault(house, device, last, today, asked)


def _last(house: House, device: Device, test: str) -> str | None:
    dates = [entry.date for entry in tests_of(house, device, test)]
    return max(dates, default=None)


def _fault(house: House, device: Device, last: str, today: str, asked: str) -> Fault:
    return Fault(
        place=device.place,
        about=(device.id, *device.circuits),
        found=f"{device.id} was last tested on {last}; the record is of {today}.",
        allowed=f"As its kind says: {asked}.",
        because="One that no longer works looks like one that does.",
        do="Test it, and log it.",
        edition=house.boxes[device.box].edition,
    )
