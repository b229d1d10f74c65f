"""Permits and what was inspected under each, as the history and the statement show them."""

from junctionary.house.model import House
from junctionary.house.permits import inspections_of, is_left_open, rooms_without_permit
from junctionary.records.permits import Permit
from junctionary.records.values import NONE
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.lists import Group
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, link, room_link, said


def permits_group(house: House) -> Group:
    """Every permit with its dates and inspections; and what no permit on record covers."""
    heads = ("permit", "for", "covers", "applied, issued", "inspected", "closed")
    rows = tuple(_row(house, each) for each in house.record.permits or ())
    return Group("Permits", _uncovered(house), Table(heads, rows))


def _uncovered(house: House) -> Phrase:
    if house.record.permits is None:
        return ("Whether the work was done under a permit is not known.",)
    if not house.record.permits:
        return ("Looked for, and there is none on record.",)
    bare = rooms_without_permit(house)
    if not bare:
        return ("Every room is covered by one.",)
    return ("No permit on record covers: ", *listed(tuple(room_link(house, each) for each in bare)), ".")


def _row(house: House, permit: Permit) -> Row:
    by = (permit.authority, f"taken out by the {permit.by}" if permit.by else None)
    dates = "; ".join(f"{key} {said(house, getattr(permit, key))}" for key in ("applied", "issued"))
    covers = listed(tuple(_named(house, each) for each in permit.covers or ())) or (NOT_RECORDED,)
    return Row(
        (
            ("; ".join(each for each in (permit.number, *by) if each),),
            ("; ".join(each for each in (permit.for_, permit.note) if each) or NOT_RECORDED,),
            covers,
            (dates,),
            ("; ".join(_inspected(house, permit)) or "nothing logged",),
            (_closed(house, permit),),
        )
    )


def _named(house: House, name: str) -> Link | str:
    """A thing by its name for people, for whoever reads this never saw the record."""
    if name in house.rooms:
        return room_link(house, name)
    if name in house.panels:
        return Link(house.panels[name].name, Ref("panel", name))
    if name in house.circuits:
        return circuit_link(house, name)
    buildings = {each.id: each.name for each in house.record.buildings}
    return buildings.get(name) or link(house, name)


def _inspected(house: House, permit: Permit) -> tuple[str, ...]:
    return tuple(
        f"{str(each.inspection).replace('-', ' ')} {each.date}: {each.result or NOT_RECORDED}"
        for each in inspections_of(house, permit)
    )


def _closed(house: House, permit: Permit) -> str:
    if permit.closed is NONE:
        return "open, with no work under way" if is_left_open(house, permit) else "open: work under way"
    return said(house, permit.closed)
