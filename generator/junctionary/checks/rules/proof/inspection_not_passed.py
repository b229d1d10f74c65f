"""An inspection did not pass, and none after it did.

Why it matters: what the inspector wanted mended may never have been mended, and may by now be behind a wall.
What to do: mend what the inspector noted, have it looked at again, and log that.
Cannot tell: when the result of an inspection is not recorded or unknown.
Stands: on the entry's line in the log.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.permits import concerned, not_passed
from junctionary.sources import cite

RULE = Rule(
    DEFECT, (cite("practice", "What an inspection wants mended is mended, and seen again."),), ENERGISED
)

RESULTS = {"fail": "failed", "partly": "passed in part"}

FAILS = """
[log.yaml]
- {date: 2026-03-04, inspection: rough-in, result: fail, note: Two plates}    #! inspection-not-passed
- {date: 2026-05-09, inspection: final, result: pass}
[panels/main.yaml]
panel: main
spaces: 8
"""

PASSES = FAILS.replace("inspection: final", "inspection: rough-in").replace(
    "    #! inspection-not-passed", ""
)

UNTOLD = PASSES.replace("result: fail", "result: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each inspection of the log."""
    open_ = not_passed(house.log)
    for each in house.log:
        if each.inspection is None:
            continue
        about = concerned(house, each)
        what = f"the {each.inspection.replace('-', ' ')} inspection of {each.date}"
        if each.result in (None, "unknown"):
            yield CannotTell(about, (f"the result of {what}",), each.place)
        elif each in open_:
            noted = f" It was noted: {each.note.rstrip('.')}." if each.note else ""
            yield Fault(
                place=each.place,
                about=about,
                found=f"T{what[1:]} {RESULTS[str(each.result)]}.{noted}",
                allowed="What an inspection wants mended is seen again, and passes.",
                because="What was wanted may never have been done.",
                do="Mend it, have it inspected again, and log that.",
            )
