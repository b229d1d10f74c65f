"""What is live, dark and dead agrees with a circuit simulator (ngspice), in every position of the breakers.

The simulator is given the house's conductors as resistances by a walk of its
own; it shares no code with the network. The readings are those that common
practice expects of a low-impedance tester in a duplex receptacle.
"""

import os
from collections.abc import Iterable, Sequence
from functools import cache
from itertools import product
from pathlib import Path
from random import Random

import networkx as nx
import pytest
from random_houses import as_text, random_house
from simulator import (
    LIVE_V,
    OPEN_OHM,
    Load,
    Part,
    energised,
    loads_of,
    parts_of,
    program,
    solved,
    with_state,
)

from junctionary.checks.examples import read_example
from junctionary.house.dark import goes_dark
from junctionary.house.isolate import isolate
from junctionary.house.lamps import lamp_tables
from junctionary.house.model import House
from junctionary.house.network import Network, network
from junctionary.house.trace import trace

CONTENT = Path(__file__).parents[2] / "content"
SEEDS = range(20)


@pytest.fixture(autouse=True)
def _simulator() -> None:
    """Without the simulator these tests are skipped, and fail where the whole check is due."""
    if program() is None:
        (pytest.fail if os.environ.get("JUNCTIONARY_BROWSER") == "required" else pytest.skip)(
            "no ngspice on this machine"
        )


@pytest.fixture(scope="module")
def demo() -> House:
    files = {str(each.relative_to(CONTENT)): each.read_text("utf-8") for each in CONTENT.rglob("*.yaml")}
    return read_example(as_text(files))


@cache
def house_of_seed(seed: int) -> House:
    return read_example(as_text(random_house(Random(seed), 3)))


def live_by_network(net: Network, off: Iterable[str] = ()) -> set[str]:
    """The points the network says are live when these breakers are open, every switch closed."""
    off, known = set(off), {}

    def live(point: str) -> bool:
        zone = net.zone_at[point]
        if zone not in known:
            known[zone] = False
            known[zone] = point in ("service/A", "service/B") or any(
                feed.breaker not in off and live(feed.supply) for feed in net.zones[zone].feeds
            )
        return known[zone]

    return {point for point in net.at if live(point)}


def agree_in_every_breaker(house: House) -> None:
    net, parts = network(house), parts_of(house)
    cases = [with_state(parts), *(with_state(parts, [each]) for each in house.breakers)]
    before, *after = (energised(volts) for volts in solved(parts, loads_of(house), cases))
    assert before == live_by_network(net)
    for breaker, left in zip(house.breakers, after, strict=True):
        assert left == live_by_network(net, [breaker]), breaker
        lost = before - left
        dark, halves = set(), set()
        for device in house.devices.values():
            names = net.index.carrying.get(device.id, ())
            gone = {each for each in names if each in lost}
            if gone and device.kind.is_ != "inlet":
                top, bottom = (f"{device.id}.brass-{each}" for each in ("top", "bottom"))
                half = next((b for a, b in ((bottom, top), (top, bottom)) if a in left and b in lost), None)
                if half is None:
                    dark.add(device.id)
                else:
                    halves.add(half.replace("brass-", ""))
        told = goes_dark(house, net, breaker)
        assert (set(told.devices), set(told.halves)) == (dark, halves), breaker


def test_the_demo_house_is_live_and_dark_as_the_network_says(demo: House) -> None:
    agree_in_every_breaker(demo)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_random_house_is_live_and_dark_as_the_network_says(seed: int) -> None:
    agree_in_every_breaker(house_of_seed(seed))


def dead_when_isolated(house: House) -> None:
    net, parts = network(house), parts_of(house)
    sets: dict[tuple[str, ...], list[str]] = {}
    for box in house.boxes.values():
        answer = isolate(house, net, box.id)
        sets.setdefault(tuple(each.id for each in answer.breakers), []).append(box.id)
    voltages = solved(parts, loads_of(house), [with_state(parts, off) for off in sets])
    for boxes, volts in zip(sets.values(), voltages, strict=True):
        live = energised(volts)
        for box in boxes:
            passing = tuple(f"{each.run}." for each in house.boxes[box].passing)
            left = {name for name in live if name.startswith((f"{box}/", f"{box}."))}
            left |= {name for name in live if name.rpartition("/")[2].startswith(passing)}
            assert left == set(), box


