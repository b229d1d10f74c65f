"""A receptacle in a wet place has no cover that keeps rain out with a plug in it.

Why it matters: a cover that must stand open while something is plugged in lets rain into the contacts
    exactly when they are live and loaded.
What to do: fit an in-use cover: a hood deep enough to close over the plug.
Cannot tell: when the cover, or how wet the place is, is not recorded. Boxes under a roof are damp, not
    wet, where the record says so. Work before the 2008 edition is left alone.
Stands: on the box's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import BEFORE_MAKE_UP
from junctionary.figures.places import exposure, is_small_receptacle
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.values import UNKNOWN
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "406.9(B)(1)"),), ENERGISED)

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
  G1:    #! wet-cover-missing
    devices: {r1: duplex}
    makeup: end-of-run
    cover: plate
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
"""

PASSES = FAILS.replace("cover: plate", "cover: in-use").replace("    #! wet-cover-missing", "")

UNTOLD = PASSES.replace("    cover: in-use\n", "")

ASKED_SINCE = 2008


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box with a 15 or 20 A receptacle in a wet place."""
    for box in house.boxes.values():
        held = [each.id for each in box.devices if is_small_receptacle(each.kind)]
        place, cover = exposure(house, box), box.record.cover
        if not held or edition_year(box.edition) < ASKED_SINCE or box.stage in BEFORE_MAKE_UP:
            continue
        if place in ("dry", "damp") or cover == "in-use":
            continue
        needs = []
        if place != "wet":
            needs.append(f"whether box {box.id} is in a dry, damp or wet place")
        if cover is None or cover is UNKNOWN:
            needs.append(f"the cover of box {box.id}")
        if needs:
            yield CannotTell((box.id, *box.circuits), tuple(needs), box.place)
            continue
        yield Fault(
            place=box.place,
            about=(box.id, *held, *box.circuits),
            found=f"Box {box.id} is in a wet place, and its cover is: {cover}.",
            allowed="A cover that is weatherproof with the plug in.",
            because="Rain reaches the contacts while something is plugged in.",
            do="Fit an in-use cover.",
            edition=box.edition,
        )
