"""Builds the cover."""

from collections.abc import Iterable, Iterator

from junctionary.house.model import House, Panel, Room, Run
from junctionary.sheets.cover import Cover, IndexLine, LevelEntry, RoomEntry
from junctionary.sheets.entries import Fact
from junctionary.sheets.index_of_sheets import in_order, series
from junctionary.sheets.levels import level_plans
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.naming import breaker_link, breaker_words, room_link, said, source_words, where
from junctionary.sheets.statement import kinds_of_cable
from junctionary.sheets.survey import Survey, boxes_known, known_words, title
from junctionary.sheets.titleblock import GENERAL

SHOWS = {
    "find": ("Find", "everything by name: where it is, and its breaker"),
    "where-to-look": ("It is dead: where to look", "resets first, then the likeliest places"),
    "make-dead": ("Make a box dead", "what to switch off, tick by tick; then the test"),
    "one-more": ("Room for one more", "what is free on a circuit; may an outlet be added from here"),
    "outage": ("Outage card", "other sources, what each keeps alive, the order to switch in"),
    "panels": ("Panels and sources", "where each is, what feeds it, what stays live with the main off"),
    "one-line": ("One-line diagram", "sources, mains, panels, feeders, bonds and grounds, with their sizes"),
    "circuits": ("Circuits", "each circuit, its breaker, its rooms"),
    "rooms": ("Rooms", "what is in each room and what feeds it"),
    "boxes": ("Boxes", "every box, where it is and what is in it"),
    "splices": ("Splices and pigtails", "every joint, those hardest to reach first"),
    "loads": ("Loads", "what the service, each feeder and each leg must carry, step by step"),
    "findings": ("Findings", "what was found, with the clause each rests on"),
    "not-recorded": ("Not recorded", "what is missing, most useful first"),
    "checklist": ("Stage checklist", "per room: proved, wrong, still to record, stage by stage"),
    "history": ("Proof and history", "tests of protectors and alarms, photographs, inspections, changes"),
    "statement": ("Statement", "for a buyer or an insurer: wiring, panels, ages, permits, what is open"),
    "notes": ("Safety", "the cautions, and the notes of this house"),
    "rules": ("Checks", "what each check looks at, and on what authority"),
    "terms": ("Terms and symbols", "the words, symbols and colours of these sheets"),
}


def cover(survey: Survey, has_notes: bool = False) -> Cover:
    """The cover of the manual; ``has_notes`` where the house has notes of its own."""
    house = survey.house
    boxes = list(house.boxes.values())
    runs = list(house.runs.values())
    breakers = [each for each in house.breakers.values() if each.spaces != ("main",)]
    made = sum(not each.makeup_unknown and not each.makeup_unrecorded for each in boxes)
    return Cover(
        title=title(survey, "Cover", GENERAL["cover"], known_words(boxes_known(boxes), len(survey.missing))),
        ref=Ref("sheet", "cover"),
        heading=house.name,
        lead=("House manual: electrical, as recorded.",),
        shut_off=tuple(
            Fact(each.what, (each.where + (f". {each.note}" if each.note else ""),))
            for each in house.record.shut_off
        ),
        sources=tuple(
            Fact(
                source_words(each),
                (
                    Link(
                        f"enters at {breaker_words(each.enters)}"
                        if each.enters
                        else "where it enters is not recorded",
                        Ref("circuit", each.id),
                    ),
                    f"; without the utility: {each.without_utility or 'not recorded'}",
                ),
            )
            for each in house.sources.values()
        ),
        hazards=tuple(each for each in survey.findings if each.severity == "hazard" and not each.accepted),
        tally=(
            Fact("panels", (Link(str(len(house.panels)), Ref("sheet", "panels")),)),
            Fact("circuits", (Link(str(len(house.circuits)), Ref("sheet", "circuits")),)),
            Fact("rooms", (Link(str(len(house.rooms)), Ref("sheet", "rooms")),)),
            Fact("boxes", (Link(str(len(boxes)), Ref("sheet", "boxes")),)),
            Fact("runs", (str(len(runs)),)),
            *_cables(runs),
            Fact("service", (_service(house),)),
            Fact("joints", (Link(str(len(house.joints())), Ref("sheet", "splices")),)),
            Fact("findings", (Link(str(len(survey.findings)), Ref("sheet", "findings")),)),
        ),
        complete=(
            *_of_all(
                "breakers known to feed something",
                sum(isinstance(each.feeds, str) for each in breakers),
                len(breakers),
            ),
            *_of_all(
                "runs with both ends", sum(all(end.id for end in each.ends) for each in runs), len(runs)
            ),
            *_of_all("boxes with a make-up", made, len(boxes)),
            *_of_all("boxes with evidence", sum(each.evidence is not None for each in boxes), len(boxes)),
            Fact("facts not recorded", (Link(str(len(survey.missing)), Ref("sheet", "not-recorded")),)),
        ),
        levels=tuple(_levels(survey)),
        panels=tuple(_panel(house, each) for each in house.panels.values()),
        index=in_order(
            *(
                IndexLine(GENERAL[id_], Link(name, Ref("sheet", id_)), shows)
                for id_, (name, shows) in SHOWS.items()
            ),
            *series(house, has_notes),
        ),
    )


