"""A few small sheets made by hand: a den with one receptacle box and one junction box over it."""

from dataclasses import replace
from fractions import Fraction

from junctionary.sheets.box import BoxSheet, Cable, Conductor, Device, Joint, MakeUp, Terminal
from junctionary.sheets.card import CardEntry, CardSheet, DoorCard
from junctionary.sheets.caution import BeforeOpening, BreakerOff, SourceOff
from junctionary.sheets.checklist import ChecklistSheet, StageList
from junctionary.sheets.circuit import CircuitMap, CircuitSheet, MapNode, MapRun, MatchLine
from junctionary.sheets.cover import Cover, IndexLine, LevelEntry, RoomEntry
from junctionary.sheets.elevation import Caution, Elevation, WallBox, WallRun, WallThing
from junctionary.sheets.entries import (
    Excerpt,
    Fact,
    FindingEntry,
    MissingEntry,
    Row,
    Table,
    Working,
    WorkingLine,
)
from junctionary.sheets.face import Handle, PanelFace, Side, Slot, SpaceState
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.lists import (
    FindingGroup,
    FindingsSheet,
    Group,
    Judged,
    ListSheet,
    NotRecordedSheet,
    SpliceBox,
    SpliceGroup,
    SpliceLine,
    SplicesSheet,
)
from junctionary.sheets.loads import Calculation, FeederEntry, LegBar, LegLoad, LoadsSheet
from junctionary.sheets.lookup import (
    Choices,
    MakeDeadSheet,
    OneMoreSheet,
    OutageSheet,
    SourceCard,
    WhereToLookSheet,
)
from junctionary.sheets.notes import (
    ColourCode,
    NoteSheet,
    RulePage,
    SafetySheet,
    SymbolEntry,
    Term,
    TermsSheet,
)
from junctionary.sheets.one_line import Bus, End, Feed, Ground, Label, OneLine, OneLineSheet, Tap
from junctionary.sheets.panel import PanelSheet
from junctionary.sheets.photo import Photo
from junctionary.sheets.plan import (
    HomeRun,
    LevelSheet,
    Plan,
    PlanBox,
    PlanCircuit,
    PlanFixture,
    PlanGap,
    PlanRoom,
    PlanSide,
    PlanWire,
)
from junctionary.sheets.point import FeedLine, PointSheet, ResetLine, RoomDark
from junctionary.sheets.room import RoomSheet
from junctionary.sheets.titleblock import (
    Sheet,
    TitleBlock,
    box_number,
    circuit_number,
    level_number,
    room_number,
)


def title(sheet: str, number: str) -> TitleBlock:
    return TitleBlock(
        "Alder Row 9", sheet, number, "2026-10-02", "4f09c2e71b6d", "seen and measured, 1 fact missing"
    )


DEN = BreakerOff(
    Ref("space", "main/14"),
    "main 14",
    "Den receptacles",
    ("its black feeds box D1",),
)
LIGHTS = BreakerOff(
    Ref("space", "main/16"),
    "main 16",
    "Den lights",
    ("its neutral is joined to the den's in box J7", "passes through box D1 uncut"),
)
SURE = BeforeOpening("box D1", (DEN,), loses=("aquarium pump",))
UNSURE = BeforeOpening(
    "box J7",
    (DEN, LIGHTS),
    unknown=("one end of run x3 is unknown",),
    others=(
        SourceOff(
            Ref("circuit", "gen"),
            "Portable generator",
            "stop it and take its cord out of I1",
            ("a main does not stop it",),
        ),
    ),
)

HAZARD = FindingEntry(
    Ref("finding", "breaker-outrates-wire:p4"),
    "hazard",
    Ref("rule", "breaker-outrates-wire"),
    "A breaker is rated above what its smallest wire may carry",
    (Link("run p4", Ref("run", "p4")), " of ", Link("Den receptacles", Ref("circuit", "den"))),
    "14 AWG copper on a 20 A breaker",
    "15 A",
    "the wire can overheat long before the breaker trips",
    "replace the breaker with one of 15 A, or the run with 12 AWG",
    "NEC 2023, 240.4(D)",
    "circuits/den.yaml:9:5",
)
GAP = MissingEntry(
    "torque of the silver screw of D1.r1",
    (Link("D1.r1", Ref("device", "D1.r1")),),
    (Link("torque-not-recorded", Ref("rule", "torque-not-recorded")),),
)


