"""Before opening: what the network says must be off, in the words of a sheet."""

from collections.abc import Iterable

from junctionary.house.isolate import (
    Isolation,
    Off,
    isolate_circuit,
    isolate_panel,
    isolate_room,
    isolate_run,
)
from junctionary.house.model import House
from junctionary.sheets.caution import BeforeOpening, BreakerOff, SourceOff
from junctionary.sheets.face import LitFace
from junctionary.sheets.finding_things import feeds_words
from junctionary.sheets.links import Ref
from junctionary.sheets.naming import source_words
from junctionary.sheets.second_sources import stopping
from junctionary.sheets.spoken import handle_words, spoken
from junctionary.sheets.survey import Survey

COVER_ON = (
    "Leave the inner cover on, unless you are qualified to take it off:"
    " what is behind it stays live with every breaker in it off."
)


def before_box(survey: Survey, box_id: str) -> BeforeOpening:
    """What must be off before anything in a box is dead."""
    return _told(survey, f"box {box_id}", survey.isolations[box_id])


def before_circuit(survey: Survey, circuit_id: str) -> BeforeOpening:
    """What must be off before any box of a circuit is opened, other circuits in those boxes included."""
    house, network = survey.house, survey.network
    circuit = house.circuits[circuit_id]
    whole = isolate_circuit(house, network, circuit_id)
    opens = "any box of this circuit"
    return _told(survey, opens, whole, *_of_boxes(survey, circuit.boxes), boxes=circuit.boxes)


def before_room(survey: Survey, room_id: str) -> BeforeOpening:
    """What must be off before any box of a room is opened."""
    boxes = survey.house.rooms[room_id].boxes
    whole = isolate_room(survey.house, survey.network, room_id)
    return _told(survey, "any box of this room", whole, *_of_boxes(survey, boxes), boxes=boxes)


def before_source(survey: Survey, source_id: str) -> BeforeOpening:
    """What must be off before any box that a second source's wiring comes to is opened."""
    house, network = survey.house, survey.network
    runs = [run for run in house.runs.values() if run.circuit == source_id]
    boxes = tuple(dict.fromkeys(end.id for run in runs for end in run.ends if end.id in house.boxes))
    parts = [isolate_run(house, network, run.id) for run in runs]
    known = tuple(each for each in boxes if each)
    parts += _of_boxes(survey, known)
    opens = f"any box of {source_words(house.sources[source_id])}"
    return _told(survey, opens, *(parts or [isolate_run(house, network, source_id)]), boxes=known)


def before_panel(survey: Survey, panel_id: str) -> BeforeOpening:
    """What must be off before a panel's inner cover comes off, and what stays live all the same."""
    isolation = isolate_panel(survey.house, survey.network, panel_id)
    return _told(survey, f"the inner cover of panel {panel_id}", isolation, extra=(COVER_ON,))


def before_any() -> BeforeOpening:
    """For a sheet that leads to many boxes: each box's own sheet has its list."""
    return BeforeOpening("any of these", (), elsewhere=True)


def _of_boxes(survey: Survey, boxes: Iterable[str]) -> tuple[Isolation, ...]:
    return tuple(survey.isolations[each] for each in boxes)


def _told(
    survey: Survey,
    opens: str,
    *isolations: Isolation,
    boxes: tuple[str, ...] = (),
    extra: tuple[str, ...] = (),
) -> BeforeOpening:
    house = survey.house
    why = _reasons(each for isolation in isolations for each in isolation.breakers)
    if boxes:
        why = _by_box(survey, boxes, why)
    sources = _reasons(each for isolation in isolations for each in isolation.sources)
    unknown = tuple(dict.fromkeys(reason for isolation in isolations for reason in isolation.unknown))
    if unknown or not why:
        for main in (main for isolation in isolations for main in isolation.mains):
            why.setdefault(main, ("something here is unknown",))
    matters = dict.fromkeys(matter for isolation in isolations for matter in isolation.first)
    why = {each: _said(house, reasons) for each, reasons in why.items()}
    return BeforeOpening(
        opens=opens,
        off=tuple(_off(house, each, why[each]) for each in sorted(why, key=list(house.breakers).index)),
        unknown=_said(house, unknown),
        others=tuple(_source(house, each, _said(house, reasons)) for each, reasons in sources.items()),
        loses=tuple(f"{each.name} ({each.matters})" for each in matters),
        stays_live=_said(
            house, dict.fromkeys(each for isolation in isolations for each in isolation.stays_live)
        ),
        extra=extra,
        # The sheet of a panel shows its face whole.
        faces=() if extra else _lit_faces(survey, why),
    )


def _said(house: House, reasons: Iterable[str]) -> tuple[str, ...]:
    """Reasons in words: ``its handle is tied to breaker 8 in the main panel``."""
    return tuple(spoken(house, each) for each in reasons)


def _lit_faces(survey: Survey, breakers: Iterable[str]) -> tuple[LitFace, ...]:
    """A small face of each panel that has one of these breakers, with those marked."""
    house = survey.house
    found: dict[str, set[Ref]] = {}
    for id_ in breakers:
        if id_ in house.breakers:
            found.setdefault(house.breakers[id_].panel, set()).add(Ref("space", id_))
    return tuple(
        LitFace(survey.faces[panel], house.panels[panel].name, frozenset(lit)) for panel, lit in found.items()
    )


def _reasons(offs: Iterable[Off]) -> dict[str, tuple[str, ...]]:
    """Each thing to switch off once, with its reasons as they are told first."""
    found: dict[str, tuple[str, ...]] = {}
    for each in offs:
        found.setdefault(each.id, each.why)
    return found


def _by_box(
    survey: Survey, boxes: tuple[str, ...], why: dict[str, tuple[str, ...]]
) -> dict[str, tuple[str, ...]]:
    """For a sheet of many boxes, the boxes each breaker reaches; their own sheets list the conductors."""
    here: dict[str, list[str]] = {}
    for box in boxes:
        for off in survey.isolations[box].breakers:
            here.setdefault(off.id, []).append(box)
    told = {}
    for breaker, reasons in why.items():
        found = here.get(breaker, [])
        if not found:
            told[breaker] = reasons
            continue
        where = "every box" if len(found) == len(boxes) > 1 else ", ".join(found)
        told[breaker] = (f"in {where}", *(each for each in reasons if not each.startswith("reaches ")))
    return told


def _off(house: House, breaker: str, reasons: tuple[str, ...]) -> BreakerOff:
    feeds = feeds_words(house, house.breakers[breaker])
    return BreakerOff(Ref("space", breaker), handle_words(house, breaker), feeds, reasons)


def _source(house: House, id_: str, reasons: tuple[str, ...]) -> SourceOff:
    source = house.sources[id_]
    return SourceOff(Ref("circuit", id_), source_words(source), stopping(house, source), reasons)
