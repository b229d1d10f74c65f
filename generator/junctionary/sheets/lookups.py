"""Builds the sheets of the lookups: find, make a box dead, where to look."""

from collections.abc import Iterable, Iterator

from junctionary.house.dark import fed_by
from junctionary.house.model import House
from junctionary.house.readings import READINGS
from junctionary.house.supply import Supply
from junctionary.house.suspects import SIGNS
from junctionary.sheets.circuit_load import shown
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.finding_things import fed_words, off_words, place_of
from junctionary.sheets.found import HEADINGS, Found
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.lists import Group, ListSheet
from junctionary.sheets.lookup import Choices, MakeDeadSheet, WhereToLookSheet
from junctionary.sheets.makeup import plain_words
from junctionary.sheets.naming import NOT_RECORDED, breaker_words
from junctionary.sheets.points import reset_line
from junctionary.sheets.resets import resets_for
from junctionary.sheets.survey import Survey, title
from junctionary.sheets.titleblock import GENERAL

THREE_POINT_TEST = (
    "Use a tester with two probes that draws current. A pen that lights up beside a wire is no proof.",
    "First point: try it on a source you know is live, and see it show.",
    "Second point: on every conductor in the box, capped ones and those that only pass through as well:"
    " each hot to neutral, each hot to ground, neutral to ground, each hot to every other hot,"
    " and each of them to a ground from outside the box.",
    "Do that with every switch of the circuit one way, then the other; timers and sensors count as switches.",
    "Third point: try the tester again on the same live source. If it shows nothing now, none of it counts.",
    "Before a neutral splice is parted, clamp a meter around each of its wires: none may carry current."
    " A neutral shared with a live circuit reads nothing until it is parted, and is live then.",
    "Test again after every break, and whenever you have been away.",
)
"""What is done after everything on the list is off; common practice, and none of it can be left out."""

TRIPS = (
    "Any of the signs above: leave it off, and call for help.",
    "Unplug all that is on it and switch its lights off. Then its breaker fully off, and on again: once."
    " Where it trips again at once, leave it off: that is a fault in the wiring or in what is wired to it.",
    "It holds: put the loads back one at a time. Where it trips as the sum passes the rating, it is too much"
    " at once. Where one thing trips it whenever it comes on, it is that thing: leave it unplugged.",
    "A breaker that guards against arcs and trips bare: the wiring. With one motor on: that appliance, or its"
    " cord. One that guards against ground faults: look for damp first, outdoors before indoors.",
    "Two such breakers that trip as soon as both are loaded: their neutrals are shared, or joined in a box.",
    "It trips bare: from here on for who is qualified. Breaker off and proved dead; the hot parted at the box"
    " that halves the circuit, and the neutral where ground faults are guarded against; reset; then on"
    " with the half that trips.",
    "Write every trip in the log, with what was running.",
)
"""What is done when a breaker trips; common practice."""

ON_PAPER = ("point", "appliance", "breaker", "room")
"""What the sheet Find prints; boxes, circuits and cables have lists of their own."""


def find_sheet(survey: Survey, things: Iterable[Found]) -> ListSheet:
    """Everything that is looked up by name, as a list."""
    heads = {"breaker": ("breaker", "where", ""), "room": ("room", "level", "fed by")}
    kept = tuple(things)
    groups = tuple(
        Group(
            HEADINGS[kind],
            (),
            Table(
                tuple(each for each in heads.get(kind, ("what", "where", "breaker")) if each),
                tuple(_found_row(each, kind) for each in kept if each.kind == kind),
            ),
        )
        for kind in HEADINGS
        if kind in ON_PAPER
    )
    return ListSheet(
        title=title(survey, "Find", GENERAL["find"], "as recorded"),
        ref=Ref("sheet", "find"),
        heading="Find",
        lead=("What there is, where, and its breaker. A box's own list is on its sheet.",),
        groups=groups,
    )


def _found_row(each: Found, kind: str) -> Row:
    cells: tuple[Phrase, ...] = ((Link(each.name, each.to),), (each.place,))
    return Row(cells if kind == "breaker" else (*cells, (each.off,)))


