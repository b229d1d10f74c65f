"""The panels: what stands in each space, on which leg, tied to what."""

import re
from collections.abc import Iterable, Mapping
from itertools import pairwise

from junctionary.house.ids import Ids, unknown_id
from junctionary.house.model import Breaker, Panel, Run
from junctionary.marks import MarkedMap, Place
from junctionary.problems import Problem
from junctionary.records import words
from junctionary.records.house import HouseRecord
from junctionary.records.panels import BreakerRecord, FillerPlate, PanelRecord, Surge
from junctionary.records.values import NONE, UNKNOWN

SPACE = re.compile(r"(\d+)([ab]?)")
MAIN = "main"


def link_panels(
    ids: Ids, house: HouseRecord, runs: Mapping[str, Run]
) -> tuple[dict[str, Panel], list[Problem]]:
    """Every panel by its id, its breakers in the order of the record, the main first."""
    problems: list[Problem] = []
    panels = {}
    for id_, record in ids.panels.items():
        problems += _spaces_taken_twice(record)
        problems += _dangling(record, ids)
        problems += _names_no_breaker(record)
        panels[id_] = Panel(
            id=id_,
            name=record.name or id_,
            breakers=tuple(_breakers(record, ids, house)),
            fillers={
                space: filler.state
                for key, filler in record.breakers.items()
                if isinstance(filler, FillerPlate)
                for space in key.split("+")
            },
            feeder=_feeder(record, ids, runs),
            edition=record.built_to or _room_edition(record, ids) or house.reference,
            record=record,
            place=record.place,
        )
    return panels, problems


def breaker_key(record: PanelRecord, said: str) -> str | None:
    """The spaces, as the panel writes them, of the breaker that ``6``, ``2+4`` or ``4`` of ``2+4`` names."""
    if said == MAIN:
        return MAIN if record.main not in (None, NONE) else None
    keys = [
        key
        for key, each in record.breakers.items()
        if isinstance(each, BreakerRecord) or each.state == "unused"
    ]
    if said in keys:
        return said
    return next((key for key in keys if said in key.split("+")), None)


def whole_name(name: str, ids: Ids) -> str:
    """``main/2+4`` for ``main/4``, which names it too; any other name as it is."""
    panel, _, spaces = name.partition("/")
    key = breaker_key(ids.panels[panel], spaces) if spaces and panel in ids.panels else None
    return name if key is None else f"{panel}/{key}"


def breaker_names(ids: Ids) -> list[str]:
    """Every breaker as answers name it, mains included."""
    return [
        f"{panel.panel}/{key}"
        for panel in ids.panels.values()
        for key in (*([MAIN] if breaker_key(panel, MAIN) else []), *panel.breakers)
        if breaker_key(panel, key)
    ]


def surge_breaker(panel: Panel) -> Breaker | None:
    """The breaker that the surge protection of a panel hangs on; None where it hangs on none."""
    surge = panel.record.surge
    if not isinstance(surge, Surge):
        return None
    held = (each for each in panel.breakers if surge.connected in ("+".join(each.spaces), *each.spaces))
    return next(held, None)


def leg_of(record: PanelRecord, space: str, system: str | None) -> str | None:
    """The leg of a space: A or B by rows, unless the panel says otherwise; None where nothing tells it.

    Row = ceil(space / 2), rows alternate A and B; both halves of a half-size
    pair share one. Only a breaker panel is known to be built so.
    """
    match = SPACE.fullmatch(space)
    for each in (space, match[1] if match else space):
        if record.legs and each in record.legs:
            return record.legs[each]
    if match is None or record.kind != "breaker-panel":
        return None
    if system == "120 V":
        return "A"
    row = (int(match[1]) + 1) // 2
    return "A" if row % 2 else "B"


def _breakers(record: PanelRecord, ids: Ids, house: HouseRecord) -> Iterable[Breaker]:
    system = house.service.system if house.service else None
    if record.main not in (None, NONE):
        yield _main(record, system)
    for key, each in record.breakers.items():
        if isinstance(each, FillerPlate):
            continue
        spaces = tuple(key.split("+"))
        legs = tuple(leg_of(record, space, system) for space in spaces)
        if len(spaces) == 2 and legs == (None, None):
            legs = ("A", "B")  # two poles of one breaker are two legs, whatever their names
        feeds, _, conductor = (
            each.feeds.partition(".") if isinstance(each.feeds, str) else (each.feeds, "", "")
        )
        yield Breaker(
            id=f"{record.panel}/{key}",
            panel=record.panel,
            spaces=spaces,
            legs=legs,
            rating=each.rating,
            guards=None if each.guards is None else tuple(each.guards),
            feeds=feeds,
            conductor=conductor or None,
            says=each.says,
            tied_to=_partners(record, key, record.ties),
            interlocked_with=_partners(record, key, record.interlocks),
            kind=ids.breaker_kinds.get(each.kind) if each.kind else None,
            record=each,
            place=record.key_place("breakers", key),
        )


