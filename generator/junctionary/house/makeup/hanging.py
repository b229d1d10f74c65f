"""What of each device hangs on the supply of its entry."""

from junctionary.house.makeup.bench import Atom
from junctionary.house.makeup.carrier import carrier_told
from junctionary.house.makeup.knots import Tie
from junctionary.house.makeup.sides import is_switch
from junctionary.house.makeup.supply import FAR, NEAR, Supply
from junctionary.house.makeup.taking import Takes, legs_for
from junctionary.house.terminals import has_leads, terminals_of


def hangs_on_supply(work: Supply, device: str) -> bool:
    """Whether the device's hot side goes to the supply: not when a switch or a loop sends it there."""
    kind, entry = work.bench.devices[device], work.plan.entry
    if device in entry.three_way or device in entry.four_way:
        return False
    if is_switch(kind):
        at_loop = work.plan.at_switch and work.is_sent(device)
        return device in entry.switched or device == carrier_told(work) or at_loop
    # The other half of a split device may still hang on the supply.
    return not work.is_sent(device) or "brass" in work.bench.record.split.get(device, "")


def what_it_takes(work: Supply, device: str) -> Takes:
    """Which hots of the supply the device's hot terminals take."""
    plan, kind = work.plan, work.bench.devices[device]
    hot = work.sides(device).hot
    terminals = tuple(
        each for each, name in zip(hot, work.of(device, hot), strict=True) if name not in work.taken
    )
    # The leads on which alarms signal may begin here, and need not have come with the feed.
    from_all = plan.feed is None or (len(terminals) > 1 and has_leads(kind))
    runs = work.line if from_all or plan.feed is None else (plan.feed,)
    hots = [each for run in runs for each in work.hots(run)]
    hots += [each for each in work.legs.supplied if each.kind == "conductor" and plan.at_switch]
    labels = [work.label(each) for each in hots if each.name not in work.taken]
    on = plan.entry.takes if work.several else None
    return legs_for(Takes(work.bench.box, device, kind, terminals, tuple(dict.fromkeys(labels)), on))


def hang(work: Supply, device: str, takes: Takes | None) -> None:
    """Tie a device to the supply, and the carrier's far side to what lies beyond it."""
    plan, bench, sides = work.plan, work.bench, work.sides(device)
    side = FAR if device in plan.guarded_devices and device != work.carrier else NEAR
    neutral = _neutral_label(work)
    work.tie(work.key("neutral", side, neutral), [bench.terminal(device, each) for each in sides.neutral])
    if takes is None:
        _switch_untold(work, device)
        return
    if takes.problem is not None:
        names = work.of(device, (*takes.terminals, "brass-top", "brass-bottom"))
        wrong = takes.problem
        work.doubt(names, plan.place, wrong.found, wrong.expected, wrong.do)
    for terminal, label in takes.pairs:
        work.tie(work.key("hot", side, label), [bench.terminal(device, terminal)])
    if device == work.carrier:
        same = sides.far_hot == sides.hot
        for far, (_, label) in zip(sides.far_hot, takes.pairs, strict=False):
            _far(work, same, ("hot", label), [bench.terminal(device, far)])
        _far(work, same, ("neutral", neutral), [bench.terminal(device, each) for each in sides.far_neutral])


def _far(work: Supply, same: bool, flow: tuple[str, str], atoms: list[Atom]) -> None:
    """Tie far terminals; where they are the near ones too, both wires land there together."""
    near, far = work.key(flow[0], NEAR, flow[1]), work.key(flow[0], FAR, flow[1])
    if same:
        work.ties = [Tie(near, tie.atom, tie.word) if tie.key == far else tie for tie in work.ties]
        work.straight.add(near)
    else:
        work.tie(far, atoms, "guarded" if work.plan.guarded or work.plan.guarded_devices else None)


def many_neutrals(work: Supply) -> bool:
    """Whether a run of the entry has more than one neutral, as a cable of two circuits has."""
    return any(sum(work.role(each) == "neutral" for each in work.left(run)) > 1 for run in work.plan.runs)


def _neutral_label(work: Supply) -> str:
    """Which neutral a device takes: the only one, or in a cable of two circuits that of its own hot."""
    if not many_neutrals(work):
        return ""
    colours = [
        each.colour or "" for run in work.plan.runs for each in work.left(run) if work.role(each) == "neutral"
    ]
    return "white-red" if work.plan.entry.takes == "red" and "white-red" in colours else colours[0]


def _switch_untold(work: Supply, device: str) -> None:
    """A switch in no switching word: where its other side goes is the writer's to say."""
    kind, entry = work.bench.devices[device], work.plan.entry
    if not is_switch(kind) or work.is_sent(device) or device in (*entry.three_way, *entry.four_way):
        return
    how = {
        3: f"three_way: {{{device}: {{common: feed, travelers: ...}}}}",
        4: f"four_way: {{{device}: {{in: ..., out: ...}}}}",
    }
    work.doubt(
        work.of(device, (each.name for each in terminals_of(kind))),
        work.bench.record.key_place("devices", device),
        f"{device} of {work.bench.box} is a switch, and where its other side goes is not told",
        how.get(kind.ways or 1, f"switched: {{{device}: ...}}, or loop: at the end of a switch loop"),
        "add it to the make-up, or write the terminals out",
    )