def test_what_isolation_lists_makes_every_wire_of_a_box_dead_in_the_demo_house(demo: House) -> None:
    dead_when_isolated(demo)


@pytest.mark.parametrize("seed", SEEDS)
def test_what_isolation_lists_makes_every_wire_of_a_box_dead(seed: int) -> None:
    dead_when_isolated(house_of_seed(seed))


def in_positions(house: House, cases: Sequence[dict[str, int]]) -> None:
    net, parts = network(house), parts_of(house)
    changes = [with_state(parts, states=each) for each in cases]
    for states, volts in zip(cases, solved(parts, loads_of(house), changes), strict=True):
        graph = nx.Graph()
        graph.add_nodes_from(net.at)
        graph.add_edges_from(
            (edge.a, edge.b)
            for edge in net.edges
            if edge.kind != "switch" or edge.state == states.get(edge.of, edge.state)
        )
        live = nx.node_connected_component(graph, "service/A") | nx.node_connected_component(
            graph, "service/B"
        )
        assert energised(volts) == live, states


@pytest.mark.parametrize("seed", SEEDS)
def test_contacts_lead_where_the_simulator_says_in_any_position_of_the_switches(seed: int) -> None:
    house, chance = house_of_seed(seed), Random(seed)
    switches = [each.id for each in house.devices.values() if each.kind.is_ in ("switch", "dimmer")]
    in_positions(house, [{each: chance.randint(0, 1) for each in switches} for _ in range(8)])


def test_contacts_lead_where_the_simulator_says_in_the_demo_house(demo: House) -> None:
    kinds = ("switch", "dimmer", "timer", "sensor")
    switches = [each.id for each in demo.devices.values() if each.kind.is_ in kinds]
    in_positions(demo, [{each: Random(n).randint(0, 1) for each in switches} for n in range(4)])


def back_of(net: Network, outlet: str) -> str | None:
    """The neutral terminal or lead an outlet works with."""
    device, _, terminal = outlet.rpartition(".")
    back = f"{device}.{terminal.replace('brass', 'silver') if 'brass' in terminal else 'white'}"
    return back if back in net.terminals else None


def lit_as_the_tables_say(house: House) -> None:
    """Every row of every table of at most four switches; all other switches stand as chance has it."""
    net, parts, chance = network(house), parts_of(house), Random(1)
    kinds = ("switch", "dimmer", "timer", "sensor", "disconnect")
    switches = [each.id for each in house.devices.values() if each.kind.is_ in kinds]
    tables = lamp_tables(house, net)
    rows = [
        (table.outlet, row.works, dict(zip(table.switches, row.states, strict=True)))
        for table in tables
        if len(table.switches) <= 4
        for row in table.rows
    ]
    cases = [
        with_state(parts, states={each: chance.randint(0, 1) for each in switches} | said)
        for *_, said in rows
    ]
    voltages = solved(parts, loads_of(house), cases)
    for (outlet, works, states), volts in zip(rows, voltages, strict=True):
        back = back_of(net, outlet)
        across = abs(volts[outlet] - (volts[back] if back is not None else 0.0))
        assert (across > LIVE_V) is works, (outlet, states)
    outlets = {table.outlet for table in tables}
    for load in loads_of(house):
        if load.a not in outlets and ".load-" not in load.a:
            lit = {abs(volts[load.a] - volts[load.b]) > LIVE_V for volts in voltages}
            assert len(lit) <= 1, f"{load.a} has no table"


def test_lamps_light_as_their_tables_say_in_the_demo_house(demo: House) -> None:
    lit_as_the_tables_say(demo)


@pytest.mark.parametrize("seed", SEEDS)
def test_lamps_light_as_their_tables_say(seed: int) -> None:
    lit_as_the_tables_say(house_of_seed(seed))