SPLICED = SpliceBox(
    Link("J7", Ref("box", "J7")),
    ("Den, ceiling",),
    "behind plasterboard",
    (Link("Den receptacles", Ref("circuit", "den")),),
    (SpliceLine(Link("j1", Ref("joint", "J7/j1")), "p1.black, p2.black", "lever-2"),),
)


def conductor(
    run: str, colour: str, meets: str, state: str = "joined", size: str = "12 AWG", marked: str = ""
) -> Conductor:
    return Conductor(f"{run}.{colour}", colour, size, state, meets, marked)  # type: ignore[arg-type]


def cable(
    run: str, side: str, end: str, *conductors: Conductor, kind: str = "12/2 NM-B", length: str = "38 ft"
) -> Cable:
    return Cable(Ref("run", run), run, kind, length, side, end, None, conductors)  # type: ignore[arg-type]


def through(run: str, side: str, end: str, length: str = "38 ft") -> Cable:
    return cable(
        run,
        side,
        end,
        *(conductor(run, colour, f"j{n}") for n, colour in enumerate(("black", "white", "bare"), 1)),
        length=length,
    )


PIGTAILED = MakeUp(
    "Make-up of box D1",
    "Two cables enter; black, white and bare conductors each meet in a three-port lever connector with one"
    " pigtail to the receptacle.",
    (through("p1", "feed", "main 14"), through("p2", "onward", "D2", "7 ft")),
    (
        Joint(
            Ref("joint", "D1/j1"),
            "j1",
            "hot",
            ("p1.black", "p2.black", "r1.brass"),
            "lever-3",
            "12 AWG",
            "seen",
        ),
        Joint(
            Ref("joint", "D1/j2"),
            "j2",
            "neutral",
            ("p1.white", "p2.white", "r1.silver"),
            "lever-3",
            "12 AWG",
            "seen",
        ),
        Joint(
            Ref("joint", "D1/j3"),
            "j3",
            "ground",
            ("p1.bare", "p2.bare", "r1.green"),
            "lever-3",
            "12 AWG",
            "seen",
        ),
    ),
    (
        Device(
            Ref("device", "D1.r1"),
            "r1",
            "5-20R receptacle, tamper-resistant",
            "receptacle",
            (
                Terminal("brass", (), "j1", "black", "loop", "14 in-lb listed", "14 in-lb"),
                Terminal("silver", (), "j2", "white", "loop", "14 in-lb listed", "not measured"),
                Terminal("green", (), "j3", "bare", "loop", "14 in-lb listed", "not measured"),
            ),
        ),
    ),
    "Recorded in short: pigtailed. What is drawn dashed follows from that; nobody recorded seeing it.",
    "1-gang, plastic, 20.3 in³ marked; free conductor 8 in",
)

SWITCHES = MakeUp(
    "Make-up of box D5",
    "Three cables, two switches, a re-marked white and a capped spare.",
    (
        through("l1", "feed", "main 16", "41 ft"),
        cable(
            "l2",
            "onward",
            "L2",
            conductor("l2", "black", "s1.brass-2", "landed", "14 AWG"),
            conductor("l2", "white", "j2"),
            conductor("l2", "bare", "j3"),
            kind="14/2 NM-B",
            length="12 ft",
        ),
        cable(
            "l3",
            "onward",
            "L3",
            conductor("l3", "black", "s2.brass-2", "landed"),
            conductor("l3", "white", "j1", marked="black"),
            conductor("l3", "red", "", "capped"),
            conductor("l3", "bare", "j3"),
            kind="12/3 NM-B",
            length="19 ft",
        ),
    ),
    (
        Joint(
            Ref("joint", "D5/j1"),
            "j1",
            "hot",
            ("l1.black", "l3.white", "s1.brass-1", "s2.brass-1"),
            "twist-medium",
            "12 AWG",
            "by the word",
        ),
        Joint(
            Ref("joint", "D5/j2"), "j2", "neutral", ("l1.white", "l2.white"), "push-in-2", "", "by the word"
        ),
        Joint(
            Ref("joint", "D5/j3"),
            "j3",
            "ground",
            ("l1.bare", "l2.bare", "l3.bare", "s1.green", "s2.green"),
            "unknown",
            "12 AWG",
            "unknown",
        ),
    ),
    (
        Device(
            Ref("device", "D5.s1"),
            "s1",
            "switch, 15 A",
            "switch",
            (
                Terminal("brass-1", (), "j1", "black", "loop", "14 in-lb listed", "not recorded"),
                Terminal("brass-2", ("l2.black",), "", "black", "loop", "14 in-lb listed", "not recorded"),
                Terminal("green", (), "j3", "bare", "loop", "14 in-lb listed", "not recorded"),
            ),
        ),
        Device(
            Ref("device", "D5.s2"),
            "s2",
            "switch, 15 A",
            "switch",
            (
                Terminal("brass-1", (), "j1", "black", "loop", "14 in-lb listed", "not recorded"),
                Terminal("brass-2", ("l3.black",), "", "black", "loop", "14 in-lb listed", "not recorded"),
                Terminal("green", (), "j3", "bare", "loop", "14 in-lb listed", "not recorded"),
            ),
        ),
    ),
)


