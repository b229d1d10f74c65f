"""The runs, each end tied to the box or panel in which it stands."""

from collections.abc import Mapping

from junctionary.house.ids import Ids
from junctionary.house.model import End, Run
from junctionary.problems import Problem
from junctionary.records.house import HouseRecord
from junctionary.records.runs import RunRecord
from junctionary.records.values import NONE, UNKNOWN, Said


def link_runs(ids: Ids, house: HouseRecord) -> tuple[dict[str, Run], list[Problem]]:
    """Every run by its id, the runs of circuits first, then those of the sources."""
    problems: list[Problem] = []
    runs = {}
    for id_, record in ids.runs.items():
        problems += _ends_that_are_nowhere(record, ids)
        runs[id_] = _run(record, ids, house)
    return runs, problems


def _run(record: RunRecord, ids: Ids, house: HouseRecord) -> Run:
    owner = ids.owner[record.id]
    circuit = ids.circuits.get(owner)
    return Run(
        id=record.id,
        circuit=owner,
        cable=record.cable,
        from_=end_of(record.from_, ids),
        to=end_of(record.to, ids),
        length=record.length,
        edition=record.built_to or (circuit.built_to if circuit else None) or house.reference,
        stage=record.stage or (circuit.stage if circuit else None),
        evidence=record.evidence or (circuit.evidence if circuit else None),
        record=record,
        place=record.place,
    )


def end_of(said: str | Said | None, ids: Ids) -> End:
    """What an end of a run is, as the record says it; an id that nothing has is unknown."""
    if said is None:
        return End("unrecorded")
    if said is NONE:
        return End("none")
    if said is UNKNOWN or not isinstance(said, str):
        return End("unknown")
    if said in ids.boxes:
        return End("box", said)
    return End("panel", said) if said in ids.panels else End("unknown")


def _ends_that_are_nowhere(record: RunRecord, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for key, said in (("from", record.from_), ("to", record.to)):
        if isinstance(said, str):
            problems += ids.missing("box or panel", said, record.value_place(key))
    if isinstance(record.to, str) and record.to == record.from_:
        problems.append(
            Problem(
                record.value_place("to"),
                f"run {record.id!r} goes from {record.to} to itself",
                "two ends in different places",
                "correct one end, or write unknown",
            )
        )
    if record.from_ in ids.boxes and record.to in ids.panels and _is_branch(record, ids):
        found = f"run {record.id!r} goes from box {record.from_} to panel {record.to}"
        do = f"write from: {record.to} and to: {record.from_}"
        place = record.value_place("from")
        problems.append(Problem(place, found, "the supply side under from:", do, stops=False))
    return problems


def _is_branch(record: RunRecord, ids: Ids) -> bool:
    """Whether a run is of a circuit that is certainly no feeder of a panel, and of no other source."""
    circuit = ids.circuits.get(ids.owner[record.id])
    if circuit is None or circuit.purpose in (None, "feeder", "source", "untraced"):
        return False
    return all(panel.fed_by != circuit.circuit for panel in ids.panels.values())


def runs_by_end(runs: Mapping[str, Run]) -> dict[str, dict[str, Run]]:
    """By box or panel, the runs with an end in it, in the order of the record."""
    found: dict[str, dict[str, Run]] = {}
    for id_, run in runs.items():
        for end in run.ends:
            if end.id is not None:
                found.setdefault(end.id, {})[id_] = run
    return found