def _main(record: PanelRecord, system: str | None) -> Breaker:
    """The main breaker, which stands in no numbered space."""
    place = record.place_of(MAIN)
    source = MarkedMap(place)
    source["rating"] = str(record.main)
    source.key_places["rating"], source.value_places["rating"] = place, record.value_place(MAIN)
    return Breaker(
        id=f"{record.panel}/{MAIN}",
        panel=record.panel,
        spaces=(MAIN,),
        legs=("A",) if system == "120 V" else ("A", "B"),
        rating=record.main,
        guards=None,
        feeds=None,
        conductor=None,
        says=None,
        tied_to=_partners(record, MAIN, record.ties),
        interlocked_with=_partners(record, MAIN, record.interlocks),
        kind=None,
        record=BreakerRecord.model_validate(source),
        place=place,
    )


def _partners(record: PanelRecord, key: str, groups: Iterable[Iterable[str]]) -> tuple[str, ...]:
    keys = [[breaker_key(record, _within(record, said)) for said in group] for group in groups]
    return tuple(
        dict.fromkeys(
            f"{record.panel}/{other}"
            for group in keys
            if key in group
            for other in group
            if other not in (None, key)
        )
    )


def _within(record: PanelRecord, said: str) -> str:
    return said.removeprefix(f"{record.panel}/")


def _feeder(record: PanelRecord, ids: Ids, runs: Mapping[str, Run]) -> str | None:
    """The circuit that feeds a panel: told, or whose feeder's run ends there."""
    if isinstance(record.fed_by, str):
        return record.fed_by if record.fed_by in ids.circuits else None
    if record.fed_by is UNKNOWN:
        return None
    for run in runs.values():
        circuit = ids.circuits.get(run.circuit)
        if run.to.id == record.panel and circuit is not None and circuit.purpose == "feeder":
            return run.circuit
    return None


def _room_edition(record: PanelRecord, ids: Ids) -> str | None:
    room = ids.rooms.get(record.at.room) if record.at and record.at.room else None
    return room.built_to if room else None


def _spaces_taken_twice(record: PanelRecord) -> list[Problem]:
    """A space in two breakers, or beyond those the panel has."""
    problems: list[Problem] = []
    taken: dict[str, str] = {}
    for key in record.breakers:
        place = record.key_place("breakers", key)
        for space in key.split("+"):
            match = SPACE.fullmatch(space)
            if record.kind == "breaker-panel" and (match is None or not 1 <= int(match[1]) <= record.spaces):
                problems.append(_no_such_space(place, space, record))
            halves = [f"{match[1]}a", f"{match[1]}b"] if match and not match[2] else [space]
            other = next((taken[half] for half in halves if half in taken), None)
            if other is not None:
                found = f"space {space} of {record.panel} is taken twice, by {other} and by {key}"
                problems.append(Problem(place, found, "one breaker in a space", "correct one of the two"))
            taken.update(dict.fromkeys(halves, key))
        if record.kind == "breaker-panel" and record.legs is None and _is_torn(key):
            found = f"one breaker in the spaces {key} of {record.panel}, which do not adjoin"
            expected = "spaces one under the other, such as 2+4, or legs: where they are numbered otherwise"
            problems.append(Problem(place, found, expected, "correct the spaces", stops=False))
    return problems


def _is_torn(key: str) -> bool:
    """Whether the spaces of one breaker are not one under the other, odd ones left, even ones right."""
    numbers = sorted(int(match[1]) for space in key.split("+") if (match := SPACE.fullmatch(space)))
    return any(after - before not in (0, 2) for before, after in pairwise(numbers))


def _no_such_space(place: Place, space: str, record: PanelRecord) -> Problem:
    return Problem(
        place,
        f"space {space} in panel {record.panel}, which has {record.spaces}",
        f"a space from 1 to {record.spaces}",
        "correct the space, or the number of spaces"
        if SPACE.fullmatch(space)
        else "write its number, 9a and 9b for half sizes; words are for kind: fuse-panel",
    )


def _dangling(record: PanelRecord, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    if record.at and record.at.room:
        problems += ids.missing("room", record.at.room, record.at.value_place("room"))
    if isinstance(record.fed_by, str) and record.fed_by != "service":
        problems += ids.missing("circuit", record.fed_by, record.value_place("fed_by"))
    for each in record.breakers.values():
        if isinstance(each, FillerPlate):
            continue
        if isinstance(each.feeds, str) and not ids.may_stand_elsewhere("circuit"):
            feeds = each.feeds.partition(".")[0]
            problems += ids.missing("circuit or source", feeds, each.value_place("feeds"))
        if each.kind and each.kind not in words.BREAKER_KINDS:
            problems += ids.missing("kind of breaker", each.kind, each.value_place("kind"))
    return problems


def _names_no_breaker(record: PanelRecord) -> list[Problem]:
    problems = []
    for key, groups in (("ties", record.ties), ("interlocks", record.interlocks)):
        for number, group in enumerate(groups):
            for position, said in enumerate(group):
                if breaker_key(record, _within(record, said)) is None:
                    place = record.value_place(key, number, position)
                    known = [each for each in (MAIN, *record.breakers) if breaker_key(record, each)]
                    problems.append(unknown_id("breaker", said, place, known))
    return problems