def node(
    name: str,
    symbol: str = "receptacle",
    *branches: MapNode,
    run: str = "",
    notes: tuple[str, ...] = (),
    **more: object,
) -> MapNode:
    into = MapRun(Ref("run", run), "12/2", "11 ft", **more) if run else None  # type: ignore[arg-type]
    return MapNode(Ref("box", name), name, symbol, notes, into, branches)  # type: ignore[arg-type]


def chain(length: int) -> MapNode:
    tail: MapNode | None = None
    for number in range(length, 0, -1):
        tail = node(
            f"C{number}", "receptacle", *([tail] if tail else []), run=f"c{number}", notes=("1.2 % drop",)
        )
    return MapNode(
        Ref("space", "main/14"), "main 14", "breaker", ("20 A", "GFCI + AFCI"), None, (tail,) if tail else ()
    )


MAP = CircuitMap(
    "Circuit map, den receptacles",
    "From main 14 through D1 and D2 to J7 in the attic; a branch to the aquarium from D1.",
    MapNode(
        Ref("space", "main/14"),
        "main 14",
        "breaker",
        ("20 A", "AFCI"),
        None,
        (
            node(
                "D1",
                "gfci",
                node(
                    "D2",
                    "receptacle",
                    node(
                        "J7",
                        "junction",
                        node("D4", "unknown", run="p7", notes=("end unknown",), dashed=True),
                        node("D6", "light", run="p8", notes=("luminaire",)),
                        run="p4",
                        notes=("attic, under insulation",),
                        thin=True,
                        severity="hazard",
                    ),
                    run="p2",
                    notes=("5-20R", "1.2 % drop"),
                ),
                node("D3", "receptacle-single", run="p3", notes=("aquarium pump", "1.0 % drop")),
                run="p1",
                notes=("GFCI, guards onward", "0.9 % drop"),
            ),
        ),
    ),
)

FILL = Working(
    "Fill of box D1",
    "in³",
    (
        WorkingLine("4 insulated 12 AWG", "4 x 2.25", "9.00"),
        WorkingLine("grounds, together", "1 x 2.25", "2.25"),
        WorkingLine("1 yoke, twice 12 AWG", "2 x 2.25", "4.50"),
        WorkingLine("filled", "", "15.75", True),
        WorkingLine("marked volume", "", "20.30"),
        WorkingLine("left", "20.30 - 15.75", "4.55"),
    ),
    "One more 12 AWG two-wire cable would need 4.50: it fits, with 0.05 to spare.",
    "NEC 2023, 314.16(B)",
)

EXCERPT = Excerpt(
    "boxes/den.yaml",
    4,
    "  D1:\n    name: under the window   # left of it\n    devices: {r1: single}\n    makeup: pigtailed\n",
)

BOX = BoxSheet(
    title=title("Box D1, make-up and fill", box_number(3, "D1")),
    ref=Ref("box", "D1"),
    heading="Box D1",
    lead=(
        Link("Den", Ref("room", "den")),
        ", north wall, 2 ft 6 in from the west corner, 16 in up. One receptacle, two cables, three joints.",
    ),
    before=SURE,
    facts=(Fact("size", ("1-gang, plastic, 20.3 in³",)), Fact("stage", ("verified",))),
    makeup=PIGTAILED,
    fill=FILL,
    evidence=(Fact("seen", ("2026-09-12, by the owner",)),),
    circuits=((Link("Den receptacles", Ref("circuit", "den")),),),
    room=Link("Den", Ref("room", "den")),
    missing=(GAP,),
    excerpts=(EXCERPT,),
)
SWITCH_BOX = BoxSheet(
    title=title("Box D5, make-up and fill", box_number(3, "D5")),
    ref=Ref("box", "D5"),
    heading="Box D5",
    lead=("Den, by the door. Two switches, three cables.",),
    before=UNSURE,
    facts=(),
    makeup=SWITCHES,
    fill=None,
    evidence=(),
)

