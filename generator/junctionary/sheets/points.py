"""Builds the sheets of single outlets, lights and switches."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from junctionary.house.dark import Dark, FedBy, fed_by, goes_dark
from junctionary.house.lamps import LampTable
from junctionary.house.model import Device, House
from junctionary.house.network import Edge
from junctionary.house.neutral_here import NeutralHere, neutral_here
from junctionary.house.resets import Reset
from junctionary.house.supply import Supply
from junctionary.house.trace import trace
from junctionary.sheets.entries import Fact
from junctionary.sheets.face_words import face_words, panel_words
from junctionary.sheets.finding_things import feeds_words, place_of
from junctionary.sheets.isolation import before_box
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.makeup import cable_words, device_words, plain_words
from junctionary.sheets.naming import breaker_link, end_link, link, room_link, said
from junctionary.sheets.point import FeedLine, PointSheet, ResetLine, RoomDark
from junctionary.sheets.resets import resets_for
from junctionary.sheets.spoken import breakers_spoken
from junctionary.sheets.survey import Survey, known_words, title
from junctionary.sheets.titleblock import box_number


@dataclass(frozen=True, slots=True)
class Around:
    """What is worked out once for all points of a house."""

    supply: Supply
    tables: tuple[LampTable, ...]
    darks: Mapping[str, Dark]
    hangs: Mapping[str, tuple[str, ...]]
    guards: Mapping[str, tuple[str, ...]]


def point_sheets(survey: Survey, supply: Supply) -> Iterator[PointSheet]:
    """The sheet of every device, box by box."""
    house, network = survey.house, survey.network
    around = Around(
        supply,
        survey.figures.lamps,
        {each: goes_dark(house, network, each) for each in house.breakers},
        hanging_on(house, supply),
        guarded(supply),
    )
    for device in house.devices.values():
        yield _point(survey, around, device)


def hanging_on(house: House, supply: Supply) -> dict[str, tuple[str, ...]]:
    """By device, the other devices whose hot or neutral runs over its terminals or through it."""
    found: dict[str, dict[str, None]] = {}
    for outlet in supply.outlets.values():
        for role in ("hot", "neutral"):
            for start in supply.starts[role][outlet.id]:
                for edge in supply.trees[role].trail(start):
                    for name in (edge.a, edge.b):
                        device = name.rpartition(".")[0]
                        if device in house.devices and device != outlet.device:
                            found.setdefault(device, {})[outlet.device] = None
    return {device: tuple(each) for device, each in found.items()}


def guarded(supply: Supply) -> dict[str, tuple[str, ...]]:
    """By GFCI device, the other devices behind its contacts: they go dead when it trips."""
    tree = supply.trees["hot"]
    found: dict[str, dict[str, None]] = {}
    for outlet in supply.outlets.values():
        for start in supply.starts["hot"][outlet.id]:
            for edge in tree.trail(start):
                if edge.kind == "protector" and edge.of != outlet.device:
                    found.setdefault(edge.of, {})[outlet.device] = None
    return {device: tuple(each) for device, each in found.items()}


def _point(survey: Survey, around: Around, device: Device) -> PointSheet:
    house, network = survey.house, survey.network
    box = house.boxes[device.box]
    position = list(house.rooms).index(box.room) + 1 if box.room in house.rooms else 0
    fed = fed_by(house, network, device.id)
    dark = [around.darks[each] for each in fed.breakers]
    missing = survey.missing_at.get(Ref("box", box.id), ())
    return PointSheet(
        title=title(
            survey,
            f"{device.id}, what feeds it",
            f"{box_number(position, box.id)}.{device.local}",
            known_words("as recorded", len(missing)),
        ),
        ref=Ref("point", device.id),
        heading=f"{device.id}, {plain_words(device)}",
        lead=(room_link(house, box.room), ": ", _lead(house, device)),
        fed=tuple(_feeds(house, fed)),
        doubts=fed.unknown,
        resets=tuple(_resets(survey, around, device)),
        answers=tuple(_answers(survey, around, device)),
        first=tuple(dict.fromkeys(f"{each.name} ({each.matters})" for one in dark for each in one.first)),
        dark=tuple(_rooms(house, device, dark)),
        may_differ=tuple(dict.fromkeys(each for one in dark for each in one.unknown)),
        before=before_box(survey, box.id),
        ways=tuple(
            dict.fromkeys(tuple(_steps(house, way.edges)) for way in trace(house, network, device.id).hot)
        ),
        hangs=listed(tuple(_device_link(each) for each in around.hangs.get(device.id, ()))),
        box=Link(f"box {box.id}", Ref("box", box.id)),
    )


def _lead(house: House, device: Device) -> str:
    box = house.boxes[device.box]
    return place_of(house, box).partition(", ")[2] or "place not recorded"


def _device_link(id_: str) -> Link:
    return Link(id_, Ref("point", id_))


def _feeds(house: House, fed: FedBy) -> Iterator[FeedLine]:
    for id_ in fed.breakers:
        breaker = house.breakers[id_]
        yield FeedLine(
            Link(f"breaker {'+'.join(breaker.spaces)}", Ref("space", id_)),
            said(house, breaker.rating), feeds_words(house, breaker),
            face_words(house, breaker), panel_words(house, breaker.panel), fed.by_label,
        )  # fmt: skip


def _resets(survey: Survey, around: Around, device: Device) -> Iterator[ResetLine]:
    for each in resets_for(survey.house, survey.network, around.supply, device.id):
        yield reset_line(survey.house, each)


def reset_line(house: House, reset: Reset) -> ResetLine:
    """A reset in the words of a sheet."""
    if reset.kind == "breaker":
        label = " (by its label)" if reset.by_label else ""
        breaker = house.breakers[reset.id]
        name = Link(breakers_spoken(house, (reset.id,)), Ref("space", reset.id))
        return ResetLine((name, label), face_words(house, breaker), reset.do)
    device = house.devices[reset.id]
    word = {"gfci": "GFCI", "switch": "switch"}[reset.kind]
    return ResetLine((f"{word} ", _device_link(reset.id)), place_of(house, house.boxes[device.box]), reset.do)


def _rooms(house: House, device: Device, darks: Iterable[Dark]) -> Iterator[RoomDark]:
    """All that loses supply with these breakers, its own room first."""
    by: dict[str, dict[str, None]] = {house.boxes[device.box].room: {}}
    for dark in darks:
        for name in (*dark.devices, *dark.halves):
            of = name if name in house.devices else name.rpartition(".")[0]
            if of != device.id:
                by.setdefault(house.boxes[house.devices[of].box].room, {})[name] = None
        for room in dark.rooms:
            by.setdefault(room, {})
    for room, names in by.items():
        things = tuple(
            Link(name, Ref("point", name if name in house.devices else name.rpartition(".")[0]))
            for name in names
        )
        if things or room != house.boxes[device.box].room:
            nothing = ("by the record's word; no outlet of it is recorded there",)
            yield RoomDark((room_link(house, room),), listed(things) or nothing)


def _steps(house: House, edges: tuple[Edge, ...]) -> Iterator[Phrase]:
    """From the source to the point, one step for each thing on the way."""
    through = {edge.of for edge in edges if edge.kind in ("protector", "switch")}
    last: Phrase = ()
    for edge in reversed(edges):
        step = _step(house, edge)
        landed = edge.a.rpartition(".")[0] if edge.kind == "landing" else ""
        if step is not None and step != last and landed not in through:
            yield step
            last = step


def _step(house: House, edge: Edge) -> Phrase | None:
    if edge.kind in ("breaker", "main"):
        return ("breaker ", breaker_link(edge.of))
    if edge.kind == "conductor":
        run = house.runs[edge.of]
        ends = (end_link(house, run.from_), " to ", end_link(house, run.to))
        return ("cable ", link(house, run.id), f", {cable_words(run)}, ", *ends)
    if edge.kind == "joint":
        return ("joined in ", link(house, edge.of))
    if edge.kind in ("protector", "switch"):
        through = "through the contacts of " if edge.kind == "protector" else "through switch "
        return (through, _device_link(edge.of))
    if edge.kind == "landing" and "." in edge.a and edge.a.rpartition(".")[0] in house.devices:
        return ("on the terminals of ", _device_link(edge.a.rpartition(".")[0]))
    return None


def _answers(survey: Survey, around: Around, device: Device) -> Iterator[Fact]:
    """What people ask of a point besides."""
    house = survey.house
    if device_words(device) != plain_words(device):
        yield Fact("what it is", (device_words(device),))
    neutral = neutral_here(house, survey.network, device.id)
    yield Fact("neutral in this box?", _neutral(neutral))
    if neutral.hot_whites:
        yield Fact("white, and hot", (", ".join(each.partition("/")[2] for each in neutral.hot_whites),))
    if device.id in around.guards:
        takes = listed(tuple(_device_link(each) for each in around.guards[device.id]))
        yield Fact("its reset brings back", takes)
    bearing = [each for each in around.tables if device.id in each.switches]
    if bearing:
        yield Fact("this switch works", _worked(house, device, bearing))
    elif device.kind.is_ in ("switch", "dimmer", "timer", "sensor"):
        nothing = "nothing that the record shows"
        doubts = survey.network.index.unknown_of_box.get(device.box, ())
        yield Fact("this switch works", (f"unknown: {doubts[0].reason}" if doubts else nothing,))
    for table in (each for each in around.tables if each.device == device.id):
        yield Fact(f"{_part(table)}switched by", _switched(table))


def _neutral(found: NeutralHere) -> Phrase:
    if found.answer == "yes":
        return (f"yes: {', '.join(each.partition('/')[2] for each in found.at)}",)
    if found.answer == "no":
        return ("no, by the record",)
    return (f"unknown: {'; '.join(found.why)}",)


def _part(table: LampTable) -> str:
    """Which half of a receptacle a table is of: ``top half ``."""
    name = table.outlet.rpartition("-")[2]
    return f"{name} half " if name in ("top", "bottom") else ""


def _worked(house: House, device: Device, tables: Iterable[LampTable]) -> Phrase:
    said_: list[str | Link] = []
    for table in tables:
        other = house.devices[table.device]
        where = place_of(house, house.boxes[other.box])
        others = [each for each in table.switches if each != device.id]
        how = (
            "" if device.id in table.always
            else ", in some settings of the others only" if device.id in table.sometimes
            else ", but it never changes it"
        )  # fmt: skip
        with_ = f", together with {' and '.join(others)}" if others else ""
        doubt = "; in part unknown" if table.unknown else ""
        said_ += ["; " if said_ else "", _part(table), _device_link(other.id)]
        said_.append(f" ({where}){with_}{how}{doubt}")
    return tuple(each for each in said_ if each)


def _switched(table: LampTable) -> Phrase:
    doubt = (f"; unknown: {'; '.join(table.unknown)}",) if table.unknown else ()
    return (*listed(tuple(_device_link(each) for each in table.switches)), *doubt)
