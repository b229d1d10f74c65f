"""How full each box is."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.gaps import unseen_in
from junctionary.formulas.box_fill import BoxContents, Entering, Yoke, box_fill
from junctionary.formulas.box_volume import Addition, BoxVolume, Divider
from junctionary.formulas.worked import Worked
from junctionary.house.model import Box, Device, House, Run
from junctionary.records.boxes import BoxSize
from junctionary.records.cables import Conductor
from junctionary.records.values import NONE
from junctionary.records.words import METAL_BOXES
from junctionary.units import Quantity, WireSize

ON_A_YOKE = (
    "receptacle",
    "gfci-receptacle",
    "gfci-device",
    "switch",
    "dimmer",
    "timer",
    "sensor",
    "disconnect",
    "inlet",
)
UNDER_A_CANOPY = ("luminaire", "fan", "smoke-alarm")
ROUND = ("round", "octagonal")
FIXTURE_WIRES = 4
FIXTURE_WIRES_BELOW = WireSize("14 AWG")


@dataclass(frozen=True, slots=True)
class Fill:
    """The fill of one box, in in³, by the edition that box is judged by.

    ``least`` is what the known things take, ``most`` what all can take at most, None
    where nothing bounds it. ``left`` is None where a fact is missing; ``fits`` is False
    once the least is too much, True once the most is not, else None. ``lacks`` are the
    facts missing, with the volume the box needs where its own is not recorded.
    ``governed`` is False where 314.28 sizes the box and volume does not.
    """

    box: str
    edition: str
    filled: Worked
    volume: Worked
    left: Fraction | None
    least: Fraction
    most: Fraction | None
    fits: bool | None
    governed: bool
    lacks: tuple[str, ...] = ()


def fill_of(house: House, box: Box) -> Fill | None:
    """The fill of a box; None for a joint that has no box around it."""
    if box.record.size is NONE:
        return None
    size = _size(box)
    return _filled(box, _contents(house, box, size), size, box.edition)


def fill_with(house: House, box: Box, insulated: int, wire: WireSize, edition: str) -> Fill | None:
    """The fill of a box with one more cable that ends in it; None where there is no box.

    Its wires and its ground are of one size. Devices are counted as if a pigtail of that size came
    to each, for a joint's pigtails are as large as its largest wire.
    """
    if box.record.size is NONE:
        return None
    size = _size(box)
    contents = _contents(house, box, size)
    yokes = (
        replace(each, largest=max(each.largest, wire)) if each.largest else each for each in contents.yokes
    )
    more = replace(
        contents,
        entering=(*contents.entering, Entering("the new cable", wire, insulated)),
        grounds=(*contents.grounds, wire),
        yokes=tuple(yokes),
    )
    return _filled(box, more, size, edition)


def _size(box: Box) -> BoxSize:
    return box.record.size if isinstance(box.record.size, BoxSize) else BoxSize.model_construct()


def _filled(box: Box, contents: BoxContents, size: BoxSize, edition: str) -> Fill:
    worked = box_fill(contents, _volume(box, size), edition)
    return Fill(
        box.id,
        edition,
        worked.filled,
        worked.volume,
        worked.left.value,
        worked.least,
        worked.most,
        worked.fits,
        worked.governed,
        worked.left.lacks,
    )


def _volume(box: Box, size: BoxSize) -> BoxVolume:
    return BoxVolume(
        box=box.id,
        marked_in3=size.volume.to("in3") if isinstance(size.volume, Quantity) else None,
        standard=size.standard,
        gangs=size.gangs or 1,
        additions=tuple(
            Addition(each.what, each.volume.to("in3") if each.volume else None, each.standard)
            for each in size.adds
        ),
        dividers=tuple(
            Divider(
                each.of in METAL_BOXES if each.of else None, each.volume.to("in3") if each.volume else None
            )
            for each in size.barriers
        ),
    )


def _contents(house: House, box: Box, size: BoxSize) -> BoxContents:
    lacks = list(_unseen(house, box))
    entering: list[Entering] = []
    grounds: list[WireSize | None] = []
    isolated: list[WireSize | None] = []
    apart = _isolated(box)
    for run in (house.runs[each] for each in box.runs):
        ends = sum(end.id == box.id for end in run.ends)
        entering += [Entering(f"run {run.id}", gauge, ends * count) for gauge, count in _insulated(run)]
        for each in _grounds(run):
            of = isolated if f"{box.id}/{run.id}.{each.colour}" in apart else grounds
            of += [each.size] * ends
    for through in box.passing:
        run = house.runs[through.run]
        loop = through.loop.to("in") if through.loop else None
        what = f"run {run.id} passing through"
        entering += [Entering(what, gauge, count, "passes", loop) for gauge, count in _insulated(run)]
        grounds += [each.size for each in _grounds(run)]
    for device in box.devices:
        if device.kind.is_ not in ON_A_YOKE:
            _add_leads(device, entering, grounds, lacks)
    return BoxContents(
        entering=tuple(entering),
        grounds=tuple(grounds),
        clamps_inside={"inside": True, "outside": False, "none": False}.get(str(size.clamps)),
        studs=_studs(box, size),
        yokes=tuple(_yokes(house, box)),
        terminal_blocks=tuple(box.record.terminal_blocks),
        isolated_grounds=tuple(isolated),
        lacks=tuple(lacks),
    )


def _unseen(house: House, box: Box) -> Iterator[str]:
    """What may be in the box and is not recorded."""
    if gap := unseen_in(box):
        yield gap
    if not box.runs and not box.passing:
        yield f"which cables enter box {box.id}"
    for each in (*box.runs, *(through.run for through in box.passing)):
        if not house.runs[each].conductors:
            yield f"the cable of run {each}"


def _isolated(box: Box) -> set[str]:
    """The conductor ends that ground only devices with an isolated ground, and not the box."""
    marked = [each for each in box.devices if "isolated-ground" in (each.kind.marks or ())]
    greens = {f"{each.id}.{terminal}" for each in marked for terminal in ("green", "g")}
    ends = {
        member.name
        for joint in box.joints
        if greens & {each.name for each in joint.members}
        and not any(each.kind == "box" for each in joint.members)
        for member in joint.members
    }
    ends |= {wire.name for landing in box.landings if landing.terminal in greens for wire in landing.wires}
    bonded = {
        member.name
        for joint in box.joints
        if any(each.kind == "box" for each in joint.members)
        for member in joint.members
    }
    return ends - bonded


def _insulated(run: Run) -> Iterator[tuple[WireSize, int]]:
    sizes = [each.size for each in run.conductors if not each.is_ground]
    for size in dict.fromkeys(sizes):
        yield size, sizes.count(size)


def _grounds(run: Run) -> Iterator[Conductor]:
    """The grounding conductors of a cable; armour grounds from outside the box and takes no room in it."""
    return (each for each in run.conductors if each.is_ground and each.colour != "armor")


def _add_leads(
    device: Device, entering: list[Entering], grounds: list[WireSize | None], lacks: list[str]
) -> None:
    """What comes in from a luminaire, fan, alarm or appliance: its wires, unless a canopy spares them."""
    leads = device.kind.leads
    if leads is None:
        lacks.append(f"the leads of {device.id}")
        return
    wires = [each for each in leads if not each.is_ground]
    few_and_thin = len(wires) <= FIXTURE_WIRES and all(each.size < FIXTURE_WIRES_BELOW for each in wires)
    if few_and_thin and device.kind.is_ in UNDER_A_CANOPY:
        if device.kind.canopy is None:
            lacks.append(f"whether {device.id} has a domed canopy")
            return
        if device.kind.canopy == "domed":
            return
    sizes = [each.size for each in wires]
    entering += [Entering(f"leads of {device.id}", size, sizes.count(size)) for size in dict.fromkeys(sizes)]
    grounds += [each.size for each in leads if each.is_ground]


def _studs(box: Box, size: BoxSize) -> int | None:
    """Fixture studs; left out, missed only where one may stand: a metal box, round or with a lamp."""
    if isinstance(size.studs, int):
        return size.studs
    if size.studs is None and size.of not in (*METAL_BOXES, None):
        return 0
    hung = any(device.kind.is_ in ("luminaire", "fan") for device in box.devices)
    rounded = any(word in (size.standard or "") for word in ROUND)
    return None if size.studs is not None or hung or rounded else 0


def _yokes(house: House, box: Box) -> Iterator[Yoke]:
    """One yoke a device, except where the record says that several share a strap."""
    straps = [[box.device(local) for local in strap] for strap in box.record.yoke]
    shared = [[device for device in strap if device is not None] for strap in straps]
    taken = {device.id for strap in shared for device in strap}
    single = [[device] for device in box.devices if device.id not in taken and device.kind.is_ in ON_A_YOKE]
    for strap in (*shared, *single):
        if strap:
            what = "yoke of " + " and ".join(device.id for device in strap)
            sizes = [_largest_on(house, box, device) for device in strap]
            known = [each for each in sizes if each is not None]
            largest = max(known) if len(known) == len(sizes) else None
            yield Yoke(what, largest, max(device.kind.gangs or 1 for device in strap))


def _largest_on(house: House, box: Box, device: Device) -> WireSize | None:
    """The largest conductor connected to a device: on its terminals, or joined to its leads."""
    wires = [wire for landing in box.landings if landing.device == device.id for wire in landing.wires]
    for joint in box.joints:
        if any(each.kind == "lead" and each.name.startswith(f"{device.id}.") for each in joint.members):
            wires += [each for each in joint.members if each.kind not in ("lead", "box")]
    if wires:
        known = [each.size for each in wires if each.size is not None]
        return max(known) if len(known) == len(wires) else None
    # Not landed, or not yet: the largest conductor in the box is the most it can be.
    sizes = [each.size for run in box.runs for each in house.runs[run].conductors if not each.is_ground]
    return max(sizes, default=None)
