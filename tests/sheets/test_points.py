"""The sheet of one outlet, light or switch, of a small house."""

from houses import surveyed

from junctionary.house.suspects import ways
from junctionary.sheets.finding_things import breakers_said, things
from junctionary.sheets.found import Found
from junctionary.sheets.links import Ref, plain
from junctionary.sheets.lookups import make_dead_sheet, where_to_look_sheet
from junctionary.sheets.outages import outage_sheet
from junctionary.sheets.point import PointSheet
from junctionary.sheets.points import point_sheets
from junctionary.sheets.survey import Survey

PANEL = """\
panel: main
name: Main panel
spaces: 8
main: 100 A
fed_by: service
bonded: true
breakers:
  1: {rating: 15 A, feeds: den}
  4: {rating: 15 A, feeds: unknown}
"""
CIRCUIT = """\
circuit: den
name: Den
loads: [{id: tank, is: pump, name: Fish tank, plugged: D2.r1.top, matters: water}]
runs:
  - {id: d1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: d2, cable: 14/2 NM-B, from: D1, to: D2}
  - {id: d3, cable: 14/2 NM-B, from: D2, to: D3}
  - {id: d4, cable: 14/2 NM-B, from: D3, to: D4}
"""
BOXES = """\
room: den
boxes:
  D1: {name: by the door, at: {wall: north, along: 2 ft, up: 16 in}, devices: {r1: duplex}, makeup: feed-through}
  D2: {devices: {r1: duplex}, makeup: pigtailed}
  D3: {devices: {s1: switch}, makeup: {feed: d3, switched: {s1: d4}}}
  D4: {devices: {f1: lamp}, makeup: end-of-run}
"""


def survey_of(panel: str = PANEL, circuit: str = CIRCUIT, boxes: str = BOXES) -> Survey:
    return surveyed(panels=panel, circuits=circuit, boxes=boxes)


def points(survey: Survey) -> dict[str, PointSheet]:
    known = ways(survey.house, survey.network)
    return {each.ref.id: each for each in point_sheets(survey, known.supply)}


def answer(sheet: PointSheet, asked: str) -> str:
    return next(plain(each.value) for each in sheet.answers if each.what == asked)


def test_a_point_names_its_breaker_and_where_that_stands() -> None:
    (fed,) = points(survey_of())["D1.r1"].fed
    assert (fed.space.text, fed.rating) == ("breaker 1", "15 A")
    assert fed.at == "Main panel, left side, 1st from the top"


def test_what_matters_stands_first_among_what_goes_dark() -> None:
    sheet = points(survey_of())["D1.r1"]
    assert sheet.first == ("Fish tank (water)",)
    assert "D2.r1" in plain(sheet.dark[0].things)


def test_what_hangs_on_a_fed_through_device_is_told_and_on_a_pigtailed_one_nothing() -> None:
    found = points(survey_of())
    assert plain(found["D1.r1"].hangs) == "D2.r1 and D4.f1"
    assert found["D2.r1"].hangs == ()


def test_a_gfci_receptacle_lists_what_its_reset_brings_back() -> None:
    guarded = "devices: {r1: guard}, makeup: {feed: d1, guarded: [d2]}"
    kind = "devices:\n  guard: {is: gfci-receptacle, face: 5-15R, rating: 15 A}\n"
    boxes = BOXES.replace("devices: {r1: duplex}, makeup: feed-through", guarded)
    found = points(surveyed(panels=PANEL, circuits=CIRCUIT, boxes=boxes, **{"devices/guards": kind}))
    assert answer(found["D1.r1"], "its reset brings back") == "D2.r1 and D4.f1"
    assert plain(found["D2.r1"].resets[0].what) == "GFCI D1.r1"


def test_a_switch_says_what_it_works_and_a_lamp_by_what_it_is_switched() -> None:
    found = points(survey_of())
    assert answer(found["D3.s1"], "this switch works").startswith("D4.f1")
    assert answer(found["D4.f1"], "switched by") == "D3.s1"
    assert [plain(each.what) for each in found["D4.f1"].resets] == [
        "switch D3.s1",
        "breaker 1 in the main panel",
    ]


def test_a_neutral_is_there_where_the_record_joins_one() -> None:
    assert answer(points(survey_of())["D3.s1"], "neutral in this box?").startswith("yes: ")


def test_a_switch_loop_of_two_wires_has_no_neutral_and_a_hot_white() -> None:
    boxes = """\
room: den
boxes:
  D4: {devices: {f1: lamp}, makeup: {feed: d1, loop: d2}}
  D3: {devices: {s1: switch}, makeup: {loop: d2}}
"""
    circuit = """\
circuit: den
name: Den
runs:
  - {id: d1, cable: 14/2 NM-B, from: main, to: D4}
  - {id: d2, cable: 14/2 NM-B, from: D4, to: D3}
"""
    sheet = points(survey_of(circuit=circuit, boxes=boxes))["D3.s1"]
    assert answer(sheet, "neutral in this box?") == "no, by the record"
    assert answer(sheet, "white, and hot") == "d2.white"


