"""A device's hot terminal is on the neutral, or its neutral terminal on a hot.

Why it matters: what is plugged in or screwed in seems to work, but its switch opens the neutral and
    leaves it live, and the shell of a lampholder can be touched while it is live.
What to do: with the box proved dead, move the wires: the hot to brass (or the black lead), the
    neutral to silver (or the white lead). Where the wires of a cable were swapped in an earlier
    box, mend it there; then everything after it is right again. Test with a plug-in tester.
Cannot tell: when a box's make-up, or where some conductor in it is landed, is unknown or not
    recorded; when nothing tells to which breaker or which bar a terminal comes in the end, because a
    cable, an end, a landing or a make-up on the way is unknown or not recorded. It goes by what is
    connected, never by colour. A terminal that meets a hot and a neutral at once is another matter,
    and so is a device at a voltage it is not made for.
Stands: on the terminal's line, or the device's where the landing comes from a word of make-up; for a
    lead on the joint's line, or the device's. One finding a device, at the first of its terminals.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.voltages import wrongly_fed
from junctionary.checks.wired import PLAIN_LEADS, places_of
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import terminals_of
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "200.11"), cite("nec-2023", "200.10")), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: den, says: "Den, receptacles"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
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
      r1.brass: {wire: b1.white, how: loop}    #! polarity-reversed
      r1.silver: {wire: b1.black, how: loop}
      r1.green: {wire: b1.bare, how: loop}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = (
    FAILS.replace("r1.brass: {wire: b1.white, how: loop}    #! polarity-reversed", "r1.brass: b1.black")
    .replace("r1.silver: {wire: b1.black, how: loop}", "r1.silver: b1.white")
)  # fmt: skip

UNTOLD = PASSES.replace("from: main", "from: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device's hot and neutral terminals, by what they come to with every switch closed."""
    for box in house.boxes.values():
        if untold := untold_in(box, grounds=False):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
        for device in box.devices:
            # One at a wrong voltage has checks of its own.
            if wrongly_fed(house, network, device) is None:
                yield from _judged(box, device, network)


def _judged(box: Box, device: Device, network: Network) -> Iterator[Fault | CannotTell]:
    places = places_of(box, device)
    wrong: dict[str, str] = {}
    untold: dict[str, tuple[str, ...]] = {}
    for terminal in terminals_of(device.kind):
        name = f"{device.id}.{terminal.name}"
        if terminal.role not in ("hot", "neutral") or name not in places:
            continue
        comes_to = network.roles(name)
        hot, neutral = bool(comes_to.hot or comes_to.sources), bool(comes_to.neutral)
        if not hot and not neutral:
            # A piece that meets nothing unknown and no panel is open: hot-open and neutral-open speak of it.
            if name.rpartition(".")[2] not in PLAIN_LEADS and comes_to.unknown:
                untold[name] = comes_to.unknown
        elif hot is not neutral and hot is not (terminal.role == "hot"):
            said = " and ".join(dict.fromkeys((*(feed.breaker for feed in comes_to.hot), *comes_to.sources)))
            wrong[name] = f"the hot of {said}" if hot else "the neutral"
    if wrong:
        yield Fault(
            place=min(places[each] for each in wrong),
            about=(device.id, box.id, *wrong, *device.circuits),
            found="; ".join(f"{name} is on {what}" for name, what in wrong.items()) + ".",
            allowed="Hot on brass or the black lead, neutral on silver or the white lead.",
            because="What is plugged in or fixed there stays live inside when its own switch is off.",
            do=f"With {box.id} proved dead, swap its wires; if an earlier box crossed them, swap them there.",
            edition=box.edition,
        )
    elif untold:
        reasons = dict.fromkeys(reason for each in untold.values() for reason in each)
        way = ": ".join((f"the way from {' and '.join(untold)} back to a panel", "; ".join(reasons))).rstrip(
            ": "
        )
        yield CannotTell((device.id, box.id, *untold), (way,), min(places[each] for each in untold))
