"""The test that halves what is suspect: the least effort first, and no box opened before it has to be."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from junctionary.house.model import House, Role
from junctionary.house.network import listed
from junctionary.house.sites import Site, SiteFacts, sites_of
from junctionary.house.supply import Supply
from junctionary.house.told import Told

Places = Sequence[tuple[Site, tuple[Role, ...]]]


@dataclass(frozen=True, slots=True)
class NextTest:
    """One test. ``this`` and ``other`` are the weights of the suspects that its two outcomes leave."""

    kind: Literal["face", "reading", "wiggle", "box", "panel", "run"]
    at: str
    do: str
    this: int
    other: int


def next_test(
    house: House,
    held: Supply,
    marks: Told,
    places: Places,
    left: Mapping[Role, Iterable[str]],
    facts: SiteFacts,
) -> NextTest | None:
    """What to do next; None where there is nothing to tell apart.

    Outlets not yet tried come first, then a reading at the first dead one,
    then a plug moved gently in it, and only then the box, panel or run that
    parts the rest.
    """
    if not places:
        return None
    total = sum(site.weight for site, _ in places)
    tried = marks.ground if "ground" in left else marks.dead
    if len(places) > 1:
        if "ground" not in left and (face := _best_face(house, held, marks, places, left, facts, total)):
            return face
        if "ground" not in left and (reading := _reading(marks, places, total)):
            return reading
    if tried and held.outlets[tried[0]].is_face and len(places) > 1:
        device = held.outlets[tried[0]].device
        here = sum(site.weight for site, _ in places if site.box == house.devices[device].box)
        if here > 0 and "ground" not in left and not marks.readings:
            do = f"move a lamp's plug gently in {device}: if the lamp flickers, the fault is in that box"
            return NextTest("wiggle", device, do, here, total - here)
    return _opening(house, places, total)


def _best_face(
    house: House,
    held: Supply,
    marks: Told,
    places: Places,
    left: Mapping[Role, Iterable[str]],
    facts: SiteFacts,
    total: int,
) -> NextTest | None:
    """The untried outlet that parts the suspects most evenly; faces of receptacles before lamps.

    Outlets of the dead ones' own breakers come before all others: one of another breaker may be dead by that.
    """
    weights = {site.id: site.weight for site, _ in places}
    own = {feed.breaker for each in marks.dead for feed in held.feeds[each]}
    at = {
        (role, point): [
            site.id for site in sites_of(facts, held.trees[role].edge(point)) if site.id in weights
        ]
        for role, points in left.items()
        for point in points
    }
    told = {*marks.dead, *marks.live}
    best: tuple[tuple[bool, bool, int], NextTest] | None = None
    for outlet in held.outlets.values():
        if outlet.id in told:
            continue
        hung = {
            site
            for role in left
            for start in held.starts[role][outlet.id]
            for point in held.trees[role].way(start)
            for site in at.get((role, point), ())
        }
        this = sum(weights[each] for each in hung)
        split = min(this, total - this)
        breakers = {feed.breaker for feed in held.feeds[outlet.id]}
        rank = (not own.isdisjoint(breakers), outlet.is_face, split)
        if split > 0 and (best is None or rank > best[0]):
            how = "with a tester" if outlet.is_face else "with its switches tried in every position"
            do = f"try {outlet.id} {how}: if it is dead too, the fault is before it, toward the panel;"
            do += " if it works, all before it is good"
            if not rank[0]:
                both = _in_common(house, [site for site, _ in places if site.id in hung])
                certain = "" if own and breakers else "perhaps "
                do = (
                    f"try {outlet.id} {how}; it is {certain}on another breaker: if it is dead too with"
                    f" its own breaker on, look at what feeds both ({both});"
                    " if it works, what feeds both is good"
                )
            best = (rank, NextTest("face", outlet.id, do, this, total - this))
    return best[1] if best else None


def _in_common(house: House, sites: Iterable[Site]) -> str:
    """What feeds two outlets: breakers; boxes, cables, the utility. Panels where it is nothing else."""
    breakers: dict[str, None] = {}
    found: dict[str, None] = {}
    panels: dict[str, None] = {}
    for site in sites:
        if site.kind == "breaker":
            breakers[site.id] = None
        elif site.box is not None:
            found[f"box {site.box}"] = None
        elif site.panel is not None:
            panels[_panel(house, site.panel)] = None
        elif site.run is not None:
            found[_cable(house, site.run)] = None
        else:
            found["the utility's conductors" if site.kind == "utility's side" else "the feeder"] = None
    return "; ".join(listed(tuple(each)) for each in (breakers, found) if each) or listed(tuple(panels))


def _reading(marks: Told, places: Places, total: int) -> NextTest | None:
    """A reading at the first dead point, where it would tell hot from neutral."""
    if any(each in marks.readings for each in marks.dead):
        return None
    hot = sum(site.weight for site, roles in places if "hot" in roles)
    if not 0 < hot < total:
        return None
    do = (
        f"measure at {marks.dead[0]} with a low-impedance tester: hot to neutral, hot to ground,"
        " neutral to ground; then tell the reading"
    )
    return NextTest("reading", marks.dead[0], do, hot, total - hot)


def _opening(house: House, places: Places, total: int) -> NextTest:
    """The box that holds most of what is suspect; a panel and a run come after every box."""
    here: dict[tuple[int, Literal["box", "panel", "run"], str], int] = {}
    for site, _ in places:
        if site.box is not None:
            key: tuple[int, Literal["box", "panel", "run"], str] = (0, "box", site.box)
        elif site.panel is not None:
            key = (1, "panel", site.panel)
        else:
            key = (2, "run", site.run or site.id)
        here[key] = here.get(key, 0) + site.weight
    (_, kind, at), weight = min(here.items(), key=lambda each: (each[0][0], -each[1]))
    do = {
        "box": f"switch off all that the list of box {at} names, open it, prove it dead, then tug each wire",
        "panel": f"have a licensed electrician look in {_panel(house, at)}:"
        " its line lugs stay live with the main off",
        "run": f"only when both ends of {_cable(house, at)} are proved good:"
        " part them and prove each conductor through",
    }[kind]
    return NextTest(kind, at, do, weight, total - weight)


def _panel(house: House, id_: str) -> str:
    return house.panels[id_].name if id_ in house.panels else id_


def _cable(house: House, id_: str) -> str:
    return f"cable {id_}" if id_ in house.runs else id_
