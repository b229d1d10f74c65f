"""Slips in what the authority was to see: permits, inspections, and the protection a service must have."""

from collections.abc import Iterator

from mutations.demo import Demo, Line, Seed, Slip
from mutations.kinds import Mutation


def line_with(slip: Slip, file: str, words: str) -> Line:
    lines = slip.files[file].splitlines()
    return file, 1 + next(number for number, line in enumerate(lines) if words in line)


def no_surge_protection(demo: Demo) -> Iterator[Seed]:
    told = line_with(Slip(demo, "main"), "panels/main.yaml", "surge: {")[1]
    line = demo.files["panels/main.yaml"].splitlines()[told - 1]
    for written in ("surge: none", line.replace("type: 2", "type: 3")):
        slip = Slip(demo, written).swap("panels/main.yaml", line, written)
        yield slip.seed(("panels/main.yaml", 1))


def never_closed(demo: Demo) -> Iterator[Seed]:
    for permit in demo.house.record.permits or ():
        slip = Slip(demo, permit.number).swap("house.yaml", f"closed: {permit.closed}", "closed: none")
        yield slip.seed(line_with(slip, "house.yaml", f"number: {permit.number}"))


def failed_and_left(demo: Demo) -> Iterator[Seed]:
    for entry in demo.house.log:
        if entry.inspection and entry.result == "pass":
            stands = f"date: {entry.date}, inspection: {entry.inspection}, permit: {entry.permit}, result: "
            slip = Slip(demo, f"{entry.inspection} {entry.date}")
            slip.swap("log.yaml", f"{stands}pass", f"{stands}fail")
            yield slip.seed(line_with(slip, "log.yaml", stands))


MUTATIONS = (
    Mutation("surge-protection-missing", no_surge_protection),
    Mutation("permit-left-open", never_closed),
    Mutation(
        "inspection-not-passed",
        failed_and_left,
        {"inspection-not-passed": "an earlier one that passed in part waited for this one to pass"},
    ),
)
