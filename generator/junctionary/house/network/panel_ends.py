"""Where the conductors of a run are taken to land in a panel.

Ungrounded conductors on the poles of the breaker that feeds the circuit,
black first and red second; white on the neutral bar; bare or green on the
ground bar. A two-pole breaker takes the white of a two-wire cable on its
second pole. The breaker's record may say otherwise: ``feeds: den.red``,
``lands``, ``marked``. A feeder lands on the bus and the bars of the panel it
feeds. What none of this places is not guessed at: it is unknown.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import Breaker, House, Panel, Run
from junctionary.house.network.edges import Edge, EdgeKind
from junctionary.house.network.panel_wiring import (
    MAIN,
    bar_of,
    branch_breakers,
    bus_of,
    buses,
    has_main,
    is_service_panel,
    poles,
)  # fmt: skip
from junctionary.house.network.unknowns import Unknown, colours_of, end_name
from junctionary.records.cables import Conductor
from junctionary.records.words import GROUND_COLOURS, NEUTRAL_COLOURS, UNTOLD_COLOURS

HOT_ORDER = ("black", "red", "blue")


@dataclass(frozen=True, slots=True)
class Landed:
    """A conductor's end in a panel, the point it lands on and how."""

    colour: str
    point: str
    kind: EdgeKind


def is_ground(conductor: Conductor | str) -> bool:
    """Whether a conductor, or its colour, is marked as an equipment ground."""
    return (conductor if isinstance(conductor, str) else conductor.colour) in GROUND_COLOURS


def landing_edges(house: House, spoken: Mapping[str, tuple[str, ...]]) -> tuple[list[Edge], list[Unknown]]:
    """Where every run lands in a panel, and which ends nothing places.

    ``spoken`` are the colours that boxes name of runs whose cable is not known.
    """
    edges: list[Edge] = []
    unknown: list[Unknown] = []
    feeding = _breakers_by_circuit(house)
    for run in house.runs.values():
        for side, end in enumerate(run.ends):
            panel = house.panels.get(end.id) if end.kind == "panel" and end.id is not None else None
            if panel is None:
                continue
            breakers = feeding.get((panel.id, run.circuit), [])
            colours = colours_of(run, spoken)
            landed = _landed(house, run, side, panel, breakers, colours)
            for each in landed:
                name = end_name(run, side, each.colour or None)
                if each.kind == "main":
                    main = f"{panel.id}/{MAIN}"
                    edges.append(Edge(name, each.point, "main", main, run.place, opened_by=main))
                else:
                    edges.append(Edge(name, each.point, each.kind, run.id, run.place))
            placed = {each.colour for each in landed}
            for colour in colours:
                if colour not in placed:
                    unknown.append(_nowhere(run, side, colour, breakers, panel))
    return edges + _feeders_without_runs(house), unknown


def _breakers_by_circuit(house: House) -> dict[tuple[str, str], list[Breaker]]:
    """The breakers of a panel that feed a circuit, or through which a source enters."""
    found: dict[tuple[str, str], list[Breaker]] = {}
    for panel in house.panels.values():
        for breaker in branch_breakers(panel):
            if isinstance(breaker.feeds, str):
                found.setdefault((panel.id, breaker.feeds), []).append(breaker)
    for source in house.sources.values():
        entering = breaker_named(house, source.enters) if source.enters else None
        if entering is not None:
            enters = found.setdefault((entering.panel, source.id), [])
            if entering not in enters:
                enters.append(entering)
    return found


def breaker_named(house: House, name: str) -> Breaker | None:
    """The breaker of that name; ``main/4`` also names the two-pole breaker ``main/2+4``."""
    if name in house.breakers:
        return house.breakers[name]
    panel, _, space = name.partition("/")
    known = house.panels[panel].breakers if panel in house.panels else ()
    return next((each for each in known if space in each.spaces), None)


def _landed(
    house: House, run: Run, side: int, panel: Panel, breakers: list[Breaker], colours: tuple[str, ...]
) -> list[Landed]:
    if panel.feeder == run.circuit or (side == 1 and not breakers and not is_service_panel(house, panel)):
        return _on_the_bus(panel, colours)
    if breakers:
        return _on_breakers(panel, breakers, colours)
    if side == 0 and panel.record.kind == "disconnect" and not list(branch_breakers(panel)):
        # A disconnect that is one switch: what leaves it leaves from behind that switch.
        return [*_on_legs(panel, colours, "bus"), *_on_bars(panel.id, colours)]
    return _on_bars(panel.id, colours)


def _on_the_bus(panel: Panel, colours: tuple[str, ...]) -> list[Landed]:
    """A feeder in the panel it feeds."""
    kind: EdgeKind = "main" if has_main(panel) else "bus"
    return [*_on_legs(panel, colours, kind), *_on_bars(panel.id, colours)]


