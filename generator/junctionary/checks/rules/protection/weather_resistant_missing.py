"""A receptacle in a damp or wet place is not of the weather-resistant kind.

Why it matters: rain, frost and sun corrode the contacts and split the face of an ordinary one;
    it then holds a plug loosely, heats, or leaks current.
What to do: put in a receptacle marked weather-resistant; the cover over it is another matter.
Cannot tell: when the marks of the device or how wet the place is are not recorded. A box outdoors
    is in a damp place at the least. Work before the 2008 edition is left alone.
Stands: on the receptacle's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.places import exposure, is_small_receptacle
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "406.9(A)"), cite("nec-2023", "406.9(B)(1)")), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [gfci, afci], feeds: garden, says: "Back garden"}
[circuits/garden.yaml]
circuit: garden
name: Back garden
runs:
  - {id: g1, cable: 12/2 UF-B, from: main, to: G1}
[rooms/garden.yaml]
room: garden
name: Back garden
kind: outdoors
exposed: wet
[boxes/garden.yaml]
room: garden
boxes:
  G1:
    devices: {r1: duplex}    #! weather-resistant-missing
    makeup: end-of-run
    cover: in-use
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("marks: [", "marks: [weather-resistant, ").replace(
    "    #! weather-resistant-missing", ""
)

UNTOLD = PASSES.replace(", marks: [weather-resistant, tamper-resistant]", "")

ASKED_SINCE = 2008
MARK = "weather-resistant"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each 15 and 20 A receptacle outside a dry place."""
    for device in house.devices.values():
        box = house.boxes[device.box]
        place = exposure(house, box)
        marks = device.kind.marks
        exempt = edition_year(box.edition) < ASKED_SINCE or not is_small_receptacle(device.kind)
        if exempt or place == "dry" or MARK in (marks or ()):
            continue
        needs = []
        if place is None:
            needs.append(f"whether box {box.id} is in a dry, damp or wet place")
        if marks is None:
            needs.append(f"whether {device.kind_id} is weather-resistant")
        if needs:
            yield CannotTell((device.id, *device.circuits), tuple(needs), device.place)
            continue
        yield Fault(
            place=device.place,
            about=(device.id, *device.circuits),
            found=f"{device.id} is not marked weather-resistant, in a {_wet(place)} place.",
            allowed="There, a receptacle listed as weather-resistant.",
            because="Weather corrodes its contacts and splits its face.",
            do="Put in a receptacle that is marked weather-resistant.",
            edition=box.edition,
        )


def _wet(place: str | None) -> str:
    return "damp or wet" if place == "not dry" else str(place)
