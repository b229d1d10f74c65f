"""How old things are, and what guards against surges, as several sheets say it."""

from collections.abc import Iterator

from junctionary.house.model import Circuit, House, Panel
from junctionary.records import words
from junctionary.records.circuits import LoadRecord
from junctionary.records.panels import Surge
from junctionary.records.values import NONE, UNKNOWN, Said
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.finding_things import device_at, place_of
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.naming import NOT_RECORDED, breaker_words, circuit_link, link, said, source_words

SURGE_AT = {
    "before-main": "before the main: live with the main off",
    "lugs": "at the lugs",
    "built-in": "built into the panel",
}


def age_words(made: str | Said | None, installed: str | Said | None) -> str:
    """``made 2024, installed 2025-03-22``; or that neither is recorded."""
    told = [f"{key} {each}" for key, each in (("made", made), ("installed", installed)) if each is not None]
    return ", ".join(told) or NOT_RECORDED


def surge_words(panel: Panel) -> tuple[str, ...]:
    """What guards a panel against surges: its type, where it is connected, its age; or that there is none."""
    surge = panel.record.surge
    if surge is None:
        return (NOT_RECORDED,)
    if not isinstance(surge, Surge):
        return ("none in this panel" if surge is NONE else "unknown",)
    kind = f"type {surge.type or NOT_RECORDED}"
    at = surge.connected
    if at is None or at is UNKNOWN:
        where = f"where it is connected is {'unknown' if at else NOT_RECORDED}"
    else:
        where = SURGE_AT[str(at)] if at in words.SURGE_AT else f"on breaker {at}"
    dated = surge.made is not None or surge.installed is not None
    age = age_words(surge.made, surge.installed) if dated else f"its age {NOT_RECORDED}"
    return (kind, where, age, *([surge.note] if surge.note else ()))


def ages(house: House) -> Table:
    """Everything of which the record says when it was made or put in, the panels always."""
    return Table(("what", "where", "made", "installed"), tuple(_rows(house)))


def _rows(house: House) -> Iterator[Row]:
    for panel in house.panels.values():
        record = panel.record
        room = house.rooms.get(record.at.room or "") if record.at else None
        at = room.name if room else NOT_RECORDED
        yield _row(house, Link(panel.name, Ref("panel", panel.id)), at, record.made, record.installed)
        if isinstance(record.surge, Surge):
            what = f"Surge protection, {surge_words(panel)[0]}"
            yield _row(house, what, panel.name, record.surge.made, record.surge.installed)
    for breaker in house.breakers.values():
        told = breaker.record
        if told.made is not None or told.installed is not None:
            named = link(house, breaker.id, f"Breaker {breaker_words(breaker.id)}")
            yield _row(house, named, house.panels[breaker.panel].name, told.made, told.installed)
    for source in house.sources.values():
        origin = Link(source_words(source), Ref("circuit", source.id))
        yield _row(house, origin, source.at or NOT_RECORDED, source.made, source.installed)
    for circuit in house.circuits.values():
        for load in circuit.loads:
            if load.made is not None or load.installed is not None:
                yield _of_load(house, circuit, load)
    yield from _runs(house)


def _of_load(house: House, circuit: Circuit, load: LoadRecord) -> Row:
    at = device_at(house, load.plugged or load.wired)
    name = load.name or load.is_.replace("-", " ").capitalize()
    place = place_of(house, house.boxes[house.devices[at].box]) if at else circuit.name
    to = Ref("point", at) if at else Ref("circuit", circuit.id)
    return _row(house, Link(name, to), place, load.made, load.installed)


def _runs(house: House) -> Iterator[Row]:
    """The dated cables, those of one circuit and one date together."""
    together: dict[tuple[str, str | Said | None, str | Said | None], list[str]] = {}
    for run in house.runs.values():
        made, installed = run.record.made, run.record.installed
        if made is not None or installed is not None:
            together.setdefault((run.circuit, made, installed), []).append(run.id)
    for (circuit, made, installed), runs in together.items():
        what = f"Cable of run{'s' if runs[1:] else ''} {', '.join(runs)}"
        yield _row(house, what, circuit_link(house, circuit), made, installed)


def _row(
    house: House, what: str | Link, place: str | Link, made: str | Said | None, installed: str | Said | None
) -> Row:
    return Row(((what,), (place,), (said(house, made),), (said(house, installed),)))
