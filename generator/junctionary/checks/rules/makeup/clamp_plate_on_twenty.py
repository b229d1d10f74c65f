"""A wire is under a clamp plate where the device is rated under its circuit, or asks for a loop.

Why it matters: on a 20 A circuit a device rated 15 A may pass on more than its own rating, and then all
    hangs on how the wire is held. A plate that the maker does not list for a wire may not hold it.
What to do: with the breakers off and the box proved dead, lay a loop around the screw, or put in a device
    rated as its circuit is.
Cannot tell: when the breaker's or the device's rating, or how the device may be landed, is not recorded.
Stands: on the terminal's line, or the device's where a word of make-up landed it. One finding a device.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.receptacles import rating_of
from junctionary.formulas.sums import plain
from junctionary.house.model import Device, House, Landing
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(
    ADVICE,
    (
        cite("nec-2023", "110.3(B)"),
        cite("practice", "On a circuit above the device's rating a loop is preferred to a clamp plate."),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [afci], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 12/2 NM-B, from: main, to: H1}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    devices: {r1: duplex}
    terminals:
      r1.brass: {wire: h1.black, how: clamp-plate}    #! clamp-plate-on-twenty
      r1.silver: {wire: h1.white, how: clamp-plate}
      r1.green: {wire: h1.bare, how: loop}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, lands: [loop, clamp-plate]}
"""

PASSES = FAILS.replace("how: clamp-plate", "how: loop").replace("    #! clamp-plate-on-twenty", "")

UNTOLD = FAILS.replace("rating: 20 A, ", "").replace("    #! clamp-plate-on-twenty", "")

PLATE = "clamp-plate"
NOT_LISTED = "The maker does not say that the plate holds a wire there."
PASSES_ON = "More than its own rating may go through its terminals, and all hangs on how the wire is held."


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device with a wire under a clamp plate."""
    for box in house.boxes.values():
        for device in box.devices:
            plated = [each for each in box.landings if each.device == device.id and each.how == PLATE]
            if plated:
                yield from _judged(house, device, plated, box.edition)


def _judged(
    house: House, device: Device, plated: list[Landing], edition: str
) -> Iterator[Fault | CannotTell]:
    first = min(plated, key=lambda each: each.place)
    about = (device.id, *device.circuits)
    unlisted = [each for each in plated if not _listed(device, each)]
    if unlisted:
        found = f"{unlisted[0].terminal} is not listed for a clamp plate"
        yield _fault(first, about, found, NOT_LISTED, edition)
        return
    rating = rating_of(device.kind)
    breakers = [
        each for id_ in device.circuits if id_ in house.circuits for each in house.circuits[id_].breakers
    ]
    amps = [each.to("A") for id_ in breakers if isinstance(each := house.breakers[id_].rating, Quantity)]
    if rating is not None and amps and max(amps) > rating:
        found = f"{device.id} is rated {plain(rating)} A, on a {plain(max(amps))} A circuit"
        yield _fault(first, about, found, PASSES_ON, edition)
    elif rating is None or len(amps) < len(breakers) or not breakers:
        needs = [
            f"the rating of {each}"
            for each in breakers
            if not isinstance(house.breakers[each].rating, Quantity)
        ]
        needs += [f"the rating of {device.id}"] if rating is None else []
        needs += [] if breakers else [f"which breaker feeds {device.id}"]
        yield CannotTell(about, tuple(needs), first.place)


def _listed(device: Device, landing: Landing) -> bool:
    ways = device.kind.ways_to_land(landing.terminal.removeprefix(f"{device.id}."))
    return ways is None or PLATE in ways


def _fault(landing: Landing, about: tuple[str, ...], found: str, because: str, edition: str) -> Fault:
    return Fault(
        place=landing.place,
        about=about,
        found=f"{found}, and its wires are under clamp plates.",
        allowed="There, a loop around the screw.",
        because=because,
        do="With the box proved dead, lay a loop, or put in a device rated as the circuit is.",
        edition=edition,
    )
