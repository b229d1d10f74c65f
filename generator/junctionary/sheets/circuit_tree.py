"""The tree of a circuit, from its breaker along its runs to the last box."""

from collections.abc import Iterable
from dataclasses import replace

from junctionary.house.model import Circuit, Run
from junctionary.records.values import Said
from junctionary.sheets.circuit import CircuitMap, MapNode, MapRun, Symbol
from junctionary.sheets.circuit_drop import drop_note
from junctionary.sheets.circuit_notes import box_notes
from junctionary.sheets.entries import SEVERITIES, Severity
from junctionary.sheets.links import Ref
from junctionary.sheets.makeup import symbol_of
from junctionary.sheets.naming import breaker_words, counted, said
from junctionary.sheets.survey import Survey
from junctionary.units import Quantity, WireSize


def circuit_map(survey: Survey, circuit: Circuit) -> CircuitMap | None:
    """The map, or None where no run is recorded. What nothing is seen to feed hangs on it dashed."""
    house = survey.house
    runs = [house.runs[each] for each in circuit.runs]
    notes = [_breaker_note(survey, each) for each in circuit.breakers]
    root = MapNode(
        ref=Ref("space", circuit.breakers[0]) if circuit.breakers else None,
        name=" + ".join(breaker_words(each) for each in circuit.breakers) or "breaker not recorded",
        symbol="breaker" if circuit.breakers else "unknown",
        notes=tuple(dict.fromkeys(note for note in notes if note)),
        severity=gravest(survey, {Ref("space", each) for each in circuit.breakers}),
    )
    begin = {run.from_.id for run in runs if run.from_.kind == "panel" and run.from_.id}
    return tree(survey, circuit.name, root, runs, begin)


def tree(survey: Survey, name: str, root: MapNode, runs: list[Run], begin: set[str]) -> CircuitMap | None:
    """The tree of these runs from a root that stands for the ends in ``begin``; None without runs."""
    if not runs:
        return None
    drawn: set[str] = set()
    seen = set(begin)
    branches = [
        _node(survey, run, runs, drawn, seen, None)
        for run in runs
        if run.from_.id in begin and run.id not in drawn
    ]
    for run in runs:
        if run.id not in drawn:
            branches.append(_node(survey, run, runs, drawn, seen, None, loose=True))
    boxes = {end.id for run in runs for end in run.ends if end.kind == "box"}
    says = f"From {root.name} along {counted(len(runs), 'run')} to {counted(len(boxes), 'box', 'boxes')}."
    return CircuitMap(f"Circuit map, {name}", says, replace(root, branches=tuple(branches)))


def _breaker_note(survey: Survey, breaker: str) -> str:
    entry = survey.house.breakers[breaker]
    guards = " + ".join(each.upper() for each in entry.guards or ())
    return f"{said(survey.house, entry.rating)}{f', {guards}' if guards else ''}"


def _node(
    survey: Survey,
    run: Run,
    runs: list[Run],
    drawn: set[str],
    seen: set[str],
    before: WireSize | None,
    *,
    loose: bool = False,
) -> MapNode:
    drawn.add(run.id)
    size = min((each.size for each in run.conductors), default=None)
    largest = max((each for each in (size, before) if each is not None), default=None)
    into = MapRun(
        ref=Ref("run", run.id),
        cable=_short_cable(run),
        length=said(survey.house, run.length) if isinstance(run.length, Quantity | Said) else "length?",
        thin=size is not None and before is not None and size < before,
        dashed=loose or run.to.kind in ("unknown", "unrecorded"),
        severity=gravest(survey, {Ref("run", run.id)}),
    )
    notes: tuple[str, ...] = ()
    if loose:
        notes = (f"from {run.from_.id}" if run.from_.id else f"supply end {_end_word(run.from_.kind)}",)
    end = run.to
    if end.id is None or end.kind not in ("box", "panel"):
        return MapNode(None, _end_word(end.kind), "unknown", notes, into)
    if end.kind == "panel":
        drop = drop_note(survey, run.circuit, end.id)
        panel = survey.house.panels[end.id]
        named = (panel.name,) if panel.name and panel.name != end.id else ()
        return MapNode(Ref("panel", end.id), end.id, "panel", (*notes, *named, *drop), into)
    if end.id in seen:
        return MapNode(Ref("box", end.id), end.id, "junction", (*notes, "drawn above"), into)
    seen.add(end.id)
    onward = [each for each in runs if each.from_.id == end.id and each.id not in drawn]
    branches = tuple(
        _node(survey, each, runs, drawn, seen, largest) for each in onward if each.id not in drawn
    )
    box = survey.house.boxes[end.id]
    return MapNode(
        ref=Ref("box", end.id),
        name=end.id,
        symbol=_box_symbol(survey, end.id),
        notes=(*notes, *box_notes(survey, run.circuit, end.id)),
        run=into,
        branches=branches,
        severity=gravest(
            survey,
            {
                Ref("box", box.id),
                *(Ref("device", each.id) for each in box.devices),
                *(Ref("joint", each.id) for each in box.joints),
            },
        ),
    )


def _end_word(kind: str) -> str:
    return {"none": "ends nowhere", "unknown": "unknown", "unrecorded": "not recorded"}.get(kind, kind)


def _short_cable(run: Run) -> str:
    text = getattr(run.cable, "text", None)
    if text is None:
        return "cable?"
    # Of a raceway the map names the pipe; what is drawn into it stands in the list of runs.
    short = str(text).partition(":")[0].removesuffix(" NM-B")
    return short if len(short) <= 20 else str(getattr(run.cable, "kind", text))


def _box_symbol(survey: Survey, box_id: str) -> Symbol:
    box = survey.house.boxes[box_id]
    if not box.devices:
        return "unknown" if box.makeup_unknown else "junction"
    symbols = [symbol_of(each) for each in box.devices]
    return "gfci" if "gfci" in symbols else symbols[0]


def gravest(survey: Survey, things: Iterable[Ref]) -> Severity | None:
    """The gravest finding about any of these things, for the mark beside them."""
    grave = [survey.gravest_at[each] for each in things if each in survey.gravest_at]
    return min(grave, key=SEVERITIES.index, default=None)
