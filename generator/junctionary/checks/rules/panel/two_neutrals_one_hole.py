"""A neutral shares its hole in a panel's bar with another wire.

Why it matters: the screw is made to hold one neutral. With two under it one is loose, and the hot of a
    circuit whose neutral has come loose puts its voltage on everything plugged in.
What to do: with the panel's main off and the bar proved dead, give each neutral a hole of its own. Only
    grounds may share one, where the panel's label allows it.
Cannot tell: when the hole of a neutral on the bar is not recorded. A neutral under a GFCI or AFCI breaker
    is on the breaker and not on the bar, unless its record says so. A feeder's neutral in the panel it
    feeds has a lug.
Stands: on the line of the breaker whose ``lands`` names a hole that an earlier one names.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Breaker, House, Panel
from junctionary.house.network import Network, bar_of
from junctionary.records.words import NEUTRAL_COLOURS
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "408.41"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {guards: [], feeds: den, says: Den, lands: {white: neutral-bar/4}}
  3: {guards: [], feeds: hall, says: Hall, lands: {white: neutral-bar/4}}    #! two-neutrals-one-hole
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: d1, cable: 14/2 NM-B, from: main, to: none}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: none}
"""

PASSES = FAILS.replace("bar/4}}    #! two-neutrals-one-hole", "bar/5}}")

UNTOLD = PASSES.replace(", lands: {white: neutral-bar/5}", "")


@dataclass(frozen=True, slots=True)
class _Wire:
    """One wire in a hole of a bar, by the word of its breaker."""

    breaker: Breaker
    colour: str

    @property
    def neutral(self) -> bool:
        return self.colour in NEUTRAL_COLOURS and self.colour not in (self.breaker.record.marked or {})

    @property
    def name(self) -> str:
        return f"the {self.colour} of {self.breaker.feeds}"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each hole of each panel's bars, then the neutrals whose hole nothing tells."""
    for panel in house.panels.values():
        yield from _shared(panel)
        if untold := tuple(_untold(house, network, panel)):
            needs = (f"the hole of the neutral bar that each neutral is in: {', '.join(untold)}",)
            yield CannotTell((panel.id, *untold), needs, panel.place)


def _shared(panel: Panel) -> Iterator[Fault]:
    holes: dict[str, list[_Wire]] = {}
    for breaker in panel.breakers:
        for colour, said in (breaker.record.lands or {}).items():
            hole = said.removeprefix(f"{panel.id}/")
            if hole.startswith(("neutral", "ground")) and "/" in hole:
                wire = _Wire(breaker, colour)
                before = holes.setdefault(hole, [])
                # Both breakers of a multiwire circuit may name the hole of the one neutral they share.
                if any((each.breaker.feeds, each.colour) == (breaker.feeds, colour) for each in before):
                    continue
                other = next((each for each in before if each.neutral or wire.neutral), None)
                if other is not None:
                    yield _fault(panel, hole, wire, other)
                before.append(wire)


def _fault(panel: Panel, hole: str, wire: _Wire, other: _Wire) -> Fault:
    fed = (each.breaker.feeds for each in (wire, other) if isinstance(each.breaker.feeds, str))
    return Fault(
        place=wire.breaker.place,
        about=(wire.breaker.id, other.breaker.id, *dict.fromkeys(fed)),
        found=f"Hole {hole} of panel {panel.id} holds {wire.name} and {other.name}.",
        allowed="Each neutral has a hole of its own.",
        because="One of the two is loose under the screw, and an open neutral burns what is plugged in.",
        do=f"With {panel.id} off at its main and the bar proved dead, move {wire.name} to an empty hole.",
        edition=panel.edition,
    )


def _untold(house: House, network: Network, panel: Panel) -> Iterator[str]:
    """The breakers whose circuit has a neutral on the bar, and no hole told for it."""
    bars = (bar_of(panel.id, "neutral"), bar_of(panel.id, "ground"))
    on_bar: dict[str, set[str]] = {}
    for bar in bars:
        for edge in network.at[bar]:
            colour = edge.a.rpartition(".")[2]
            if edge.kind == "bar" and edge.of in house.runs and colour in NEUTRAL_COLOURS:
                on_bar.setdefault(house.runs[edge.of].circuit, set()).add(colour)
    told: dict[str, set[str]] = {}
    for breaker in panel.breakers:
        for colour, said in (breaker.record.lands or {}).items():
            if isinstance(breaker.feeds, str) and "/" in said.removeprefix(f"{panel.id}/"):
                told.setdefault(breaker.feeds, set()).add(colour)
    seen: set[str] = set()
    for breaker in panel.breakers:
        feeds = breaker.feeds
        if not isinstance(feeds, str) or feeds in seen or breaker.guards:
            continue
        if on_bar.get(feeds, set()) - told.get(feeds, set()):
            seen.add(feeds)
            yield breaker.id
