"""What the lookups ask, written as scripts: a page opened from a folder may load nothing else.

Each file sets one name. What is written is data alone; the theme's scripts read it.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from typing import Any, TypeAlias

from junctionary.figures import PoleLoad
from junctionary.figures.room_for_more import BoxRoom, Drop, Extending, PointRoom
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.readings import READINGS, Reading
from junctionary.house.resets import DO
from junctionary.house.suspects import Ways
from junctionary.house.switching_off import Isolation
from junctionary.publish.address import AddressBook
from junctionary.sheets.circuit_load import shown
from junctionary.sheets.face_words import face_words
from junctionary.sheets.finding_things import place_of
from junctionary.sheets.found import HEADINGS, WORTH, Found
from junctionary.sheets.links import Kind, Ref
from junctionary.sheets.makeup import plain_words
from junctionary.sheets.off_lists import (
    Handle,
    OffList,
    box_lists,
    handles,
    panel_lists,
    run_lists,
    source_handles,
)
from junctionary.sheets.room_for_more import (
    RoomForMore,
    alike,
    cables_words,
    drop_limit,
    no_room,
    reason_words,
    source_words_of,
)
from junctionary.sheets.search_index import search_index
from junctionary.sheets.spoken import breakers_spoken, panels_spoken
from junctionary.sheets.suspect_ground import suspect_ground
from junctionary.sheets.words_alike import ALIKE, COMPLAINTS, PASSED_OVER

Data: TypeAlias = dict[str, Any]
BASE36 = "0123456789abcdefghijklmnopqrstuvwxyz"


def script(name: str, data: Any) -> bytes:
    """One script that sets one name; ``</`` is broken up, so that no reader takes it for markup."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("</", "<\\/")
    # Two line ends that JSON lets stand and old readers of scripts do not.
    text = text.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f"globalThis.{name} = {text};\n".encode()


def find_data(found: tuple[Found, ...], book: AddressBook) -> Data:
    """The index of what can be found, column by column; a word's places are steps in base 36."""
    index = search_index(found)
    places, offs, resets = _Table(), _Table(), _Table()
    kinds = tuple(HEADINGS)
    return {
        "kinds": [HEADINGS[each] for each in kinds],
        "keys": list(kinds),
        "worth": [WORTH.get(each, 1) for each in kinds],
        "kind": [kinds.index(each.kind) for each in found],
        "id": [each.id for each in found],
        "name": [each.name for each in found],
        "place": [places.number(each.place) for each in found],
        "off": [offs.number(each.off) for each in found],
        "reset": [resets.number(each.reset) for each in found],
        "href": [book.url("", each.to) or "" for each in found],
        "places": places.texts,
        "offs": offs.texts,
        "resets": resets.texts,
        "words": " ".join(index.words),
        "at": [",".join(_steps(each)) for each in index.places],
        "alike": [list(each) for each in ALIKE],
        "passedOver": list(PASSED_OVER),
        "complaints": list(COMPLAINTS),
        "help": next((at for at, each in enumerate(found) if each.to == Ref("sheet", "where-to-look")), -1),
    }


class _Table:
    """Texts that stand many times, each kept once."""

    def __init__(self) -> None:
        self.texts: list[str] = []
        self._numbers: dict[str, int] = {}

    def number(self, text: str) -> int:
        """The number of a text."""
        if text not in self._numbers:
            self._numbers[text] = len(self.texts)
            self.texts.append(text)
        return self._numbers[text]


def _steps(numbers: Iterable[int]) -> Iterator[str]:
    last = 0
    for each in numbers:
        yield _base36(each - last)
        last = each


def _base36(number: int) -> str:
    said = ""
    while True:
        number, rest = divmod(number, 36)
        said = BASE36[rest] + said
        if not number:
            return said


def href_of(book: AddressBook, ref: Ref) -> str:
    """Where a thing stands, from the top of the manual; empty where it has no place."""
    return book.url("", ref) or ""


def hrefs(book: AddressBook, refs: Mapping[str, Ref]) -> dict[str, str]:
    """By name, where things stand; those that have no place are left out."""
    return {name: to for name, ref in refs.items() if (to := book.url("", ref))}


def off_data(house: House, network: Network, isolations: Mapping[str, Isolation], book: AddressBook) -> Data:
    """What must be off before each box is opened, and every handle that may be among it."""
    return {
        "boxes": {id_: _off(each) for id_, each in box_lists(house, isolations).items()},
        "breakers": _handles(book, handles(house), "space"),
        "sources": _handles(book, source_handles(house), "circuit"),
        "mains": list(network.index.mains),
        "entering": list(network.index.entering),
        "panels": panels_spoken(house),
        "hrefs": hrefs(book, {each: Ref("box", each) for each in house.boxes}),
    }


def suspect_data(
    house: House, network: Network, known: Ways, hazards: Mapping[str, tuple[str, ...]], book: AddressBook
) -> Data:
    """What a search for a fault rests on, lists for panels and cables, and the hazards open in each box."""
    return {
        **suspect_ground(house, network, known),
        "readings": {word: _reading(each) for word, each in READINGS.items()},
        "do": DO,
        "panels": {id_: _off(each) for id_, each in panel_lists(house, network).items()},
        "runs": {id_: _off(each) for id_, each in run_lists(house, network).items()},
        "points": _points(house),
        "hazards": hazards,
        "hrefs": hrefs(book, {each: Ref("point", each) for each in house.devices}),
    }


