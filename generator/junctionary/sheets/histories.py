"""Builds the sheet of proofs: walls photographed, protectors tested, inspections, changes, trips."""

from collections.abc import Iterable, Iterator

from junctionary.house.model import Breaker, House
from junctionary.house.proved import TESTS, tests_of, walls_shown
from junctionary.records.log import LogEntry
from junctionary.records.panels import Surge
from junctionary.sheets.ages import ages, surge_words
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.finding_things import place_of
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.lists import Group, ListSheet
from junctionary.sheets.makeup import device_words
from junctionary.sheets.naming import NOT_RECORDED, link, room_link, said
from junctionary.sheets.permits import permits_group
from junctionary.sheets.survey import Survey, title
from junctionary.sheets.titleblock import GENERAL

GUARDING = ("gfci", "afci")
BUTTONS = {"gfci": "gfci-button", "afci": "afci-button"}
NEVER = "no test in the log"


def history_sheet(survey: Survey) -> ListSheet:
    """What was photographed, permitted, tested, inspected and changed, by whom and when, as logged."""
    house = survey.house
    return ListSheet(
        title=title(survey, "Proof and history", GENERAL["history"], "as logged"),
        ref=Ref("sheet", "history"),
        heading="Proof and history",
        lead=("What a picture shows, and what the log tells: tests, inspections, changes, trips.",),
        groups=(
            Group(
                "Protectors and alarms: when were they tested",
                ("Press the button of each as often as its kind asks, and log it; replace one that fails.",),
                Table(("what", "where", "last tested", "result", "how often"), tuple(_protectors(house))),
            ),
            Group(
                "Photographs of walls with wiring in them",
                ("An open wall is photographed square on, with a tape in the picture, before it is closed.",),
                Table(("room", "stage", "no picture of", "picture of"), tuple(_walls(house))),
            ),
            permits_group(house),
            Group("Inspections", (), _entries(house, "inspection", [e for e in house.log if e.inspection])),
            Group(
                "Age of panels and equipment",
                ("What the record dates; the year is on a panel's or an appliance's label.",),
                ages(house),
            ),
            Group("Changes", (), _entries(house, "change", [e for e in house.log if e.change])),
            Group("Trips", (), _entries(house, "trip", [e for e in house.log if e.trip])),
            Group("Tests and measurements", (), _entries(house, "test", [e for e in house.log if e.test])),
        ),
    )


def _protectors(house: House) -> Iterator[Row]:
    for device in house.devices.values():
        test = TESTS.get(device.kind.is_)
        if test is not None:
            last = tests_of(house, device, test)[-1:]
            yield Row(
                (
                    (Link(f"{device.id}, {device_words(device)}", Ref("point", device.id)),),
                    (place_of(house, house.boxes[device.box]),),
                    *_last(last),
                    (device.kind.interval or NOT_RECORDED,),
                )
            )
    for (panel_id, guard, date, result), breakers in _guarding_breakers(house).items():
        many = f"{guard.upper()} breaker{'s' if len(breakers) > 1 else ''} "
        spaces = listed(tuple(link(house, each.id, each.id.replace("/", " ")) for each in breakers))
        yield Row(((many, *spaces), (house.panels[panel_id].name,), (date,), (result,), (NOT_RECORDED,)))
    for panel in house.panels.values():
        if isinstance(panel.record.surge, Surge):
            logged = [e for e in house.log if e.test == "surge-indicator" and panel.id in (e.about or ())]
            what = Link(f"{panel.id}, surge protection, {surge_words(panel)[0]}", Ref("panel", panel.id))
            newest = sorted(logged, key=lambda each: each.date)[-1:]
            yield Row(((what,), (panel.name,), *_last(newest), (NOT_RECORDED,)))


def _guarding_breakers(house: House) -> dict[tuple[str, str, str, str], list[Breaker]]:
    """By panel, kind, date and result of the last test: the breakers that hold all of these in common."""
    found: dict[tuple[str, str, str, str], list[Breaker]] = {}
    for guard in GUARDING:
        for breaker in (each for each in house.breakers.values() if guard in (each.guards or ())):
            logged = [e for e in house.log if e.test == BUTTONS[guard] and breaker.id in (e.about or ())]
            last = max(logged, key=lambda each: each.date, default=None)
            when, result = (str(last.date), last.result or NOT_RECORDED) if last else (NEVER, "")
            found.setdefault((breaker.panel, guard, when, result), []).append(breaker)
    return found


def _last(entries: Iterable[LogEntry]) -> tuple[Phrase, Phrase]:
    for each in entries:
        return (str(each.date),), (each.result or NOT_RECORDED,)
    return (NEVER,), ("",)


def _walls(house: House) -> Iterator[Row]:
    for room in house.rooms.values():
        walls = walls_shown(house, room)
        if walls:
            bare = ", ".join(wall for wall, seen in walls.items() if not seen)
            held = ", ".join(wall for wall, seen in walls.items() if seen)
            stage = (room.stage or NOT_RECORDED,)
            yield Row(((room_link(house, room.id),), stage, (bare or "none",), (held or "none",)))


def _entries(house: House, kind: str, entries: Iterable[LogEntry]) -> Table:
    """Entries of one kind, the newest first."""
    newest = sorted(entries, key=lambda each: each.date, reverse=True)
    rows = tuple(
        Row(
            (
                (str(each.date),),
                _what(house, each),
                _about(house, each),
                _result(house, each),
                (each.by or NOT_RECORDED,),
            )
        )
        for each in newest
    )
    return Table(("date", kind, "about", "result", "by"), rows)


def _what(house: House, each: LogEntry) -> Phrase:
    what = each.inspection or each.test or each.change or ""
    if each.trip is not None:
        loads = f" while {' and '.join(each.while_)} ran" if each.while_ else ""
        return (link(house, each.trip), loads)
    return (str(what).replace("-", " ") if not each.change else each.change,)


def _about(house: House, each: LogEntry) -> Phrase:
    return listed(tuple(link(house, name) for name in each.about or ()))


def _result(house: House, each: LogEntry) -> Phrase:
    parts = [each.result or "", said(house, each.value) if each.value is not None else ""]
    parts += [f"at {said(house, each.load)}" if each.load is not None else ""]
    parts += [f"permit {each.permit}" if each.permit else ""]
    parts += [f"went dead: {', '.join(each.died)}" if each.died else "", each.with_ or "", each.note or ""]
    return ("; ".join(part for part in parts if part),)
