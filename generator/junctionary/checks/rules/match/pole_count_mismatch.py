"""A load across both legs is fed by a single pole, or by two handles that move apart.

Why it matters: with one pole off, its other hot is still live, and so is all it feeds; whoever opens it
    trusts a handle that left half of it on. On one pole alone it does not work, and its neutral or its
    ground is wired for something it is not.
What to do: put in a two-pole breaker; where there are two single-pole ones, a listed handle tie will do.
Cannot tell: when no breaker is recorded for the circuit of a load or device made for both legs. Two
    breakers of one circuit are multiwire-untied from the 2008 edition on, and this rule speaks of
    them under older ones.
Stands: on the breaker's line, of two the first.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.voltages import made_for
from junctionary.checks.wired import open_together
from junctionary.checks.wording import headed
from junctionary.figures import Figures
from junctionary.house.model import Circuit, House
from junctionary.house.network import Network, listed
from junctionary.house.outlets import outlets_of_device
from junctionary.house.terminals import is_across
from junctionary.sources import cite, edition_year

RULE = Rule(HAZARD, (cite("nec-2023", "240.15(B)"), cite("nec-2023", "210.4(B)")), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2: {rating: 20 A, feeds: saw, says: Table saw}    #! pole-count-mismatch
[circuits/saw.yaml]
circuit: saw
name: Table saw
loads:
  - {id: table-saw, is: tool, draws: 2400 W, volts: 240 V}
"""

PASSES = FAILS.replace("  2: {", "  2+4: {").replace("    #! pole-count-mismatch", "")

UNTOLD = PASSES.replace("""  2+4: {rating: 20 A, feeds: saw, says: Table saw}\n""", "  2: unused\n")

TIED_BY_MULTIWIRE_SINCE = 2008


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit with a load or device made for both legs, by the poles that feed it."""
    for circuit in house.circuits.values():
        across = _across(house, circuit)
        if not across or not figures.circuits[circuit.id].branch:
            continue
        breakers = [house.breakers[each] for each in circuit.breakers]
        poles = sum(each.poles for each in breakers)
        old = edition_year(circuit.edition) < TIED_BY_MULTIWIRE_SINCE
        if not breakers:
            needs = (f"which breaker feeds circuit {circuit.id}",)
            yield CannotTell((circuit.id, *across), needs, circuit.place)
        elif poles == 1 and breakers[0].conductor is None:
            yield _fault(house, circuit, across, f"{breakers[0].id} has one pole")
        elif len(breakers) > 1 and old and not open_together(house, circuit.breakers):
            handles = f"{listed(circuit.breakers)} are not tied together"
            yield _fault(house, circuit, across, handles)


def _across(house: House, circuit: Circuit) -> tuple[str, ...]:
    """The loads and devices of a circuit that are made for both legs."""
    loads = [each.id for each in circuit.loads if each.volts is not None and is_across(each.volts.to("V"))]
    for id_ in circuit.devices:
        device = house.devices[id_]
        volts = made_for(house, device)
        if volts is not None and is_across(volts) and any(True for _ in outlets_of_device(device)):
            loads.append(id_)
    return tuple(loads)


def _fault(house: House, circuit: Circuit, across: tuple[str, ...], what: str) -> Fault:
    first = house.breakers[circuit.breakers[0]]
    are = "is" if len(across) == 1 else "are"
    one = len(circuit.breakers) == 1
    return Fault(
        place=first.place,
        about=(circuit.id, *circuit.breakers, *across),
        found=f"{headed(listed(across))} {are} made for both legs, and {what}.",
        allowed="One handle that opens both hots of such a load at once.",
        because="It gets half its voltage, or is wired for something it is not."
        if one
        else "With one handle off, its other hot is still live.",
        do="Put in a two-pole breaker on both legs, or correct what the record says of the load."
        if one
        else "Put in a two-pole breaker or a listed handle tie; until then switch both off together.",
        edition=circuit.edition,
    )
