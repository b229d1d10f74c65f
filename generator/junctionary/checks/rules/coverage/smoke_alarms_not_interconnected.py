"""A smoke alarm does not sound with the others.

Why it matters: an alarm that sounds in the cellar alone wakes nobody in a bedroom behind two doors.
What to do: carry the signal wire, usually the red of a 14/3, from alarm to alarm; or put in alarms that
    tell one another without a wire, and mark their kind so.
Cannot tell: when a cable, a joint or a make-up between the alarms is unknown or not recorded.
    Alarms of rooms built before the 2008 edition are left alone.
Stands: on the alarm's line, each that is apart from the most.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wired import doubts_in
from junctionary.figures import Figures
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.house.outlets import SIGNAL
from junctionary.house.terminals import terminals_of
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("irc-2018", "R314.4"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: alarms, says: "Smoke alarms"}
[circuits/alarms.yaml]
circuit: alarms
name: Smoke alarms
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: a2, cable: 14/3 NM-B, from: D1, to: D2}
[rooms/hall.yaml]
room: hall
name: Hall
kind: other
[boxes/hall.yaml]
room: hall
boxes:
  D1: {devices: {q1: alarm}, makeup: pigtailed}
  D2:
    devices: {q1: alarm}    #! smoke-alarms-not-interconnected
    joints:
      - {join: [a2.black, q1.black]}
      - {join: [a2.white, q1.white]}
    capped: [a2.red, a2.bare, q1.orange]
[devices/all.yaml]
devices:
  alarm: {is: smoke-alarm, leads: [18 AWG black, 18 AWG white, 18 AWG orange]}
"""

PASSES = (
    FAILS.replace("    #! smoke-alarms-not-interconnected", "")
    .replace("capped: [a2.red, a2.bare, q1.orange]", "capped: [a2.bare]")
    .replace("[a2.white, q1.white]}", "[a2.white, q1.white]}\n      - {join: [a2.red, q1.orange]}")
)

UNTOLD = PASSES.replace("makeup: pigtailed", "makeup: unknown")

ASKED_SINCE = 2008
ALARM = "smoke-alarm"
WIRELESS = "wireless"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """All alarms of the house by the net of their signal leads."""
    alarms = [
        each
        for each in house.devices.values()
        if each.kind.is_ == ALARM and edition_year(house.boxes[each.box].edition) >= ASKED_SINCE
    ]
    by_net: dict[int | None, list[Device]] = {}
    for each in alarms:
        if WIRELESS not in (each.kind.marks or ()):
            by_net.setdefault(_net(network, each), []).append(each)
    most = max(
        (number for number in by_net if number is not None), key=lambda n: len(by_net[n]), default=None
    )
    for number, apart in by_net.items():
        if len(alarms) > 1 and (number is None or number != most):
            for each in apart:
                yield _judged(house, network, each)


def _net(network: Network, alarm: Device) -> int | None:
    """The net of an alarm's signal lead; None where it has no such lead, or it is joined to nothing."""
    lead = f"{alarm.id}.{SIGNAL}"
    return network.net_at.get(lead) if lead in network.at else None


def _judged(house: House, network: Network, alarm: Device) -> Fault | CannotTell:
    box = house.boxes[alarm.box]
    # An alarm whose leads are told, and none of them for a signal, is joined to none for certain.
    signals = any(each.name == SIGNAL for each in terminals_of(alarm.kind))
    unknown = network.unknown_at(f"{alarm.id}.{SIGNAL}") if signals else ()
    needs = (*(each.reason for each in unknown), *doubts_in(network, box))
    if needs and signals:
        return CannotTell((alarm.id, *alarm.circuits), tuple(dict.fromkeys(needs)), alarm.place)
    return Fault(
        place=alarm.place,
        about=(alarm.id, *alarm.circuits),
        found=f"{alarm.id} is not joined to the other smoke alarms.",
        allowed="Alarms that all sound together.",
        because="An alarm that sounds alone behind two doors wakes nobody.",
        do="Carry the signal wire from alarm to alarm, or put in alarms that need none.",
        edition=box.edition,
    )