def more_data(house: House, room: RoomForMore, book: AddressBook) -> Data:
    """What is free at each point and in each box; each number as two that it is the quotient of."""
    poles = {pole.poles[0]: pole for each in room.points.values() for pole in each.poles}
    return {
        "poles": {id_: _pole(house, room, each, book) for id_, each in poles.items()},
        "points": {id_: _point_room(house, each, book) for id_, each in room.points.items()},
        "boxes": {id_: _box_room(house, room, each, book) for id_, each in room.boxes.items()},
        "dropLimit": drop_limit(),
    }


def _pole(house: House, more: RoomForMore, pole: PoleLoad, book: AddressBook) -> Data:
    room, breaker, circuit = pole.room, house.breakers[pole.breaker], house.circuits[pole.circuit]
    leg = f", leg {' and '.join(pole.legs)}" if len(pole.legs) == 1 and breaker.poles > 1 else ""
    return {
        "breaker": f"{breakers_spoken(house, (pole.breaker,))}{leg}",
        "circuit": circuit.name,
        "at": face_words(house, breaker),
        "href": href_of(book, Ref("circuit", pole.circuit)),
        "rating": shown(pole.rating_a) if pole.rating_a is not None else "",
        "drawn": f"{'at least ' if pole.load.value is None else ''}{shown(pole.least_a)} A",
        "draws": [
            [each.name, f"{shown(each.amps.value)} A" if each.amps.value is not None else "not recorded"]
            for each in pole.draws
        ],
        "never": [each.name for each in pole.left_out],
        "none": no_room(pole) if room is None else "",
        "left": _exact(room.left_a) if room else None,
        "long": _exact(room.continuous.steps[0].value) if room else None,
        "cord": _exact(room.cord.value) if room and room.cord and room.cord.value is not None else None,
        "limit": room.limit if room else "",
        "lacks": list(room.now.lacks) if room else [],
        "first": list(more.first.get(Ref("circuit", pole.circuit), ())),
    }


def _point_room(house: House, each: PointRoom, book: AddressBook) -> Data:
    return {
        "place": place_of(house, house.boxes[each.box]),
        "box": each.box,
        "href": href_of(book, Ref("point", each.point)),
        "poles": [pole.poles[0] for pole in each.poles],
        "byLabel": each.by_label,
        "volts": _exact(each.volts),
        "taken": each.taken,
        "lacks": list(each.lacks),
        "drop": _drop(each.drop) if each.drop and each.drop.volts == each.volts else None,
    }


def _drop(drop: Drop) -> Data:
    return {
        "now": _exact(drop.now_v), "ohms": _exact(drop.ohms), "volts": _exact(drop.volts),
        "least": drop.least, "most": drop.most,
    }  # fmt: skip


def _box_room(house: House, more: RoomForMore, room: BoxRoom, book: AddressBook) -> Data:
    return {
        "place": place_of(house, house.boxes[room.box]),
        "href": href_of(book, Ref("box", room.box)),
        "first": list(more.first.get(Ref("box", room.box), ())),
        "extending": [_extending(house, more, room, each) for each in alike(room.extending)],
    }


def _extending(house: House, more: RoomForMore, room: BoxRoom, each: Extending) -> Data:
    return {
        "from": source_words_of(house, each),
        "first": list(more.first_of(each.circuit, room.box)),
        "may": each.may,
        "stops": [reason_words(one) for one in each.stops],
        "lacks": list(each.lacks),
        "heeds": [reason_words(one) for one in each.heeds],
        "wire": str(each.least) if each.least else "",
        "cables": cables_words(room.cables, each),
    }


def _exact(value: Fraction) -> list[str]:
    """A fraction as two whole numbers in words, for no reader of numbers holds every one of them."""
    return [str(value.numerator), str(value.denominator)]


def _off(each: OffList) -> Data:
    return {
        "place": each.place, "breakers": each.breakers, "sources": each.sources, "unknown": each.unknown,
        "first": each.first, "stays": each.stays_live, "wires": each.wires,
    }  # fmt: skip


def _handles(book: AddressBook, some: Mapping[str, Handle], kind: Kind) -> dict[str, list[str]]:
    return {id_: [each.name, each.says, each.at, href_of(book, Ref(kind, id_))] for id_, each in some.items()}


def _reading(each: Reading) -> Data:
    return {
        "shows": each.shows, "means": each.means, "roles": each.roles, "then": each.then,
        "whole": each.whole, "stops": each.stops,
    }  # fmt: skip


def _points(house: House) -> Data:
    """By device, what it is, where, and the circuits and the room under which it is listed."""
    return {
        each.id: [
            plain_words(each),
            place_of(house, house.boxes[each.box]),
            [*(f"circuit:{one}" for one in each.circuits), f"room:{house.boxes[each.box].room}"],
        ]
        for each in house.devices.values()
    }
