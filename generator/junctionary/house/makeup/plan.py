"""Each entry of a make-up with its runs and devices found: what is told, and what a bare word takes."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from junctionary.house.makeup.bench import Bench
from junctionary.house.makeup.sides import is_switch
from junctionary.house.makeup.told import names_runs, told_in
from junctionary.house.makeup.written import Written
from junctionary.house.model import Run
from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.records.boxes import MakeupEntry


@dataclass(frozen=True, slots=True)
class Plan:
    """One entry, ready to be expanded.

    ``others`` are runs of which only switched legs or travelers are told.
    ``loop`` is a switch loop, seen from the lamp unless ``at_switch``.
    """

    number: int
    entry: MakeupEntry
    word: str
    place: Place
    feed: Run | None = None
    onward: tuple[Run, ...] = ()
    guarded: tuple[Run, ...] = ()
    others: tuple[Run, ...] = ()
    loop: Run | None = None
    at_switch: bool = False
    devices: tuple[str, ...] = ()
    guarded_devices: tuple[str, ...] = ()
    through: str | None = None

    @property
    def runs(self) -> tuple[Run, ...]:
        """Every run of the entry, the feed first."""
        some = (self.feed, *self.onward, *self.guarded, self.loop, *self.others)
        return tuple({run.id: run for run in some if run is not None}.values())


@dataclass(slots=True)
class _Planning:
    """The entries of one box being planned: the runs that none of them names, and what was found wrong."""

    bench: Bench
    free: Sequence[Run]
    problems: list[Problem] = field(default_factory=list)

    def wrong(self, place: Place, found: str, expected: str, do: str) -> None:
        self.problems.append(Problem(place, found, expected, do))


def plan_entries(bench: Bench, written: Written) -> tuple[list[Plan], list[Problem]]:
    """The entries that can be expanded, and the problems of those that cannot."""
    entries = [(n, each) for n, each in enumerate(bench.record.makeup or ()) if each.word != "unknown"]
    told = [told_in(bench, entry) for _, entry in entries]
    named = {run.id for each, _ in told for run in each.runs()}
    # A run of which one conductor is capped still feeds; one capped whole does not.
    away = {*bench.record.capped, *bench.record.loose}
    planning = _Planning(bench, [run for id_, run in bench.runs.items() if id_ not in named | away])
    bare = [number for number, entry in entries if not names_runs(entry)]
    plans: list[Plan] = []
    for (number, entry), (each, wrong) in zip(entries, told, strict=True):
        planning.problems += wrong
        plan = Plan(
            number=number,
            entry=entry,
            word=main_word(entry),
            place=bench.record.value_place("makeup", number),
            feed=each.feed,
            onward=each.onward,
            guarded=each.guarded,
            others=each.others,
            loop=each.loop,
            devices=each.devices,
            guarded_devices=each.guarded_devices,
            through=entry.through,
        )
        made = None if wrong else _with_runs(planning, plan, number in bare, len(bare))
        if made is not None:
            plans.append(made)
    if len(plans) < len(entries):
        return plans, planning.problems
    return _with_devices(planning, written, plans), planning.problems


def main_word(entry: MakeupEntry) -> str:
    """The word an entry goes by: its own, or ``feed``, or the one that stands in place of a feed."""
    if entry.word is not None:
        return entry.word
    alone = ("loop", "three_way", "four_way", "switched", "through")
    return next((key for key in alone if getattr(entry, key) and not entry.feed and not entry.onward), "feed")


def switches_of(bench: Bench, plan: Plan) -> tuple[str, ...]:
    """The devices of an entry that open a hot conductor."""
    return tuple(each for each in plan.devices if is_switch(bench.devices[each]))


def _with_runs(planning: _Planning, plan: Plan, is_bare: bool, bare_entries: int) -> Plan | None:
    if not is_bare:
        return _named(planning, plan)
    if bare_entries > 1:
        _which_runs(planning, plan)
        return None
    return _bare(planning, plan)


def _bare(planning: _Planning, plan: Plan) -> Plan | None:
    """A word (or ``on``, ``through``) with no run named takes the runs of the one circuit that comes here."""
    bench, free = planning.bench, planning.free
    if not free:
        if not bench.ends_missing:
            planning.wrong(
                plan.place,
                f"{plan.entry.word or 'a make-up'}, but no run ends in {bench.box}",
                f"a run from: or to: {bench.box}",
                "record its run, or take the make-up out until it is known",
            )
        return None
    if len({run.circuit for run in free}) > 1:
        _which_runs(planning, plan)
        return None
    feeds = [run for run in free if run.to.id == bench.box]
    expected = _expected_runs(bench, plan, free, feeds)
    if expected is not None:
        ids = ", ".join(run.id for run in free)
        ends = "these runs end" if len(free) > 1 else "this run ends"
        if not bench.ends_missing:
            planning.wrong(
                plan.place,
                f"{plan.entry.word or 'a make-up'} in {bench.box}, where {ends}: {ids}",
                expected,
                "name them: {feed: ..., onward: [...]}, or write what is capped or loose",
            )
        return None
    feed = feeds[0] if len(feeds) == 1 else free[0] if len(free) == 1 else None
    return replace(plan, feed=feed, onward=tuple(run for run in free if run is not feed))


def _expected_runs(bench: Bench, plan: Plan, free: Sequence[Run], feeds: Sequence[Run]) -> str | None:
    """How many runs the word takes, when it is not as many as end here."""
    word = plan.entry.word
    if word == "end-of-run":
        return None if len(free) == 1 else "one run"
    if word == "splice-through":
        return None if len(free) > 1 else "two runs or more"
    if word == "feed-through" and len(free) != 2:
        return "two runs, one in and one out"
    if word != "pigtailed" and len(feeds) != 1:
        return f"one run that comes to {bench.box} and is its feed"
    return None


def _which_runs(planning: _Planning, plan: Plan) -> None:
    by_circuit: dict[str, list[str]] = {}
    for run in planning.free:
        by_circuit.setdefault(run.circuit, []).append(run.id)
    listed = "; ".join(f"{circuit}: {', '.join(ids)}" for circuit, ids in by_circuit.items()) or "none"
    first = planning.free[0].id if planning.free else "a1"
    word = plan.entry.word or "this entry"
    planning.wrong(
        plan.place,
        f"{word} does not say which runs of {planning.bench.box} it takes ({listed})",
        "one entry for each circuit, with its runs named",
        f"write - {{feed: {first}, onward: [...]}} for each",
    )


def _named(planning: _Planning, plan: Plan) -> Plan | None:
    """An entry that names runs; its feed, where not told, is the one run left that comes here."""
    bench = planning.bench
    if plan.loop is not None:
        plan = replace(plan, at_switch=plan.loop.to.id == bench.box and plan.feed is None)
    if plan.feed is not None or not _needs_feed(plan):
        return plan
    coming = [run for run in planning.free if run.to.id == bench.box]
    if len(coming) == 1:
        return replace(plan, feed=coming[0])
    if not bench.ends_missing:
        others = f"{', '.join(run.id for run in coming)} all come" if coming else "no other run comes"
        found = f"no feed is named, and {others} to {bench.box}"
        planning.wrong(plan.place, found, "feed: and the run that brings the supply", "add feed:")
    return None


def _needs_feed(plan: Plan) -> bool:
    entry = plan.entry
    if plan.loop is not None:
        return not plan.at_switch
    if any(each.common == "feed" for each in entry.three_way.values()):
        return True
    return bool(entry.switched or entry.onward or entry.guarded) and not (entry.three_way or entry.four_way)


def _with_devices(planning: _Planning, written: Written, plans: list[Plan]) -> list[Plan]:
    """Each entry with its devices; those no entry names go to the only one that may take them."""
    bench = planning.bench
    takers = [plan for plan in plans if plan.entry.word != "splice-through"]
    claimed = {device for plan in plans for device in plan.devices}
    over = [each for each in bench.devices if each not in claimed]
    unknown = any(each.word == "unknown" for each in bench.record.makeup or ())
    if len(takers) == 1 and takers[0].entry.devices is None and not unknown:
        mine = takers[0]
        devices = tuple(each for each in bench.devices if each in (*mine.devices, *over))
        return [replace(plan, devices=devices) if plan is mine else plan for plan in plans]
    if plans and not unknown and not any(plan.entry.devices is not None for plan in plans):
        for device in over:
            if not any(name.startswith(f"{bench.box}.{device}.") for name in written.mentioned):
                planning.wrong(
                    bench.record.key_place("devices", device),
                    f"no entry of the make-up of {bench.box} says how {device} is connected",
                    f"devices: [{device}] in the entry of its circuit"
                    if takers
                    else "no device in splice-through",
                    f"add devices: [{device}] to that entry, or write its terminals out",
                )
    return plans
