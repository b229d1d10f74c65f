"""What may be reset or switched before anything is opened: it costs nothing, and is the answer most often."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Literal

from junctionary.house.dark import fed_by
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.supply import Supply
from junctionary.house.told import Told

ORDER = ("gfci", "switch", "breaker")
DO = {
    "gfci": "press its test button, then its reset; one that will not reset may have no supply itself",
    "switch": "try it in every position, with a lamp that is known to work",
    "breaker": "fully off, then on, once: a tripped handle can look on; where it trips again, leave it off",
}


@dataclass(frozen=True, slots=True)
class Reset:
    """One GFCI device, switch or breaker to try. ``common`` when every dead point hangs on it."""

    id: str
    kind: Literal["gfci", "switch", "breaker"]
    do: str
    common: bool
    box: str | None
    by_label: bool = False


def resets_of(
    house: House, network: Network, held: Supply, marks: Told, proved: Collection[str]
) -> tuple[Reset, ...]:
    """GFCI devices, then switches, then breakers; those of all the dead first, then the nearest.

    What a working point proves closed is left out, and so is a main: it would
    take the whole house along. Of a dead point that the record leads to no
    breaker, the breakers that its circuits are labelled with.
    """
    tree = held.trees["hot"]
    dead: dict[tuple[str, str], set[str]] = {}
    steps: dict[tuple[str, str], int] = {}
    labelled: set[str] = set()
    closed = {edge.of for edge in map(tree.edge, proved) if edge.kind in ("protector", "breaker")}
    for each in marks.dead:
        for start in held.starts["hot"][each]:
            for step, edge in enumerate(tree.trail(start)):
                kind = {"protector": "gfci"}.get(edge.kind, edge.kind)
                if kind in ORDER and edge.of not in closed:
                    dead.setdefault((kind, edge.of), set()).add(each)
                    steps[kind, edge.of] = min(step, steps.get((kind, edge.of), step))
        if not held.starts["hot"][each]:
            for breaker in fed_by(house, network, held.outlets[each].device).breakers:
                dead.setdefault(("breaker", breaker), set()).add(each)
                steps.setdefault(("breaker", breaker), len(tree.toward))
                labelled.add(breaker)
    found = []
    for (kind, id_), points in dead.items():
        device = house.devices.get(id_)
        common = len(points) == len(marks.dead)
        box = device.box if device is not None else None
        word: Literal["gfci", "switch", "breaker"] = (
            "gfci" if kind == "gfci" else "switch" if kind == "switch" else "breaker"
        )
        found.append(Reset(id_, word, DO[kind], common, box, kind == "breaker" and id_ in labelled))
    return tuple(
        sorted(found, key=lambda each: (ORDER.index(each.kind), not each.common, steps[each.kind, each.id]))
    )
