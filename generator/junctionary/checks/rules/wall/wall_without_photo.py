"""A wall with wiring in it is about to be closed, and no photo shows it.

Why it matters: a picture with a tape in it tells for fifty years where not to drill; the day the board
    goes up is the last on which it can be taken.
What to do: photograph the wall square on, with a tape in the picture, and list it under photos.
Cannot tell: when the stage of the room is not recorded. Only rooms that are roughed in are judged: in a
    closed wall nothing is to be seen any more.
Stands: on the room's key, one finding a room.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.proved import walls_shown
from junctionary.sources import cite

RULE = Rule(
    ADVICE, (cite("practice", "Every wall with wiring in it is photographed before it is closed."),), ROUGHED
)

FAILS = """
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
room: hall    #! wall-without-photo
name: Hall
kind: hall
stage: roughed
[boxes/hall.yaml]
room: hall
boxes:
  H1: {at: {wall: north, along: 2 ft, up: 14 in}, devices: {r1: duplex}}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace(
    "[boxes/hall.yaml]",
    "[photos/photos.yaml]\nphotos: [{file: n.jpg, shows: H1, room: hall, wall: north}]\n[boxes/hall.yaml]",
).replace("    #! wall-without-photo", "")

UNTOLD = FAILS.replace("stage: roughed\n", "").replace("    #! wall-without-photo", "")

OPEN = "roughed"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each room whose walls are open, by the walls with boxes."""
    for room in house.rooms.values():
        bare = [wall for wall, seen in walls_shown(house, room).items() if not seen]
        if room.stage is None and bare:
            yield CannotTell((room.id,), (f"at which stage room {room.id} is",), room.place)
        elif room.stage == OPEN and bare:
            yield Fault(
                place=room.place,
                about=(room.id,),
                found=f"No photo shows these walls of {room.name}: {', '.join(bare)}.",
                allowed="A photo of every wall with wiring in it, before it is closed.",
                because="The day the board goes up is the last on which it can be taken.",
                do="Photograph each wall square on, with a tape in the picture.",
                edition=room.edition,
            )
