"""One more load, or one more cable: what is free where it would be, and whether it may start from there.

No figure of every house: only who asks to add something wants it. A lookup asks it of all places at
once, and whoever proposes an extension of one.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures import Figures, PoleLoad
from junctionary.figures.circuits import NO_BRANCH_CIRCUITS
from junctionary.figures.drawn_at import LINE_TO_NEUTRAL, volts_of
from junctionary.figures.fill import fill_with
from junctionary.formulas.circuit_load import Room
from junctionary.house.dark import fed_by
from junctionary.house.model import Box, Circuit, Device, House
from junctionary.house.network import Network, entering, poles
from junctionary.house.offers import BoxOffers, Offer
from junctionary.records.cables import OPEN_KINDS, Cable
from junctionary.records.values import NONE
from junctionary.sources import Citation, cite, cite_for, cite_in
from junctionary.tables import table
from junctionary.units import Quantity, WireSize

CABLES = {
    "14/2": (2, WireSize("14 AWG")),
    "14/3": (3, WireSize("14 AWG")),
    "12/2": (2, WireSize("12 AWG")),
    "12/3": (3, WireSize("12 AWG")),
    "10/2": (2, WireSize("10 AWG")),
    "10/3": (3, WireSize("10 AWG")),
}
"""Common cables with ground: how many insulated wires, and of what size."""

BRANCH = WireSize("8 AWG")
"""Aluminium up to this size is that of branch circuits."""

ONE_APPLIANCE = (
    "range", "dryer", "water-heater", "heating", "cooling", "heat-pump", "car-charger", "appliance", "pump",
)  # fmt: skip
"""Circuits that one appliance has to itself (practice)."""

KEPT = {
    "small-appliance": ("receptacles of kitchen, pantry and dining room", "210.52(B)(2)"),
    "laundry": ("receptacles of the laundry", "210.11(C)(2)"),
    "bathroom": ("receptacles of bathrooms, or for all that one bathroom has", "210.11(C)(3)"),
    "garage": ("receptacles of the garage", "210.11(C)(4)"),
}
ONE_CIRCUIT = cite("practice", "A circuit that one appliance was given stays its own")
OPEN_ENDED = cite("practice", "Open wiring is not extended")
LASTING = Fraction(5, 4)
"""What a load that runs for three hours or more counts for, by 210.20(A)."""


@dataclass(frozen=True, slots=True)
class Reason:
    """Why something may not be, or what must be heeded, and what that rests on."""

    says: str
    cite: Citation | None = None


@dataclass(frozen=True, slots=True)
class Added:
    """One load added to what a pole has: what is then free, in A, now and for three hours or more.

    ``fits`` is False where it is certainly too much, None where what is not recorded decides.
    ``limit`` is the number that binds; ``most_a`` what may be added, at most where something is not recorded.
    ``left_a`` is left of the circuit then, of which one plugged load may draw less.
    """

    fits: bool | None
    limit: str
    most_a: Fraction
    now_a: Fraction
    lasting_a: Fraction
    left_a: Fraction


def add(room: Room, amps: Fraction, *, lasting: bool) -> Added:
    """A load of so many A beside what a pole has; ``lasting`` where it may run three hours on end."""
    long = room.continuous.steps[0].value
    free, left_of = (long, "80 % of what is left") if lasting else (room.left_a, room.limit)
    cord = room.cord.value if room.cord else None
    capped = cord is not None and cord < free
    most = cord if capped and cord is not None else free
    after = max(Fraction(0), room.left_a - amps * (LASTING if lasting else 1))
    then = [each if cord is None else min(each, cord) for each in (after, after * 4 / 5)]
    fits = False if amps > most else None if room.now.value is None else True
    limit = "what one plugged load may draw" if capped else left_of
    return Added(fits, limit, most, then[0], then[1], after)


@dataclass(frozen=True, slots=True)
class PointRoom:
    """What a point hangs on, for a load that is plugged or wired in there.

    ``poles`` are those that feed it, ``by_label`` where only the record's word says so. ``volts`` is
    the voltage a load has there; where it is not recorded 120, at which a load draws more, and
    ``taken`` says so. ``drop`` has the volts lost there already and those lost for each A more.
    """

    point: str
    box: str
    poles: tuple[PoleLoad, ...]
    by_label: bool
    volts: Fraction
    taken: str
    lacks: tuple[str, ...]
    drop: "Drop | None"


@dataclass(frozen=True, slots=True)
class Drop:
    """Volts lost from the panel to a box: now, and for each A more that is drawn there.

    ``least`` where not all that is drawn is recorded; ``most`` where the legs of a shared neutral may
    make it less.
    """

    now_v: Fraction
    ohms: Fraction
    volts: Fraction
    least: bool
    most: bool


@dataclass(frozen=True, slots=True)
class Extending:
    """Whether a cable may start from one supply of a box: not where anything ``stops`` it.

    ``lacks`` is what would have to be known first; ``heeds`` bind whoever does it. ``least`` is the
    smallest common copper wire that its breaker allows, None where no rating is recorded.
    """

    offer: Offer | None
    circuit: str | None
    breaker: str
    stops: tuple[Reason, ...]
    lacks: tuple[str, ...]
    heeds: tuple[Reason, ...]
    least: WireSize | None

    @property
    def may(self) -> bool | None:
        """False where something stops it, None where something is not known, else True."""
        return False if self.stops else None if self.lacks else True


@dataclass(frozen=True, slots=True)
class CableRoom:
    """Whether one more cable fits a box, in in³: what would be in it at least, and the box's volume."""

    cable: str
    wire: WireSize
    least_in3: Fraction
    volume_in3: Fraction | None
    fits: bool | None
    lacks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BoxRoom:
    """What one box has room for, and what it offers a cable that would start in it."""

    box: str
    cables: tuple[CableRoom, ...]
    extending: tuple[Extending, ...]


