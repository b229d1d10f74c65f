"""Where to look first when something is dead: the places whose single failure explains it.

From which outlets are dead, which work, and what a meter showed there. A
place is a suspect when every dead point hangs on it and no working one does:
for each role the common part of the ways of the dead, less the ways of the
live. A search by a record, and no test: before any box is opened, all that
its isolation lists is off and proved dead.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass

from junctionary.house.isolate import Isolation, isolate, isolate_panel, isolate_run
from junctionary.house.model import House, Role
from junctionary.house.network import Edge, Network
from junctionary.house.next_test import NextTest, next_test
from junctionary.house.resets import Reset, resets_of
from junctionary.house.scope import Scope, scope_of
from junctionary.house.sites import Site, SiteFacts, facts_of, sites_of
from junctionary.house.supply import Supply, supply
from junctionary.house.told import Told, told
from junctionary.house.unexplained import unexplained

SIGNS = (
    "heat, a smell, a buzz, smoke or water at any device, box or panel",
    "a tingle from anything metal",
    "a reading above 130 V, or lights that brighten when something starts",
    "some lights bright and others dim",
    "aluminium branch wiring",
)
"""Signs that stop the search: breaker or main off if it can be reached without danger, and call for help."""


@dataclass(frozen=True, slots=True)
class Suspect:
    """One place whose failure alone explains all that was told.

    ``roles`` are the conductors of which it would be the break; ``before`` is
    what must be off before it is touched, None where only the utility can.
    """

    site: Site
    roles: tuple[Role, ...]
    before: Isolation | None


@dataclass(frozen=True, slots=True)
class Suspicion:
    """Where to look, in order.

    ``signs`` stop any search; ``stop`` are reasons in what was told or
    recorded to stop this one. ``resets`` come before ``suspects``, which
    stand likeliest first by common practice. ``unexplained`` says why no
    single fault explains it; ``unknown`` what the ways of the dead meet that
    nobody could tell. ``last_live`` and ``first_dead`` are the boxes or
    panels at the two ends of what is suspect.
    """

    dead: tuple[str, ...]
    live: tuple[str, ...]
    signs: tuple[str, ...]
    stop: tuple[str, ...]
    scope: Scope
    resets: tuple[Reset, ...]
    suspects: tuple[Suspect, ...]
    last_live: str | None
    first_dead: str | None
    unexplained: tuple[str, ...]
    unknown: tuple[str, ...]
    next: NextTest | None


@dataclass(frozen=True, slots=True)
class Ways:
    """What a house's searches rest on, worked out once."""

    supply: Supply
    facts: SiteFacts


def ways(house: House, network: Network) -> Ways:
    """What every search of this house rests on; give it to ``suspects`` when there are several."""
    return Ways(supply(house, network), facts_of(house, network))


def suspects(
    house: House,
    network: Network,
    dead: Iterable[str],
    live: Iterable[str] = (),
    readings: Mapping[str, str] | None = None,
    known: Ways | None = None,
) -> Suspicion:
    """Where to look, given outlets that are dead and that work, and readings by outlet (see ``READINGS``).

    Points are named as devices, halves, boxes or loads. KeyError where nothing
    that could be dead or live has that name, or where there is no such reading.
    """
    known = known or ways(house, network)
    held = known.supply
    marks = told(house, held.outlets, dead, live, readings or {})
    searched: tuple[Role, ...] = ("ground",) if marks.ground and not marks.dead else ("hot", "neutral")
    common = {role: _common(held, marks, role) for role in searched}
    proved = {role: _proved(held, marks, role) for role in searched}
    left = {
        role: [] if marks.wrong else [point for point in common[role] if point not in proved[role]]
        for role in searched
    }
    edges = {role: [held.trees[role].edge(point) for point in left[role]] for role in searched}
    scope = scope_of(house, network, held, marks, edges)
    stop = (*_over_range(marks), *scope.stop, *_aluminium(house, held, marks))
    halted = any(each.stops for each in marks.readings.values())
    found = [] if halted else list(_suspects(held, known.facts, marks, edges))
    if not (halted or marks.wrong or "ground" in searched or marks.single or marks.whole):
        found += _all_poles(held, known.facts, marks, proved["hot"], {site.id for site, _ in found})
    ordered = _ordered(house, network, found)
    ends = _ends(held, left) if any(left.values()) and ordered else []
    return Suspicion(
        dead=(*marks.dead, *(() if marks.dead else marks.ground)),
        live=marks.live,
        signs=SIGNS,
        stop=stop,
        scope=scope,
        resets=() if halted or not marks.dead else resets_of(house, network, held, marks, proved["hot"]),
        suspects=ordered,
        first_dead=ends[0] if ends else None,
        last_live=ends[1] if ends else None,
        unexplained=() if ordered or halted else unexplained(held, marks, common, left),
        unknown=_unknown(network, held, marks, searched),
        next=next_test(house, held, marks, [(each.site, each.roles) for each in ordered], left, known.facts),
    )


def _targets(marks: Told, role: Role) -> tuple[str, ...]:
    return marks.ground if role == "ground" else marks.dead


def _common(held: Supply, marks: Told, role: Role) -> tuple[str, ...]:
    """The points of the ways of all the dead, nearest the first of them first.

    A point of which nothing recorded leads to a source is left out, and told of as unknown.
    """
    tree = held.trees[role]
    found: dict[str, None] | None = None
    for each in _targets(marks, role):
        if each in held.lost[role]:
            continue
        own = dict.fromkeys(point for start in held.starts[role][each] for point in tree.way(start))
        found = own if found is None else {point: None for point in found if point in own}
    return tuple(found or ())


