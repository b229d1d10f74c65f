"""Before opening: what must be off, and what is done then.

The list of breakers only ever errs towards too many. Where the record falls
short, the answer says so and names the main.
"""

from dataclasses import dataclass

from junctionary.sheets.face import LitFace
from junctionary.sheets.links import Ref

STEPS = (
    "Switch off everything listed here, and lock or tag it.",
    "Prove it dead: try the tester on a known live source, then on every conductor here,"
    " one to another and each to ground, then on the known live source again.",
    "This list was worked out from a record. It is not a test, and a record can be wrong.",
)

STEPS_ELSEWHERE = (
    "Find the sheet of what is to be opened. Switch off everything listed there, and lock or tag it."
    " Where nothing is listed: main off, and still test.",
    STEPS[1].replace("every conductor here", "every conductor in it"),
    STEPS[2].replace("This list was", "Such a list is"),
)
"""The same steps on a sheet that has no list of its own."""

BEFORE_ANY = (
    "Before any box is opened: switch off everything its own sheet lists, lock or tag it, and prove it dead;"
    " where nothing is listed, main off, and still test."
    " If in doubt, leave it and call a licensed electrician."
)
"""The caution, short, on a sheet from which somebody may go and open a box."""

CAUTIONS = (
    "A switch that is off is not dead: its other screw stays live.",
    "A white conductor can be hot.",
    "A metal box, plate or bare conductor can be live.",
    "The line lugs of a panel stay live with its main off.",
    "If a reading surprises you, stop, close up, and find out why.",
)

UNKNOWN = "unknown: main off, and still test"


@dataclass(frozen=True, slots=True)
class BreakerOff:
    """One breaker to switch off: its name (``main 6``), what it feeds, each reason it is listed."""

    space: Ref
    name: str
    says: str
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SourceOff:
    """A second source to stop: its name, what to do to make its own side dead, why it is listed."""

    source: Ref
    name: str
    do: str
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BeforeOpening:
    """The caution that comes first on a page that could lead to opening something.

    ``unknown`` names each place where the record cannot tell; ``others`` are
    sources besides the panel (generator, battery, solar), items of the list as
    the breakers are. ``loses`` lists what must not lose supply unnoticed: freezer,
    pump, alarm, medical. ``stays_live`` is what none of this makes dead;
    ``faces`` show where the breakers are. ``elsewhere``: the sheet leads to many things, each with a
    list of its own.
    """

    opens: str
    off: tuple[BreakerOff, ...]
    unknown: tuple[str, ...] = ()
    others: tuple[SourceOff, ...] = ()
    loses: tuple[str, ...] = ()
    stays_live: tuple[str, ...] = ()
    extra: tuple[str, ...] = ()
    faces: tuple[LitFace, ...] = ()
    elsewhere: bool = False

    @property
    def is_unknown(self) -> bool:
        """Whether the main must be off too. An empty list is never an answer."""
        return bool(self.unknown) or not self.off

    @property
    def doubts(self) -> tuple[str, ...]:
        """Why it is unknown, in words."""
        if self.off or self.unknown:
            return self.unknown
        return ("nothing in the record says what feeds this",)