@pytest.mark.parametrize("seed", SEEDS)
def test_a_tripped_gfci_takes_what_its_contacts_stand_before(seed: int) -> None:
    house = house_of_seed(seed)
    net, parts = network(house), parts_of(house)
    guards = [each.id for each in house.devices.values() if each.kind.is_ == "gfci-receptacle"]
    cases = [with_state(parts), *(with_state(parts, [each]) for each in guards)]
    before, *after = (energised(volts) for volts in solved(parts, loads_of(house), cases))
    behind = {
        device: {each.id for way in trace(house, net, device).hot for each in way.protectors}
        for device in house.devices
    }
    for guard, left in zip(guards, after, strict=True):
        lost = {name.rpartition(".")[0] for name in before - left if name in net.terminals}
        assert lost == {device for device, protectors in behind.items() if guard in protectors}


LAMP = """\
[panels/main.yaml]
panel: main
spaces: 4
main: 100 A
fed_by: service
bonded: true
breakers: {{1: {{rating: 15 A, guards: [], feeds: c}}}}
[rooms/den.yaml]
room: den
name: Den
kind: den
[devices/all.yaml]
devices:
  three: {{is: switch, ways: 3}}
  four: {{is: switch, ways: 4}}
  duplex: {{is: receptacle, face: 5-15R}}
  lamp: {{is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}}
[circuits/c.yaml]
circuit: c
name: Den
runs:
{runs}
[boxes/den.yaml]
room: den
boxes:
{boxes}
"""


def read(runs: Iterable[str], boxes: str) -> House:
    lines = []
    for run in runs:
        id_, cable, from_, to = run.split(", ")
        lines.append(f"  - {{id: {id_}, cable: {cable} NM-B, from: {from_}, to: {to}}}")
    return read_example(LAMP.format(runs="\n".join(lines), boxes=boxes))


FEED_AT_SWITCH = (
    ("a, 14/2, main, K1", "t, 14/3, K1, K2", "u, 14/3, K2, K3", "l, 14/2, K3, L"),
    """\
  K1: {devices: {s: three}, makeup: {feed: a, three_way: {s: {common: feed, travelers: t}}}}
  K2: {devices: {s: four}, makeup: {four_way: {s: {in: t, out: u}}}}
  K3: {devices: {s: three}, makeup: {three_way: {s: {common: l, travelers: u}}}}
  L: {devices: {f: lamp}, makeup: end-of-run}
""",
)
FEED_AT_LAMP = (
    ("a, 14/2, main, L", "d, 14/2, L, K1", "t, 14/3, K1, K2"),
    """\
  L: {devices: {f: lamp}, makeup: {feed: a}, joints: [{join: [a.black, d.white]}, {join: [d.black, f.black]}]}
  K1: {devices: {s: three}, joints: [{join: [d.black, t.black]}, {join: [d.bare, t.bare, s.green]}],
       terminals: {s.common: d.white, s.traveler-1: t.red, s.traveler-2: t.white}}
  K2: {devices: {s: three}, terminals: {s.common: t.black, s.traveler-1: t.red, s.traveler-2: t.white, s.green: t.bare}}
""",
)
LAMP_BETWEEN = (
    ("a, 14/2, main, L", "t, 14/3, L, K1", "u, 14/3, L, K2"),
    """\
  L:
    devices: {f: lamp}
    joints: [{join: [a.black, t.black]}, {join: [u.black, f.black]}, {join: [t.red, u.red]}, {join: [t.white, u.white]},
             {join: [a.white, f.white]}, {join: [a.bare, t.bare, u.bare, f.green]}]
  K1: {devices: {s: three}, terminals: {s.common: t.black, s.traveler-1: t.red, s.traveler-2: t.white, s.green: t.bare}}
  K2: {devices: {s: three}, terminals: {s.common: u.black, s.traveler-1: u.white, s.traveler-2: u.red, s.green: u.bare}}
""",
)