def make_dead_sheet(survey: Survey) -> MakeDeadSheet:
    """What must be off before each box is opened, and how it is proved dead."""
    house = survey.house
    rows = tuple(
        Row(
            (
                (Link(each.id, Ref("box", each.id)),),
                (place_of(house, each),),
                (off_words(house, survey.isolations[each.id]),),
            )
        )
        for each in house.boxes.values()
    )
    return MakeDeadSheet(
        title=title(survey, "Make a box dead", GENERAL["make-dead"], "reckoned from the record"),
        ref=Ref("sheet", "make-dead"),
        heading="Make a box dead",
        lead=("What to switch off before a box is opened, then how to prove it dead.",),
        boxes=tuple(_boxes(house)),
        test=THREE_POINT_TEST,
        table=Table(("box", "where", "off"), rows),
    )


def _boxes(house: House) -> Iterator[Choices]:
    """Every box under its room, rooms that no file tells of among them."""
    by: dict[str, list[str]] = {}
    for box in house.boxes.values():
        by.setdefault(box.room, []).append(box.id)
    for room, ids in by.items():
        name = house.rooms[room].name if room in house.rooms else room
        choices = tuple((each, f"{each}, {house.boxes[each].name or 'no name'}") for each in ids)
        yield Choices(name, choices)


def where_to_look_sheet(survey: Survey, supply: Supply) -> WhereToLookSheet:
    """Where to look when something is dead; on paper, what to reset for each point."""
    house = survey.house
    seen = {each.device for each in supply.outlets.values()}
    circuits = tuple((f"circuit:{each.id}", each.name) for each in house.circuits.values() if each.devices)
    rooms = tuple((f"room:{each.id}", each.name) for each in house.rooms.values() if each.boxes)
    return WhereToLookSheet(
        title=title(survey, "Where to look", GENERAL["where-to-look"], "reckoned from the record"),
        ref=Ref("sheet", "where-to-look"),
        heading="It is dead: where to look",
        lead=("Resets first, for they cost nothing; then the next test; then the likeliest places.",),
        signs=SIGNS,
        starts=(Choices("Rooms", rooms), Choices("Circuits", circuits)),
        readings=tuple((word, f"{each.shows}: {each.means}") for word, each in READINGS.items()),
        table=Table(
            ("point", "where", "try, in this order", "breaker"),
            tuple(_resets_row(survey, supply, each) for each in house.devices if each in seen),
        ),
        trips=TRIPS,
        on_it=Table(
            ("breaker", "circuit", "rating", "drawn with all on", "what is on it"),
            tuple(_on_it(survey)),
        ),
    )


def _on_it(survey: Survey) -> Iterator[Row]:
    """Each breaker of a branch circuit with its loads, in the order of the panels."""
    house, figures = survey.house, survey.figures
    order = list(house.breakers)
    found = (
        (id_, pole)
        for id_, each in figures.loads.items()
        for pole in each.poles
        if figures.circuits[id_].branch
    )
    for id_, pole in sorted(found, key=lambda each: order.index(each[1].breaker)):
        rating = f"{shown(pole.rating_a)} A" if pole.rating_a is not None else NOT_RECORDED
        least = "at least " if pole.load.value is None else ""
        names = (
            f"{each.name} {shown(each.amps.value)} A"
            if each.amps.value is not None
            else f"{each.name}, not recorded"
            for each in (*pole.draws, *pole.left_out)
        )
        yield Row(
            (
                (Link(breaker_words(pole.breaker), Ref("space", pole.breaker)),),
                (Link(house.circuits[id_].name, Ref("circuit", id_)),),
                (rating,),
                (f"{least}{shown(pole.least_a)} A",),
                ("; ".join(names) or "no load is recorded",),
            )
        )


def _resets_row(survey: Survey, supply: Supply, id_: str) -> Row:
    house = survey.house
    device = house.devices[id_]
    tries: list[str | Link] = []
    for each in resets_for(house, survey.network, supply, id_):
        line = reset_line(house, each)
        tries += ["; " if tries else "", *line.what, f" ({line.at})"]
    fed = fed_by(house, survey.network, id_)
    return Row(
        (
            (Link(f"{id_}, {plain_words(device)}", Ref("point", id_)),),
            (place_of(house, house.boxes[device.box]),),
            tuple(each for each in tries if each) or ("no reset on record",),
            (fed_words(fed),),
        )
    )