CIRCUIT = CircuitSheet(
    title=title("Circuit den, map and match", circuit_number(1, "14")),
    ref=Ref("circuit", "den"),
    heading="Den receptacles",
    lead=("Breaker ", Link("main 14", Ref("space", "main/14")), ", 20 A, AFCI. Four boxes in two rooms."),
    before=UNSURE,
    facts=(Fact("purpose", ("general",)),),
    map=MAP,
    match=(
        MatchLine(
            "breaker main 14", "20 A", "15 A", "too large", "the smallest wire, run p4, is 14 AWG", "hazard"
        ),
        MatchLine("receptacles", "15 A and 20 A", "15 A or 20 A", "fits", "two or more on a 20 A circuit"),
    ),
    goes_dark=Table(
        ("box", "device", "feeds"),
        (Row(((Link("D1", Ref("box", "D1")),), ("receptacle",), ("aquarium pump",))),),
    ),
    runs=Table(
        ("run", "cable", "from", "to", "length"),
        (
            Row(
                (
                    ("p1",),
                    ("12/2 NM-B",),
                    (Link("main 14", Ref("space", "main/14")),),
                    (Link("D1", Ref("box", "D1")),),
                    ("38 ft",),
                ),
                Ref("run", "p1"),
            ),
            Row(
                (
                    ("p4",),
                    ("14/2 NM-B",),
                    (Link("D2", Ref("box", "D2")),),
                    (Link("J7", Ref("box", "J7")),),
                    ("22 ft",),
                ),
                Ref("run", "p4"),
            ),
        ),
        (4,),
    ),
    joints=Table(
        ("joint", "joins", "in"),
        (Row(((Link("D1/j1", Ref("joint", "D1/j1")),), ("p1.black, p2.black, r1.brass",), ("lever-3",))),),
    ),
    loads=Table((), ()),
    findings=(HAZARD,),
    missing=(GAP,),
    excerpts=(EXCERPT,),
)


def handle(
    spaces: str,
    row: int,
    side: Side,
    feeds: str = "",
    state: SpaceState = "feeds",
    rating: str = "20 A",
    **more: object,
) -> Handle:
    linked = (Link(feeds, Ref("circuit", "den")),) if feeds else ()
    slots = tuple(
        Slot(number.rstrip("ab"), row + index, side, leg="AB"[(row + index) % 2])
        if number[-1] not in "ab"
        else Slot(number, row + index, side, number[-1], "AB"[(row + index) % 2])  # type: ignore[arg-type]
        for index, number in enumerate(spaces.split("+"))
    )
    return Handle(Ref("space", f"main/{spaces}"), slots, state, rating, linked, **more)  # type: ignore[arg-type]


FACE = PanelFace(
    Ref("panel", "main"),
    "Face of Main panel",
    "Eight spaces in four rows of two; seven breakers.",
    4,
    Handle(
        Ref("space", "main/main"), (), "main", "200 A", ("the whole panel",), notes=("interlocked with 2+4",)
    ),
    (
        handle("1", 0, "left", "Kitchen counter, left of the sink", guards="GF+AF"),
        handle("2+4", 0, "right", "Generator inlet", rating="30 A", notes=("interlocked with main",)),
        handle("3", 1, "left", "", "blank", ""),
        handle("5a", 2, "left", "Hall lights", rating="15 A"),
        handle("5b", 2, "left", "Smoke alarms", rating="15 A", guards="AF"),
        handle("6", 2, "right", "", "unknown", "20 A"),
        handle("7", 3, "left", "", "open", ""),
        handle("14", 3, "right", "Den receptacles", severity="hazard"),
    ),
)

PANEL = PanelSheet(
    title=title("Panel main, face and schedule", "E-611"),
    ref=Ref("panel", "main"),
    heading="Main panel",
    lead=("Utility room, east wall. 200 A, fed by the service.",),
    before=BeforeOpening(
        "the dead front of panel main", (DEN,), extra=("Never open the dead front on the word of this page.",)
    ),
    facts=(Fact("rating", ("200 A",)), Fact("neutral and ground", ("joined here",))),
    workings=(
        Working(
            "Wire to the rod electrode",
            "cmil",
            (
                WorkingLine("To a rod electrode alone: 6 AWG copper", "26240", "26240"),
                WorkingLine("The least size with that area", "", "6 AWG", True),
            ),
            "It is 6 AWG copper: it will do.",
            "NEC 2023, 250.66(A)",
        ),
    ),
    face=FACE,
    card=Link("E-611-card, the directory card for its door", Ref("card", "main")),
    schedule=Table(("space", "feeds"), (Row((("1",), (Link("Kitchen counter", Ref("circuit", "den")),))),)),
    signs=(Fact("GF", ("GFCI: a device that opens when current leaks to ground",)),),
)

