"""What people ask of a house manual, and the keys and clicks from the cover to the answer.

    .venv/bin/python tests/lookup_jobs.py [MANUAL]

drives a real Chromium through the demo house's manual (``house-manual`` here
unless named) and prints a table: each job once by the keyboard alone, once by
touch alone with nothing typed.
"""

import shutil
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

FINDS = "#found [role=option]"
MOST_TABS = 40


@dataclass(frozen=True, slots=True)
class Job:
    """One question, asked both ways, and what must be shown at the end of each.

    ``types`` goes into the field; where Enter follows, ``enters``. ``tabs`` is a link of that page, reached
    by Tab. ``clicks`` are links from the cover on, with nothing typed. ``shows`` stands at the end of both,
    ``listed`` at the end of the typing alone, ``there`` at the end of the clicks.
    """

    asks: str
    types: str
    clicks: tuple[str, ...]
    shows: tuple[str, ...] = ()
    enters: bool = True
    tabs: str = ""
    listed: tuple[str, ...] = ()
    there: tuple[str, ...] = ()


JOBS = (
    Job(
        "which breaker kills this outlet?", "K2.r1", ("K2",), enters=False,
        listed=("breaker 17 in the main panel, left side, 9th from the top",), there=("main 17",),
    ),
    Job("it is dead and no breaker tripped: where is the fault?", "K2.r1", ("K2", "r1"), ("GFCI K1.r1", "Still dead")),
    Job("where is the GFCI that feeds this?", "K2.r1", ("K2", "r1"), ("GFCI K1.r1", "left of the sink")),
    Job(
        "which breakers, all of them, before this box is opened?", "K12", ("K12",), enters=False,
        listed=("ALL off: breakers 24 and 32 in the main panel",), there=("main 24", "main 32"),
    ),
    Job("if I turn this breaker off, what dies?", "main/8", ("Circuits", "Cellar, workbench and freezer"),
        ("Goes off with it", "freezer (food)")),
    Job("where are the junction boxes and the buried splices?", "splic", ("Splices and pigtails",), ("Hard to reach",)),
    Job("a directory for the panel's door?", "main panel", ("Main panel",), ("Directory card",)),
    Job(
        "may I add an outlet here?", "K2.r1", ("K2", "r1", "Room for one more here?"),
        ("Nothing on record stands against starting a cable from this box", "12 AWG copper or thicker"), tabs="Room for one more here?",
    ),
    Job("do wire, breaker and receptacle match?", "main/17", ("Circuits", "Kitchen counter, north wall"),
        ("Wire, breaker and devices",)),
    Job("is this box overfilled?", "K12", ("K12",), ("Box fill",)),
    Job("where do cables run: may I drill here?", "kitchen", ("Kitchen",), ("Hatched: do not drill",)),
    Job(
        "why does it trip: what is on it, what may run together?", "main/17",
        ("Circuits", "Kitchen counter, north wall", "It trips: what to do, one load at a time"),
        ("Kettle",), listed=("never runs together with what is counted", "can be added now"),
        there=("one at a time", "Kettle 12.5 A"),
    ),
    Job("what does this switch do?", "K13.s1", ("K13", "s1"), ("this switch works", "K15.f1")),
    Job("is there a neutral here?", "K13.s1", ("K13", "s1"), ("neutral in this box?", "yes")),
    Job("which circuits share a neutral, and are they tied?", "main panel", ("Main panel",), ("tied to 8",)),
    Job("in what order is it wired?", "main/17", ("Circuits", "Kitchen counter, north wall"), ("Circuit map",)),
    Job("what must be ready for rough-in and final?", "rough", ("Stage checklist",),
        ("Before the wall closes", "still to record")),
    Job("what do I photograph before the wall closes?", "photo", ("Proof and history",), ("no picture of",)),
    Job("will the service carry a car charger?", "loads", ("Loads",), ("large enough",)),
    Job("outage: what do I switch, in which order?", "outage", ("Outage",), ("Over to it, in this order",)),
    Job(
        "selling: permits, inspections, known defects?", "sell", ("Statement",),
        ("E-2024-318", "rough in 2025-04-26: pass", "No permit on record covers: Guest bedroom", "hazard", "Not known"),
    ),
    Job(
        "the insurer asks for wiring type, service, panel and its age?", "insur", ("Statement",),
        ("NM copper, no ground", "200 A", "4/0 AWG aluminium", "2025-03-22", "type 2; built into the panel"),
    ),
    Job("do the protectors still work: what is due?", "due", ("Proof and history",),
        ("last tested", "press the button every month", "surge protection")),
    Job("the subpanel: fed from where, neutral apart?", "subp", ("Workshop panel",), ("kept apart here",)),
    Job("unknown, old, abandoned wires?", "aband", ("Not recorded",), ("Most useful first",)),
)  # fmt: skip


def by_keys(page: "Page", manual: Path, job: Job) -> tuple[str, int]:
    """The text at the end of a job done by the keyboard alone, and the keys it took."""
    to_cover(page, manual)
    page.keyboard.press("/")
    page.keyboard.type(job.types)
    page.wait_for_selector(FINDS)
    keys = 1 + len(job.types)
    if not job.enters:
        return words_of(page, "#found"), keys
    enter(page)
    keys += 1
    if job.tabs:
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")  # past the names of the sheets
        keys += 2
        for _ in range(MOST_TABS):
            page.keyboard.press("Tab")
            keys += 1
            if page.evaluate("document.activeElement.textContent.trim()") == job.tabs:
                break
        enter(page)
        keys += 1
    return words_of(page, "main"), keys


def by_clicks(page: "Page", manual: Path, job: Job) -> str:
    """The text at the end of a job done by touch alone."""
    to_cover(page, manual)
    for name in job.clicks:
        with page.expect_event("framenavigated"):
            page.get_by_role("link", name=name, exact=True).first.click()
        page.wait_for_load_state()
    return words_of(page, "main")


def enter(page: "Page") -> None:
    """Press Enter, and be where it leads: another page, or another place of this one."""
    with page.expect_event("framenavigated"):
        page.keyboard.press("Enter")
    page.wait_for_load_state()


def to_cover(page: "Page", manual: Path) -> None:
    """The cover, loaded anew."""
    page.goto("about:blank")
    page.goto((manual / "index.html").as_uri())


def words_of(page: "Page", within: str) -> str:
    """The text shown there, in small letters, one space between words."""
    return " ".join(page.locator(within).inner_text().split()).lower()


def missing(said: str, *wanted: str) -> list[str]:
    """What should be there and is not."""
    return [each for each in wanted if each.lower() not in said]


def main(manual: Path) -> None:
    """A line for each job."""
    from playwright.sync_api import sync_playwright

    sys.path.insert(0, str(Path(__file__).parent))
    from conftest import QUIET

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=QUIET)
        page = browser.new_page()
        print(f"{'keys':>4} {'clicks':>6}  job")
        for number, job in enumerate(JOBS, 1):
            said, keys = by_keys(page, manual, job)
            lacks = missing(said, *job.shows, *job.listed)
            lacks += missing(by_clicks(page, manual, job), *job.shows, *job.there)
            print(
                f"{keys:4} {len(job.clicks):6}  {number}. {job.asks}{f' MISSING: {lacks}' if lacks else ''}"
            )
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "house-manual").resolve())