def _levels(survey: Survey) -> Iterator[LevelEntry]:
    """Every room by its level, then boxes in rooms that no file tells of: no box is left out."""
    house = survey.house
    levels: list[tuple[str | None, str]] = [(each.id, each.name) for each in house.record.levels]
    known = {id_ for id_, _ in levels}
    for id_, name in (*levels, (None, "Level not recorded")):
        rooms = [
            RoomEntry((Link(each.name, Ref("room", each.id)),), _codes(each.boxes), _breakers(house, each))
            for each in house.rooms.values()
            if each.record.level == id_ or (id_ is None and each.record.level not in known)
        ]
        if id_ is None:
            strays: dict[str, list[str]] = {}
            for box in house.boxes.values():
                if box.room not in house.rooms:
                    strays.setdefault(box.room, []).append(box.id)
            rooms += [RoomEntry((room,), _codes(boxes)) for room, boxes in strays.items()]
        if rooms:
            if id_ is None:
                yield LevelEntry(name, tuple(rooms))
            else:
                # A plan of one room tells nothing that its name does not.
                plans = tuple(each for each in level_plans(survey, id_) if len(each.rooms) > 1)
                yield LevelEntry(name, tuple(rooms), (Link("plan", Ref("level", id_)),), plans)


def _service(house: House) -> str:
    service = house.record.service
    return said(house, service.rating if service is not None else None)


def _codes(boxes: Iterable[str]) -> tuple[Link, ...]:
    return tuple(Link(each, Ref("box", each)) for each in boxes)


def _panel(house: House, panel: Panel) -> Fact:
    at = panel.record.at
    place: tuple[str | Link, ...] = ("where it is, not recorded",)
    if at is not None:
        place = (room_link(house, at.room) if at.room else "room not recorded", ", ", where(house, at))
    return Fact(panel.id, (Link(panel.name, Ref("panel", panel.id)), ": ", *place))


def _breakers(house: House, room: Room) -> tuple[Link, ...]:
    """What feeds a room of which no box is recorded: of a directory it is all that there is to find."""
    if room.boxes:
        return ()
    fed = (each for circuit in room.circuits for each in house.circuits[circuit].breakers)
    return tuple(breaker_link(each) for each in dict.fromkeys(fed))


def _cables(runs: list[Run]) -> Iterator[Fact]:
    if runs:
        yield Fact("cables", ("; ".join(f"{name}: {count}" for name, count in kinds_of_cable(runs).items()),))


def _of_all(what: str, number: int, whole: int) -> Iterator[Fact]:
    """How many of all; nothing where there are none to count."""
    if whole:
        yield Fact(what, (f"{number} of {whole}",))