def _on_legs(panel: Panel, colours: tuple[str, ...], kind: EdgeKind) -> list[Landed]:
    hot = _hot(colours)
    landed = [
        Landed(colour, bus_of(panel.id, leg), kind) for colour, leg in zip(hot, ("A", "B"), strict=False)
    ]
    if landed and bus_of(panel.id, None) in buses(panel):
        landed.append(Landed(landed[0].colour, bus_of(panel.id, None), kind))
    return landed


def _on_bars(panel: str, colours: Iterable[str]) -> list[Landed]:
    neutral, ground = bar_of(panel, "neutral"), bar_of(panel, "ground")
    return [
        Landed(colour, neutral if colour in NEUTRAL_COLOURS else ground, "bar")
        for colour in colours
        if colour in NEUTRAL_COLOURS or colour in GROUND_COLOURS
    ]


def _on_breakers(panel: Panel, breakers: list[Breaker], colours: tuple[str, ...]) -> list[Landed]:
    spaces = frozenset(space for each in branch_breakers(panel) for space in each.spaces)
    landed = _told(breakers, colours, spaces)
    taken = {each.point for each in landed}
    # What the record lands where no breaker is recorded is not guessed at: nothing places it.
    told = {each.colour for each in landed}
    told |= {colour for each in breakers for colour in each.record.lands or ()}
    left = [colour for colour in colours if colour not in told]
    marked = [colour for each in breakers for colour in each.record.marked or ()]
    for each in breakers:
        if each.conductor in left and poles(each)[0] not in taken:
            landed.append(Landed(each.conductor, poles(each)[0], "landing"))
            left.remove(each.conductor)
            taken.add(poles(each)[0])
    free = [pole for each in breakers if each.conductor is None for pole in poles(each) if pole not in taken]
    hot = _hot(left)
    hot += [colour for colour in left if colour in marked and colour not in hot]
    if len(hot) < len(free) and any(each.conductor is None and each.poles > 1 for each in breakers):
        # Two poles and one colour: the white of a two-wire cable is the second hot.
        hot += [colour for colour in left if colour in NEUTRAL_COLOURS and colour not in hot]
    for colour, pole in zip(hot, free, strict=False):
        landed.append(Landed(colour, pole, "landing"))
        left.remove(colour)
    if not colours:
        landed += [Landed("", pole, "landing") for pole in free]
    return [*landed, *_on_bars(panel.id, (each for each in left if each not in marked))]


def _told(breakers: list[Breaker], colours: tuple[str, ...], spaces: frozenset[str]) -> list[Landed]:
    """What ``lands`` says: a space with a breaker, or a bar with or without the number of its hole."""
    landed: dict[str, Landed] = {}
    for breaker in breakers:
        for colour, said in (breaker.record.lands or {}).items():
            where = said.removeprefix(f"{breaker.panel}/")
            bar = next((each for each in ("neutral", "ground") if where.startswith(each)), None)
            if colour in colours and bar is not None:
                landed[colour] = Landed(colour, bar_of(breaker.panel, bar), "bar")
            elif colour in colours and where in spaces:
                landed[colour] = Landed(colour, f"{breaker.panel}/{where}", "landing")
    return list(landed.values())


def _hot(colours: Iterable[str]) -> list[str]:
    """Ungrounded conductors by colour: black, red, blue, then the others; old letters tell nothing."""
    hot = [each for each in colours if each not in (*NEUTRAL_COLOURS, *GROUND_COLOURS, *UNTOLD_COLOURS)]
    return sorted(hot, key=lambda each: HOT_ORDER.index(each) if each in HOT_ORDER else len(HOT_ORDER))


def _nowhere(run: Run, side: int, colour: str, breakers: list[Breaker], panel: Panel) -> Unknown:
    name = end_name(run, side, colour)
    why = "" if breakers else f": no breaker of {panel.id} is recorded as feeding {run.circuit}"
    return Unknown(name, f"nothing tells where {name} lands{why}", run.place, (name,), (run.id,))


def _feeders_without_runs(house: House) -> list[Edge]:
    """A panel's supply by the word of the record alone, where the feeder's run is not recorded."""
    edges = []
    for panel in house.panels.values():
        circuit = house.circuits.get(panel.feeder or "")
        if circuit is None:
            continue
        if any(end.id == panel.id for each in circuit.runs for end in house.runs[each].ends):
            continue
        supply = [pole for each in circuit.breakers for pole in poles(house.breakers[each])]
        place = panel.record.place_of("fed_by")
        # A third bus, for poles whose leg nothing tells, hangs on the first pole.
        for bus, pole in zip(buses(panel), [*supply[:2], *supply[:1]], strict=False):
            if has_main(panel):
                main = f"{panel.id}/{MAIN}"
                edges.append(Edge(pole, bus, "main", main, place, opened_by=main))
            else:
                edges.append(Edge(pole, bus, "feeder", circuit.id, place))
    return edges
