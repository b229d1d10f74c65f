"""Builds the sheet of a second source of supply: a generator inlet, a battery, solar."""

from collections.abc import Iterator

from junctionary.records.house import Source
from junctionary.sheets.circuit import CircuitSheet, MapNode
from junctionary.sheets.circuit_tree import tree
from junctionary.sheets.circuits import runs_table
from junctionary.sheets.entries import Fact, Table
from junctionary.sheets.isolation import before_source
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.naming import NOT_RECORDED, link, said, source_words
from junctionary.sheets.second_sources import stopping
from junctionary.sheets.survey import Survey, excerpts, known_words, title
from junctionary.sheets.titleblock import circuit_number


def source_sheet(survey: Survey, source_id: str) -> CircuitSheet:
    """The sheet of one source, laid out as a circuit's is."""
    house = survey.house
    source = house.sources[source_id]
    ref = Ref("circuit", source_id)
    missing = survey.missing_at.get(ref, ())
    name = source_words(source)
    runs = [run for run in house.runs.values() if run.circuit == source_id]
    root = MapNode(
        ref=Ref("box", source.at) if source.at and source.at in house.boxes else None,
        name=source.at or name,
        symbol="inlet" if source.is_ == "generator-inlet" else "appliance",
        notes=(name, said(house, source.rating)),
    )
    nothing = Table((), ())
    return CircuitSheet(
        title=title(
            survey,
            f"Source {source_id}",
            circuit_number(0, source_id),
            known_words("as recorded", len(missing)),
        ),
        ref=ref,
        heading=name,
        lead=(f"A second source of supply: {source.is_.replace('-', ' ')}.",),
        before=before_source(survey, source_id),
        facts=tuple(_facts(survey, source)),
        map=tree(survey, name, root, runs, {source.at} if source.at else set()),
        match=(),
        goes_dark=nothing,
        runs=runs_table(survey, tuple(run.id for run in runs)),
        joints=nothing,
        loads=nothing,
        findings=survey.findings_at.get(ref, ()),
        missing=missing,
        excerpts=excerpts(survey, source.place),
    )


def _facts(survey: Survey, source: Source) -> Iterator[Fact]:
    def linked(name: str | None) -> Phrase:
        return (link(survey.house, name) if name else NOT_RECORDED,)

    yield Fact("rating", (said(survey.house, source.rating),))
    yield Fact("stands at", linked(source.at))
    yield Fact("enters at", linked(source.enters))
    yield Fact("shut off", (stopping(survey.house, source),))
    yield Fact("without the utility", (source.without_utility or NOT_RECORDED,))
    if source.charges_from is not None:
        yield Fact("charges from", (said(survey.house, source.charges_from),))
    if source.note:
        yield Fact("note", (source.note,))
