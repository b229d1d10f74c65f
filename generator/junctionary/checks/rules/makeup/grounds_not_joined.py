"""The grounds of a box hold together only through a device, or not at all.

Why it matters: whoever takes the device out opens the ground of everything behind it, and nothing shows it.
What to do: with the breakers off and the box proved dead, join the grounds of all cables in a connector,
    and bring one pigtail from it to each device.
Cannot tell: when the make-up of a box, or where a ground is joined or landed, is not recorded. Where two
    wires are under one screw that is not made for it, that check speaks alone. Capped grounds of spare
    cables are left alone.
Stands: on the line of the ground that is apart.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import Box, House, Landing, Member
from junctionary.house.network import Network, is_ground
from junctionary.marks import Place
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "250.148"),), MADE_UP)

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
  - {id: h2, cable: 14/2 NM-B, from: H1, to: H2}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    devices: {r1: duplex}
    joints:
      - {join: [h1.black, h2.black, r1.brass], by: lever-3}
      - {join: [h1.white, h2.white, r1.silver], by: lever-3}
    terminals:
      r1.green: {wire: [h1.bare, h2.bare]}    #! grounds-not-joined
  H2: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, per_terminal: 2, marks: [tamper-resistant]}
  switch: {is: switch, ways: 1, rating: 15 A}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""

PASSES = FAILS.replace("    terminals:\n", "").replace(
    "      r1.green: {wire: [h1.bare, h2.bare]}    #! grounds-not-joined",
    "      - {join: [h1.bare, h2.bare, r1.green], by: lever-3}",
)

UNTOLD = PASSES.replace("      - {join: [h1.bare, h2.bare, r1.green], by: lever-3}\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box to which two or more grounds come."""
    for box in house.boxes.values():
        come = [each for each in box.runs if any(map(is_ground, house.runs[each].conductors))]
        if len(come) < 2:
            continue
        if needs := untold_in(box):
            yield CannotTell((box.id, *box.circuits), needs, box.place)
            continue
        kept = dict(_joined(box))
        apart = [(each, wire) for each in box.landings for wire in each.wires if _is_alone(box, kept, wire)]
        apart = [(landing, wire) for landing, wire in apart if not _overfull(house, landing)]
        groups = tuple(dict.fromkeys(kept.values()))
        if apart and (len(apart) > 1 or groups):
            yield _fault(box, apart[0][0].place, [wire.name for _, wire in apart])
        elif len(groups) > 1:
            most = max(groups, key=list(kept.values()).count)
            lone = [name for name, group in kept.items() if group != most]
            yield _fault(box, _place_of(box, lone[0]), lone)


def _joined(box: Box) -> Iterator[tuple[str, str]]:
    """Each ground of a cable that is in a joint or on the box's own screw, and the group it is in."""
    screwed = {each.terminal for each in box.landings if each.device == f"{box.id}/box"}
    for joint in box.joints:
        in_box = any(each.name in screwed or each.kind == "box" for each in joint.members)
        for each in joint.members:
            if _is_ground_end(each):
                yield each.name, f"{box.id}/box" if in_box else joint.id
    for landing in box.landings:
        if landing.terminal in screwed:
            for each in landing.wires:
                if _is_ground_end(each):
                    yield each.name, f"{box.id}/box"


def _place_of(box: Box, wire: str) -> Place:
    """Where the record joins or lands a wire."""
    held = [(joint.place, joint.members) for joint in box.joints]
    held += [(landing.place, landing.wires) for landing in box.landings]
    return next(place for place, members in held if any(each.name == wire for each in members))


def _is_ground_end(member: Member) -> bool:
    return member.kind == "conductor" and member.colour is not None and is_ground(member.colour)


def _is_alone(box: Box, kept: dict[str, str], wire: Member) -> bool:
    """Whether a ground of a cable goes to a device and to no joint."""
    return _is_ground_end(wire) and wire.name not in kept


def _overfull(house: House, landing: Landing) -> bool:
    """Whether two-wires-one-terminal speaks of this terminal."""
    device = house.devices.get(landing.device)
    return len(landing.wires) > ((device.kind.per_terminal if device else None) or 1)


def _fault(box: Box, place: Place, names: list[str]) -> Fault:
    return Fault(
        place=place,
        about=(box.id, *names, *box.circuits),
        found=f"In box {box.id} these grounds are not joined with the others: {', '.join(names)}.",
        allowed="All grounds of a box in one joint, with a pigtail to each device.",
        because="Whoever takes the device out opens the ground of everything behind it.",
        do="With the box proved dead, join all grounds, and bring pigtails to the devices.",
        edition=box.edition,
    )
