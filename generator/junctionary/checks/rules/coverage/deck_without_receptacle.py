"""A deck or porch that one steps onto from inside has no receptacle.

Why it matters: lamps and grills on it are then fed through the door, on a cord that is shut in it and
    walked over in the wet.
What to do: put in a weather-resistant receptacle with a cover for its place, guarded against ground
    faults, no more than 6-1/2 ft above the deck.
Cannot tell: when no door to the house is recorded, or what is in its boxes is not. In the 2008 edition a
    deck of less than 20 ft2 is left out. Decks built before the 2008 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.entrances import is_entered
from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import no_higher_than, receptacles_in
from junctionary.figures import Figures
from junctionary.house.geometry import area_in2, shape
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(E)(3)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci], feeds: one, says: "Deck"}
[circuits/one.yaml]
circuit: one
name: Deck
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[rooms/deck.yaml]
room: deck    #! deck-without-receptacle
name: Deck
kind: deck
complete: true
exposed: damp
things:
  - {what: door, wall: north, to: den}
[boxes/deck.yaml]
room: deck
boxes:
  D1: {at: {wall: north, along: 4 ft, up: 7 ft}, devices: {r1: duplex}, makeup: end-of-run, cover: in-use}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
"""

PASSES = FAILS.replace("up: 7 ft", "up: 2 ft").replace("    #! deck-without-receptacle", "")

UNTOLD = PASSES.replace("at: {wall: north, along: 4 ft, up: 2 ft}, ", "")

HIGHEST_IN = 78
EVERY_SIZE_SINCE = 2011
SMALL_IN2 = 20 * 144


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each deck and porch of the house by the receptacles on it."""
    for room in rooms_of(house, "deck", "porch"):
        held = receptacles_in(house, room, no_higher_than(HIGHEST_IN))
        entered = is_entered(house, room)
        if held.boxes or entered is False or _is_left_out(room):
            continue
        lacks = held.lacks if entered else (*held.lacks, f"whether a door of the house leads to {room.id}")
        if lacks:
            yield CannotTell((room.id,), lacks, room.place)
            continue
        yield Fault(
            place=room.place,
            about=(room.id,),
            found=f"{room.name} has no receptacle in reach.",
            allowed="One on each deck and porch that is entered from inside, no more than 6-1/2 ft up.",
            because="Lamps and grills are then fed through the door, on a cord that is shut in it.",
            do="Put in a weather-resistant receptacle that opens on a ground fault, with its cover.",
            edition=room.edition,
        )


def _is_left_out(room: Room) -> bool:
    made = shape(room.record)
    small = made is not None and area_in2(tuple(each.left for each in made.walls)) < SMALL_IN2
    return small and edition_year(room.edition) < EVERY_SIZE_SINCE