def pole_loads(figures: Figures) -> dict[str, PoleLoad]:
    """The load of each pole of every circuit, by the pole."""
    return {name: pole for circuit in figures.loads.values() for pole in circuit.poles for name in pole.poles}


def point_room(
    house: House, network: Network, figures: Figures, loads: Mapping[str, PoleLoad], device: Device
) -> PointRoom:
    """What is free where one device is; ``loads`` are those of all poles."""
    fed = fed_by(house, network, device.id)
    zones = dict.fromkeys(network.zone_at[each] for each in network.index.carrying.get(device.id, ()))
    names = dict.fromkeys(feed.pole for each in zones for feed in network.zones[each].feeds)
    if fed.by_label:
        names = dict.fromkeys(pole for each in fed.breakers for pole in poles(house.breakers[each]))
    held = tuple({id(loads[each]): loads[each] for each in names if each in loads}.values())
    lacks = [_no_branch(house, each) for each in names if each not in loads]
    if not names:
        lacks.append(f"which breaker feeds {device.id}")
    if fed.by_label and len(held) > 1:
        lacks.append(f"which of its circuit's breakers feeds {device.id}")
    circuits = dict.fromkeys(each.circuit for each in held)
    only = house.circuits[next(iter(circuits))] if len(circuits) == 1 else None
    volts = volts_of(house, only, device)
    taken = "" if volts is not None else "taken at 120 V, as nothing recorded says at what voltage"
    return PointRoom(
        point=device.id,
        box=device.box,
        poles=held,
        by_label=fed.by_label,
        volts=volts or LINE_TO_NEUTRAL,
        taken=taken,
        lacks=(*dict.fromkeys(lacks), *fed.unknown),
        drop=_drop(figures, only, device.box) if only is not None else None,
    )


def _no_branch(house: House, pole: str) -> str:
    """Why nothing is reckoned for a pole: a second source enters there, or nothing tells what it feeds."""
    if any(pole in poles(house.breakers[each]) for each in entering(house).values()):
        return "its breaker is where a second source enters, and is no branch circuit's"
    return f"what the breaker at {pole} feeds"


