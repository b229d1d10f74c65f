"""Builds the sheet on which room for one more load or cable is looked up, and what its page is given."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from junctionary.figures import PoleLoad
from junctionary.figures.draws import LINE_TO_NEUTRAL, Draw
from junctionary.figures.room_for_more import (
    BoxRoom,
    CableRoom,
    Extending,
    PointRoom,
    Reason,
    box_room,
    point_room,
    pole_loads,
)
from junctionary.formulas.voltage_drop import drop_limits
from junctionary.house.model import Box, House
from junctionary.house.offers import offers_of
from junctionary.house.supply import Supply
from junctionary.sheets.circuit_load import shown
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.finding_things import place_of
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.lookup import Choices, OneMoreSheet
from junctionary.sheets.makeup import plain_words
from junctionary.sheets.naming import NOT_RECORDED, breaker_words
from junctionary.sheets.put_right import first_words, put_right_first
from junctionary.sheets.spoken import breakers_spoken
from junctionary.sheets.survey import Survey, title
from junctionary.sheets.titleblock import GENERAL
from junctionary.tables import table
from junctionary.units import decimal

HEEDED = (
    "What is plugged in together counts, and the record cannot see it: add up what you see in use.",
    "A new outlet may want arc-fault protection for its circuit, ground-fault protection by its place, a"
    " tamper-resistant or weather-resistant face; the edition in force where you are says which.",
    "New cable in a wall usually wants a permit, and is inspected before the wall closes.",
    "Equipment fastened in place, lamps aside, takes at most half of a 15 or 20 A circuit that has lights or"
    " receptacles besides; large appliances want a circuit of their own.",
    "Figures are an aid. A licensed electrician and the local code decide.",
)


@dataclass(frozen=True, slots=True)
class RoomForMore:
    """What is free at every point, what every box has room for, and what is to be put right ``first``.

    ``first`` holds words for each circuit and box of which a hazard or a defect is open.
    """

    points: Mapping[str, PointRoom]
    boxes: Mapping[str, BoxRoom]
    first: Mapping[Ref, tuple[str, ...]]

    def first_of(self, circuit: str | None, box: str) -> tuple[str, ...]:
        """What is to be put right before anything is added to a circuit in a box; the circuit's first."""
        both = (*self.first.get(Ref("circuit", circuit or ""), ()), *self.first.get(Ref("box", box), ()))
        return tuple(dict.fromkeys(both))


def room_for_more(survey: Survey, supply: Supply) -> RoomForMore:
    """Worked out once, for the sheet and for what its page looks up."""
    house, network, figures = survey.house, survey.network, survey.figures
    loads = pole_loads(figures)
    offers = offers_of(house, network, supply)
    return RoomForMore(
        {each.id: point_room(house, network, figures, loads, each) for each in house.devices.values()},
        {id_: box_room(house, network, figures, each) for id_, each in offers.items()},
        {ref: put_right_first(survey, ref) for ref in survey.findings_at if ref.kind in ("circuit", "box")},
    )


def one_more_sheet(survey: Survey, room: RoomForMore) -> OneMoreSheet:
    """Room for one more; on paper, box by box what is free and whether a cable may start there."""
    house = survey.house
    return OneMoreSheet(
        title=title(survey, "Room for one more", GENERAL["one-more"], "reckoned from the record"),
        ref=Ref("sheet", "one-more"),
        heading="Room for one more",
        lead=("What is free on the circuit of a point, and whether a cable may start from its box.",),
        points=tuple(_points(house)),
        usual=tuple(_usual()),
        recorded=tuple(_recorded(survey.figures.draws.values())),
        heeded=HEEDED,
        table=Table(
            ("box", "breaker", "free", "for hours", "room for a cable", "may a cable start here"),
            tuple(row for each in house.boxes.values() for row in _rows(survey, room, each)),
        ),
    )


def _points(house: House) -> Iterator[Choices]:
    """Every point under its room, and boxes that have none."""
    by: dict[str, list[tuple[str, str]]] = {}
    for box in house.boxes.values():
        choices = by.setdefault(box.room, [])
        named = f", {box.name}" if box.name else ""
        choices += [(each.id, f"{each.id}, {plain_words(each)}{named}") for each in box.devices]
        if not box.devices:
            choices.append((box.id, f"{box.id}, joints only{named}"))
    for room, choices in by.items():
        yield Choices(house.rooms[room].name if room in house.rooms else room, tuple(choices))


def _usual() -> Iterator[tuple[str, str]]:
    """Watts, and whether for hours, with the words: ``1500h``, portable heater."""
    for row in table("usual-draws"):
        lasting = row.text("hours") == "yes"
        watts = row.text("draws")
        yield f"{watts}{'h' if lasting else ''}", f"{row.text('appliance')}, about {watts} W"


