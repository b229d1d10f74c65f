"""One fault seeded at random into a random valid house, and what must then be found, and where.

    .venv/bin/python tests/seeding.py [HOUSES]

draws that many houses (1,000 unless told), judges each sound, seeds one fault, judges again, and
prints how often each kind of fault was seeded and found.
"""

import sys
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from random import Random

from random_houses import as_text, random_house

from junctionary.checks.engine import judge
from junctionary.checks.examples import read_example
from junctionary.checks.finding import Finding
from junctionary.figures import work_out
from junctionary.house.model import Box, Breaker, Device, House, Joint, Landing, Member
from junctionary.house.network import network
from junctionary.marks import Place
from junctionary.records.boxes import BoxSize
from junctionary.records.values import NONE
from junctionary.units import Quantity, read_quantity


@dataclass(frozen=True)
class Seeded:
    """A house with one fault: the rule that must name it, and the places at which it may stand."""

    house: House
    rule: str
    places: tuple[Place, ...]


def grave(house: House) -> list[Finding]:
    """Every hazard and defect of a house."""
    joined = network(house)
    findings = judge(house, joined, work_out(house, joined)).findings
    return [finding for finding in findings if finding.severity != "advice"]


def with_box(house: House, box: Box) -> House:
    return replace(
        house,
        boxes={**house.boxes, box.id: box},
        devices={**house.devices, **{device.id: device for device in box.devices}},
    )


def with_breaker(house: House, changed: Breaker) -> House:
    panels = {
        id_: replace(
            panel, breakers=tuple(changed if each.id == changed.id else each for each in panel.breakers)
        )
        for id_, panel in house.panels.items()
    }
    return replace(house, panels=panels, breakers={**house.breakers, changed.id: changed})


def renamed(box: Box, names: Mapping[str, str]) -> Box:
    """The box with its terminals and joints under other names: wires change places."""

    def member(each: Member) -> Member:
        return replace(each, name=names.get(each.name, each.name))

    return replace(
        box,
        joints=tuple(replace(each, members=tuple(map(member, each.members))) for each in box.joints),
        landings=tuple(
            replace(
                each,
                terminal=names.get(each.terminal, each.terminal),
                wires=tuple(map(member, each.wires)),
            )
            for each in box.landings
        ),
    )


def without(box: Box, terminal: str) -> Box:
    """The box with nothing on a terminal that a pigtail came to."""
    return replace(
        box,
        joints=tuple(
            replace(each, members=tuple(member for member in each.members if member.name != terminal))
            for each in box.joints
        ),
        landings=tuple(each for each in box.landings if each.terminal != terminal),
    )


def merged(box: Box, one: Joint, other: Joint) -> Box:
    """The box with two of its joints made one."""
    made = renamed(box, {other.id: one.id})
    joints = tuple(
        replace(each, members=(*one.members, *other.members)) if each.id == one.id else each
        for each in made.joints
        if each.id != other.id
    )
    return replace(made, joints=joints)


def screws(box: Box, device: Device) -> dict[str, Landing]:
    """What is landed on a device, by the terminal's own marking."""
    return {
        each.terminal.removeprefix(f"{device.id}."): each for each in box.landings if each.device == device.id
    }


def by_pigtail(landing: Landing | None) -> bool:
    return landing is not None and [wire.kind for wire in landing.wires] == ["pigtail"]


def receptacles(house: House, chance: Random) -> list[tuple[Box, Device]]:
    found = [
        (box, device)
        for box in house.boxes.values()
        for device in box.devices
        if device.kind.is_ == "receptacle" and device.kind.outlets is None and device.split is None
    ]
    chance.shuffle(found)
    return found


def shuffled_boxes(house: House, chance: Random) -> list[Box]:
    boxes = list(house.boxes.values())
    chance.shuffle(boxes)
    return boxes


def polarity_reversed(house: House, chance: Random) -> Seeded | None:
    for box, device in receptacles(house, chance):
        if {"brass-top", "silver-top"} <= set(screws(box, device)):
            brass, silver = f"{device.id}.brass-top", f"{device.id}.silver-top"
            if "brass-bottom" in screws(box, device) or "silver-bottom" in screws(box, device):
                continue
            swapped = renamed(box, {brass: silver, silver: brass})
            places = tuple(each.place for each in box.landings if each.terminal in (brass, silver))
            return Seeded(with_box(house, swapped), "polarity-reversed", (device.place, *places))
    return None


def gfci_line_load_swapped(house: House, chance: Random) -> Seeded | None:
    for box in shuffled_boxes(house, chance):
        for device in box.devices:
            if device.kind.is_ == "gfci-receptacle":
                names = {
                    f"{device.id}.{one}-{metal}": f"{device.id}.{other}-{metal}"
                    for metal in ("brass", "silver")
                    for one, other in (("line", "load"), ("load", "line"))
                }
                swapped = with_box(house, renamed(box, names))
                places = (device.place, *(each.place for each in screws(box, device).values()))
                return Seeded(swapped, "gfci-line-load-swapped", places)
    return None