@pytest.mark.parametrize(
    "wiring",
    [FEED_AT_SWITCH, FEED_AT_LAMP, LAMP_BETWEEN],
    ids=["feed at switch", "feed at lamp", "lamp between"],
)
def test_each_3_way_and_4_way_turns_the_lamp_over_whatever_the_others_do(
    wiring: tuple[tuple[str, ...], str],
) -> None:
    house = read(*wiring)
    parts, loads = parts_of(house), loads_of(house)
    switches = [each.id for each in house.devices.values() if each.kind.is_ == "switch"]
    states = list(product((0, 1), repeat=len(switches)))
    cases = [with_state(parts, states=dict(zip(switches, each, strict=True))) for each in states]
    lit = {
        state: abs(volts["L.f.black"] - volts["L.f.white"]) > 100
        for state, volts in zip(states, solved(parts, loads, cases), strict=True)
    }
    for state, on in lit.items():
        for place in range(len(switches)):
            other = tuple(1 - each if n == place else each for n, each in enumerate(state))
            assert lit[other] is not on


RECEPTACLES = (
    ("a, 14/2, main, K1", "b, 14/2, K1, K2"),
    """\
  K1: {devices: {r: duplex}, makeup: pigtailed}
  K2: {devices: {r: duplex}, makeup: {feed: b}}
""",
)
REVERSED = (
    ("a, 14/2, main, K2",),
    "  K2: {devices: {r: duplex}, terminals: {r.brass: a.white, r.silver: a.black, r.green: a.bare}}\n",
)
HOT, NEUTRAL, EARTH = "K2.r.brass-top", "K2.r.silver-top", "K2.r.green"
METER_OHM = 1e4
TEN_AMPERES, BEYOND = (
    Load("K2.r.brass-bottom", "K2.r.silver-bottom", 12.0),
    Load("K2.r.brass-bottom", NEUTRAL, 240.0),
)


def reading(house: House, wrong: dict[str, float], loads: Sequence[Load] = ()) -> tuple[float, float, float]:
    """A low-impedance tester's volts H-N, H-G and N-G in K2.r; ``wrong`` are ohms of conductors by run and colour."""
    parts = parts_of(house)
    case = {n: wrong[name] for n, part in enumerate(parts) if (name := conductor(part)) in wrong}
    found = []
    for a, b in ((HOT, NEUTRAL), (HOT, EARTH), (NEUTRAL, EARTH)):
        [volts] = solved(parts, [*loads, Load(a, b, METER_OHM)], [case])
        found.append(abs(volts[a] - volts[b]))
    return found[0], found[1], found[2]


def conductor(part: Part) -> str:
    """Of a whole wire of a run ``b.black``; of anything else nothing."""
    both = {each.rpartition("/")[2] for each in (part.a, part.b)}
    return both.pop() if len(both) == 1 and part.a != part.b and "." in part.a.rpartition("/")[2] else ""


@pytest.mark.parametrize(
    ("means", "wiring", "wrong", "loads", "expected"),
    [
        ("healthy", RECEPTACLES, {}, [], (120, 120, 0)),
        ("open neutral, nothing on", RECEPTACLES, {"b.white": OPEN_OHM}, [], (0, 120, 0)),
        ("open neutral, a load on beyond", RECEPTACLES, {"b.white": OPEN_OHM}, [BEYOND], (0, 120, 120)),
        ("open hot", RECEPTACLES, {"b.black": OPEN_OHM}, [], (0, 0, 0)),
        ("open ground", RECEPTACLES, {"b.bare": OPEN_OHM}, [], (120, 0, 0)),
        ("hot and neutral reversed", REVERSED, {}, [], (120, 0, 120)),
    ],
)
def test_a_tester_reads_what_common_practice_expects(
    means: str,
    wiring: tuple[tuple[str, ...], str],
    wrong: dict[str, float],
    loads: list[Load],
    expected: tuple[float, float, float],
) -> None:
    assert reading(read(*wiring), wrong, loads) == pytest.approx(expected, abs=3), means


