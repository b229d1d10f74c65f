"""What a conductor of a run carries, by where it comes to, for the checks of colours."""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.house.model import House, Role, Run
from junctionary.house.network import Network

LOOP = "loop"


@dataclass(frozen=True, slots=True)
class Carried:
    """A conductor's role with every switch closed; None where nothing tells, with what is missing."""

    role: Role | None
    unknown: tuple[str, ...]


def carries(house: House, network: Network, run: Run, colour: str) -> Carried:
    """The role of one conductor, from either of its ends that stands in the network."""
    unknown: list[str] = []
    for end in run.ends:
        point = f"{end.id}/{run.id}.{colour}"
        if point not in network.at:
            continue
        roles = network.roles(point)
        if roles.hot:
            return Carried("hot", ())
        if roles.sources:
            # Of a second source's own cable the network does not tell the legs from the neutral.
            return Carried(None, ())
        if {edge.b.rsplit("/", 1)[1] for edge in network.zone_of(point).bars} >= {"neutral", "ground"}:
            # Neutral and ground are joined out there: that has a check of its own, and colours tell nothing.
            return Carried(None, ())
        unknown += roles.unknown
        if not unknown and roles.neutral:
            return Carried("neutral", ())
        if not unknown and roles.ground:
            return Carried("ground", ())
    return Carried(None, tuple(unknown))


def unmarked_ends(house: House, run: Run, colour: str) -> Iterator[str]:
    """The boxes and panels where a conductor ends and is not re-marked; a switch loop's word re-marks it."""
    for end in run.ends:
        if end.kind == "box" and end.id is not None:
            box = house.boxes[end.id]
            if f"{run.id}.{colour}" not in box.record.marked and LOOP not in box.makeup_words:
                yield box.id
        elif end.kind == "panel" and end.id is not None:
            breakers = house.circuits[run.circuit].breakers if run.circuit in house.circuits else ()
            marked = [each for id_ in breakers for each in house.breakers[id_].record.marked or {}]
            if colour not in marked:
                yield end.id
