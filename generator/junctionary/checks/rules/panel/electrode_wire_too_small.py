"""The wire to a grounding electrode is smaller than it may be.

Why it matters: it takes lightning and faults of the utility's lines to earth. Too small, it melts when it
    is needed, and is the easiest of all wires to break by hand.
What to do: run a whole wire of the right size from the service to the electrode, with the connector made
    for it.
Cannot tell: when the electrodes of the service, the wire to one, or the service's conductors are not
    recorded, or what an electrode is. The wire is taken to go to that electrode alone; a ring's own size
    is not in the record.
Stands: on the line of the electrode, in house.yaml.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import ElectrodeWire, Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "250.66"),
        cite("nec-2023", "250.66(A)"),
        cite("nec-2023", "250.66(B)"),
    ),
    ROUGHED,
)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
service:
  conductors: {size: 4/0 AWG, metal: aluminium}
  disconnect: main
  electrodes:
    - {is: concrete-encased, wire: 6 AWG copper}    #! electrode-wire-too-small
    - {is: rod, wire: 6 AWG copper}
[panels/main.yaml]
panel: main
spaces: 8
"""

PASSES = FAILS.replace("concrete-encased, wire: 6 AWG", "concrete-encased, wire: 4 AWG").replace(
    "    #! electrode-wire-too-small", ""
)

UNTOLD = PASSES.replace("{is: rod, wire: 6 AWG copper}", "rod")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The wire to each electrode of the service and of every building."""
    service = house.record.service
    if service is not None and service.electrodes is None:
        about = (service.disconnect,) if service.disconnect else tuple(house.panels)
        if about:
            place = house.record.place_of("service")
            yield CannotTell(about, ("what electrodes the service has",), place)
    for each in figures.electrodes:
        about = (each.panel,) if each.panel else (each.at,)
        if each.lacks:
            yield CannotTell(about, each.lacks, each.place)
        elif each.suits is False:
            yield _fault(each, about)


def _fault(each: ElectrodeWire, about: tuple[str, ...]) -> Fault:
    assert each.wire is not None
    of = "the service" if each.at == "service" else f"building {each.at}"
    return Fault(
        place=each.place,
        about=about,
        found=f"The wire to the {each.electrode} electrode of {of} is {each.wire.size} {each.wire.metal}.",
        allowed=f"At least {each.needs.size} {each.wire.metal} to that electrode.",
        because="It melts when lightning or a fault of the lines makes it carry what it is there for.",
        do=f"Run {each.needs.size} {each.wire.metal} in one piece to the {each.electrode} electrode of {of}.",
        working=each.needs.worked.steps,
        edition=each.edition,
    )
