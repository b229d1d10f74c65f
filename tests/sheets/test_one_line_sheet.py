"""The one-line diagram tells what feeds what, and says what nobody wrote down."""

from houses import HOUSE, surveyed

from junctionary.sheets.one_line import Bus, Feed, buses
from junctionary.sheets.one_lines import one_line_sheet

MAIN = (
    "panel: main\nspaces: 8\nmain: 100 A\nfed_by: service\nbonded: true\nbreakers:\n"
    "  1: {rating: 15 A, feeds: den}\n  2+4: {rating: 60 A, feeds: f}\n"
)
BARN = "panel: barn\nspaces: 4\nfed_by: f\nbonded: false\nbreakers: {}\n"
CIRCUIT = "circuit: den\nname: Den\n"
FEEDER = (
    "circuit: f\nname: Feeder\npurpose: feeder\n"
    "runs: [{id: f1, cable: 6/3 NM-B, from: main, to: barn, length: 70 ft}]\n"
)


def feeds(
    house: str = HOUSE, *panels: str, circuits: tuple[str, ...] = (CIRCUIT, FEEDER)
) -> tuple[Feed, ...]:
    files = {f"panels/{n}.yaml": text for n, text in enumerate(panels)}
    files |= {f"circuits/{n}.yaml": text for n, text in enumerate(circuits)}
    return one_line_sheet(surveyed(house=house, files=files)).diagram.feeds


def below(bus: Bus) -> list[str]:
    return [tap.to.label.name for tap in bus.taps]


def test_a_feeder_hangs_on_its_breaker_with_its_wire_and_the_rest_together() -> None:
    (feed,) = feeds(HOUSE, MAIN, BARN)
    first, rest = feed.bus.taps
    assert first.breaker is not None
    assert first.wire is not None
    assert (first.breaker.name, first.breaker.lines) == ("2+4", ("60 A", "2 poles"))
    assert (first.wire.name, first.wire.lines) == ("run f1", ("6/3 NM-B", "70 ft"))
    assert isinstance(first.to, Bus)
    assert (rest.to.label.name, rest.to.label.lines[0]) == ("1 other breaker", "15 A")


def test_the_bond_is_told_for_each_panel() -> None:
    assert [bus.ground.bond for bus in buses(feeds(HOUSE, MAIN, BARN))] == ["joined", "apart"]


def test_what_is_not_recorded_of_the_service_is_said() -> None:
    (feed,) = feeds(HOUSE, MAIN, BARN)
    assert feed.parts[0].label.lines == (
        "system not recorded",
        "service not recorded",
        "fault current not recorded",
    )
    assert feed.wire is not None
    assert feed.wire.lines == ("not recorded",)
    assert feed.bus.ground.electrodes == ("electrodes not recorded",)


def test_a_panel_nobody_knows_the_supply_of_stands_by_itself() -> None:
    lone = BARN.replace("fed_by: f\n", "")
    made = feeds(HOUSE, MAIN, lone, circuits=(CIRCUIT, "circuit: f\nname: Feeder\n"))
    assert [feed.parts[0].label.name for feed in made] == ["utility", "what feeds it is not recorded"]


def test_a_source_hangs_on_the_breaker_it_enters_at_with_its_interlock() -> None:
    house = HOUSE + "sources: [{id: gen, is: generator-inlet, name: Generator, enters: main/2+4}]\n"
    panel = MAIN.replace("60 A, feeds: f", "30 A, feeds: gen") + "interlocks: [[main, 2+4]]\n"
    (feed,) = feeds(house, panel, circuits=(CIRCUIT,))
    assert below(feed.bus) == ["Generator", "1 other breaker"]
    assert feed.bus.taps[0].interlocked


def test_a_source_nobody_knows_the_entry_of_is_told_apart() -> None:
    house = HOUSE + "sources: [{id: pv, is: solar}]\n"
    files = {
        "panels/a.yaml": MAIN,
        "circuits/a.yaml": CIRCUIT,
        "circuits/b.yaml": FEEDER,
        "panels/b.yaml": BARN,
    }
    (end,) = one_line_sheet(surveyed(house=house, files=files)).diagram.apart
    assert "where it enters is not recorded" in end.label.lines


def test_surge_protection_hangs_on_the_bus_its_breaker_or_ahead_of_the_main() -> None:
    (lugs,) = feeds(HOUSE, MAIN + "surge: {type: 2, connected: lugs}\n", BARN)
    assert (lugs.bus.taps[0].breaker, below(lugs.bus)[0]) == (None, "surge protection")
    on = MAIN.replace("breakers:\n", "breakers:\n  6+8: {rating: 20 A, feeds: none}\n")
    (breaker,) = feeds(HOUSE, on + "surge: {type: 2, connected: 6+8}\n", BARN)
    first = breaker.bus.taps[0]
    assert first.breaker is not None
    assert (first.breaker.name, below(breaker.bus)) == (
        "6+8",
        ["surge protection", "barn", "1 other breaker"],
    )
    (ahead,) = feeds(HOUSE, MAIN + "surge: {type: 1, connected: before-main}\n", BARN)
    assert ahead.aside is not None
    assert "before the main: live with the main off" in ahead.aside.label.lines
    assert "surge protection" not in below(ahead.bus)


def test_that_nothing_is_written_of_surge_protection_is_said() -> None:
    made = one_line_sheet(
        surveyed(
            panels=MAIN, files={"circuits/a.yaml": CIRCUIT, "circuits/b.yaml": FEEDER, "panels/b.yaml": BARN}
        )
    )
    assert made.schedule.rows[0].cells[-1] == ("not recorded",)
