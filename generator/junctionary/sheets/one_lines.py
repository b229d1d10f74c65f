"""Builds the service one-line diagram."""

from collections.abc import Iterator

from junctionary.house.model import Breaker, House, Panel, Run
from junctionary.house.panels import MAIN, surge_breaker
from junctionary.records.cables import Conductor
from junctionary.records.house import Electrode, Service, Source
from junctionary.records.panels import Surge
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sheets.ages import surge_words
from junctionary.sheets.circuits import numbered
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.isolation import before_any
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.makeup import cable_words
from junctionary.sheets.naming import NOT_RECORDED, counted, room_link, said, several, source_words
from junctionary.sheets.one_line import (
    SURGE,
    Bond,
    Bus,
    Device,
    End,
    Feed,
    Ground,
    Label,
    OneLine,
    OneLineSheet,
    Tap,
    buses,
)
from junctionary.sheets.panels import fed_from
from junctionary.sheets.survey import Survey, sentence, title
from junctionary.sheets.titleblock import GENERAL, panel_number
from junctionary.units import Quantity, decimal

SIGNS = {"generator-inlet": "G", "standby-generator": "G", "solar": "PV", "battery": "BAT", "vehicle": "EV"}
"""What stands in the circle of a source."""

AHEAD = "before-main"
"""Where surge protection is connected that is live with the main off."""

BONDS: dict[Bond, str] = {
    "joined": "neutral and ground joined here",
    "apart": "neutral kept apart from ground",
    "unknown": "whether neutral and ground are joined here is not known",
}


def one_line_sheet(survey: Survey) -> OneLineSheet:
    """The diagram of this house."""
    house = survey.house
    feeds = tuple(_feeds(house))
    entered = {str(each.feeds) for each in house.breakers.values()} | {
        each.id for each in house.sources.values() if each.enters in house.breakers
    }
    apart = tuple(
        _source_end(house, each, ("where it enters is not recorded",))
        for each in house.sources.values()
        if each.id not in entered
    )
    panels, sources = counted(len(house.panels), "panel"), counted(len(house.sources), "other source")
    return OneLineSheet(
        title=title(survey, "Service one-line diagram", GENERAL["one-line"], "as recorded"),
        ref=Ref("sheet", "one-line"),
        heading="Service one-line diagram",
        lead=(sentence(f"{panels}, {sources} beside the utility"),),
        before=before_any(),
        diagram=OneLine(
            "Service one-line diagram",
            f"{sentence(f'{panels}, {sources}')} From the supply through each main and feeder to each panel,"
            " with bonds and grounds.",
            feeds,
            apart,
        ),
        schedule=_schedule(house, feeds),
    )


def _feeds(house: House) -> Iterator[Feed]:
    """Each panel no other is known to feed, with all below it; then what that leaves."""
    met: set[str] = set()
    for panel in sorted(house.panels.values(), key=lambda each: each.feeder is not None):
        if panel.id not in met:
            yield _feed(house, panel, met)


def _feed(house: House, panel: Panel, met: set[str]) -> Feed:
    bus = _bus(house, panel, met)
    if panel.record.fed_by != "service":
        words = "".join(piece if isinstance(piece, str) else piece.text for piece in fed_from(house, panel))
        return Feed((End("?", Label(words)),), None, bus)
    service = house.record.service
    system = said(house, service.system if service else None)
    rating = said(house, service.rating if service else None)
    lines = (f"system {system}", f"service {rating}", *_fault(house, service, panel))
    meter = Label("meter", ("of the utility, not in the record",))
    parts = (End("U", Label("utility", lines)), End("M", meter))
    surge = panel.record.surge
    ahead = isinstance(surge, Surge) and surge.connected == AHEAD
    return Feed(parts, _service_wire(house, service), bus, _surge_end(panel) if ahead else None)


def _surge_end(panel: Panel) -> End:
    return End(SURGE, Label("surge protection", surge_words(panel)[:3]))


