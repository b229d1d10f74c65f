"""polarity-reversed beyond its own examples."""

from collections.abc import Callable

RULE = "polarity-reversed"
PANEL = "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1: {rating: 15 A, feeds: c}\n"
RUNS = (
    "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n"
    "  - {id: a1, cable: 14/2 NM-B, from: main, to: K1}\n"
    "  - {id: a2, cable: 14/2 NM-B, from: K1, to: K2}\n"
)


def record(k1: str, k2: str, runs: str = RUNS) -> str:
    return f"{PANEL}{runs}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{{k1}}}\n  K2: {{{k2}}}\n"


def test_a_colour_is_no_evidence(says: Callable) -> None:
    # White and black change places in K1, and change back in K2: the receptacle is right.
    crossed = "joints: [{join: [a1.black, a2.white], by: lever-3}, {join: [a1.white, a2.black], by: lever-3}]"
    right = "devices: {r1: duplex}, terminals: {r1.brass: a2.white, r1.silver: a2.black}"
    said = says(RULE, record(crossed, right))
    assert (said.found, said.needs) == ([], [])


def test_wires_swapped_in_an_earlier_box_reverse_what_a_word_says(says: Callable) -> None:
    crossed = "joints: [{join: [a1.black, a2.white], by: lever-3}, {join: [a1.white, a2.black], by: lever-3}]"
    assert says(RULE, record(crossed, "devices: {r1: duplex}, makeup: end-of-run")).found == [
        "boxes/den.yaml:4"
    ]


def test_a_terminal_behind_an_open_switch_is_known_all_the_same(says: Callable) -> None:
    switched = "devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}, splice: [lever-3]"
    lamp = (
        "devices: {f1: lamp}, "
        "joints: [{join: [a2.black, f1.white], by: lever-3}, {join: [a2.white, f1.black], by: lever-3}]"
    )
    assert says(RULE, record(switched, lamp)).found == ["boxes/den.yaml:4"]


def test_a_fault_is_said_once_a_device_and_at_its_first_terminal(says: Callable) -> None:
    box = (
        "[boxes/den.yaml]\nroom: den\nboxes:\n"
        "  K1:\n    devices: {r1: duplex}\n    capped: [a2]\n    terminals:\n"
        "      r1.silver: a1.black\n"
        "      r1.brass: a1.white\n"
    )
    text = PANEL + RUNS.replace("to: K2", "to: unknown") + box
    assert says(RULE, text).found == ["boxes/den.yaml:7"]


def test_a_circuit_with_no_breaker_recorded_leaves_it_open(says: Callable) -> None:
    text = record("devices: {r1: duplex}, makeup: pigtailed, splice: [lever-3]", "capped: [a2]")
    said = says(RULE, text.replace("breakers:\n  1: {rating: 15 A, feeds: c}\n", ""))
    assert said.found == []
    assert "K1.r1.brass" in said.needs[0]


def test_leads_between_alarms_are_no_hot_conductors(says: Callable) -> None:
    leads = "[18 AWG black, 18 AWG white, 18 AWG orange]"
    devices = f"[devices/more.yaml]\ndevices:\n  alarm: {{is: smoke-alarm, leads: {leads}}}\n"
    runs = RUNS.replace("14/2", "14/3")
    k1 = (
        "devices: {d1: alarm}, joints: [{join: [a1.black, a2.black, d1.black], by: lever-3}, "
        "{join: [a1.white, a2.white, d1.white], by: lever-3}, {join: [a2.red, d1.orange], by: lever-3}], "
        "capped: [a1.red]"
    )
    k2 = (
        "devices: {d1: alarm}, joints: [{join: [a2.black, d1.black], by: lever-3}, "
        "{join: [a2.white, d1.white], by: lever-3}, {join: [a2.red, d1.orange], by: lever-3}]"
    )
    said = says(RULE, record(k1, k2, runs) + devices)
    assert (said.found, said.needs) == ([], [])