def test_a_poor_neutral_sags_under_load_and_lifts_the_neutral() -> None:
    idle = reading(read(*RECEPTACLES), {"b.white": 0.8})
    loaded = reading(read(*RECEPTACLES), {"b.white": 0.8}, [TEN_AMPERES])
    assert idle == pytest.approx((120, 120, 0), abs=0.5)
    assert loaded[0] < 0.95 * idle[0]
    assert loaded[1] == pytest.approx(idle[1], abs=0.5)
    assert loaded[2] == pytest.approx(idle[0] - loaded[0], abs=0.5)


def test_a_poor_hot_sags_alike_to_neutral_and_ground() -> None:
    loaded = reading(read(*RECEPTACLES), {"b.black": 0.8}, [TEN_AMPERES])
    assert loaded[0] < 0.95 * 120
    assert loaded[1] == pytest.approx(loaded[0], abs=0.5)
    assert loaded[2] == pytest.approx(0, abs=0.5)


def test_five_volts_lost_at_twelve_amperes_are_sixty_watts_of_heat_in_the_joint() -> None:
    house, ohm = read(*RECEPTACLES), 5 / 12
    load = Load("K2.r.brass-bottom", "K2.r.silver-bottom", 120 / 12 - ohm)
    parts = parts_of(house)
    [number] = [n for n, part in enumerate(parts) if conductor(part) == "b.black"]
    [volts] = solved(parts, [load], [{number: ohm}])
    lost = volts[parts[number].a] - volts[parts[number].b]
    assert (lost, lost * lost / ohm) == pytest.approx((5, 60), rel=0.01)


def test_an_open_service_neutral_divides_240_volts_between_the_legs() -> None:
    """V_A = 240 R_A / (R_A + R_B); the sum stays at 240 V."""
    house = read(*RECEPTACLES)
    # The other side of the service's neutral is earth, which is not a way back that carries a load.
    parts = parts_of(house)
    [number] = [n for n, part in enumerate(parts) if part.of == "service"]
    loads = [Load("main/A", "main/neutral", 10.0), Load("main/B", "main/neutral", 30.0)]
    [volts] = solved(parts, loads, [{number: OPEN_OHM}])
    a, b = (abs(volts[f"main/{leg}"] - volts["main/neutral"]) for leg in "AB")
    assert (a, b, a + b) == pytest.approx((60, 180, 240), abs=0.1)


def test_a_failing_service_neutral_reads_too_high_or_too_low_at_a_receptacle() -> None:
    """Over 130 V where its leg is loaded less than the other, under 105 V where it is loaded more."""
    house = read(*RECEPTACLES)
    parts = parts_of(house)
    [number] = [n for n, part in enumerate(parts) if part.of == "service"]
    for ohm_a, ohm_b, high in ((30.0, 10.0, True), (10.0, 30.0, False)):
        loads = [Load("main/A", "main/neutral", ohm_a), Load("main/B", "main/neutral", ohm_b)]
        [volts] = solved(parts, [*loads, Load(HOT, NEUTRAL, METER_OHM)], [{number: OPEN_OHM}])
        seen = abs(volts[HOT] - volts[NEUTRAL])
        assert seen > 130 if high else seen < 105


@pytest.mark.parametrize(("meter_ohm", "low", "high"), [(1e6, 20, 80), (3e3, 0, 1)])
def test_an_open_wire_beside_a_live_one_shows_a_voltage_only_to_a_tester_of_high_impedance(
    meter_ohm: float, low: float, high: float
) -> None:
    """The coupling along the cable is written as 2 megohm (practice); the current behind it is none to speak of."""
    parts = parts_of(read(*RECEPTACLES))
    [number] = [n for n, part in enumerate(parts) if conductor(part) == "b.black"]
    coupling = Load("K1.r.brass-top", HOT, 2e6)
    [volts] = solved(parts, [coupling, Load(HOT, NEUTRAL, meter_ohm)], [{number: OPEN_OHM}])
    assert low <= abs(volts[HOT] - volts[NEUTRAL]) <= high
