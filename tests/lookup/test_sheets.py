"""The lookups as they are met: from the cover, by keyboard alone, by finger, without scripts, on paper."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from junctionary.cli import main

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser
ANSWERED = {
    "make-dead.html": "#box=K12,X1&off=main/24",
    "where-to-look.html": "#signs=none&dead=K2,K5&live=K1&read=K2.r1.top:hot-only",
    "find.html": "#find=freezer",
    "one-more.html": "#at=K2.r1&watts=1500&hours=yes",
}


@pytest.fixture
def page(browser: "Browser") -> "Iterator[Page]":
    """A phone without a network. Nothing may be asked of one, and no page may complain."""
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, offline=True)
    tab = context.new_page()
    asked: list[str] = []
    told: list[str] = []
    tab.on("request", lambda request: asked.append(request.url))
    tab.on("console", lambda message: told.append(message.text))
    tab.on("pageerror", lambda error: told.append(str(error)))
    yield tab
    context.close()
    assert [each for each in asked if not each.startswith(("file:", "data:"))] == []
    assert told == []


def to(page: "Page", manual: Path, name: str, fragment: str = "") -> None:
    page.goto("about:blank")
    page.goto((manual / name).as_uri() + fragment)


def tab_to(page: "Page", selector: str) -> None:
    """Press Tab until the focus is there."""
    for _ in range(80):
        page.keyboard.press("Tab")
        if page.evaluate("selector => document.activeElement.matches(selector)", selector):
            return
    raise AssertionError(f"no Tab leads to {selector}")


def choose(page: "Page", value: str) -> None:
    """Press the arrow down in the list that has the focus until it shows this value."""
    for _ in range(200):
        if page.evaluate("document.activeElement.value") == value:
            return
        page.keyboard.press("ArrowDown")
    raise AssertionError(f"no arrow leads to {value}")


def test_the_outlet_behind_the_refrigerator_is_found_by_keyboard(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    page.keyboard.press("/")
    page.keyboard.type("outlet behind the fridge")
    page.wait_for_selector("#found [role=option]")
    field = page.locator("#find")
    assert field.get_attribute("aria-expanded") == "true"
    page.keyboard.press("ArrowDown")
    chosen = page.locator(f"#{field.get_attribute('aria-activedescendant')}")
    assert chosen.get_attribute("aria-selected") == "true"
    assert "K8.r1" in chosen.inner_text()
    assert "breaker 21 in the main panel" in chosen.inner_text()
    page.keyboard.press("Enter")
    page.wait_for_url("**/point/K8.r1.html")
    assert page.locator(".breaker strong").inner_text() == "breaker 21"


def test_escape_closes_what_was_found_and_then_empties_the_field(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    page.keyboard.press("/")
    page.keyboard.type("freezer")
    page.wait_for_selector("#found [role=option]")
    page.keyboard.press("Escape")
    assert page.locator("#found").is_hidden()
    assert page.locator("#find").get_attribute("aria-expanded") == "false"
    page.keyboard.press("Escape")
    assert page.locator("#find").input_value() == ""


def test_arrows_go_around_every_option_in_turn(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    page.keyboard.press("/")
    page.keyboard.type("kitchen")
    page.wait_for_selector("#found [role=option]")
    count = page.locator("#found [role=option]").count()
    seen = []
    for _ in range(count):
        page.keyboard.press("ArrowDown")
        seen.append(page.locator("#find").get_attribute("aria-activedescendant"))
    assert len(set(seen)) == count
    page.keyboard.press("ArrowDown")
    assert page.locator("#find").get_attribute("aria-activedescendant") == seen[0]


def test_all_of_a_kind_are_shown_when_asked_by_keyboard(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    page.keyboard.press("/")
    page.keyboard.type("gfi")
    page.wait_for_selector("#found .rest")
    options = page.locator("#found [role=group]").first.locator("[role=option]")
    assert options.last.inner_text() == "8 more: show all"
    for _ in range(options.count()):
        page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    assert options.count() == 13
    assert page.locator("#found [aria-selected=true]").inner_text() == options.nth(5).inner_text()
    page.keyboard.type(" ")
    assert options.last.inner_text() == "8 more: show all"


def test_who_says_that_it_is_dead_is_led_on_with_what_was_found(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    for typed, asked in (
        ("freezer not working", "#dead=C17.r1"),
        ("no power kitchen", "#in=room:kitchen"),
        ("freezer", ""),
    ):
        page.locator("#find").fill(typed)
        page.wait_for_selector("#found [role=option]")
        led = page.locator("#found [data-thing='sheet where-to-look']")
        assert led.count() == bool(asked)
        assert not asked or str(led.get_attribute("data-href")).endswith(f"where-to-look.html{asked}")


def test_words_that_nothing_has_are_told_beside_what_was_found(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    for typed, told in (
        ("outlet garage", "Nothing is called garage."),
        ("freezer kitchen", "Nothing has all of these words; these come nearest."),
        ("frezer", "Nothing is called frezer: looked for freezer instead."),
    ):
        page.locator("#find").fill(typed)
        page.wait_for_selector("#found .none")
        assert page.locator("#found .none").inner_text() == told
        assert told in page.locator("#found-count").inner_text()


def test_nothing_found_is_told(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "index.html")
    page.keyboard.press("/")
    page.keyboard.type("K99")
    page.wait_for_selector("#found-count:text-is('nothing found')", state="attached")
    assert "Nothing on record" in page.locator("#found").inner_text()


def test_a_box_is_made_dead_by_keyboard_and_the_address_carries_it(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "make-dead.html")
    tab_to(page, "#box")
    choose(page, "K12")
    tab_to(page, "#add")
    page.keyboard.press("Enter")
    assert page.locator(".ticks .where").all_inner_texts() == ["main 24", "main 32"]
    for _ in range(2):
        tab_to(page, ".ticks input")
        page.keyboard.press("Space")
    assert "proves nothing yet" in page.locator("#progress").inner_text()
    assert re.search(r"#box=K12&off=main/24,main/32$", page.url)
    page.reload()
    assert page.locator(".ticks input:checked").count() == 2
    page.locator(".ticks input").first.uncheck()
    assert page.locator("#progress").inner_text().startswith("1 of 2")


def test_reasons_to_switch_off_are_in_words_and_conductors_stand_cable_by_cable(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "make-dead.html", "#box=C17")
    why = page.locator(".ticks .why").first.inner_text()
    assert "both feed “Cellar, workbench and freezer”, whose neutral they share" in why
    assert "its handle is tied to breaker 8 in the main panel" in why
    assert page.locator(".wires dd div").all_inner_texts() == ["ce4 (to box C2): black, white, bare"]


def test_unknown_stands_over_the_list_and_names_the_main(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "make-dead.html", "#box=X1")
    said = page.locator("#result").inner_text()
    assert said.index("UNKNOWN: MAIN OFF, AND STILL TEST") < said.index("main 40")
    assert "main breaker in the main panel" in page.locator(".ticks .where").all_inner_texts()
    assert "Portable generator" in page.locator(".ticks .where").all_inner_texts()
    assert "stop it and take its cord out of I1" in page.locator(".ticks .says").last.inner_text()
    ticks = page.locator(".ticks .where").all_inner_texts()
    page.goto((demo_manual / "box" / "X1.html").as_uri())
    assert page.locator(".before .off .where").all_inner_texts() == ticks


def test_a_stale_link_to_a_box_no_longer_recorded_is_unknown(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "make-dead.html", "#box=K99&off=main/24")
    assert "UNKNOWN: MAIN OFF" in page.locator("#result").inner_text()
    assert page.locator(".ticks input:checked").count() == 0


DIRECTORY = {
    "house.yaml": "house: Rook End\nreference: nec-2023\n",
    "panels/main.yaml": """\
