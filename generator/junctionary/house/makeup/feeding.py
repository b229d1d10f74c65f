"""The hot and neutral conductors of an entry joined by like role, colour by colour."""

from junctionary.house.makeup.bench import Atom, Bench
from junctionary.house.makeup.carrier import find_carrier, goes_through
from junctionary.house.makeup.hanging import hang, hangs_on_supply, many_neutrals, what_it_takes
from junctionary.house.makeup.plan import Plan
from junctionary.house.makeup.supply import FAR, NEAR, Supply
from junctionary.house.makeup.switching import Legs
from junctionary.house.model import Run
from junctionary.house.terminals import GFCI


def feed(bench: Bench, plan: Plan, legs: Legs, taken: frozenset[str]) -> Supply:
    """The ties of the hot and neutral conductors of an entry, and of its devices to them."""
    work = Supply(bench, plan, legs, taken)
    work.white_is_hot = _white_is_hot(work)
    work.several = any(len(work.hots(run)) > 1 for run in work.line)
    work.carrier = find_carrier(work)
    takes = {each: what_it_takes(work, each) for each in plan.devices if hangs_on_supply(work, each)}
    beyond = [label for _, label in takes[work.carrier].pairs] if work.carrier in takes else []
    _hot_conductors(work, beyond)
    _neutral_conductors(work)
    _supplied_by_word(work)
    for device in plan.devices:
        hang(work, device, takes.get(device))
    return work


def _white_is_hot(work: Supply) -> bool:
    """Whether the white of a two-wire cable is its second hot: re-marked, or because a device needs two."""
    left = [each for run in work.line for each in work.left(run)]
    if any(work.bench.role_by_colour(each) == "neutral" and work.bench.role(each) == "hot" for each in left):
        return True
    feeds = (work.plan.feed,) if work.plan.feed is not None else work.line
    if not feeds or any(len(work.hots(run)) != 1 for run in feeds):
        return False
    sides = [work.sides(device) for device in work.plan.devices if hangs_on_supply(work, device)]
    return any(len(each.hot) > 1 and not each.neutral for each in sides)


def _hot_conductors(work: Supply, beyond: list[str]) -> None:
    """Hots are joined colour by colour; those beyond the carrier hang on its far side."""
    plan = work.plan
    _leg_that_is_not_there(work)
    for run in work.line:
        may_be_far = run in plan.guarded or (run in plan.onward and goes_through(work))
        for atom in work.hots(run):
            label = work.label(atom)
            side = FAR if may_be_far and label in beyond else NEAR
            work.tie(work.key("hot", side, label), [atom], _word(work, side, run))
        for atom in work.left(run):
            if work.role(atom) is None:
                # Old wires that only a letter tells apart go on as they came.
                work.tie(work.key("as", NEAR, atom.colour or ""), [atom])


def _leg_that_is_not_there(work: Supply) -> None:
    """``takes: red`` where the feed has no red to take."""
    on, run = work.plan.entry.takes, work.plan.feed
    if on is None or run is None or on in [each.colour for each in work.hots(run)]:
        return
    listed = ", ".join(f"{run.id}.{each.colour}" for each in work.hots(run)) or "no hot conductor"
    work.doubt(
        [],
        work.plan.entry.value_place("takes"),
        f"takes: {on}, but the feed brings {listed}",
        "a hot conductor of the feed",
        "write the colour of the leg that the devices take",
    )


def _word(work: Supply, side: str, run: Run) -> str:
    if side == NEAR:
        return work.plan.word
    if run in work.plan.guarded:
        return "guarded"
    return "through" if work.plan.word == "feed" else work.plan.word


def _neutral_conductors(work: Supply) -> None:
    """Neutrals of the entry are joined; beyond its carrier they stay apart, unless two hots share them."""
    many = many_neutrals(work)
    for run in work.plan.runs:
        side = _neutral_side(work, run)
        for atom in work.left(run):
            role = work.role(atom) if run in work.line else work.bench.role(atom)
            if role == "neutral":
                key = work.key("neutral", side, (atom.colour or "") if many else "")
                work.tie(key, [atom], _word(work, side, run))


def _neutral_side(work: Supply, run: Run) -> str:
    plan = work.plan
    if work.carrier is None:
        return NEAR
    if run in plan.guarded:
        return FAR
    if run in plan.onward:
        guards = work.bench.devices[work.carrier].is_ in GFCI
        # A multiwire neutral never runs through a receptacle: it is joined, with a pigtail.
        apart = work.sides(work.carrier).far_neutral and (guards or not work.several)
        return FAR if goes_through(work) and apart else NEAR
    return FAR if _is_sent_from_guarded(work, run) else NEAR


def _is_sent_from_guarded(work: Supply, run: Run) -> bool:
    """Whether only switches on the guarded side send anything out on this run."""
    senders = [
        device
        for device, targets in work.plan.entry.switched.items()
        if run.id in [each.partition(".")[0] for each in targets]
    ]
    return bool(senders) and all(each in work.plan.guarded_devices for each in senders)


def _supplied_by_word(work: Supply) -> None:
    """A three-way's common told as the feed, or the wire of a loop that brings the supply down."""
    for atom in work.legs.supplied:
        label = _single_label(work, atom)
        if label is not None:
            work.tie(work.key("hot", NEAR, label), [atom], "loop" if work.plan.loop else "three_way")


def _single_label(work: Supply, atom: Atom) -> str | None:
    if not work.several:
        return ""
    if work.plan.entry.takes:
        return work.plan.entry.takes
    said = atom.name.partition("/")[2] or atom.name
    work.doubt(
        [atom.name],
        work.plan.place,
        f"the feed brings more than one hot, and which {said} takes is not told",
        "takes: and its colour",
        "write takes: black, or takes: red",
    )
    return None