def _drop(figures: Figures, circuit: Circuit, box: str) -> Drop | None:
    """By the drop at design load, drawn at that box alone; None where the wire to it is not known."""
    drop = figures.drops[circuit.id]
    design, now, load = drop.design.get(box), drop.recorded.get(box), drop.design_load.value
    if design is None or now is None or not load or design.from_panel.value is None:
        return None
    value = now.from_panel.value
    known = value if value is not None else now.least or Fraction(0)
    # Beside a second leg the neutral may carry less: then what is added is the most that it can be.
    several = len(figures.loads[circuit.id].poles) > 1
    if value is None and several:
        return None
    return Drop(max(Fraction(0), known), design.from_panel.value / load, design.volts, value is None, several)


def box_room(house: House, network: Network, figures: Figures, offers: BoxOffers) -> BoxRoom:
    """What one box has room for, by the edition that new work is judged by."""
    box = house.boxes[offers.box]
    extending = [_of_offer(house, network, figures, box, offers, each) for each in offers.offers]
    why = f"how it is connected in box {box.id}"
    for circuit in offers.untold:
        extending.append(_of_label(house, figures, circuit, box, (), (why, *offers.doubts)))
    for circuit in offers.passing:
        stop = Reason("its cable only passes through here, uncut")
        extending.append(_of_label(house, figures, circuit, box, (stop,), ()))
    cables = tuple(_cables(house, box, extending))
    return BoxRoom(box.id, cables, tuple(_unless_full(house, each, cables) for each in extending))


def _unless_full(house: House, each: Extending, cables: tuple[CableRoom, ...]) -> Extending:
    """A box that has no room for the thinnest cable that the breaker allows stops it as well."""
    wanted = [one.fits for one in cables if each.least is None or one.wire == each.least]
    if not wanted or any(fits is not False for fits in wanted):
        return each
    full = Reason(
        "the box is full: no cable that its breaker allows fits it", cite_in(house.edition, "314.16(B)")
    )
    return replace(each, stops=(*each.stops, full))


def _cables(house: House, box: Box, extending: Iterable[Extending]) -> Iterator[CableRoom]:
    """Whether each of the cables fits that the breakers here want; every one where no rating is recorded."""
    wanted = {each.least for each in extending if each.least is not None}
    for name, (insulated, wire) in CABLES.items():
        if wanted and wire not in wanted:
            continue
        fill = fill_with(house, box, insulated, wire, house.edition)
        if fill is not None:
            yield CableRoom(name, wire, fill.least, fill.volume.value, fill.fits, fill.lacks)


def _of_offer(
    house: House, network: Network, figures: Figures, box: Box, offers: BoxOffers, offer: Offer
) -> Extending:
    stops: list[Reason] = []
    lacks = list(offers.doubts)
    lacks += [each.reason for point in offer.hot for each in network.unknown_at(point)]
    if not offer.hot:
        stops.append(Reason("it comes here through a switch alone, so nothing here is always hot"))
    elif not offer.neutral:
        stops.append(Reason("no neutral of that circuit comes here on the same side"))
    if not offers.ground:
        if offers.doubts:
            lacks.append(f"whether an equipment ground comes to box {box.id}")
        else:
            stops.append(
                Reason("no equipment ground comes here; a GFCI device does not stand for one",
                       cite_for(house.edition, "250.130(C)"))
            )  # fmt: skip
    heeds = [
        Reason(f"it is behind {each}: when that trips, the new point goes dead too") for each in offer.behind
    ]
    return _extending(house, figures, box, offer.circuit, offer.feed.breaker, stops, lacks, heeds, offer)


def _of_label(
    house: House,
    figures: Figures,
    circuit: str,
    box: Box,
    stops: tuple[Reason, ...],
    lacks: tuple[str, ...],
) -> Extending:
    """A circuit of which no conductor in the box is known to come from a breaker."""
    known = house.circuits.get(circuit)
    breaker = known.breakers[0] if known is not None and known.breakers else ""
    return _extending(house, figures, box, circuit, breaker, list(stops), list(lacks), [], None)


