"""What one entry of a make-up names: its runs by the key they stand under, and its devices."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.house.makeup.bench import Bench, Wrong, resolve
from junctionary.house.model import Run
from junctionary.marks import Place
from junctionary.problems import Problem, nearest
from junctionary.records.boxes import MakeupEntry


@dataclass(frozen=True, slots=True)
class Told:
    """The runs and devices an entry names; of ``others`` only switched legs or travelers are named."""

    feed: Run | None
    onward: tuple[Run, ...]
    guarded: tuple[Run, ...]
    others: tuple[Run, ...]
    loop: Run | None
    devices: tuple[str, ...]
    guarded_devices: tuple[str, ...]

    def runs(self) -> tuple[Run, ...]:
        """Every run it names, the feed first."""
        some = (self.feed, *self.onward, *self.guarded, self.loop, *self.others)
        return tuple({run.id: run for run in some if run is not None}.values())


def told_in(bench: Bench, entry: MakeupEntry) -> tuple[Told, list[Problem]]:
    """What an entry names, and a problem for each name that stands for nothing in the box."""
    problems: list[Problem] = []
    guards = [(number, each) for number, each in enumerate(entry.guarded) if each not in bench.devices]
    told = Told(
        feed=_run(bench, entry.feed, entry.value_place("feed"), problems),
        onward=tuple(_runs(bench, entry, "onward", enumerate(entry.onward), problems)),
        guarded=tuple(_runs(bench, entry, "guarded", guards, problems)),
        others=tuple({run.id: run for run in _sent_out(bench, entry, problems)}.values()),
        loop=_run(bench, entry.loop, entry.value_place("loop"), problems),
        devices=tuple(_devices(bench, entry, problems)),
        guarded_devices=tuple(each for each in entry.guarded if each in bench.devices),
    )
    return told, problems + _told_twice(entry)


def _told_twice(entry: MakeupEntry) -> list[Problem]:
    """A run that stands under two of feed, onward, guarded and loop, or twice under one."""
    said = [("feed", entry.feed, entry.value_place("feed"))]
    for key in ("onward", "guarded"):
        said += [(key, each, entry.value_place(key, n)) for n, each in enumerate(getattr(entry, key))]
    said.append(("loop", entry.loop, entry.value_place("loop")))
    first: dict[str, str] = {}
    problems = []
    for key, each, place in said:
        if each is not None and each in first:
            found = f"{each} is told twice, as {first[each]} and as {key}"
            problems.append(Problem(place, found, "each run in one place", "take it out of one of the two"))
        elif each is not None:
            first[each] = key
    return problems


def names_runs(entry: MakeupEntry) -> bool:
    """Whether an entry says which runs it takes, rather than leave them to its word."""
    keys = ("feed", "onward", "guarded", "switched", "loop", "three_way", "four_way")
    return any(getattr(entry, key) for key in keys)


def _run(bench: Bench, said: str | None, place: Place, problems: list[Problem]) -> Run | None:
    if said is None:
        return None
    if said in bench.runs:
        return bench.runs[said]
    whole = said.partition(".")[0]
    if whole in bench.runs:
        do = f"write {whole}, or write the joint out"
        problems.append(Problem(place, f"{said} is one conductor", "a whole run", do))
    elif isinstance(found := resolve(bench, said), Wrong):
        problems.append(found.at(place))
    elif found.kind != "conductor":
        problems.append(Problem(place, f"{said} is no run", "a run that ends here", "name the run"))
    return None


def _runs(
    bench: Bench, entry: MakeupEntry, key: str, said: Iterable[tuple[int, str]], problems: list[Problem]
) -> Iterator[Run]:
    for number, each in said:
        run = _run(bench, each, entry.value_place(key, number), problems)
        if run is not None:
            yield run


def targets_of(entry: MakeupEntry) -> Iterator[tuple[str, Place]]:
    """Where switches send the circuit: each run, conductor, device or lead named, with its place."""
    for device, targets in entry.switched.items():
        for number, each in enumerate(targets):
            yield each, entry.value_place("switched", device, number)
    for device, three in entry.three_way.items():
        yield three.common, entry.value_place("three_way", device, "common")
        for number, each in enumerate(three.travelers):
            yield each, entry.value_place("three_way", device, "travelers", number)
    for device, four in entry.four_way.items():
        for key, ends in (("in", four.in_), ("out", four.out)):
            for number, each in enumerate(ends):
                yield each, entry.value_place("four_way", device, key, number)


def _sent_out(bench: Bench, entry: MakeupEntry, problems: list[Problem]) -> Iterator[Run]:
    for said, place in targets_of(entry):
        whole = said.partition(".")[0]
        if whole in bench.runs:
            yield bench.runs[whole]
        if said in (*bench.runs, *bench.devices) or said == "feed":
            continue
        found = resolve(bench, said)
        if isinstance(found, Wrong):
            problems.append(found.at(place))


def _devices(bench: Bench, entry: MakeupEntry, problems: list[Problem]) -> dict[str, None]:
    """The devices an entry names, each once; one the box does not have is a problem."""
    named: list[tuple[str, Place]] = []
    for number, each in enumerate(entry.devices or ()):
        named.append((each, entry.value_place("devices", number)))
    for key in ("switched", "three_way", "four_way"):
        named += [(each, entry.key_place(key, each)) for each in getattr(entry, key)]
    if entry.through:
        named.append((entry.through, entry.value_place("through")))
    for each, place in named:
        problems += _no_such_device(bench, each, place)
    targets = [said.partition(".")[0] for said, _ in targets_of(entry)]
    all_named = [*(each for each, _ in named), *entry.guarded, *targets]
    return dict.fromkeys(each for each in all_named if each in bench.devices)


def _no_such_device(bench: Bench, id_: str, place: Place) -> list[Problem]:
    known = [*bench.devices, *bench.kindless]
    if id_ in known:
        return []
    near = nearest(id_, known)
    expected = f"one of {', '.join(known)}" if known else "a device of this box, which has none"
    return [
        Problem(
            place,
            f"{bench.box} has no device {id_!r}",
            f"{near!r}, the nearest known" if near else expected,
            f"write {near}" if near else f"add {id_} under devices:, or correct the id",
        )
    ]