def _recorded(draws: Iterable[Draw]) -> Iterator[tuple[str, str]]:
    for each in draws:
        watts = each.volt_amps.value
        if each.recorded and watts is not None and each.volts == LINE_TO_NEUTRAL:
            rounded = decimal(watts, 0)
            yield f"{rounded}{'h' if each.continuous else ''}", f"{each.name}, {rounded} W"


def _rows(survey: Survey, more: RoomForMore, box: Box) -> Iterator[Row]:
    loads = pole_loads(survey.figures)
    first: Phrase = (Link(box.id, Ref("box", box.id)), f", {place_of(survey.house, box)}")
    room = more.boxes[box.id]
    for each in alike(room.extending):
        pole = _pole_of(loads, each)
        open_ = first_words(more.first_of(each.circuit, box.id))
        source = source_words_of(survey.house, each)
        yield Row(
            (
                first,
                (f"{source}; {open_}" if open_ else source,),
                (free_words(pole),),
                (lasting_words(pole),),
                (cables_words(room.cables, each),),
                (may_words(each),),
            )
        )


def alike(extending: Iterable[Extending]) -> tuple[Extending, ...]:
    """Both poles of a breaker offer the same: told once."""
    found: dict[tuple[object, ...], Extending] = {}
    for each in extending:
        behind = each.offer.behind if each.offer else ()
        leg = each.offer.feed.pole if each.offer and each.may else ""
        found.setdefault((each.breaker, each.circuit, behind, each.stops, each.lacks, leg), each)
    return tuple(found.values())


def source_words_of(house: House, each: Extending) -> str:
    """``breaker 17 in the main panel, Kitchen counter, behind K1.r1``."""
    circuit = house.circuits.get(each.circuit or "")
    parts = [breakers_spoken(house, (each.breaker,)) if each.breaker else "breaker not recorded"]
    parts += [circuit.name] if circuit else []
    parts += [f"behind {' and '.join(each.offer.behind)}"] if each.offer and each.offer.behind else []
    return ", ".join(parts)


def _pole_of(loads: Mapping[str, PoleLoad], each: Extending) -> PoleLoad | None:
    return loads.get(each.offer.feed.pole) if each.offer else loads.get(each.breaker)


def free_words(pole: PoleLoad | None) -> str:
    """``6.13 A``, ``at most 6.13 A``, or why there is no figure."""
    if pole is None or pole.room is None:
        return no_room(pole)
    now = pole.room.now
    return f"{'at most ' if now.value is None else ''}{shown(now.steps[-1].value)} A"


def lasting_words(pole: PoleLoad | None) -> str:
    """What may be added for three hours or more."""
    if pole is None or pole.room is None:
        return ""
    long = pole.room.continuous
    return f"{'at most ' if long.value is None else ''}{shown(long.steps[-1].value)} A"


def no_room(pole: PoleLoad | None) -> str:
    """Why nothing can be said to be free."""
    if pole is None:
        return "cannot be told: which circuit feeds it is not recorded"
    if pole.rating_a is None:
        return f"cannot be told: the rating of breaker {breaker_words(pole.breaker)} is not recorded"
    return "nothing is free: the circuit has no light and no receptacle to spare"


def cables_words(cables: Iterable[CableRoom], each: Extending) -> str:
    """Which of the cables that the breaker wants fit the box, and by how much another does not."""
    wanted = [one for one in cables if each.least is None or one.wire == each.least]
    fit = [one.cable for one in wanted if one.fits]
    full = [f"{one.cable} ({_too_much(one)})" for one in wanted if one.fits is False]
    untold = [one for one in wanted if one.fits is None]
    parts = [f"fits {', '.join(fit)}"] if fit else []
    parts += [f"no room for {', '.join(full)}"] if full else []
    if untold:
        parts.append(f"{', '.join(one.cable for one in untold)} cannot be told: {'; '.join(untold[0].lacks)}")
    return "; ".join(parts) or NOT_RECORDED


def _too_much(one: CableRoom) -> str:
    volume = decimal(one.volume_in3, 2) if one.volume_in3 is not None else NOT_RECORDED
    return f"{decimal(one.least_in3, 2)} in³ wanted, {volume} there"


def may_words(each: Extending) -> str:
    """Whether a cable may start there, by the record, and what is to be heeded."""
    heeds = "; ".join(reason_words(one) for one in each.heeds)
    if each.may is False:
        return f"no: {'; '.join(map(reason_words, each.stops))}"
    if each.may is None:
        return f"cannot be told: {'; '.join(each.lacks)}"
    wire = f"{each.least} copper or thicker" if each.least else "no common wire is thick enough"
    return f"nothing on record stands against it; {wire}{f'; {heeds}' if heeds else ''}"


def reason_words(reason: Reason) -> str:
    """A reason with what it rests on."""
    return f"{reason.says} ({reason.cite})" if reason.cite is not None else reason.says


def drop_limit() -> str:
    """The limit recommended for a circuit alone, in percent."""
    return shown(drop_limits()[0])
