"""A live conductor ends with nothing over its end.

Why it matters: it is bare copper at full voltage, in a box that somebody will put a hand in.
What to do: switch off, prove it dead, and put a listed connector on the end; or take the conductor off
    where it is fed.
Cannot tell: when nothing tells whether a loose end is live, because something on its way is unknown or
    not recorded. Every switch counts as closed.
Stands: on the box's line. One finding a box.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "110.14(B)"),), MADE_UP)

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
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:    #! live-end-uncapped
    loose: [b1.black]
    capped: [b1.white, b1.bare]
"""

PASSES = FAILS.replace("loose: [b1.black]\n    capped: [", "capped: [b1.black, ").replace(
    "    #! live-end-uncapped", ""
)

UNTOLD = FAILS.replace("from: main", "from: unknown").replace("    #! live-end-uncapped", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box with a loose end in it."""
    for box in house.boxes.values():
        roles = {each: network.roles(each) for each in box.loose if each in network.zone_at}
        live = [each for each, said in roles.items() if said.hot or said.sources]
        if live:
            fed = dict.fromkeys(feed.breaker for each in live for feed in roles[each].hot)
            fed |= dict.fromkeys(source for each in live for source in roles[each].sources)
            yield Fault(
                place=box.place,
                about=(box.id, *live, *fed),
                found=f"In {box.id} the end of {listed(live)} is bare, and live from {listed(fed)}.",
                allowed="A listed connector on every end that nothing is joined to.",
                because="It is bare at full voltage, where somebody will put a hand.",
                do=f"Switch off {listed(fed)}, prove it dead, and cap the end.",
                edition=box.edition,
            )
        unsure = {each: said.unknown for each, said in roles.items() if each not in live and said.unknown}
        if unsure:
            needs = tuple(dict.fromkeys(reason for each in unsure.values() for reason in each))
            yield CannotTell((box.id, *unsure), needs, box.place)
