"""What people ask of a house manual, and the keys and clicks from the cover to the answer.

    .venv/bin/python tests/lookup_jobs.py [MANUAL]

drives a real Chromium through the demo house's manual (``house-manual`` here
unless named) and prints a table. A job with no steps has no answer in the
manual yet, and says so.
"""

import shutil
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

FINDS = "#found [role=option]"


@dataclass(frozen=True, slots=True)
class Job:
    """One question: what is typed into the field, whether Enter follows, what is clicked, what must be shown."""

    asks: str
    shows: tuple[str, ...] = ()
    types: str = ""
    enters: bool = False
    clicks: tuple[str, ...] = ()

    @property
    def keys(self) -> int:
        """Keys pressed: the slash that reaches the field, each letter, Enter."""
        return (1 + len(self.types) if self.types else 0) + self.enters


JOBS = (
    Job("which breaker kills this outlet?", ("main 17",), types="K2.r1"),
    Job(
        "it is dead and no breaker tripped: where is the fault?", ("GFCI K1.r1", "Still dead"), "K2.r1", True
    ),
    Job("where is the GFCI that feeds this?", ("GFCI K1.r1", "left of the sink"), "K2.r1", True),
    Job("which breakers, all of them, before this box is opened?", ("ALL off: main 24 and 32",), "K12"),
    Job("if I turn this breaker off, what dies?", ("Goes off with it", "freezer (food)"), "main/8", True),
    Job("where are the junction boxes and the buried splices?", ("Hard to reach",), clicks=("Splices",)),
    Job("a directory for the panel's door?", ("Directory card",), clicks=("Panels", "Main panel")),
    Job(
        "may I add an outlet here?",
        ("Nothing on record stands against it", "12 AWG copper or thicker"),
        "K2.r1",
        True,
        ("Room for one more here?",),
    ),
    Job("do wire, breaker and receptacle match?", ("Wire, breaker and devices",), "main/17", True),
    Job("is this box overfilled?", ("Box fill",), "K12", True),
    Job("where do cables run: may I drill here?", ("Hatched: do not drill",), clicks=("Kitchen",)),
    Job(
        "why does it trip: what is on it, what may run together?",
        ("one at a time", "Kettle 12.5 A"),
        "main/17",
        True,
        ("It trips: what to do, one load at a time",),
    ),
    Job("what does this switch do?", ("this switch works", "K15.f1"), "K13.s1", True),
    Job("is there a neutral here?", ("neutral in this box?", "yes"), "K13.s1", True),
    Job(
        "which circuits share a neutral, and are they tied?", ("tied to 8",), clicks=("Panels", "Main panel")
    ),
    Job("in what order is it wired?", ("Circuit map",), "main/17", True),
    Job(
        "what must be ready for rough-in and final?",
        ("Before the wall closes", "still to record"),
        clicks=("Stage checklist",),
    ),
    Job("what do I photograph before the wall closes?", ("no picture of",), clicks=("Proof and history",)),
    Job("will the service carry a car charger?", ("large enough",), clicks=("Loads",)),
    Job("outage: what do I switch, in which order?", ("Over to it, in this order",), clicks=("Outage",)),
    Job("selling: known defects and open hazards?", ("hazard",), clicks=("Findings",)),
    Job("the insurer asks for wiring type and panel?", ("NM copper, no ground: 17", "service 200 A")),
    Job(
        "do the protectors still work: what is due?",
        ("last tested", "press the button every month"),
        clicks=("Proof and history",),
    ),
    Job(
        "the subpanel: fed from where, neutral apart?",
        ("kept apart here",),
        clicks=("Panels", "Workshop panel"),
    ),
    Job("unknown, old, abandoned wires?", ("Most useful first",), clicks=("Not recorded",)),
)


def done(page: "Page", manual: Path, job: Job) -> str:
    """The text at the end of a job done from the cover."""
    page.goto("about:blank")
    page.goto((manual / "index.html").as_uri())
    shown = page.locator("main")
    if job.types:
        page.keyboard.press("/")
        page.keyboard.type(job.types)
        page.wait_for_selector(FINDS)
        shown = page.locator("#found")
    if job.enters:
        cover = page.url
        page.keyboard.press("Enter")
        page.wait_for_function("cover => location.href !== cover", arg=cover)
        page.wait_for_load_state()
        shown = page.locator("main")
    for words in job.clicks:
        page.get_by_role("link", name=words, exact=True).first.click()
    return " ".join(shown.inner_text().split())


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
            if not job.shows:
                print(f"{'-':>4} {'-':>6}  {number}. {job.asks} (no answer yet)")
                continue
            said = done(page, manual, job).lower()
            missing = [each for each in job.shows if each.lower() not in said]
            told = f" MISSING: {missing}" if missing else ""
            print(f"{job.keys:4} {len(job.clicks):6}  {number}. {job.asks}{told}")
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "house-manual").resolve())