CARD = CardSheet(
    title=title("Panel main, directory card", "E-611-card"),
    ref=Ref("card", "main"),
    heading="Directory card, Main panel",
    card=DoorCard(
        "Directory of circuits, Main panel",
        "Eight spaces.",
        "Main panel",
        "Alder Row 9. Rated 200 A, main 200 A, fed by the service.",
        4,
        tuple(
            CardEntry(each.ref, each.slots, each.words, "Kitchen, Hall", each.rating) for each in FACE.handles
        ),
        ("Off is not dead.", "From the record of 2026-10-02."),
    ),
    panel=Link("E-611, face and schedule", Ref("panel", "main")),
)

SUBPANEL = Bus(
    Label("Barn panel", ("rated 60 A",), Ref("panel", "barn")),
    Label("no main here"),
    "none",
    (Tap(None, None, End("", Label("3 other breakers", ("15 to 20 A",)))),),
    Ground("apart", Label("neutral kept apart from ground")),
)

ONE_LINE = OneLine(
    "Service one-line diagram",
    "Two panels, one other source.",
    (
        Feed(
            (End("U", Label("utility", ("120/240 V",))), End("M", Label("meter"))),
            Label("service conductors", ("4/0 AWG aluminium",)),
            Bus(
                Label("Main panel", ("rated 200 A",), Ref("panel", "main")),
                Label("main 200 A", (), Ref("space", "main/main")),
                "breaker",
                (
                    Tap(
                        Label("2+4", ("30 A", "2 poles"), Ref("space", "main/2+4")),
                        Label("run gi1", ("10/3 NM-B",)),
                        End("G", Label("generator inlet", ("30 A",))),
                        interlocked=True,
                    ),
                    Tap(
                        Label("10+12", ("60 A", "2 poles")),
                        Label("run f1", ("6/3 NM-B", "70 ft")),
                        SUBPANEL,
                    ),
                    Tap(None, None, End("", Label("12 other breakers", ("15 to 50 A",)))),
                ),
                Ground("joined", Label("neutral and ground joined here"), ("2 rods",)),
            ),
        ),
    ),
    (End("PV", Label("solar", ("where it enters is not recorded",))),),
)

COVER = Cover(
    title=title("Cover", "E-001"),
    ref=Ref("sheet", "cover"),
    heading="Alder Row 9",
    lead=("House manual: electrical, as built.",),
    shut_off=(Fact("electricity", ("outside, north wall, left of the meter",)),),
    sources=(),
    hazards=(HAZARD,),
    tally=(Fact("circuits", ("12",)),),
    complete=(Fact("boxes with a make-up", ("38 of 41",)),),
    levels=(
        LevelEntry(
            "Ground floor",
            (
                RoomEntry((Link("Den", Ref("room", "den")),), (Link("D1", Ref("box", "D1")),)),
                RoomEntry(("Hall",)),
            ),
        ),
    ),
    panels=(Fact("main", (Link("Main panel", Ref("panel", "main")), ": Hall")),),
    index=(
        IndexLine("E-601", Link("Panels", Ref("sheet", "panels")), "every panel, its rating and its place"),
    ),
)