def open_terminal(terminal: str, rule: str) -> Callable[[House, Random], Seeded | None]:
    def seed(house: House, chance: Random) -> Seeded | None:
        for box, device in receptacles(house, chance):
            if by_pigtail(screws(box, device).get(terminal)):
                return Seeded(with_box(house, without(box, f"{device.id}.{terminal}")), rule, (device.place,))
        return None

    return seed


def ground_borrowed_from_neutral(house: House, chance: Random) -> Seeded | None:
    for box, device in receptacles(house, chance):
        landed = screws(box, device)
        if by_pigtail(landed.get("green")) and "silver-top" in landed:
            green, silver = f"{device.id}.green", f"{device.id}.silver-top"
            old = landed["green"]
            bare = without(box, green)
            wire = replace(old.wires[0], name=silver)
            booted = replace(bare, landings=(*bare.landings, replace(old, wires=(wire,))))
            places = (device.place, old.place, landed["silver-top"].place)
            return Seeded(with_box(house, booted), "ground-borrowed-from-neutral", places)
    return None


def joints_of_two(role: str, rule: str) -> Callable[[House, Random], Seeded | None]:
    """Joints of one role but two circuits, in one box, joined."""

    def seed(house: House, chance: Random) -> Seeded | None:
        for box in shuffled_boxes(house, chance):
            alike = [each for each in box.joints if each.role == role]
            for one in alike:
                for other in alike:
                    if one.circuits and other.circuits and set(one.circuits).isdisjoint(other.circuits):
                        joined = merged(box, one, other)
                        return Seeded(with_box(house, joined), rule, (one.place, other.place))
        return None

    return seed


def neutral_borrowed(house: House, chance: Random) -> Seeded | None:
    """A receptacle's neutral pigtail moved to the other circuit's neutrals in the same box."""
    for box, device in receptacles(house, chance):
        silver = screws(box, device).get("silver-top")
        if silver is None or not by_pigtail(silver):
            continue
        own = next(each for each in box.joints if each.id == silver.wires[0].name)
        for other in box.joints:
            if other.role == "neutral" and other.circuits and set(other.circuits).isdisjoint(own.circuits):
                moved = without(box, silver.terminal)
                member = next(each for each in own.members if each.name == silver.terminal)
                joints = tuple(
                    replace(each, members=(*each.members, member)) if each.id == other.id else each
                    for each in moved.joints
                )
                landing = replace(silver, wires=(replace(silver.wires[0], name=other.id),))
                changed = replace(moved, joints=joints, landings=(*moved.landings, landing))
                places = (device.place, silver.place, other.place)
                return Seeded(with_box(house, changed), "neutral-borrowed", places)
    return None


def neutral_ground_joined(house: House, chance: Random) -> Seeded | None:
    for box in shuffled_boxes(house, chance):
        neutral = next((each for each in box.joints if each.role == "neutral"), None)
        ground = next((each for each in box.joints if each.role == "ground"), None)
        if neutral is not None and ground is not None:
            joined = with_box(house, merged(box, neutral, ground))
            return Seeded(joined, "neutral-ground-joined", (neutral.place, ground.place))
    return None


def pairs(house: House) -> list[tuple[Breaker, Breaker]]:
    return [
        (house.breakers[circuit.breakers[0]], house.breakers[circuit.breakers[1]])
        for circuit in house.circuits.values()
        if len(circuit.breakers) == 2
    ]


def multiwire_untied(house: House, chance: Random) -> Seeded | None:
    for one, other in pairs(house):
        loose = with_breaker(with_breaker(house, replace(one, tied_to=())), replace(other, tied_to=()))
        return Seeded(loose, "multiwire-untied", (one.place, other.place))
    return None


def multiwire_same_leg(house: House, chance: Random) -> Seeded | None:
    for one, other in pairs(house):
        moved = with_breaker(house, replace(other, legs=one.legs))
        return Seeded(moved, "multiwire-same-leg", (one.place, other.place))
    return None


def sources_without_interlock(house: House, chance: Random) -> Seeded | None:
    apart = [each for each in house.breakers.values() if each.interlocked_with]
    if not apart:
        return None
    loose = house
    for each in apart:
        loose = with_breaker(loose, replace(each, interlocked_with=()))
    return Seeded(loose, "sources-without-interlock", tuple(each.place for each in apart))


def breaker_outrates_wire(house: House, chance: Random) -> Seeded | None:
    feeding = [
        each
        for each in house.breakers.values()
        if each.poles == 1 and isinstance(each.feeds, str) and each.feeds in house.circuits
    ]
    chance.shuffle(feeding)
    for breaker in feeding:
        circuit = house.circuits[str(breaker.feeds)]
        if circuit.runs and circuit.record.purpose not in ("feeder", "source"):
            larger = with_breaker(house, replace(breaker, rating=read_quantity("60 A", "current")))
            places = tuple(house.runs[run].place for run in circuit.runs)
            return Seeded(larger, "breaker-outrates-wire", places)
    return None


