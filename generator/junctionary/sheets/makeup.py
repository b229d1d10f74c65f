"""The make-up of a box as its sheet shows it: which conductor meets what."""

from collections.abc import Iterable

from junctionary.figures.torque import Tightened
from junctionary.formulas.torque import in_both_units
from junctionary.house.model import Box, Landing, Run
from junctionary.house.model import Device as HouseDevice
from junctionary.house.model import Joint as HouseJoint
from junctionary.house.terminals import has_leads, terminals_of
from junctionary.records.boxes import BoxSize
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sheets.box import Cable, Conductor, Device, EndState, Joint, MakeUp, Terminal
from junctionary.sheets.circuit import Symbol
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, counted, end_link, said
from junctionary.sheets.survey import Survey
from junctionary.units import Quantity

SPOKEN = {"three_way": "3-way", "four_way": "4-way"}
"""Words of make-up that a key of the record spells otherwise than people do."""


def make_up(survey: Survey, box: Box) -> MakeUp | None:
    """The make-up, or None where nothing at all is recorded of what is in the box."""
    if not box.runs and not box.devices and not box.passing and not box.joints:
        return None
    runs = [survey.house.runs[each] for each in box.runs]
    through = [survey.house.runs[each.run] for each in box.passing]
    parts = [
        counted(len(runs), "cable"),
        counted(len(box.joints), "joint"),
        counted(len(box.devices), "device"),
    ]
    return MakeUp(
        title=f"Make-up of box {box.id}",
        says=f"{', '.join(parts)}; each joint and terminal is listed below the drawing.",
        cables=(
            *(_cable(survey, box, run) for run in runs),
            *(_passing(survey, run) for run in through),
        ),
        joints=tuple(joint_entry(survey, box, joint) for joint in box.joints),
        devices=tuple(_device(survey, box, device) for device in box.devices),
        written_as=_written(box),
        enclosure=enclosure(survey, box),
    )


def enclosure(survey: Survey, box: Box) -> str:
    """``1-gang, plastic, 20.3 in3; free conductor 8 in``."""
    size = box.record.size
    if size is NONE:
        return "no box around it"
    parts = []
    if isinstance(size, BoxSize):
        parts += [f"{size.gangs}-gang"] if size.gangs else []
        parts += [each for each in (size.standard, size.of) if each]
        if size.volume is not None:
            parts.append(f"{said(survey.house, size.volume)} marked")
    free = f"free conductor {said(survey.house, box.free_conductor)}"
    return f"{', '.join(parts) or f'size {said(survey.house, size)}'}; {free}"


def _written(box: Box) -> str:
    words = makeup_words(box)
    if any(joint.expanded for joint in box.joints) or any(landing.expanded for landing in box.landings):
        seen = "follows from that; nobody recorded seeing it"
        return f"Recorded in short: {words}. What is drawn dashed {seen}." if words else ""
    return ""


def makeup_words(box: Box) -> str:
    """The words its make-up was written in: ``feed, 3-way``."""
    return ", ".join(dict.fromkeys(SPOKEN.get(each, each) for each in box.makeup_words))


def _cable(survey: Survey, box: Box, run: Run) -> Cable:
    house = survey.house
    is_feed = run.to.id == box.id and run.from_.id != box.id
    other = run.from_ if is_feed else run.to
    placed = _ends(box)
    return Cable(
        ref=Ref("run", run.id),
        id=run.id,
        cable=cable_words(run),
        length=length_words(survey, run),
        side="feed" if is_feed else "onward",
        other_end=end_link(house, other),
        circuit=circuit if isinstance(circuit := circuit_link(house, run.circuit), Link) else None,
        conductors=tuple(
            _conductor(box, run, conductor.colour, str(conductor.size), placed)
            for conductor in run.conductors
        ),
    )


def _passing(survey: Survey, run: Run) -> Cable:
    house = survey.house
    circuit = circuit_link(house, run.circuit)
    return Cable(
        ref=Ref("run", run.id),
        id=run.id,
        cable=cable_words(run),
        length="passes through uncut",
        side="onward",
        other_end=end_link(house, run.to),
        circuit=circuit if isinstance(circuit, Link) else None,
        conductors=tuple(
            Conductor(f"{run.id}.{each.colour}", each.colour, str(each.size), "passing")
            for each in run.conductors
        ),
    )


def length_words(survey: Survey, run: Run) -> str:
    """``38 ft``, or that its length is unknown or not recorded."""
    told = said(survey.house, run.length)
    return told if isinstance(run.length, Quantity) else f"length {told}"