def _surge_taps(house: House, panel: Panel) -> Iterator[Tap]:
    """The surge protection of a panel, where it hangs on its bus or on one of its breakers."""
    surge = panel.record.surge
    if isinstance(surge, Surge) and (surge.connected != AHEAD or panel.record.fed_by != "service"):
        breaker = surge_breaker(panel)
        yield Tap(_breaker_label(house, breaker) if breaker else None, None, _surge_end(panel))


def _fault(house: House, service: Service | None, panel: Panel) -> tuple[str, ...]:
    level = service.fault_level if service else None
    if level is None or level.at != panel.id:
        return ("fault current not recorded",)
    return (f"{said(house, level.line_to_neutral)} line to neutral at {panel.id}",)


def _service_wire(house: House, service: Service | None) -> Label:
    conductors = service.conductors if service else None
    if conductors is None:
        return Label("service conductors", (NOT_RECORDED,))
    return Label("service conductors", (f"{conductors.size} {conductors.metal or 'metal not recorded'}",))


def _bus(house: House, panel: Panel, met: set[str]) -> Bus:
    met.add(panel.id)
    record = panel.record
    breakers = [each for each in panel.breakers if each.spaces != (MAIN,)]
    sources = {each.id for each in house.sources.values()}
    entering = {each.enters for each in house.sources.values() if each.enters}
    taps: list[Tap] = []
    kept: list[Breaker] = []
    for breaker in breakers:
        if breaker == surge_breaker(panel):
            continue
        if str(breaker.feeds) in sources or breaker.id in entering:
            taps.append(_source_tap(house, panel, breaker))
        elif below := _fed_panel(house, panel, breaker, met):
            taps.append(_feeder_tap(house, breaker, below, met))
        else:
            kept.append(breaker)
    taps += _surge_taps(house, panel)
    taps.sort(key=lambda each: isinstance(each.to, Bus))
    if kept:
        taps.append(_branches(house, panel, kept))
    place: tuple[str, ...] = ()
    if record.at is not None and record.at.room:
        place = ("".join(_words(room_link(house, record.at.room))),)
    return Bus(
        Label(panel.name, (f"rated {said(house, record.rating)}", *place), Ref("panel", panel.id)),
        *_main(house, panel),
        tuple(taps),
        _ground(house, panel),
    )


def _words(piece: str | Link) -> str:
    return piece if isinstance(piece, str) else piece.text


def _main(house: House, panel: Panel) -> tuple[Label, Device]:
    main = panel.record.main
    if main is NONE:
        return Label("no main here", ("fed through its lugs",)), "none"
    if not isinstance(main, Quantity):
        return Label("main", (said(house, main),)), "unknown"
    device: Device = "fuse" if panel.record.kind == "fuse-panel" else "breaker"
    return Label(f"main {said(house, main)}", (), Ref("space", f"{panel.id}/{MAIN}")), device


def _breaker_label(house: House, breaker: Breaker) -> Label:
    poles = counted(breaker.poles, "pole")
    tied = [f"interlocked with {each.partition('/')[2]}" for each in breaker.interlocked_with]
    lines = (said(house, breaker.rating), poles, *tied)
    return Label("+".join(breaker.spaces), lines, Ref("space", breaker.id))


def _source_tap(house: House, panel: Panel, breaker: Breaker) -> Tap:
    source = next(
        each for each in house.sources.values() if each.id == str(breaker.feeds) or each.enters == breaker.id
    )
    runs = [run for run in house.runs.values() if run.circuit == source.id]
    return Tap(
        _breaker_label(house, breaker),
        _wire(house, runs),
        _source_end(house, source),
        f"{panel.id}/{MAIN}" in breaker.interlocked_with,
    )


def _source_end(house: House, source: Source, more: tuple[str, ...] = ()) -> End:
    lines = [said(house, source.rating)] if source.rating is not None else ["rating not recorded"]
    fails = source.without_utility
    lines.append(
        f"{fails} when the utility fails"
        if fails in ("runs", "stops")
        else f"when the utility fails: {fails or NOT_RECORDED}"
    )
    if source.at:
        lines.append(f"at {source.at}")
    return End(SIGNS[source.is_], Label(source_words(source), (*lines, *more), Ref("circuit", source.id)))