def _extending(
    house: House,
    figures: Figures,
    box: Box,
    circuit_id: str | None,
    breaker: str,
    stops: list[Reason],
    lacks: list[str],
    heeds: list[Reason],
    offer: Offer | None,
) -> Extending:
    circuit = house.circuits.get(circuit_id or "")
    if box.record.size is NONE:
        stops.append(
            Reason("there is no box here, and a splice belongs in one", cite_for(house.edition, "300.15"))
        )
    if circuit is None:
        stops.append(Reason("it is no branch circuit of the record"))
    else:
        stops += _stops(house, figures, circuit)
        lacks += _lacks(house, circuit)
        heeds += _heeds(house, figures, circuit, breaker)
    rating = house.breakers[breaker].rating if breaker in house.breakers else None
    rating_a = rating.to("A") if isinstance(rating, Quantity) else None
    if rating_a is None and circuit is not None:
        lacks.append(
            f"the rating of breaker {breaker}" if breaker else f"which breaker feeds circuit {circuit.id}"
        )
    return Extending(
        offer,
        circuit_id,
        breaker,
        tuple(stops),
        tuple(dict.fromkeys(lacks)),
        tuple(heeds),
        _least(rating_a) if rating_a is not None else None,
    )


def _stops(house: House, figures: Figures, circuit: Circuit) -> Iterator[Reason]:
    purpose = circuit.record.purpose
    if purpose in NO_BRANCH_CIRCUITS:
        yield Reason("it is no branch circuit: it feeds a panel, or comes from a source")
    if purpose in ONE_APPLIANCE:
        yield Reason("one appliance has that circuit to itself", ONE_CIRCUIT)
    runs = [house.runs[each] for each in circuit.runs]
    if any(each.metal == "aluminium" and each.size <= BRANCH for run in runs for each in run.conductors):
        yield Reason("it has aluminium wire: for a specialist alone", cite("cpsc-516", "repair"))
    if any(isinstance(run.cable, Cable) and run.cable.kind in OPEN_KINDS for run in runs):
        yield Reason("it is open wiring: nothing more is hung on that", OPEN_ENDED)
    limit = figures.circuits[circuit.id].limiting
    allowed = limit.breaker.value if limit is not None else None
    for pole in figures.loads[circuit.id].poles:
        if (
            limit is not None
            and allowed is not None
            and pole.rating_a is not None
            and allowed < pole.rating_a
        ):
            yield Reason(f"its breaker is larger than {limit.called} allows: that is mended first")
            return


def _lacks(house: House, circuit: Circuit) -> Iterator[str]:
    if circuit.record.purpose == "untraced":
        yield "what this wiring is fed from and what it feeds: nobody could trace it"
    yield from (f"the cable of run {each}" for each in circuit.runs if not house.runs[each].conductors)


def _heeds(house: House, figures: Figures, circuit: Circuit, breaker: str) -> Iterator[Reason]:
    kept = KEPT.get(circuit.record.purpose or "")
    if kept is not None and (cited := cite_for(house.edition, kept[1])) is not None:
        yield Reason(f"that circuit is kept for {kept[0]}: for nothing elsewhere", cited)
    if circuit.record.purpose is None:
        yield Reason(
            "what that circuit is for is not recorded: it may be kept for a kitchen, a bath, a laundry"
        )
    if len(figures.loads[circuit.id].poles) > 1:
        said = "two hots share its neutral: splice the neutral, and let it hang on no device"
        yield Reason(said, cite_in(house.edition, "300.13(B)"))
    for pole in figures.loads[circuit.id].poles:
        if pole.breaker == breaker and pole.room is not None and not pole.room.left_a:
            yield Reason("no ampere is free on it, with all that is recorded on")
    alarms = any(house.devices[each].kind.is_ == "smoke-alarm" for each in circuit.devices)
    if alarms or circuit.record.purpose == "smoke-alarms":
        yield Reason("smoke alarms hang on it: say so before it is switched off, and prove them after")


def _least(rating_a: Fraction) -> WireSize | None:
    """The smallest of the common copper wires that a breaker of that rating may guard (240.4(D))."""
    limits = table("small-conductor-limit")
    sizes = sorted({wire for _, wire in CABLES.values()})
    return next(
        (each for each in sizes if (limits.number(("copper", each.name), "limit") or 0) >= rating_a), None
    )
