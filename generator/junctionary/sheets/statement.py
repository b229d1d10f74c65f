"""Builds the statement for a buyer or an insurer: supply, wiring, ages, permits, what is wrong or unknown."""

from collections.abc import Iterable, Iterator

from junctionary.house.model import House, Run
from junctionary.records.cables import Cable
from junctionary.records.values import UNKNOWN
from junctionary.sheets.ages import ages, surge_words
from junctionary.sheets.entries import SEVERITIES, FindingEntry, Row, Table
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.lists import Group, ListSheet
from junctionary.sheets.naming import NOT_RECORDED, counted, said
from junctionary.sheets.panels import fed_from
from junctionary.sheets.permits import permits_group
from junctionary.sheets.survey import Survey, edition_words, title
from junctionary.sheets.titleblock import GENERAL

GRAVE = ("hazard", "defect")


def statement_sheet(survey: Survey) -> ListSheet:
    """What whoever buys or insures the house asks, from the record alone."""
    house = survey.house
    return ListSheet(
        title=title(survey, "Statement for a buyer or insurer", GENERAL["statement"], "as recorded"),
        ref=Ref("sheet", "statement"),
        heading="Statement for a buyer or insurer",
        lead=(
            "What is on record, and nothing else: no promise that any of it meets a code. "
            "What is not written here is not known.",
        ),
        groups=(
            Group("House and service", (), Table(("what", "as recorded"), tuple(_supply(house)))),
            Group(
                "Panels",
                (),
                Table(("panel", "kind", "rating", "main", "fed", "surge protection"), tuple(_panels(house))),
            ),
            Group("Wiring", (), Table(("cable", "runs"), tuple(_wiring(house)), (1,))),
            Group("Age of panels and equipment", (), ages(house)),
            permits_group(house),
            Group(
                "Open hazards and defects",
                _open_says(survey),
                Table(("how grave", "what", "found", "about"), tuple(_open(survey))),
            ),
            Group("Not known", (), Table(("what", "how much"), tuple(_unknown(survey)))),
            Group(
                "Changes on record", _changes_says(), Table(("date", "change", "by"), tuple(_changes(house)))
            ),
        ),
    )


def _supply(house: House) -> Iterator[Row]:
    record, service = house.record, house.record.service
    conductors = service.conductors if service else None
    metal = (conductors.metal or f"metal {NOT_RECORDED}") if conductors else ""
    yield _fact("built", said(house, record.built))
    yield _fact("record of", said(house, record.recorded))
    yield _fact("judged by", edition_words(record.reference))
    yield _fact("system", said(house, service.system if service else None))
    yield _fact("service", said(house, service.rating if service else None))
    yield _fact("service conductors", f"{conductors.size} {metal}" if conductors else NOT_RECORDED)
    sources = ", ".join((each.name or each.is_.replace("-", " ")) for each in house.sources.values())
    yield _fact("other sources", sources or "none on record")


def _fact(what: str, value: str) -> Row:
    return Row(((what,), (value,)))


def _panels(house: House) -> Iterator[Row]:
    for panel in house.panels.values():
        record = panel.record
        yield Row(
            (
                (Link(panel.name, Ref("panel", panel.id)),),
                (record.kind.replace("-", " "),),
                (said(house, record.rating),),
                (said(house, record.main),),
                fed_from(house, panel),
                ("; ".join(surge_words(panel)),),
            )
        )


def _wiring(house: House) -> Iterator[Row]:
    kinds = kinds_of_cable(house.runs.values())
    for name, count in kinds.items():
        yield Row(((name,), (str(count),)))


def kinds_of_cable(runs: Iterable[Run]) -> dict[str, int]:
    """Which kinds of cable there are, in which metal, and how many runs of each, the most first."""
    kinds: dict[str, int] = {}
    for run in runs:
        cable = run.cable
        if isinstance(cable, Cable):
            metals = " and ".join(sorted({each.metal for each in cable.conductors}))
            ground = "" if any(each.is_ground for each in cable.conductors) else ", no ground"
            name = f"{cable.raceway or cable.kind} {metals}{ground}"
        else:
            name = NOT_RECORDED
        kinds[name] = kinds.get(name, 0) + 1
    return dict(sorted(kinds.items(), key=lambda each: -each[1]))


def _open_says(survey: Survey) -> Phrase:
    advice = sum(each.severity == "advice" for each in survey.findings)
    also = f" Besides: {counted(advice, 'piece')} of advice." if advice else ""
    return (f"As the checks of this manual find them in the record; nobody looked for others.{also} ",
            Link("All findings", Ref("sheet", "findings")), ".")  # fmt: skip


def _open(survey: Survey) -> Iterator[Row]:
    for each in sorted(survey.findings, key=lambda one: SEVERITIES.index(one.severity)):
        if each.severity in GRAVE:
            yield Row(((each.severity,), (Link(each.says, each.ref),), _found(each), each.about))


def _found(each: FindingEntry) -> Phrase:
    return (f"{each.found} {each.accepted}".strip(),)


def _unknown(survey: Survey) -> Iterator[Row]:
    house = survey.house
    found = [room.name for room in house.rooms.values() if room.stage == "as-found"]
    untraced = [
        each.id.replace("/", " ")
        for each in house.breakers.values()
        if each.spaces != ("main",) and each.feeds is UNKNOWN
    ]
    yield Row(
        (
            (Link("facts that a check asks for", Ref("sheet", "not-recorded")),),
            (f"{counted(len(survey.missing), 'fact')} not recorded",),
        )
    )
    yield _fact("rooms as found: nobody on record saw them wired", ", ".join(found) or "none")
    yield _fact("breakers of which nobody could tell what they feed", ", ".join(untraced) or "none")


def _changes_says() -> Phrase:
    return (
        "Tests, inspections and trips are on ",
        Link("the sheet of proof and history", Ref("sheet", "history")),
        ".",
    )


def _changes(house: House) -> Iterator[Row]:
    for each in sorted((e for e in house.log if e.change), key=lambda e: e.date, reverse=True):
        yield Row(((each.date,), (each.change or "",), (each.by or NOT_RECORDED,)))
