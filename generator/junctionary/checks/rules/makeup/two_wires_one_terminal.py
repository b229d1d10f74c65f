"""More than one wire is landed on a terminal that is not marked for it.

Why it matters: a screw holds one wire. Of two, one bears less, works loose, heats and arcs; and
    whatever hangs on it goes dead or, if it is the neutral, worse.
What to do: with the breakers off and the box proved dead, join the wires in a connector and bring one
    pigtail to the terminal, or use a device whose instructions say that its clamp takes two.
Cannot tell: when several wires are under a clamp plate and the kind of device does not say how many
    its clamp takes (``per_terminal``); or when a box's make-up, or where some conductor in it is
    landed, is unknown or not recorded.
Stands: on the terminal's line, or the device's where the landing comes from a word of make-up.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import House, Landing
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "110.14(A)"), cite("ul-498", "one wire a screw")), MADE_UP)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: unknown, to: D1}
  - {id: b2, cable: 12/2 NM-B, from: D1, to: unknown}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}
    terminals:
      r1.brass-top: {wire: [b1.black, b2.black], how: loop}    #! two-wires-one-terminal
      r1.silver-top: {wire: b1.white, how: loop}
      r1.silver-bottom: {wire: b2.white, how: loop}
    joints:
      - {join: [b1.bare, b2.bare, r1.green]}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = FAILS.replace(
    "[b1.black, b2.black], how: loop}    #! two-wires-one-terminal",
    "b1.black, how: loop}\n      r1.brass-bottom: {wire: b2.black, how: loop}",
)

UNTOLD = FAILS.replace("how: loop}    #! two-wires-one-terminal", "how: clamp-plate}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each terminal with several wires, against what its kind of device says."""
    for box in house.boxes.values():
        if untold := untold_in(box):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
        for landing in box.landings:
            # Armour is held by its fitting at the box's wall, not by the screw.
            wires = [each.name for each in landing.wires if each.colour != "armor"]
            device = house.devices.get(landing.device)
            most = device.kind.per_terminal if device else None
            if len(wires) < 2 or landing.how == "lead" or (most is not None and len(wires) <= most):
                continue
            if most is None and landing.how == "clamp-plate" and device is not None:
                needs = f"how many wires the clamp of a {device.kind_id} takes (per_terminal)"
                yield CannotTell((landing.terminal, device.id, box.id), (needs,), landing.place)
            else:
                yield _fault(landing, wires, most, box.edition)


def _fault(landing: Landing, wires: list[str], most: int | None, edition: str) -> Fault:
    held = " and ".join(each.partition("/")[2] for each in wires)
    return Fault(
        place=landing.place,
        about=(landing.terminal, landing.device, landing.box, *wires),
        found=f"{landing.terminal} holds {len(wires)} wires: {held}.",
        allowed=f"At most {most} on this terminal." if most and most > 1 else "One wire on a terminal.",
        because="The wire that bears less works loose, heats and arcs.",
        do="With the box proved dead, join them in a connector, and bring one pigtail to the terminal.",
        edition=edition,
    )