panel: main
name: Main panel
spaces: 8
breakers:
  1: {rating: 20 A, feeds: hall}
""",
    "circuits/hall.yaml": "circuit: hall\nname: Hall\nserves: [hall]\n",
    "rooms/hall.yaml": "room: hall\nname: Hall\nkind: hall\n",
}


def test_a_record_that_is_a_directory_alone_is_found_and_gives_no_all_clear(
    page: "Page", tmp_path: Path
) -> None:
    for name, text in DIRECTORY.items():
        (tmp_path / "record" / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "record" / name).write_text(text, "utf-8")
    manual = tmp_path / "manual"
    assert main(["publish", str(tmp_path / "record"), "-o", str(manual)]) == 0
    to(page, manual, "index.html")
    page.keyboard.press("/")
    page.keyboard.type("hall")
    page.wait_for_selector("#found [role=option]")
    assert "breaker 1 in the main panel" in page.locator("#found [role=option]").first.inner_text()
    to(page, manual, "make-dead.html", "#box=H1")
    said = page.locator("#result").inner_text()
    assert "UNKNOWN: MAIN OFF, AND STILL TEST" in said
    assert "have the supply cut from outside" in said
    assert "That makes nothing dead" in said
    assert "All that is listed is ticked" not in said
    to(page, manual, "where-to-look.html", "#signs=none&dead=H1")
    assert "Mark at least one point dead" in page.locator("#result").inner_text()


def test_what_is_dead_is_told_by_keyboard_and_answered(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "where-to-look.html")
    assert page.locator("#where-to-look").is_hidden()
    tab_to(page, "#signs input")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowLeft")
    assert "Call for help" in page.locator("#result").inner_text()
    assert page.locator("#where-to-look").is_hidden()
    page.keyboard.press("ArrowRight")
    tab_to(page, "#start")
    choose(page, "circuit:counter-north")
    tab_to(page, "fieldset:nth-of-type(2) input")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    said = page.locator("#result").inner_text()
    assert said.index("GFCI K1.r1") < said.index("breaker 17 in the main panel")
    assert "dead=K2.r1.top" in page.url
    before, after = page.url, page.locator("#result").inner_text()
    page.reload()
    assert (page.url, page.locator("#result").inner_text()) == (before, after)


def test_a_test_that_opens_nothing_comes_before_the_boxes_and_its_outcome_is_a_press(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "where-to-look.html", "#signs=none&dead=C17.r1")
    page.wait_for_selector("#result .next")
    said = page.locator("#result").inner_text().lower()
    assert said.index("try c2.r1 with a tester") < said.index("before any of these is opened")
    assert page.locator("#told").inner_text().startswith("2 to reset, 14 places to look.")
    before = page.url
    page.locator("#answer-line a").tap()
    assert page.url == before
    assert page.locator("#result").bounding_box()["y"] < 100  # type: ignore[index]
    page.get_by_role("button", name="C2.r1: it works").tap()
    assert page.url.endswith("dead=C17.r1&live=C2.r1")
    assert page.evaluate("document.activeElement.textContent") == "As told"
    assert (
        "on breaker 6 in the main panel shares its neutral and works" in page.locator("#result").inner_text()
    )


def test_places_are_gathered_where_a_hand_goes_and_no_breaker_is_told_by_its_id(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "where-to-look.html", "#signs=none&dead=C17.r1")
    page.wait_for_selector("#result .suspects")
    places = page.locator("#result .suspects > ol > li > b").all_inner_texts()
    assert places[:4] == ["Box C17", "Box C2", "Box C1", "The main panel"]
    assert (
        "breaker 8: the breaker, or where ce1.red lands on it"
        in page.locator("#result .suspects").inner_text()
    )
    assert not re.search(r"\b(main|shop)/", page.locator("#result").inner_text())


def test_a_danger_sign_stops_the_search(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "where-to-look.html", "#signs=yes&dead=K2")
    said = page.locator("#result").inner_text()
    assert "Call for help" in said
    assert "K1.r1" not in said


def test_the_cautions_stand_before_the_places_to_be_opened(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "where-to-look.html", ANSWERED["where-to-look.html"])
    said = page.locator("#result").inner_text().lower()
    assert said.index("before any of these is opened") < said.index("then these places, likeliest first")
    assert said.index("prove it dead") < said.index("k1.r1.load-silver")


@pytest.mark.parametrize("name", sorted(ANSWERED))
def test_an_answer_is_no_wider_than_a_phone_and_never_says_safe(
    page: "Page", demo_manual: Path, name: str
) -> None:
    to(page, demo_manual, name, ANSWERED[name])
    page.wait_for_timeout(100)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert not re.search(r"\bsafe\b", page.locator("main").inner_text(), re.IGNORECASE)


@pytest.mark.parametrize("name", sorted(ANSWERED))
def test_whatever_a_finger_must_meet_is_44_pixels_high(page: "Page", demo_manual: Path, name: str) -> None:
    to(page, demo_manual, name, ANSWERED[name])
    page.wait_for_timeout(100)
    chosen = (
        ".find input, #found [role=option], .lookup select, .lookup button, .lookup input[type=text],"
        " .lookup label:has(input), #result label, fieldset label, #signs label, nav a, nav summary"
    )
    small = page.evaluate(
        """chosen => [...document.querySelectorAll(chosen)].filter(each => each.getClientRects().length)
        .map(each => [each.outerHTML.slice(0, 80), each.getBoundingClientRect().height])
        .filter(([, height]) => height < 44)""",
        chosen,
    )
    assert small == []


def test_a_tap_ticks_a_breaker_and_a_tap_opens_what_was_found(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "make-dead.html", "#box=K12")
    page.locator(".ticks label").first.tap()
    assert page.url.endswith("#box=K12&off=main/24")
    page.locator("#find").tap()
    page.keyboard.type("K2.r1")
    page.locator("#found [role=option]").first.tap()
    page.wait_for_url("**/point/K2.r1.html")


def test_without_scripts_the_lists_stand_and_no_field_is_shown(browser: "Browser", demo_manual: Path) -> None:
    context = browser.new_context(java_script_enabled=False, offline=True)
    tab = context.new_page()
    for name, words in (
        ("find.html", "K8.r1, receptacle (refrigerator)"),
        ("make-dead.html", "before opening, ALL off: main 24 and 32"),
        ("where-to-look.html", "GFCI K1.r1 (Kitchen, counter, left of the sink"),
        ("one-more.html", "K2, Kitchen, counter, right of the sink"),
    ):
        tab.goto((demo_manual / name).as_uri())
        assert tab.locator(".find").is_hidden()
        assert tab.locator(".lookup").is_hidden() if name != "find.html" else True
        assert words in " ".join(tab.locator("main").inner_text().split())
    context.close()


def test_an_answer_prints_by_itself_and_a_sheet_unasked_prints_its_list(
    page: "Page", demo_manual: Path
) -> None:
    page.emulate_media(media="print")
    to(page, demo_manual, "make-dead.html")
    assert page.locator(".on-paper").is_visible()
    to(page, demo_manual, "make-dead.html", "#box=K12&off=main/24")
    for hidden in (".on-paper", ".asking", ".find", "nav"):
        assert page.locator(hidden).first.is_hidden(), hidden
    assert page.locator("#result .ticks").is_visible()
    assert "Third point" in page.locator("main").inner_text()
    sheets = re.findall(rb"/Type\s*/Page\b(?!s)", page.pdf(prefer_css_page_size=True))
    assert 1 <= len(sheets) <= 2


def test_room_for_one_more_is_found_by_keyboard_and_the_address_carries_it(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "one-more.html")
    tab_to(page, "#at")
    choose(page, "K2.r1")
    assert (
        page.locator("#told").inner_text()
        == "Breaker 17 in the main panel. Free: 7.5 A; the limit is the 20 A breaker."
    )
    tab_to(page, "#watts")
    page.keyboard.type("1,500")
    verdict = page.locator("#result .verdict").first
    assert verdict.inner_text().startswith("Too much: 1500 W is 12.5 A; free is 7.5 A.")
    assert page.locator("#told").inner_text().endswith(verdict.inner_text())
    tab_to(page, "#hours")
    page.keyboard.press("Space")
    assert page.evaluate("location.hash") == "#at=K2.r1&watts=1%2C500&hours=yes"
    page.reload()
    assert "free is 6 A for three hours or more" in verdict.inner_text()


def test_a_usual_load_brings_its_watts_and_whether_it_runs_for_hours(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "one-more.html", "#at=V3.r1")
    page.locator("#usual").select_option(label="portable heater, about 1500 W")
    assert page.locator("#watts").input_value() == "1500"
    assert page.locator("#hours").is_checked()
    verdict = page.locator("#result .verdict").first.inner_text()
    assert "Within what is free: 1500 W is 12.5 A, of 14.85 A for three hours or more" in verdict


def test_a_hazard_open_at_a_suspected_place_stands_with_it(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "where-to-look.html", "#signs=none&dead=O3")
    box = page.locator("#result .suspects > ol > li", has_text="Box O2")
    assert "A hazard is open here: O2.r1.silver-top: more than one wire" in box.inner_text()
    assert "open here" not in page.locator("#result .suspects > ol > li", has_text="Box O1").inner_text()


def test_what_is_open_on_a_circuit_or_in_a_box_is_told_before_what_is_free(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "one-more.html", "#at=O2.r1&watts=300")
    said = page.locator("#result").inner_text()
    first, free = said.index("To be put right first:"), said.index("Within what is free")
    terminal = said.index("hazard at O2.r1.silver-top: more than one wire is landed on a terminal")
    reversed_ = said.index("hazard at O4.r1: a device's hot terminal is on the neutral")
    assert first < terminal < free
    assert first < reversed_ < free
    assert said.count("hazard at O4.r1") == 1
    assert "hazard at O4.r1" in (page.locator("#told").text_content() or "")
    assert "14.5 A left on the circuit; one plugged load may draw 12 A now" in said
    assert "12 A left on the circuit; one plugged load may draw 12 A now, 9.6 A for three hours" in said
    row = page.locator(".on-paper tr", has_text="junction, old parlour cable").text_content() or ""
    assert row.index("to be put right first: hazard at O2.r1.silver-top") < row.index("12 A")
    to(page, demo_manual, "one-more.html", "#at=V7.r1")
    assert "defect at V7: a box holds more than its volume allows" in page.locator("#result").inner_text()


def test_what_is_no_whole_number_of_watts_is_refused_and_nothing_added(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "one-more.html", "#at=K2.r1&watts=1.5kW")
    said = page.locator("#result").inner_text()
    assert "Enter whole watts" in said
    assert "Free: 7.5 A" in said


def test_a_box_nobody_could_tell_and_one_no_longer_recorded_are_never_a_yes(
    page: "Page", demo_manual: Path
) -> None:
    to(page, demo_manual, "one-more.html", "#at=O8")
    assert "Whether a cable may start from this box cannot be told." in page.locator("#result").inner_text()
    assert "Nothing on record stands against" not in page.locator("#result").inner_text()
    to(page, demo_manual, "one-more.html", "#at=K99.r1&watts=60")
    assert "nothing can be said of it" in page.locator("#result").inner_text()


def test_where_no_ground_comes_a_cable_may_not_start(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "one-more.html", "#at=G3.r1")
    said = page.locator("#result").inner_text()
    assert "No cable may start from this box on this circuit." in said
    assert "a GFCI device does not stand for one" in said


def test_on_a_phone_the_sheets_for_trouble_stand_in_the_first_line(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "rooms.html")
    tops = page.evaluate(
        "[...document.querySelectorAll('nav > a')].map(each => [each.innerText, each.getBoundingClientRect().top])"
    )
    assert [word for word, _ in tops] == ["Find", "It is dead", "Make dead", "Outage", "Cover"]
    assert len({top for _, top in tops}) == 1
    panels = page.get_by_role("link", name="Panels", exact=True).first
    assert panels.is_hidden()
    page.locator("nav summary").tap()
    assert panels.is_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_with_room_for_all_every_sheet_is_shown_without_a_press(page: "Page", demo_manual: Path) -> None:
    page.set_viewport_size({"width": 1200, "height": 800})
    to(page, demo_manual, "rooms.html")
    assert page.get_by_role("link", name="Terms", exact=True).first.is_visible()
    assert page.locator("nav summary").is_hidden()


def test_room_for_one_more_prints_its_answer_or_its_list(page: "Page", demo_manual: Path) -> None:
    page.emulate_media(media="print")
    to(page, demo_manual, "one-more.html")
    assert page.locator(".on-paper").is_visible()
    to(page, demo_manual, "one-more.html", "#at=K2.r1&watts=60")
    assert page.locator(".on-paper").is_hidden()
    assert page.locator(".asking").is_hidden()
    assert "Within what is free: 60 W is 0.5 A, of 7.5 A." in page.locator("#result").inner_text()


@pytest.mark.parametrize("name", ["make-dead.html", "one-more.html", "where-to-look.html"])
def test_an_answer_stands_without_the_list_for_paper_and_the_list_without_an_answer(
    page: "Page", demo_manual: Path, name: str
) -> None:
    to(page, demo_manual, name)
    assert page.locator(".on-paper").first.is_visible()
    to(page, demo_manual, name, ANSWERED[name])
    page.wait_for_selector("body.answered")
    assert page.locator(".on-paper").first.is_hidden()


def test_what_to_do_when_a_breaker_trips_stays_beside_an_answer(page: "Page", demo_manual: Path) -> None:
    to(page, demo_manual, "where-to-look.html", ANSWERED["where-to-look.html"])
    page.wait_for_selector("body.answered")
    before = page.url
    page.locator(".asking .onward").click()
    assert page.evaluate("document.getElementById('trips').getBoundingClientRect().top") < 100
    assert page.url == before
    assert page.locator("#result .next-test").is_visible()


def test_the_list_stands_when_what_a_search_rests_on_cannot_be_read(
    browser: "Browser", demo_manual: Path
) -> None:
    page = browser.new_page()
    page.route("**/suspect-data.js", lambda route: route.abort())
    page.goto((demo_manual / "where-to-look.html").as_uri() + "#signs=none&dead=K2")
    page.wait_for_selector("#result:has-text('Use the list below')")
    assert page.locator(".on-paper").first.is_visible()
    page.close()
