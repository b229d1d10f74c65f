"""What a mutation is, and the facts of the demo house that several choose their places by."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from junctionary.house.model import Box, Device, House
from mutations.demo import Demo, Seed


@dataclass(frozen=True)
class Mutation:
    """A slip that a rule must find.

    ``follows`` are the other rules that may then speak of a hazard or a defect, each with the reason
    why that follows from the slip.
    """

    rule: str
    sites: Callable[[Demo], Iterator[Seed]]
    follows: Mapping[str, str] = field(default_factory=dict)


def is_new(box: Box) -> bool:
    """Whether it is of the part that the owner built, not of the old wing."""
    return box.edition == "nec-2023" and box.stage != "as-found"


def new_boxes(demo: Demo) -> list[Box]:
    return [each for each in demo.boxes() if is_new(each)]


def only_device(box: Box, *kinds: str) -> Device | None:
    """The device of a box with one device of one of these kinds, by the id of its kind."""
    return box.devices[0] if len(box.devices) == 1 and box.devices[0].kind_id in kinds else None


def is_word(box: Box, word: str) -> bool:
    """Whether the make-up of a box is that word alone."""
    return box.makeup_words == (word,)


def runs_by_end(house: House, box: Box) -> tuple[list[str], list[str]]:
    """The runs that come into a box from the supply, and those that go on from it."""
    runs = [house.runs[each] for each in box.runs]
    return [each.id for each in runs if each.to.id == box.id], [
        each.id for each in runs if each.from_.id == box.id
    ]


def breaker_amps(house: House, box: Box) -> int:
    """The rating of the one breaker of a box's circuits, in A; 0 where there are several."""
    breakers = {each for id_ in box.circuits for each in house.circuits[id_].breakers}
    return int(house.breakers[breakers.pop()].rating.to("A")) if len(breakers) == 1 else 0  # type: ignore[union-attr]


def cable_of(demo: Demo, run: str) -> str:
    """The cable of a run as it is written, where that is a word or two."""
    circuit = demo.house.runs[run].circuit
    lines = demo.files.get(f"circuits/{circuit}.yaml", "").splitlines()
    line = next((each for each in lines if each.startswith(f"  - {{id: {run},")), "")
    told = re.search(r"cable: ([^,{]+),", line)
    return told[1] if told else ""
