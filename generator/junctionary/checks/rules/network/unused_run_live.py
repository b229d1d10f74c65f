"""A live cable feeds nothing.

Why it matters: it is one more thing to be cut or drilled into, and nobody misses it when it is damaged.
What to do: with the breakers off and the box proved dead, take it off where it is fed and cap it at both
    ends, or keep it and label both.
Cannot tell: when the far end of a live run is unknown or not recorded.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Edge, Network, is_ground, listed
from junctionary.sources import cite

RULE = Rule(ADVICE, (cite("practice", "A cable that feeds nothing is taken off where it is fed."),), MADE_UP)

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
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}    #! unused-run-live
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    capped: [b1]
"""

PASSES = (
    FAILS.replace("    #! unused-run-live", "").replace(
        "capped: [b1]", "devices: {r1: duplex}\n    makeup: end-of-run"
    )
    + """\
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""
)

UNTOLD = FAILS.replace("to: D1}    #! unused-run-live", "to: unknown}").replace(
    "    capped: [b1]", "    cover: blank"
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run with a live conductor, by what becomes of its conductors at the far end."""
    ended = {each for box in house.boxes.values() for each in box.capped}
    untold = {each for box in house.boxes.values() for each in box.untold}
    for run in house.runs.values():
        if run.circuit in house.sources:
            continue
        edges = [each for each in network.index.conductors.get(run.id, ()) if _may_carry(each)]
        live = [each for each in edges if network.zone_of(each.a).feeds]
        if not live:
            continue
        if run.to.kind in ("unknown", "unrecorded"):
            yield CannotTell((run.id, run.circuit), (f"where {run.id} goes",), run.place)
        elif any(each.b in untold for each in edges) and all(each.b in ended | untold for each in edges):
            yield CannotTell((run.id, run.circuit), (f"how {run.id} ends in {run.to.id}",), run.place)
        elif run.to.kind == "none" or all(each.b in ended for each in edges):
            breakers = dict.fromkeys(feed.breaker for each in live for feed in network.zone_of(each.a).feeds)
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit, *breakers),
                found=f"Run {run.id} is live from {listed(breakers)} and feeds nothing.",
                allowed="A cable that feeds nothing is dead.",
                because="It can be cut or drilled into, and nobody would miss it before.",
                do=f"Take {run.id} off where it is fed and cap it there, or label both its ends.",
                edition=run.edition,
            )


def _may_carry(edge: Edge) -> bool:
    return not is_ground(edge.a.rpartition(".")[2])
