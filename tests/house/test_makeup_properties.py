"""Whatever is written, a make-up is understood or refused, and every conductor end is somewhere once."""

from collections import Counter
from collections.abc import Callable

from hypothesis import given, settings
from hypothesis import strategies as st

from junctionary.house.model import Box, House

Linked = Callable[[str, str], House | None]

CABLES = [
    "14/2 NM-B", "14/3 NM-B", "12/2 AC", "14/2 NM no ground", "12/2/2 NM-B", "unknown",
    "{open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}",
]  # fmt: skip
KINDS = [
    "duplex", "single", "gfci", "heat", "stove", "switch", "three", "four", "dimmer", "smart", "lamp",
    "fan", "alarm", "heater", "pull", "inlet",
]  # fmt: skip
RUNS = ["a1", "a2", "a3"]
DEVICES = ["r1", "s1"]
ENDS = [
    "a1",
    "a2",
    "a3",
    "a1.black",
    "a1.white",
    "a2.red",
    "r1",
    "s1",
    "r1.brass",
    "r1.black",
    "s1.line",
    "q1",
    "feed",
]

run = st.sampled_from(RUNS)
end = st.sampled_from(ENDS)
device = st.sampled_from(DEVICES)


def flow(**keys: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """A mapping on one line, each key there or not."""
    parts = [
        st.one_of(st.just(""), value.map(lambda said, key=key: f"{key}: {said}"))
        for key, value in keys.items()
    ]
    return st.tuples(*parts).map(lambda said: "{" + ", ".join(filter(None, said)) + "}")


def listed(of: st.SearchStrategy[str], least: int = 0, most: int = 2) -> st.SearchStrategy[str]:
    """A list on one line."""
    return st.lists(of, min_size=least, max_size=most).map(lambda said: f"[{', '.join(said)}]")


def one(key: st.SearchStrategy[str], value: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """A mapping of one key."""
    return st.tuples(key, value).map(lambda said: f"{{{said[0]}: {said[1]}}}")


entry = st.one_of(
    st.sampled_from(["end-of-run", "pigtailed", "feed-through", "splice-through", "unknown"]),
    flow(
        feed=run,
        onward=listed(run),
        guarded=listed(st.sampled_from([*RUNS, *DEVICES])),
        through=device,
        on=st.sampled_from(["black", "red"]),
        switched=one(device, end),
        loop=run,
        three_way=one(device, one(st.just("common"), end).map(lambda said: f"{said[:-1]}, travelers: a2}}")),
        four_way=one(device, st.just("{in: a1, out: a2}")),
        devices=listed(device),
    ).filter(lambda said: said != "{}"),
)
box = flow(
    size=st.just("{of: steel}"),
    devices=st.tuples(*[st.sampled_from(KINDS)] * 2).map(lambda said: f"{{r1: {said[0]}, s1: {said[1]}}}"),
    makeup=listed(entry, 1),
    joints=listed(listed(end, 1, 3).map(lambda said: f"{{join: {said}}}")),
    terminals=one(st.sampled_from(["r1.brass", "r1.x", "s1.brass-1", "s1.line"]), end),
    capped=listed(end),
    loose=listed(end),
    marked=one(st.sampled_from(["a1.white", "a2.white", "a1.a"]), st.sampled_from(["black", "white"])),
    split=st.just("{r1: brass}"),
    passes=listed(run, 0, 1),
)


@st.composite
def houses(draw: st.DrawFn) -> tuple[str, str]:
    """The runs and the record of box K1."""
    ends = [draw(st.sampled_from(["main, K1", "K1, K2", "K3, K1", "K2, K3"])) for _ in RUNS]
    runs = [f"{id_}: {draw(st.sampled_from(CABLES))}, {each}" for id_, each in zip(RUNS, ends, strict=True)]
    return "\n".join(runs), draw(box)


def ends_of(house: House, box: Box) -> list[str]:
    """Every conductor end in a box, or its run where the cable is not known."""
    runs = [house.runs[each] for each in box.runs]
    return [
        name
        for each in runs
        for name in ([f"K1/{each.id}.{one.colour}" for one in each.conductors] or [f"K1/{each.id}"])
    ]


@settings(max_examples=150, deadline=None)
@given(said=houses())
def test_every_conductor_end_is_somewhere_once(linked_box: Linked, said: tuple[str, str]) -> None:
    house = linked_box(*said)
    if house is None:
        return
    k1 = house.boxes["K1"]
    held = [each.name for joint in k1.joints for each in joint.members if each.kind == "conductor"]
    held += [each.name for landing in k1.landings for each in landing.wires if each.kind == "conductor"]
    places = Counter([*held, *k1.capped, *k1.loose, *k1.untold])
    for end in ends_of(house, k1):
        known = end in places or any(name.startswith(f"{end}.") for name in places)
        assert known, f"{end} is nowhere"
        assert places[end] <= 1, f"{end} is in {places[end]} places"


@settings(max_examples=150, deadline=None)
@given(said=houses())
def test_every_pigtail_has_two_ends(linked_box: Linked, said: tuple[str, str]) -> None:
    house = linked_box(*said)
    if house is None:
        return
    k1 = house.boxes["K1"]
    at_joints = {
        (joint.id, each.name) for joint in k1.joints for each in joint.members if each.kind == "pigtail"
    }
    at_terminals = {
        (each.name, landing.terminal)
        for landing in k1.landings
        for each in landing.wires
        if each.kind == "pigtail" and each.name.startswith("K1/j")
    }
    assert at_joints == at_terminals


@settings(max_examples=150, deadline=None)
@given(said=houses())
def test_a_terminal_is_landed_on_once(linked_box: Linked, said: tuple[str, str]) -> None:
    house = linked_box(*said)
    if house is None:
        return
    landed = Counter(each.terminal for each in house.boxes["K1"].landings)
    assert all(count == 1 for terminal, count in landed.items() if terminal != "K1/box")
