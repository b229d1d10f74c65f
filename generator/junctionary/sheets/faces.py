"""Builds the face of a panel: what stands in each space, and what is lettered there."""

from collections.abc import Iterator, Mapping
from typing import Literal

from junctionary.house.model import Breaker, House, Panel
from junctionary.house.panels import MAIN, SPACE, leg_of, surge_breaker
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sheets.entries import Severity
from junctionary.sheets.face import Device, Handle, PanelFace, Side, Slot, SpaceState
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.naming import circuit_link, counted, said
from junctionary.units import Quantity

_DEVICES: dict[str, Device] = {"plug-fuse": "plug-fuse", "cartridge-fuse": "cartridge-fuse"}
GUARD_SIGNS = {"gfci": "GF", "afci": "AF"}
"""What guards a circuit as lettered on its breaker."""

HALVES: tuple[Literal["a", "b"], ...] = ("a", "b")


def panel_face(house: House, gravest: Mapping[str, Severity], panel: Panel) -> PanelFace:
    """The face: odd spaces left, even ones right, row by row; spaces that are words follow, two to a row.

    ``gravest`` marks a breaker, by its id.
    """
    slots = list(_slots(house, panel))
    taken = {slot.number for slot in slots}
    handles = []
    for breaker in panel.breakers:
        own = tuple(slot for slot in slots if slot.number in breaker.spaces)
        if own:
            handles.append(_handle(house, gravest, breaker, own))
    held = {slot.number for handle in handles for slot in handle.slots}
    handles += [_empty(panel, slot) for slot in slots if slot.number not in held]
    main = next((each for each in panel.breakers if each.spaces == (MAIN,)), None)
    rows = max((slot.row for slot in slots), default=-1) + 1
    return PanelFace(
        ref=Ref("panel", panel.id),
        title=f"Face of {panel.name}",
        says=_face_says(panel, len(taken), rows),
        rows=rows,
        main=_handle(house, gravest, main, ()) if main else None,
        handles=tuple(sorted(handles, key=lambda each: (each.slots[0].row, each.slots[0].side))),
    )


def _face_says(panel: Panel, spaces: int, rows: int) -> str:
    main = "a main above" if any(each.spaces == (MAIN,) for each in panel.breakers) else "no main"
    return (
        f"{counted(spaces, 'space')} in {counted(rows, 'row')} of two, odd numbers left and even ones right, "
        f"{main}; {breakers_counted(panel)}."
    )


def _slots(house: House, panel: Panel) -> Iterator[Slot]:
    """Every space there is, both halves where one half is told of."""
    system = house.record.service.system if house.record.service else None
    told = dict.fromkeys(
        (*(space for each in panel.breakers for space in each.spaces if space != MAIN), *panel.fillers)
    )
    numbered = [space for space in told if SPACE.fullmatch(space)]
    count = panel.record.spaces if numbered or not told else 0
    row = (count + 1) // 2
    for number in range(1, count + 1):
        place: tuple[int, Side] = ((number - 1) // 2, "left" if number % 2 else "right")
        leg = leg_of(panel.record, str(number), system) or ""
        if f"{number}a" in told or f"{number}b" in told:
            for half in HALVES:
                name = f"{number}{half}"
                yield Slot(name, *place, half, leg_of(panel.record, name, system) or "")
        else:
            yield Slot(str(number), *place, "", leg)
    words = [space for space in told if space not in numbered]
    for index, space in enumerate(words):
        side: Side = "right" if index % 2 else "left"
        yield Slot(space, row + index // 2, side, "", leg_of(panel.record, space, system) or "")


def _empty(panel: Panel, slot: Slot) -> Handle:
    states: dict[str, SpaceState] = {"unused": "unused", "blank": "blank", "open": "open"}
    written = panel.fillers.get(slot.number)
    state: SpaceState = "unrecorded" if written is None else states.get(written, "unknown")
    return Handle(Ref("space", f"{panel.id}/{slot.number}"), (slot,), state)


def _handle(
    house: House, gravest: Mapping[str, Severity], breaker: Breaker, slots: tuple[Slot, ...]
) -> Handle:
    record, ref = breaker.record, Ref("space", breaker.id)
    return Handle(
        ref=ref,
        slots=slots,
        state=_state(house.panels[breaker.panel], breaker),
        rating=said(house, breaker.rating) if isinstance(breaker.rating, Quantity) else "",
        feeds=feeds_phrase(house, breaker),
        guards="+".join(GUARD_SIGNS[each] for each in breaker.guards or ()),
        notes=tuple(_notes(breaker)),
        tied=tuple(Ref("space", each) for each in breaker.tied_to),
        is_off=record.kept_off is True or _is_barred(house, breaker),
        device=_DEVICES.get(record.kind or "", "breaker"),
        severity=gravest.get(breaker.id),
    )


def _is_barred(house: House, breaker: Breaker) -> bool:
    """Whether it lets another source in and an interlock holds it off while the main is on."""
    return str(breaker.feeds) in house.sources and bool(breaker.interlocked_with)


def _state(panel: Panel, breaker: Breaker) -> SpaceState:
    if breaker.spaces == (MAIN,):
        return "main"
    if breaker.feeds is NONE:
        return "feeds" if breaker == surge_breaker(panel) else "unused"
    return "unknown" if breaker.feeds is UNKNOWN or breaker.feeds is None else "feeds"


def _notes(breaker: Breaker) -> Iterator[str]:
    if breaker.rating is None:
        yield "rating not recorded"
    elif breaker.rating is UNKNOWN:
        yield "rating unknown"
    yield from (f"tied to {each.partition('/')[2]}" for each in breaker.tied_to)
    yield from (f"interlocked with {each.partition('/')[2]}" for each in breaker.interlocked_with)
    if breaker.record.kept_off is True:
        yield "kept off"


def feeds_phrase(house: House, breaker: Breaker) -> Phrase:
    """What a breaker feeds, as a link where it is known."""
    if breaker.spaces == (MAIN,):
        return ("the whole panel",)
    if breaker.feeds is NONE:
        return (
            ("surge protection",)
            if breaker == surge_breaker(house.panels[breaker.panel])
            else ("feeds nothing",)
        )
    if breaker.feeds is UNKNOWN:
        return ("what it feeds is unknown",)
    if breaker.feeds is None:
        return ("what it feeds is not recorded",)
    feeds = str(breaker.feeds)
    what = circuit_link(house, feeds)
    return (what, f", {breaker.conductor}") if breaker.conductor else (what,)


def breakers_counted(panel: Panel) -> str:
    """``24 breakers``, the main left out."""
    return counted(sum(each.spaces != (MAIN,) for each in panel.breakers), "breaker")
