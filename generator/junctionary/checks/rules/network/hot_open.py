"""A device has no way back to any breaker.

Why it matters: it does not work, and nothing says why. A wire that was meant to feed it ends
    somewhere, and whoever finds that end may join it to whatever is near.
What to do: follow the device back, box by box, to the conductor that is not joined, and join it
    with the circuit proved dead.
Cannot tell: when a cable, an end, a landing or a make-up on the way is unknown or not recorded.
    A device with a neutral where its hot should be is reversed, and is told of by that name.
Stands: on the terminal's or the joint's line, or the device's; where the hot of several devices is one
    dead piece, on the first of them, and the others are named with it.
"""

from collections.abc import Iterator, Mapping

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import PLAIN_LEADS, doubts_in, places_of
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network, listed
from junctionary.house.terminals import terminals_of
from junctionary.marks import Place
from junctionary.sources import cite

RULE = Rule(
    DEFECT, (cite("practice", "Every device that is wired has a hot that comes from a breaker."),), MADE_UP
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    joints:
      - {join: [b1.white, b2.white]}
      - {join: [b1.bare, b2.bare]}
    capped: [b1.black, b2.black]
  D2:
    devices: {r1: duplex}    #! hot-open
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = (
    FAILS.replace("capped: [b1.black, b2.black]", "cover: blank")
    .replace("joints:", "joints:\n      - {join: [b1.black, b2.black]}")
    .replace("    #! hot-open", "")
)  # fmt: skip

UNTOLD = PASSES.replace("from: main", "from: unknown")

ROLES = ("hot", "switched")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each hot terminal or lead that is wired; of a switch, whether any of its terminals is live."""
    dead: dict[int, list[tuple[Box, Device, str]]] = {}
    for box in house.boxes.values():
        for device in box.devices:
            wired = places_of(box, device)
            yield from _unwired(network, box, device, wired)
            for name in wired:
                if _is_dead(network, device, name, wired):
                    dead.setdefault(network.zone_at[name], []).append((box, device, name))
    for number, found in dead.items():
        yield _told(network, number, found)


def _unwired(
    network: Network, box: Box, device: Device, wired: Mapping[str, Place]
) -> Iterator[Fault | CannotTell]:
    """A device of which nothing says that a wire comes to it."""
    hot = [each.name for each in terminals_of(device.kind) if each.role in (*ROLES, "traveler")]
    if not hot or device.kind.is_ == "inlet" or any(f"{device.id}.{each}" in wired for each in hot):
        return
    if needs := doubts_in(network, box):
        yield CannotTell((device.id, box.id), needs, device.place)
    else:
        yield Fault(
            place=device.place,
            about=(device.id, box.id),
            found=f"{device.id} has no hot conductor on it.",
            allowed="A hot that comes from a breaker.",
            because="It cannot work.",
            do=f"With {box.id} proved dead, find the conductor meant for it and land it.",
            edition=box.edition,
        )


def _is_dead(network: Network, device: Device, name: str, wired: Mapping[str, Place]) -> bool:
    role = network.terminals[name].role
    if role not in ROLES or device.kind.is_ == "inlet" or name.rpartition(".")[2] in PLAIN_LEADS:
        return False
    if role == "switched":
        # A switch's outgoing side is what its other side is: one live terminal is enough.
        own = [each for each in wired if network.terminals[each].role in ("hot", "switched", "traveler")]
        if any(network.roles(each).hot or network.roles(each).sources for each in own):
            return False
    roles = network.roles(name)
    return not (roles.hot or roles.sources or roles.neutral)


def _told(network: Network, number: int, found: list[tuple[Box, Device, str]]) -> Fault | CannotTell:
    box, device, name = found[0]
    places = places_of(box, device)
    devices = tuple(dict.fromkeys(each.id for _, each, _ in found))
    about = (*devices, *dict.fromkeys(each.id for each, _, _ in found), name)
    unknown = tuple(each.reason for each in network.zones[number].unknown)
    if unknown:
        return CannotTell(about, unknown, places[name])
    return Fault(
        place=places[name],
        about=about,
        found=f"No breaker is joined to the hot of {listed(devices)}.",
        allowed="A way from every hot terminal to a breaker.",
        because="It does not work, and somewhere a conductor ends that was meant to feed it.",
        do=f"Follow the hot back from {name} to the end that is not joined, and join it there, proved dead.",
        edition=box.edition,
    )