def cable_words(run: Run) -> str:
    """``12/2 NM-B``, or that it is unknown or not recorded."""
    if run.cable is None:
        return "cable not recorded"
    return "cable unknown" if run.cable is UNKNOWN else getattr(run.cable, "text", str(run.cable))


def _ends(box: Box) -> dict[str, tuple[EndState, str]]:
    """Each conductor end of the box and where it went."""
    found: dict[str, tuple[EndState, str]] = {}
    for name in box.untold:
        found[name] = ("unknown" if box.makeup_unknown else "not-recorded", "")
    for name in box.loose:
        found[name] = ("loose", "")
    for name in box.capped:
        found[name] = ("capped", "")
    for landing in box.landings:
        for member in landing.wires:
            if member.kind == "conductor":
                found[member.name] = ("landed", landing.terminal.removeprefix(f"{box.id}."))
    for joint in box.joints:
        for member in joint.members:
            if member.kind == "conductor":
                found[member.name] = ("joined", short_joint(joint.id))
    return found


def _conductor(
    box: Box, run: Run, colour: str, size: str, placed: dict[str, tuple[EndState, str]]
) -> Conductor:
    name = f"{run.id}.{colour}"
    state, meets = placed.get(f"{box.id}/{name}", placed.get(name, ("not-recorded", "")))
    return Conductor(name, colour, size, state, meets, box.record.marked.get(name, ""))


def short_joint(id_: str) -> str:
    """``j1`` for ``K1/j1``."""
    return id_.rpartition("/")[2]


def _short(box: Box, name: str) -> str:
    """A member as the sheet of its own box calls it."""
    if name == f"{box.id}/box":
        return "box screw"
    return name.removeprefix(f"{box.id}/").removeprefix(f"{box.id}.")


def joint_entry(survey: Survey, box: Box, joint: HouseJoint) -> Joint:
    """One joint with its members, connector and how it is known."""
    pigtails = sorted(
        {
            f"{each.size} {each.metal or ''}".strip()
            for each in joint.members
            if each.kind == "pigtail" and each.size
        }
    )
    return Joint(
        ref=Ref("joint", joint.id),
        name=short_joint(joint.id),
        role=joint.role or "",
        members=tuple(_short(box, member.name) for member in joint.members),
        connector=connector_words(joint),
        pigtail=", ".join(pigtails),
        known_by=how_known(box, joint),
        by_word=bool(joint.expanded),
    )


def how_known(box: Box, joint: HouseJoint) -> str:
    """``by the word: feed`` for what was expanded, which nobody saw as such; else the box's evidence."""
    word = SPOKEN.get(joint.expanded or "", joint.expanded)
    return f"by the word: {word}" if word else evidence_words(box)


def connector_words(joint: HouseJoint) -> str:
    """What holds a joint, in words."""
    if joint.by is None:
        return "connector not recorded"
    if joint.by is UNKNOWN:
        return "connector unknown"
    if joint.by is NONE:
        return "no connector"
    kind = joint.connector.is_ if joint.connector else ""
    return str(joint.by) if not kind or kind in str(joint.by) else f"{joint.by} ({kind})"


def evidence_words(box: Box) -> str:
    """How the facts of a box are known: ``seen 2026-04-11, owner``."""
    if box.evidence is None:
        return NOT_RECORDED
    parts = [f"{box.evidence.how} {box.evidence.date or ''}".strip(), box.evidence.by or ""]
    return ", ".join(part for part in parts if part)


def _device(survey: Survey, box: Box, device: HouseDevice) -> Device:
    landings = {each.terminal: each for each in box.landings if each.device == device.id}
    joints = {
        member.name: joint
        for joint in box.joints
        for member in joint.members
        if member.kind in ("pigtail", "lead")
    }
    names = [f"{device.id}.{each.name}" for each in terminals_of(device.kind)]
    told = [name for name in names if name in landings or name in joints]
    others = [name for name in (*landings, *joints) if name.startswith(f"{device.id}.") and name not in told]
    shown = dict.fromkeys((*told, *others)) or dict.fromkeys(names)
    return Device(
        ref=Ref("device", device.id),
        id=device.local,
        says=device_words(device),
        symbol=symbol_of(device),
        terminals=tuple(
            _terminal(survey, box, device, name, landings.get(name), joints.get(name)) for name in shown
        ),
        feeds=_fed_by(survey, device) if len(box.circuits) > 1 else (),
        face=device.kind.face or "",
    )


