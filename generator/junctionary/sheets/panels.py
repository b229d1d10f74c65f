"""Builds the sheet of a panel: its face as it stands, and the card for its door."""

import re
from collections.abc import Iterator

from junctionary.house.model import Breaker, House, Panel
from junctionary.house.panels import leg_of
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sheets.circuit_tree import gravest
from junctionary.sheets.entries import Fact
from junctionary.sheets.grounds import panel_facts, panel_workings
from junctionary.sheets.isolation import before_panel
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, room_link, said, where
from junctionary.sheets.panel import DirectoryLine, FaceRow, Handle, PanelSheet, Position, SpaceState
from junctionary.sheets.survey import Survey, counted, excerpts, known_words, title
from junctionary.sheets.titleblock import panel_number

_SPACE = re.compile(r"(\d+)([ab]?)")


def panel_sheet(survey: Survey, panel_id: str) -> PanelSheet:
    """The sheet of one panel."""
    house = survey.house
    panel = house.panels[panel_id]
    ref = Ref("panel", panel_id)
    missing = survey.missing_at.get(ref, ())
    return PanelSheet(
        title=title(
            survey,
            f"Panel {panel_id}, face and directory",
            panel_number(list(house.panels).index(panel_id) + 1),
            known_words(panel.record.stage or "as recorded", len(missing)),
        ),
        ref=ref,
        heading=panel.name,
        lead=_lead(house, panel),
        before=before_panel(survey, panel_id),
        facts=tuple(_facts(survey, panel)),
        main=next((_handle(survey, each) for each in panel.breakers if each.spaces == ("main",)), None),
        face=tuple(_face(survey, panel)),
        directory=tuple(_directory(house, panel)),
        workings=tuple(panel_workings(survey, panel)),
        findings=survey.findings_at.get(ref, ()),
        missing=missing,
        excerpts=excerpts(survey, panel.place),
    )


def _lead(house: House, panel: Panel) -> Phrase:
    room = panel.record.at.room if panel.record.at else None
    at: Phrase = (room_link(house, room), ", ") if room else ()
    return (*at, f"{where(house, panel.record.at)}; ", *fed_from(house, panel), ".")


def fed_from(house: House, panel: Panel) -> Phrase:
    """What feeds a panel."""
    if panel.feeder is not None:
        return ("fed by ", circuit_link(house, panel.feeder))
    return (f"fed by {panel.record.fed_by}" if panel.record.fed_by else "what feeds it is not recorded",)


def _facts(survey: Survey, panel: Panel) -> Iterator[Fact]:
    house, record = survey.house, panel.record
    yield Fact("kind", (record.kind,))
    yield Fact("rating", (said(house, record.rating),))
    yield Fact(
        "main breaker", ("no main in this panel" if record.main is NONE else said(house, record.main),)
    )
    yield Fact("spaces", (str(record.spaces),))
    yield from panel_facts(survey, panel)
    yield Fact("door card dated", (said(house, record.directory_dated),))
    if record.note:
        yield Fact("note", (record.note,))


