"""What goes dark with a circuit; of a feeder, all that its panels feed."""

from collections.abc import Iterable, Iterator

from junctionary.house.dark import goes_dark
from junctionary.house.matters import circuits_behind
from junctionary.house.model import Circuit, House
from junctionary.house.panels import MAIN
from junctionary.records.values import UNKNOWN
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.finding_things import device_at
from junctionary.sheets.links import Link, Phrase, Ref, in_a_row, listed
from junctionary.sheets.makeup import device_words
from junctionary.sheets.naming import NOT_RECORDED, breaker_link, circuit_link, room_link, said, where
from junctionary.sheets.survey import Survey


def panels_behind(house: House, circuit: Circuit) -> tuple[str, ...]:
    """The panels a circuit feeds, those behind them left out; none where it is no feeder."""
    return tuple(each.id for each in house.panels.values() if each.feeder == circuit.id)


def behind(survey: Survey, circuit: Circuit) -> tuple[str, ...]:
    """The circuits of the panels a feeder feeds, itself left out."""
    house, fed = survey.house, survey.network.index.panels_fed
    # By the panels, as the breaker of a feeder may not be recorded.
    onward = (one.id for panel in panels_behind(house, circuit) for one in house.panels[panel].breakers)
    return tuple(each for each in circuits_behind(house, onward, fed) if each != circuit.id)


def dark_rooms(survey: Survey, circuit: Circuit) -> tuple[str, ...]:
    """The rooms a circuit serves, those of the circuits behind it too."""
    house = survey.house
    circuits = (circuit, *(house.circuits[each] for each in behind(survey, circuit)))
    return tuple(dict.fromkeys(room for each in circuits for room in each.rooms))


def dark_says(survey: Survey, circuit: Circuit) -> Phrase:
    """Of a feeder, in words, the panels and circuits that go dark with it; else nothing."""
    house = survey.house
    fed = panels_behind(house, circuit)
    panels = tuple(Link(house.panels[each].name, Ref("panel", each)) for each in fed)
    if not panels:
        return ()
    circuits = tuple(circuit_link(house, each) for each in behind(survey, circuit))
    if not circuits:
        return (*listed(panels), ", with all that is on it: no circuit of it is recorded.")
    return (*listed(panels), ", with all that is on it: ", *listed(circuits), ".")


def dark_table(survey: Survey, circuit: Circuit) -> Table:
    """Every device that goes dark, or has a load that does, by room; then what has no place recorded.

    Of a feeder these are all devices of the circuits behind it, and what the conductors show besides;
    each row then says of which circuit, and what is not recorded of a circuit or breaker there is a row too.
    """
    house = survey.house
    is_feeder = bool(panels_behind(house, circuit))
    circuits = (circuit, *(house.circuits[each] for each in behind(survey, circuit)))
    fed: dict[str, tuple[str, ...]] = {}
    for each in circuits:
        for device in each.devices:
            fed[device] = (*fed.get(device, ()), each.id)
    for device in _by_conductors(survey, circuit) if is_feeder else ():
        fed.setdefault(device, house.devices[device].circuits)
    loads: dict[str, list[str]] = {each: [] for each in fed}
    rows: list[tuple[Phrase, ...]] = []
    for each in circuits:
        of: Phrase = (circuit_link(house, each.id),)
        for load in each.loads:
            at = device_at(house, load.plugged or load.wired)
            if at is None:
                draws: Phrase = (said(house, load.draws),)
                rows.append((("place not recorded",), ("",), (load.name or load.id,), ("",), of, draws))
                continue
            loads.setdefault(at, []).append(load.called)
            fed.setdefault(at, (each.id,))
        if each is not circuit and not each.devices and not each.loads and not panels_behind(house, each):
            rows.append(((NOT_RECORDED,), ("",), ("no outlet of it is recorded",), ("",), of, ("",)))
    rows += [
        ((NOT_RECORDED,), ("",), ("what it feeds is not known",), ("",), (breaker_link(each),), ("",))
        for each in _untraced(house, circuits)
    ]
    order = list(house.rooms)
    told: list[tuple[Phrase, ...]] = []
    for id_ in sorted(loads, key=lambda each: _room_place(house, order, each)):
        device_ = house.devices[id_]
        box = house.boxes[device_.box]
        told.append(
            (
                (room_link(house, box.room),),
                (box.name or where(house, box.record.at),),
                (device_words(device_),),
                (Link(id_, Ref("device", id_)),),
                listed(tuple(circuit_link(house, each) for each in fed[id_])) or (NOT_RECORDED,),
                (in_a_row(loads[id_]),),
            )
        )
    heads = ("room", "where", "what", "code", "circuit", "feeds")
    every = (*told, *rows)
    feeds = any(row[5] != ("",) for row in every)
    shown = [column for column in range(6) if column < 4 or (is_feeder if column == 4 else feeds)]
    return Table(
        tuple(heads[column] for column in shown),
        tuple(Row(tuple(row[column] for column in shown)) for row in every),
    )


def _by_conductors(survey: Survey, circuit: Circuit) -> Iterator[str]:
    for breaker in circuit.breakers:
        dark = goes_dark(survey.house, survey.network, breaker)
        yield from dark.devices
        yield from (each.rpartition(".")[0] for each in dark.halves)


def _untraced(house: House, circuits: Iterable[Circuit]) -> tuple[str, ...]:
    """The breakers of the panels these circuits feed of which nobody could tell what they feed."""
    panels = dict.fromkeys(panel for each in circuits for panel in panels_behind(house, each))
    return tuple(
        breaker.id
        for panel in panels
        for breaker in house.panels[panel].breakers
        if breaker.spaces != (MAIN,) and breaker.feeds in (None, UNKNOWN)
    )


def _room_place(house: House, order: list[str], device: str) -> int:
    room = house.boxes[house.devices[device].box].room
    return order.index(room) if room in order else len(order)