def _proved(held: Supply, marks: Told, role: Role) -> set[str]:
    proved: set[str] = set()
    for each in marks.proved_ground if role == "ground" else marks.live:
        for start in held.starts[role][each]:
            held.trees[role].prove(start, proved)
    return proved


def _suspects(
    held: Supply, facts: SiteFacts, marks: Told, edges: Mapping[Role, Iterable[Edge]]
) -> Iterator[tuple[Site, tuple[Role, ...]]]:
    """Every place of which a connection is left, with the roles in which it is."""
    sites: dict[str, Site] = {}
    roles: dict[str, dict[Role, None]] = {}
    opens: set[str] = set()
    for role, some in edges.items():
        for edge in some:
            for site in sites_of(facts, edge):
                if site.id not in sites or sites[site.id].weight < site.weight:
                    sites[site.id] = site
                roles.setdefault(site.id, {})[role] = None
                if edge.kind == "protector":
                    opens.add(site.id)
    blind = all(each in held.lost["neutral"] for each in marks.dead)
    for id_, site in sites.items():
        both = "hot" in roles[id_] and "neutral" in roles[id_]
        if id_ in opens and (marks.single or not (both or blind)):
            # A GFCI device opens both its poles: one conductor alone is not its doing.
            continue
        if marks.whole and not both:
            continue
        if both or "ground" in roles[id_] or any(each in marks.roles for each in roles[id_]):
            own = tuple(each for each in roles[id_] if each == "ground" or each in marks.roles)
            yield site, own


def _all_poles(
    held: Supply, facts: SiteFacts, marks: Told, proved: Collection[str], listed: Collection[str]
) -> Iterator[tuple[Site, tuple[Role, ...]]]:
    """Breakers and mains of several poles, one or another of which feeds each dead point."""
    if "hot" not in marks.roles:
        return
    tree = held.trees["hot"]
    working = {tree.edge(point).of for point in proved}
    common: dict[str, Edge] | None = None
    for each in marks.dead:
        if each not in held.lost["hot"]:
            trails = (edge for start in held.starts["hot"][each] for edge in tree.trail(start))
            own = {edge.of: edge for edge in trails if edge.kind in ("breaker", "main")}
            common = own if common is None else {id_: edge for id_, edge in common.items() if id_ in own}
    for id_, edge in (common or {}).items():
        if id_ not in working and id_ not in listed:
            yield from ((site, ("hot",)) for site in sites_of(facts, edge))


def _ordered(
    house: House, network: Network, found: Iterable[tuple[Site, tuple[Role, ...]]]
) -> tuple[Suspect, ...]:
    """Likeliest first, each with what must be off before it; worked out once for each box, panel and run."""
    lists: dict[tuple[str, str], Isolation] = {}

    def before(site: Site) -> Isolation | None:
        for kind, id_, ask in (
            ("box", site.box, isolate), ("panel", site.panel, isolate_panel), ("run", site.run, isolate_run),
        ):  # fmt: skip
            if id_ is not None:
                if (kind, id_) not in lists:
                    lists[kind, id_] = ask(house, network, id_)
                return lists[kind, id_]
        return None

    by_weight = sorted(found, key=lambda each: -each[0].weight)
    return tuple(Suspect(site, roles, before(site)) for site, roles in by_weight)


def _ends(held: Supply, left: Mapping[Role, list[str]]) -> list[str]:
    """The box or panel at the dead end of what is left, and that at its live end."""
    role: Role = next(role for role, points in left.items() if points)
    near, far = left[role][0], left[role][-1]
    return [stands(near), stands(held.trees[role].edge(far).other(far))]


def stands(point: str) -> str:
    """The box or panel of a point: ``K1`` of ``K1/j1`` and of ``K1.r1.brass``."""
    whole, slash, _ = point.partition("/")
    return whole if slash else point.partition(".")[0]


def _over_range(marks: Told) -> Iterator[str]:
    for name, reading in marks.readings.items():
        if reading.stops:
            yield f"{name} reads {reading.shows}: {reading.means}; {reading.then}"


def _aluminium(house: House, held: Supply, marks: Told) -> Iterator[str]:
    """Aluminium of branch size on the ways of the dead: practice has it that owners leave it alone."""
    tree = held.trees["hot"]
    runs: dict[str, None] = {}
    for each in marks.dead:
        for start in held.starts["hot"][each]:
            for point in tree.way(start):
                edge = tree.edge(point)
                if edge.kind == "conductor":
                    runs[edge.of] = None
    for run in runs:
        conductors = house.runs[run].conductors
        if any(each.metal == "aluminium" and str(each.size) in BRANCH_SIZES for each in conductors):
            rest = "its joints burn; leave it to a licensed electrician"
            yield f"cable {run} is aluminium branch wiring: {rest}"


BRANCH_SIZES = ("12 AWG", "10 AWG")


def _unknown(network: Network, held: Supply, marks: Told, searched: Iterable[Role]) -> tuple[str, ...]:
    """What the ways of the dead meet that nobody could tell, and which of them lead nowhere."""
    said: dict[str, None] = {}
    for role in searched:
        for each in _targets(marks, role):
            if each in held.lost[role]:
                said[f"by its {role} the record leads from {each} to no source: left out there"] = None
            outlet = held.outlets[each]
            for start in outlet.ground if role == "ground" else outlet.carries:
                said.update(dict.fromkeys(unknown.reason for unknown in network.unknown_at(start)))
    return tuple(said)