def box_overfilled(house: House, chance: Random) -> Seeded | None:
    for box in shuffled_boxes(house, chance):
        if isinstance(box.record.size, BoxSize) and isinstance(box.record.size.volume, Quantity) and box.runs:
            tiny = Quantity(Fraction(1), "in3", "volume")
            record = box.record.model_copy(
                update={"size": box.record.size.model_copy(update={"volume": tiny})}
            )
            return Seeded(with_box(house, replace(box, record=record)), "box-overfilled", (box.place,))
    return None


def connector_overfilled(house: House, chance: Random) -> Seeded | None:
    small = house.connectors["lever-2"]
    for box in shuffled_boxes(house, chance):
        for joint in box.joints:
            if len(joint.members) > 2:
                joints = tuple(
                    replace(each, by="lever-2", connector=small) if each.id == joint.id else each
                    for each in box.joints
                )
                changed = with_box(house, replace(box, joints=joints))
                return Seeded(changed, "connector-overfilled", (joint.place,))
    return None


def torque_not_recorded(house: House, chance: Random) -> Seeded | None:
    for box, device in receptacles(house, chance):
        if device.kind.torque is not None and screws(box, device) and box.edition >= "nec-2017":
            landings = tuple(
                replace(each, torque=NONE) if each.device == device.id else each for each in box.landings
            )
            changed = with_box(house, replace(box, landings=landings, torque=NONE))
            return Seeded(changed, "torque-not-recorded", (device.place,))
    return None


def directory_entry_vague(house: House, chance: Random) -> Seeded | None:
    feeding = [each for each in house.breakers.values() if each.says and isinstance(each.feeds, str)]
    breaker = chance.choice(feeding)
    return Seeded(
        with_breaker(house, replace(breaker, says="Lights")), "directory-entry-vague", (breaker.place,)
    )


def directory_entry_doubled(house: House, chance: Random) -> Seeded | None:
    for panel in house.panels.values():
        feeding = [each for each in panel.breakers if each.says and isinstance(each.feeds, str)]
        if len(feeding) > 1:
            one, other = chance.sample(feeding, 2)
            if one.feeds == other.feeds:
                continue
            same = with_breaker(house, replace(other, says=one.says))
            return Seeded(same, "directory-entry-doubled", (one.place, other.place))
    return None


FAULTS: tuple[Callable[[House, Random], Seeded | None], ...] = (
    polarity_reversed, gfci_line_load_swapped, ground_borrowed_from_neutral, neutral_borrowed,
    neutral_ground_joined, multiwire_untied, multiwire_same_leg, sources_without_interlock,
    breaker_outrates_wire, box_overfilled, connector_overfilled, torque_not_recorded, directory_entry_vague,
    directory_entry_doubled, joints_of_two("hot", "circuits-joined"), open_terminal("brass-top", "hot-open"),
    open_terminal("silver-top", "neutral-open"), open_terminal("green", "ground-missing"),
)  # fmt: skip


def seeded_house(seed: int) -> tuple[House, Seeded]:
    """A random valid house, and the same with one fault of a kind drawn among those it has room for."""
    chance = Random(seed)
    house = read_example(as_text(random_house(chance, 2 + seed % 4)))
    kinds = list(FAULTS)
    chance.shuffle(kinds)
    return house, next(made for kind in kinds if (made := kind(house, chance)) is not None)


def found_at_its_place(seeded: Seeded) -> bool:
    """Whether the rule names the fault on one of the lines where it may stand."""
    lines = {(place.file, place.line) for place in seeded.places}
    return any(
        finding.rule == seeded.rule and (finding.place.file, finding.place.line) in lines
        for finding in grave(seeded.house)
    )


def main(houses: int) -> int:
    """Seed and judge that many houses; the number of those in which something was amiss."""
    seeded_of, found_of, unsound = Counter[str](), Counter[str](), 0
    for seed in range(houses):
        house, seeded = seeded_house(seed)
        before = grave(house)
        unsound += bool(before)
        seeded_of[seeded.rule] += 1
        found_of[seeded.rule] += found_at_its_place(seeded)
        if before or not found_at_its_place(seeded):
            print(f"house {seed}: {seeded.rule}; before seeding: {[each.rule for each in before]}")
    for rule, number in sorted(seeded_of.items()):
        print(f"{rule:30} seeded {number:4}  found at its place {found_of[rule]:4}")
    print(f"{houses} houses, {unsound} with a hazard or defect before seeding")
    return unsound + sum(seeded_of.values()) - sum(found_of.values())


if __name__ == "__main__":
    raise SystemExit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000) > 0)