PLAN = Plan(
    "plan-den",
    "Plan of Den",
    "Two boxes on the plan of Den.",
    (PlanRoom(Ref("room", "den"), "Den", ((0, 0), (144, 0), (144, 120), (0, 120)), "1"),),
    gaps=(PlanGap("door", (100, 120), (70, 120)), PlanGap("window", (40, 0), (90, 0))),
    fixtures=(PlanFixture("counter", ((0, 20), (24, 20), (24, 90), (0, 90)), assumed=True),),
    boxes=(
        PlanBox(Ref("box", "D1"), "D1", ("gfci",), (30, 0), (0, 1), ("14",), ("GF", "+44")),
        PlanBox(Ref("box", "D5"), "D5", ("switch", "switch-3"), (64, 120), (0, -1), ("16",)),
        PlanBox(Ref("box", "D6"), "D6", ("light",), (72, 60), None, ("16",)),
    ),
    wires=(PlanWire(Ref("run", "p8"), "D5", "D6", 1),),
    home_runs=(HomeRun(Ref("run", "p1"), "D1", "main 14", "14", (300, -40), 0),),
    controls=(("D5", "D6"),),
    circuits=(PlanCircuit("14", 0, (Link("Den receptacles", Ref("circuit", "den")),)),),
    sides=(PlanSide((0, 0), (144, 0), "12 ft"), PlanSide((144, 0), (144, 120), "10 ft")),
    north_deg=15,
    scale=((120, "10 ft"), (60, "5 ft")),
    unplaced=((Link("D2", Ref("box", "D2")), ": place not recorded"),),
)
WALL = Elevation(
    id="wall-den-north",
    number="E-203-north",
    title="Den, north wall",
    says="One box on this face, one on the other.",
    length=144,
    height=96,
    height_assumed=False,
    ends=("west corner", "east corner"),
    length_words="12 ft",
    height_words="8 ft",
    boxes=(
        WallBox(Ref("box", "D1"), "D1", "gfci", 1, (30, 44), "2 ft 6 in", "3 ft 8 in"),
        WallBox(Ref("box", "J7"), "J7", "junction", 1, (100, 60), "8 ft 4 in", "5 ft", behind=True),
    ),
    runs=(
        WallRun(Ref("run", "p1"), "12/2", ((30, 44), (30, 96)), assumed=True),
        WallRun(Ref("run", "p2"), "12/2", ((30, 44), (30, 24), (120, 24)), assumed=False, plates=True),
    ),
    things=(WallThing("window", 40, 50, 30, 50, False), WallThing("counter", 0, 90, 0, 36, True)),
    cautions=(Caution(22, 0, 16, 96), Caution(30, 16, 90, 16), Caution(92, 0, 16, 96)),
    notes=(("Its other face is in: Hall.",),),
    photos=(
        Photo(
            "photos/den-north.jpg", "den-north.jpg (2026-03-01, roughed)", "Photograph: D1 (den, north wall)"
        ),
    ),
)

ROOM = RoomSheet(
    title=title("Den", room_number(3)),
    ref=Ref("room", "den"),
    heading="Den",
    lead=("Ground floor.",),
    before=UNSURE,
    facts=(Fact("ceiling", ("8 ft",)),),
    boxes=Table(
        ("box", "where", "devices"),
        (Row(((Link("D1", Ref("box", "D1")),), ("north wall",), ("receptacle",))),),
    ),
    fed_by=Table(
        ("circuit", "breaker"),
        (
            Row(
                (
                    (Link("Den receptacles", Ref("circuit", "den")),),
                    (Link("main 14", Ref("space", "main/14")),),
                )
            ),
        ),
    ),
    things=Table((), ()),
    passes=Table((), ()),
    plan=PLAN,
    walls=(WALL,),
    bare=("south wall",),
    reach="8 in",
)
LEVEL = LevelSheet(
    title=title("Plan, Ground floor", level_number(1)),
    ref=Ref("level", "ground"),
    heading="Ground floor",
    plans=(PLAN,),
    rooms=Table(("no.", "room"), (Row((("1",), (Link("Den", Ref("room", "den")),))),)),
    not_drawn=Table(("what", "why"), (Row((("Hall",), ("outline not recorded",))),)),
)


LIGHTING = Working(
    "Service, standard method, by NEC 2023",
    "VA",
    (
        WorkingLine("General lighting", "900 × 3", "2700", False, "NEC 2023, 220.41", within=True),
        WorkingLine("Together", "2700", "2700", True),
        WorkingLine("At 240 V, A", "2700 / 240", "11.3", True, "NEC 2023, 220.5(B), confirmed in part"),
    ),
    "Not all of it is known: what the pump draws.",
    "NEC 2023, 220.41",
)
LOADS = LoadsSheet(
    title=title("Loads", "E-604"),
    ref=Ref("sheet", "loads"),
    heading="Loads",
    facts=(Fact("service", ("100 A",)),),
    verdict="Whether the service, 100 A, is large enough cannot be told.",
    methods=(
        Calculation(
            "Service, standard method",
            "at least 2700 VA",
            "the service",
            "cannot tell",
            Fraction("11.3"),
            Fraction(100),
            False,
            LIGHTING,
        ),
    ),
    neutral=LIGHTING,
    conductors=(LIGHTING,),
    feeders=(
        FeederEntry(
            ("Feeder to ", Link("Shed", Ref("panel", "main"))),
            (Fact("breaker", ("60 A",)),),
            Calculation(
                "Feeder", "61 A", "its breaker, 60 A", "too large", Fraction(61), Fraction(60), True, LIGHTING
            ),
        ),
    ),
    legs=(
        LegBar(
            "A",
            "300 VA, 2.5 A at 120 V",
            (LegLoad(("Lamp",), (Link("Den receptacles", Ref("circuit", "den")),), Fraction(300), "300"),),
            Fraction(0),
            "0",
            Fraction(300),
            Fraction(12000),
            120,
            True,
        ),
    ),
    unbalance="The legs differ by 4 % of the heavier.",
    counted=Table(("load", "VA"), (Row((("Pump",), ("not recorded",))),)),
    taken=("watts as volt-amperes",),
)