def _fed_panel(house: House, panel: Panel, breaker: Breaker, met: set[str]) -> Panel | None:
    below = (
        each for each in house.panels.values() if each.feeder is not None and each.feeder == breaker.feeds
    )
    return next((each for each in below if each.id not in met and each is not panel), None)


def _feeder_tap(house: House, breaker: Breaker, below: Panel, met: set[str]) -> Tap:
    runs = [run for run in house.runs.values() if run.circuit == below.feeder]
    return Tap(_breaker_label(house, breaker), _wire(house, runs), _bus(house, below, met))


def _wire(house: House, runs: list[Run]) -> Label:
    if not runs:
        return Label("wire not recorded")
    first, *others = runs
    lines = [cable_words(first)]
    if first.length is not None and first.length is not UNKNOWN:
        lines.append(said(house, first.length))
    lines += [f"and {counted(len(others), 'run')} more"] if others else []
    return Label(f"run {first.id}", tuple(lines), Ref("run", first.id))


def _branches(house: House, panel: Panel, kept: list[Breaker]) -> Tap:
    amps = sorted({each.rating.to("A") for each in kept if isinstance(each.rating, Quantity)})
    said_ = [decimal(each, 0 if each.denominator == 1 else 1) for each in amps]
    span = f"{' to '.join(dict.fromkeys((said_[0], said_[-1])))} A" if said_ else NOT_RECORDED
    number = panel_number(list(house.panels).index(panel.id) + 1)
    label = Label(counted(len(kept), "other breaker"), (span, f"see {number}"), Ref("panel", panel.id))
    return Tap(None, None, End("", label))


def _ground(house: House, panel: Panel) -> Ground:
    bonded = panel.record.bonded
    bond: Bond = "joined" if bonded is True else "apart" if bonded is False else "unknown"
    return Ground(bond, Label(BONDS[bond], (panel.name,)), tuple(_electrodes(house, panel)))


def _electrodes(house: House, panel: Panel) -> Iterator[str]:
    """The electrodes of the panel's building, or that they are not recorded; none where another has them."""
    service = house.record.service
    room = house.rooms.get(panel.record.at.room or "") if panel.record.at else None
    at = room.record.building if room else None
    building = next((each for each in house.record.buildings if each.id == at), None)
    if panel.record.fed_by == "service":
        given = service.electrodes if service else None
    elif building is not None and building.detached is True:
        given = building.electrodes
    else:
        return
    if given is None:
        yield "electrodes not recorded"
        return
    told = [(each.is_.replace("-", " "), _wire_words(each)) for each in given]
    for kind, wire in dict.fromkeys(told):
        count = told.count((kind, wire))
        yield f"{several(count, kind)}, {wire}"
    if not given:
        yield "no electrode"


def _wire_words(electrode: Electrode) -> str:
    wire = electrode.wire
    if isinstance(wire, Conductor):
        return f"{wire.size} {wire.metal}"
    return "wire unknown" if wire is UNKNOWN else "wire not recorded"


def _schedule(house: House, feeds: tuple[Feed, ...]) -> Table:
    rows = []
    for bus in buses(feeds):
        panel = house.panels[bus.label.ref.id] if bus.label.ref else None
        if panel is None:
            continue
        fed: Phrase = fed_from(house, panel)
        feeder = house.circuits.get(panel.feeder or "")
        rows.append(
            Row(
                (
                    (Link(panel.name, Ref("panel", panel.id)),),
                    fed,
                    (numbered(house, feeder) if feeder else "",),
                    (" ".join((bus.main.name, *bus.main.lines)),),
                    (bus.ground.label.name,),
                    (", ".join(bus.ground.electrodes),),
                    ("; ".join(surge_words(panel)[:2]),),
                )
            )
        )
    return Table(
        ("panel", "fed", "sheet", "main", "neutral and ground", "electrodes", "surge protection"), tuple(rows)
    )
