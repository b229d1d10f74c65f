"""What a conductor of a run carries, by where it comes to, for the checks of colours."""

from dataclasses import dataclass

from junctionary.house.model import House, Role, Run
from junctionary.house.network import Network


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