def sheets() -> tuple[Sheet, ...]:
    """Every kind of sheet once, and two boxes."""
    table = CIRCUIT.joints
    kinds = (("panels", "Panels"), ("circuits", "Circuits"), ("rooms", "Rooms"), ("boxes", "Boxes"))
    lists = (
        ListSheet(
            title=title(name, "E-602"), ref=Ref("sheet", id_), heading=name, groups=(Group(name, (), table),)
        )
        for id_, name in kinds
    )
    return (
        COVER,
        BOX,
        SWITCH_BOX,
        CIRCUIT,
        PANEL,
        CARD,
        OneLineSheet(
            title=title("Service one-line diagram", "E-607"),
            ref=Ref("sheet", "one-line"),
            heading="Service one-line diagram",
            before=UNSURE,
            diagram=ONE_LINE,
            schedule=table,
        ),
        ROOM,
        LEVEL,
        *lists,
        SplicesSheet(
            title=title("Splices and pigtails", "E-603"),
            ref=Ref("sheet", "splices"),
            heading="Splices and pigtails",
            before=UNSURE,
            groups=(SpliceGroup("Hard to reach", "Behind a surface.", (SPLICED,)),),
        ),
        LOADS,
        FindingsSheet(
            title=title("Findings", "E-605"),
            ref=Ref("sheet", "findings"),
            heading="Findings",
            groups=(FindingGroup("hazard", (HAZARD,)), FindingGroup("defect", ())),
            today=(replace(HAZARD, ref=Ref("today", HAZARD.ref.id)),),
            edition="NEC 2023",
        ),
        NotRecordedSheet(
            title=title("Not recorded", "E-606"),
            ref=Ref("sheet", "not-recorded"),
            heading="Not recorded",
            missing=(GAP,),
            rooms=Judged(Table(("room", "checks judged"), (Row((("Den",), ("35 of 36",))),)), ("Hall",)),
            circuits=Judged(Table(("circuit", "checks judged"), ()), ()),
        ),
        ChecklistSheet(
            title=title("Stage checklist", "E-608"),
            ref=Ref("sheet", "checklist"),
            heading="Stage checklist",
            stages=(
                StageList(
                    "before the wall closes",
                    "12 checks.",
                    Table(("room", "wrong"), (Row((("Den",), ("nothing",))),)),
                    ("Hall",),
                ),
            ),
        ),
        SafetySheet(
            title=title("Safety", "E-002"),
            ref=Ref("sheet", "notes"),
            heading="Safety",
            steps=("One.",),
            cautions=("Two.",),
            emergency=(),
            notes=((Link("Outage", Ref("note", "outage")),),),
        ),
        NoteSheet(
            title=title("Outage", "E-011"),
            ref=Ref("note", "outage"),
            heading="Outage",
            written_by="the owner",
            written_on="2026-09-30",
            markdown="# First\n\nSee [the den](circuit:den).\n\n| a | b |\n|---|--:|\n| 1 | 2 |\n",
        ),
        RulePage(
            title=title("breaker-outrates-wire", "E-004-breaker-outrates-wire"),
            ref=Ref("rule", "breaker-outrates-wire"),
            heading="A breaker is rated above what its smallest wire may carry",
            severity="hazard",
            stage="before the wall closes",
            parts=(("Why it matters", "Heat."),),
            cites=("NEC 2023, 240.4(D)",),
            fails=Excerpt("panels/main.yaml", 1, "panel: main\n"),
            passes=None,
            met=(HAZARD,),
        ),
        TermsSheet(
            title=title("Terms and symbols", "E-003"),
            ref=Ref("sheet", "terms"),
            heading="Terms and symbols",
            terms=(Term(Ref("term", "pigtail"), "pigtail", "a short conductor from a splice to a terminal"),),
            colours=(ColourCode("black", "BK"), ColourCode("white", "WH"), ColourCode("bare", "bare")),
            symbols=(
                SymbolEntry("receptacle", "duplex receptacle"),
                SymbolEntry("gfci", "receptacle with GFCI"),
                SymbolEntry("switch-3", "3-way switch"),
                SymbolEntry("light", "luminaire"),
                SymbolEntry("junction", "junction box"),
                SymbolEntry("breaker", "breaker"),
                SymbolEntry("panel", "panel"),
                SymbolEntry("smoke-alarm", "smoke alarm"),
                SymbolEntry("receptacle-240", "240 V receptacle"),
                SymbolEntry("unknown", "unknown"),
                SymbolEntry("inlet", "inlet"),
                SymbolEntry("fan", "fan"),
            ),
            severities=(
                ("hazard", "could hurt somebody"),
                ("defect", "short of the rule"),
                ("advice", "good practice"),
                ("unrecorded", "a fact is missing"),
            ),
        ),
        PointSheet(
            title=title("D1.r1, what feeds it", "E-501-D1.r1"),
            ref=Ref("point", "D1.r1"),
            heading="D1.r1, receptacle",
            fed=(
                FeedLine(
                    Link("main 14", Ref("space", "main/14")), "15 A", "Den receptacles",
                    "Main panel, right side, 7th from the top", "Hall, north wall",
                ),
            ),
            doubts=("one end of run x3 is unknown",),
            resets=(ResetLine(("breaker ", "main 14"), "Main panel", "fully off, then on"),),
            answers=(Fact("neutral in this box?", ("yes: j2",)),),
            first=("aquarium pump (water)",),
            dark=(RoomDark((Link("Den", Ref("room", "den")),), ("D5.f1",)),),
            may_differ=("one end of run x3 is unknown",),
            before=SURE,
            ways=((("breaker ", "main 14"), ("joined in D1/j1",)),),
            hangs=("D5.f1",),
            box=Link("box D1", Ref("box", "D1")),
        ),
        MakeDeadSheet(
            title=title("Make a box dead", "E-006"),
            ref=Ref("sheet", "make-dead"),
            heading="Make a box dead",
            boxes=(Choices("Den", (("D1", "D1, by the door"),)),),
            test=("First point: a known live source.",),
            table=Table(("box", "where", "off"), (Row((("D1",), ("Den",), ("main 14",))),)),
        ),
        WhereToLookSheet(
            title=title("Where to look", "E-007"),
            ref=Ref("sheet", "where-to-look"),
            heading="It is dead: where to look",
            signs=("heat or a smell",),
            starts=(Choices("Rooms", (("room:den", "Den"),)),),
            readings=(("nothing", "H-N 0: open hot"),),
            table=Table(("point", "where"), (Row((("D1.r1",), ("Den",))),)),
            trips=("Unplug all that is on it.",),
            on_it=Table(("breaker", "drawn"), (Row((("main 14",), ("3 A",))),)),
        ),
        OneMoreSheet(
            title=title("Room for one more", "E-009"),
            ref=Ref("sheet", "one-more"),
            heading="Room for one more",
            points=(Choices("Den", (("D1.r1", "D1.r1, receptacle"),)),),
            usual=(("1500", "kettle, about 1500 W"),),
            recorded=(("700h", "Aquarium pump, 700 W"),),
            heeded=("What is plugged in counts.",),
            table=Table(("box", "free"), (Row((("D1",), ("at most 3 A",))),)),
        ),
        OutageSheet(
            title=title("Outage card", "E-008"),
            ref=Ref("sheet", "outage"),
            heading="Outage card",
            stays_live=(("the service conductors",),),
            all_dead=(("main of panel main",),),
            cards=(
                SourceCard(
                    Link("Generator", Ref("circuit", "gen")), (Fact("rating", ("30 A",)),),
                    "Nothing on record keeps the two apart.", (("main 14: aquarium pump",),),
                    (("Main off.",),), (("Main on.",),), ("Cannot carry the pump.",),
                    (Working("Leg A", "A", (WorkingLine("pump", "", "31"),), "", "common practice"),),
                ),
            ),
            cautions=("Outdoors only.",),
        ),
    )  # fmt: skip