def test_a_make_up_nobody_knows_makes_the_neutral_unknown_and_never_no() -> None:
    boxes = BOXES.replace("{feed: d3, switched: {s1: d4}}", "unknown")
    sheet = points(survey_of(boxes=boxes))["D3.s1"]
    assert answer(sheet, "neutral in this box?").startswith("unknown: ")
    assert answer(sheet, "this switch works").startswith("unknown: ")


def test_a_device_that_no_breaker_is_known_to_feed_shows_none() -> None:
    sheet = points(survey_of(panel=PANEL.replace("feeds: den", "feeds: unknown")))["D1.r1"]
    assert sheet.fed == ()
    assert sheet.before.is_unknown


def found_of(survey: Survey) -> tuple[Found, ...]:
    return things(survey, ways(survey.house, survey.network).supply)


def test_everything_can_be_found_and_has_a_place_to_go() -> None:
    found = {(each.kind, each.id): each for each in found_of(survey_of())}
    assert found["point", "D1.r1"].off == "breaker 1 in the main panel, left side, 1st from the top"
    assert found["appliance", "tank"].to == Ref("point", "D2.r1")
    assert found["breaker", "main/4"].name == "Breaker 4 in the main panel: what it feeds is not recorded"
    assert found["box", "D1"].off == "before opening, off: breaker 1 in the main panel"


def test_a_box_of_unknown_make_up_is_found_as_unknown() -> None:
    boxes = BOXES.replace("makeup: end-of-run", "makeup: unknown")
    found = {(each.kind, each.id): each for each in found_of(survey_of(boxes=boxes))}
    assert found["box", "D4"].off.startswith("unknown: main off, and still test; and breaker")


def test_breakers_are_said_panel_by_panel() -> None:
    assert breakers_said(["main/6", "main/8", "shop/1"]) == "main 6 and 8, shop 1"


def test_every_box_and_every_point_is_on_the_printed_lists() -> None:
    survey = survey_of()
    assert [plain(row.cells[0]) for row in make_dead_sheet(survey).table.rows] == ["D1", "D2", "D3", "D4"]
    where = where_to_look_sheet(survey, ways(survey.house, survey.network).supply)
    assert [plain(row.cells[2]) for row in where.table.rows][-1].startswith("switch D3.s1 (")


GENERATOR = """\
house: Tern Cottage
reference: nec-2023
levels: [{id: ground, name: Ground floor}]
service: {system: 120/240 V, disconnect: main}
sources: [{id: gen, is: generator-inlet, name: Generator, enters: main/5+7, rating: 30 A}]
"""
INLET = PANEL.replace("  4:", "  5+7: {rating: 30 A, feeds: gen}\n  4:")


def test_an_inlet_that_nothing_keeps_apart_from_the_main_is_warned_of() -> None:
    apart = surveyed(
        house=GENERATOR, panels=f"{INLET}interlocks: [[main, 5+7]]\n", circuits=CIRCUIT, boxes=BOXES
    )
    beside = surveyed(house=GENERATOR, panels=INLET, circuits=CIRCUIT, boxes=BOXES)
    assert outage_sheet(apart).cards[0].warning == ""
    assert (
        outage_sheet(beside).cards[0].warning.startswith("Nothing on record keeps its breaker and the main")
    )


def test_the_main_goes_off_before_the_inlet_goes_on() -> None:
    (card,) = outage_sheet(surveyed(house=GENERATOR, panels=INLET, circuits=CIRCUIT, boxes=BOXES)).cards
    steps = [plain(each) for each in card.over]
    assert steps[0] == "Every breaker in that panel off, the main last: Main panel, the main breaker."
    assert any(each.startswith("On: main 5+7") for each in steps[1:])
    assert [plain(each) for each in card.keeps] == [
        "main 1: Fish tank (water), what it draws is not recorded"
    ]


def test_the_printed_list_of_a_box_in_doubt_names_the_generator_and_where_it_enters() -> None:
    boxes = BOXES + "  D9: {makeup: unknown}\n"
    survey = surveyed(house=GENERATOR, panels=INLET, circuits=CIRCUIT, boxes=boxes)
    row = next(each for each in make_dead_sheet(survey).table.rows if plain(each.cells[0]) == "D9")
    said = plain(row.cells[2])
    assert said.startswith("unknown: main off, and still test; and main ")
    assert "5+7" in said
    assert said.endswith("; and Generator: stop it and take its cord out")


def test_a_source_that_enters_nobody_knows_where_may_make_anything_live() -> None:
    house = GENERATOR.replace(" enters: main/5+7,", "")
    sheet = outage_sheet(surveyed(house=house, panels=PANEL, circuits=CIRCUIT, boxes=BOXES))
    assert any("anything may be" in plain(each) for each in sheet.stays_live)
    assert sheet.cards[0].over == ()
    assert sheet.cards[0].warning.startswith("Where it enters is not recorded")
