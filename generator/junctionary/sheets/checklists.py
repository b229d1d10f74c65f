"""Builds the stage checklist, and what can be judged of each room and circuit."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.checks.engine import rules
from junctionary.checks.finding import LAST_CHEAP, Cheap, Finding, Unrecorded
from junctionary.checks.wanted import alike
from junctionary.figures.gaps import boxes_untold
from junctionary.sheets.checklist import ChecklistSheet, StageList
from junctionary.sheets.entries import FindingEntry, Row, Table
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.lists import Judged
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, counted, homes
from junctionary.sheets.survey import Survey, sentence, title
from junctionary.sheets.titleblock import GENERAL
from junctionary.sheets.wording import on_sheet

NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class _Standing:
    """What is said of one place: its findings, the facts each check wants there, by check.

    ``unwritten`` is the gap of a room that may have boxes nobody recorded: no check looked at those.
    """

    wrong: tuple[FindingEntry, ...]
    wants: Mapping[str, tuple[str, ...]]
    unwritten: tuple[str, ...] = ()


NO_WORD = _Standing((), {})


def checklist_sheet(survey: Survey) -> ChecklistSheet:
    """For every room, and for what belongs to no room: proved, wrong, still to record, stage by stage."""
    standing = _standing(survey)
    places: list[tuple[Ref | None, Phrase, str]] = [
        (Ref("room", each.id), (Link(each.name, Ref("room", each.id)),), each.stage or NOT_RECORDED)
        for each in survey.house.rooms.values()
    ]
    places.append((None, ("Panels, circuits, the whole house",), ""))
    return ChecklistSheet(
        title=title(survey, "Stage checklist", GENERAL["checklist"], "judged as recorded"),
        ref=Ref("sheet", "checklist"),
        heading="Stage checklist",
        lead=(
            "Each check stands at the last stage at which its fault is cheap to mend. ",
            Link("What each check looks at", Ref("sheet", "rules")),
            ".",
        ),
        stages=tuple(_stage(survey, stage, before, places, standing) for stage, before in LAST_CHEAP.items()),
    )


def completeness(survey: Survey) -> tuple[Judged, Judged]:
    """Of each room, then of each circuit: how many facts are missing, and what cannot be told for it."""
    standing, house = _standing(survey), survey.house
    rooms = [(Ref("room", each.id), Link(each.name, Ref("room", each.id))) for each in house.rooms.values()]
    circuits = [(Ref("circuit", each), circuit_link(house, each)) for each in house.circuits]
    return _judged(survey, "room", rooms, standing), _judged(survey, "circuit", circuits, standing)


def _judged(
    survey: Survey,
    what: str,
    places: Iterable[tuple[Ref, Link | str]],
    standing: Mapping[Ref | None, _Standing],
) -> Judged:
    rows: list[Row] = []
    whole: list[str | Link] = []
    for ref, name in places:
        here = standing.get(ref, NO_WORD)
        if not here.wants and not here.unwritten:
            whole.append(name)
            continue
        facts = len(survey.missing_at.get(ref, ()))
        unwritten = (on_sheet(survey.house, each) for each in here.unwritten)
        told = (*_checks(here.wants), *(("; " if here.wants else "") + each for each in unwritten))
        rows.append(Row(((name,), (str(facts),), told)))
    heads = (what, "facts missing", "cannot be told")
    return Judged(Table(heads, tuple(rows), figures=(1,)), listed(tuple(whole)))


def _stage(
    survey: Survey,
    stage: Cheap,
    before: str,
    places: Iterable[tuple[Ref | None, Phrase, str]],
    standing: Mapping[Ref | None, _Standing],
) -> StageList:
    due = {each.id for each in rules().values() if each.stage == stage}
    rows: list[Row] = []
    clear: list[str | Link] = []
    for ref, name, now in places:
        here = standing.get(ref, NO_WORD)
        wrong = [each for each in here.wrong if each.rule.id in due]
        wants = {rule: needs for rule, needs in here.wants.items() if rule in due}
        facts = dict.fromkeys((*(need for needs in wants.values() for need in needs), *here.unwritten))
        if not wrong and not facts:
            clear += name
            continue
        rows.append(
            Row(
                (
                    name,
                    (now,),
                    listed(tuple(Link(each.rule.id, each.ref) for each in wrong)) or (NOTHING,),
                    (on_sheet(survey.house, "; ".join(words for words, _ in alike(list(facts)))) or NOTHING,),
                )
            )
        )
    heads = ("room", "stage now", "wrong", "still to record")
    says = sentence(f"{counted(len(due), 'check')} whose fault is cheap to mend {before}")
    return StageList(before, says, Table(heads, tuple(rows)), listed(tuple(clear)))


def _checks(names: Iterable[str]) -> Phrase:
    return listed(tuple(Link(each, Ref("rule", each)) for each in names))


def _standing(survey: Survey) -> dict[Ref | None, _Standing]:
    """By place; what concerns no room stands under None as well."""
    house = survey.house
    wrong: dict[Ref | None, list[FindingEntry]] = {}
    wants: dict[Ref | None, dict[str, tuple[str, ...]]] = {}

    def at(said: Finding | Unrecorded) -> set[Ref | None]:
        found: set[Ref | None] = set(homes(house, said.about, said.place))
        if not any(each is not None and each.kind == "room" for each in found):
            found.add(None)
        return found

    for finding, entry in zip(survey.judgement.findings, survey.findings, strict=True):
        for place in at(finding):
            wrong.setdefault(place, []).append(entry)
    for each in survey.judgement.unrecorded:
        for place in at(each):
            held = wants.setdefault(place, {})
            held[each.rule] = tuple(dict.fromkeys((*held.get(each.rule, ()), *each.needs)))
    rooms: dict[Ref | None, tuple[str, ...]] = {
        Ref("room", each.id): boxes_untold(each) for each in house.rooms.values()
    }
    return {
        place: _Standing(
            tuple(wrong.get(place, ())), wants.get(place, {}), rooms.get(place, ()) if place else ()
        )
        for place in dict.fromkeys((*wrong, *wants, *rooms))
    }