def _face(survey: Survey, panel: Panel) -> Iterator[FaceRow]:
    """Row by row: odd spaces left, even ones right. Spaces that are words follow, two to a row."""
    named = {space: breaker for breaker in panel.breakers for space in breaker.spaces}
    count = panel.record.spaces if any(map(_SPACE.fullmatch, [*named, *panel.fillers])) or not named else 0
    covered: set[str] = set()
    for row in range((count + 1) // 2):
        left, right = str(2 * row + 1), str(2 * row + 2)
        system = survey.house.record.service.system if survey.house.record.service else None
        yield FaceRow(
            leg_of(panel.record, left, system) or "",
            _position(survey, panel, left, named, covered),
            _position(survey, panel, right, named, covered) if 2 * row + 2 <= count else None,
        )
    words = [
        each
        for each in panel.breakers
        if each.spaces != ("main",) and not any(map(_SPACE.fullmatch, each.spaces))
    ]
    for first in range(0, len(words), 2):
        pair = [Position((_handle(survey, each),)) for each in words[first : first + 2]]
        yield FaceRow("", pair[0], pair[1] if len(pair) > 1 else None)


def _position(
    survey: Survey, panel: Panel, space: str, named: dict[str, Breaker], covered: set[str]
) -> Position | None:
    if space in covered:
        return None
    halves = [each for each in (f"{space}a", f"{space}b") if each in named or each in panel.fillers]
    if halves:
        return Position(tuple(_in_space(survey, panel, each, named) for each in halves))
    breaker = named.get(space)
    rows = 1
    if breaker is not None:
        # A breaker of two spaces, one under the other, covers both rows of its column.
        while str(int(space) + 2 * rows) in breaker.spaces:
            covered.add(str(int(space) + 2 * rows))
            rows += 1
    return Position((_in_space(survey, panel, space, named),), rows)


def _in_space(survey: Survey, panel: Panel, space: str, named: dict[str, Breaker]) -> Handle:
    if space in named:
        return _handle(survey, named[space])
    states: dict[str, SpaceState] = {"unused": "unused", "blank": "blank", "open": "open"}
    written = panel.fillers.get(space)
    if written is None:
        return Handle(Ref("space", f"{panel.id}/{space}"), space, "unrecorded", feeds=(NOT_RECORDED,))
    return Handle(Ref("space", f"{panel.id}/{space}"), space, states.get(written, "unknown"))


def _handle(survey: Survey, breaker: Breaker) -> Handle:
    house = survey.house
    ties = [f"tied to {each.partition('/')[2]}" for each in breaker.tied_to]
    ties += [f"interlocked with {each.partition('/')[2]}" for each in breaker.interlocked_with]
    severity = gravest(survey, {Ref("space", breaker.id)})
    unknown = breaker.feeds is UNKNOWN or breaker.feeds is None
    return Handle(
        ref=Ref("space", breaker.id),
        spaces="+".join(breaker.spaces),
        state="main" if breaker.spaces == ("main",) else "unknown" if unknown else "feeds",
        rating=said(house, breaker.rating) if breaker.rating is not None else "",
        leg="+".join(each or "?" for each in breaker.legs),
        guards=" + ".join(each.upper() for each in breaker.guards or ()),
        tied=", ".join(ties),
        feeds=feeds_phrase(house, breaker),
        says=breaker.says or "",
        marks=(severity,) if severity else (),
    )


def feeds_phrase(house: House, breaker: Breaker) -> Phrase:
    """What a breaker feeds, as a link where it is known."""
    if breaker.spaces == ("main",):
        return ("the whole panel",)
    if breaker.feeds is NONE:
        return ("feeds nothing",)
    if breaker.feeds is UNKNOWN:
        return ("what it feeds is unknown",)
    if breaker.feeds is None:
        return ("what it feeds is not recorded",)
    feeds = str(breaker.feeds)
    what = circuit_link(house, feeds)
    return (what, f", {breaker.conductor}") if breaker.conductor else (what,)


def _directory(house: House, panel: Panel) -> Iterator[DirectoryLine]:
    for breaker in sorted(panel.breakers, key=_place):
        if breaker.spaces == ("main",):
            continue
        circuit = house.circuits.get(str(breaker.feeds))
        rooms = (
            ", ".join(house.rooms[each].name for each in circuit.rooms if each in house.rooms)
            if circuit
            else ""
        )
        yield DirectoryLine(
            "+".join(breaker.spaces), said(house, breaker.rating), feeds_phrase(house, breaker), rooms
        )


def _place(breaker: Breaker) -> tuple[int, str]:
    match = _SPACE.fullmatch(breaker.spaces[0])
    return (int(match[1]), match[2]) if match else (10_000, breaker.spaces[0])


def breakers_counted(panel: Panel) -> str:
    """``24 breakers``, the main left out."""
    return counted(sum(each.spaces != ("main",) for each in panel.breakers), "breaker")