def _fed_by(survey: Survey, device: HouseDevice) -> tuple[str | Link, ...]:
    return tuple(
        piece
        for index, circuit in enumerate(device.circuits)
        for piece in (*((", ",) if index else ()), circuit_link(survey.house, circuit))
    )


def _terminal(
    survey: Survey,
    box: Box,
    device: HouseDevice,
    name: str,
    landing: Landing | None,
    joint: HouseJoint | None,
) -> Terminal:
    wires = landing.wires if landing else ()
    straight = tuple(_short(box, each.name) for each in wires if each.kind == "conductor")
    by_pigtail = [short_joint(each.name) for each in wires if each.kind == "pigtail"]
    from_joint = by_pigtail[0] if by_pigtail else short_joint(joint.id) if joint else ""
    local = name.removeprefix(f"{device.id}.")
    tight = survey.figures.torques.get(name)
    is_lead = joint is not None and any(each.kind == "lead" and each.name == name for each in joint.members)
    return Terminal(
        name=local,
        wires=straight,
        from_joint=from_joint,
        colour=_colour(box, wires, joint, local if has_leads(device.kind) else ""),
        how="lead" if is_lead else (landing.how if landing and landing.how else _how(landing)),
        torque=_listed(survey, tight),
        measured=_given(survey, tight),
        by_word=bool(landing.expanded if landing else joint and joint.expanded),
    )


def _how(landing: Landing | None) -> str:
    return "nothing landed" if landing is None else "how not recorded"


def _colour(box: Box, wires: Iterable[object], joint: HouseJoint | None, lead: str) -> str:
    for wire in wires:
        colour = getattr(wire, "colour", None)
        if getattr(wire, "kind", "") == "conductor" and colour:
            return str(colour)
    if lead:
        return lead
    named = {getattr(wire, "name", "") for wire in wires}
    source = joint or next((each for each in box.joints if each.id in named), None)
    if source is None:
        return ""
    colours = [each.colour for each in source.members if each.kind == "conductor" and each.colour]
    return colours[0] if colours else "other"


def _listed(survey: Survey, tight: Tightened | None) -> str:
    if tight is None:
        return ""
    if tight.listed is None:
        return "no value listed"
    return f"{in_both_units(tight.listed, survey.house.record.shows)} listed"


def _given(survey: Survey, tight: Tightened | None) -> str:
    if tight is None:
        return ""
    if tight.said == "listed":
        return "to the listed value"
    if tight.said is NONE:
        return "not to a value"
    if isinstance(tight.said, Quantity):
        return in_both_units(tight.said, survey.house.record.shows)
    return said(survey.house, tight.said)


def device_words(device: HouseDevice) -> str:
    """``5-20R receptacle, tamper-resistant``."""
    kind = device.kind
    plain = kind.is_.replace("-", " ")
    what = {"gfci-receptacle": "GFCI receptacle", "gfci-device": "GFCI device"}.get(kind.is_, plain)
    if kind.is_ == "switch":
        what = {3: "3-way switch", 4: "4-way switch"}.get(kind.ways or 1, "switch")
    said_ = kind.name or " ".join(part for part in (kind.face, what) if part)
    marks = [*(kind.marks or ()), *([f"split at {device.split}"] if device.split else [])]
    return ", ".join((said_, *marks))


def plain_words(device: HouseDevice) -> str:
    """What a device is for who only looks for it: ``receptacle``, ``14-50R receptacle``, ``3-way switch``."""
    first = device_words(device).partition(", ")[0]
    return first.removeprefix("5-15R ").removeprefix("5-20R ")


def symbol_of(device: HouseDevice) -> Symbol:
    """The symbol a device is drawn with."""
    kind = device.kind
    if kind.is_ == "receptacle":
        if (kind.face or "").startswith(("6-", "10-", "14-")):
            return "receptacle-240"
        return "receptacle-single" if kind.outlets == 1 else "receptacle"
    if kind.is_ == "switch":
        return "switch-3" if kind.ways == 3 else "switch-4" if kind.ways == 4 else "switch"
    table: dict[str, Symbol] = {
        "gfci-receptacle": "gfci",
        "gfci-device": "gfci",
        "dimmer": "switch",
        "timer": "switch",
        "sensor": "switch",
        "luminaire": "light",
        "fan": "fan",
        "smoke-alarm": "smoke-alarm",
        "inlet": "inlet",
    }
    return table.get(kind.is_, "appliance")
