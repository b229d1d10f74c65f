"""What is wired outdoors, without a plug, opens on no ground fault.

Why it matters: an outdoor unit, a pump or a charger stands on wet ground; a fault to its case waits there for
    a bare foot or a child's hand, and trips no ordinary breaker.
What to do: put in a breaker that opens on a ground fault.
Cannot tell: when what feeds it or what its breaker guards against is not recorded. Asked since the 2020
    edition of outlets of 50 A or less; since 2023 in garages and in buildings that stand apart as well.
    Lights are left out. Heating and cooling equipment is left out in 2023 where it was installed before
    September 2026 (from memory; by `installed` of the load, or where the record is older than that); in
    2020 only compressors on an inverter, by a tentative amendment: record whether they do. Many states
    amend this clause: ask the inspector.
Stands: on the device's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.ground_fault_wired import appliance_asked, wired_outdoors, wired_to
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.8(F)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [], feeds: cool, says: "Air conditioner, outdoor unit"}
[circuits/cool.yaml]
circuit: cool
name: Air conditioner
built_to: nec-2020
runs:
  - {id: b1, cable: 12/2 UF-B, from: main, to: D1}
loads:
  - {id: unit, is: air-conditioner, draws: 1200 VA, volts: 120 V, wired: D1.h1, inverter: false}
[rooms/yard.yaml]
room: yard
name: Yard
kind: outdoors
built_to: nec-2020
[boxes/yard.yaml]
room: yard
boxes:
  D1:
    devices: {h1: unit}    #! outdoor-outlet-without-gfci
    makeup: end-of-run
[devices/all.yaml]
devices:
  unit: {is: appliance, volts: 120 V, leads: [12 AWG black, 12 AWG white, 12 AWG green]}
"""

PASSES = FAILS.replace("inverter: false", "inverter: true").replace("    #! outdoor-outlet-without-gfci", "")

UNTOLD = PASSES.replace(", inverter: true", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device that is wired outdoors, but for those of which another check speaks."""
    for device in house.devices.values():
        guarded = figures.guarded.get(device.id)
        edition = house.boxes[device.box].edition
        asked = wired_outdoors(house, device, guarded.breakers) if guarded is not None else None
        listed = any(appliance_asked(each, edition_year(edition)) for each in wired_to(house, device))
        held = guarded.against("gfci") if guarded is not None else None
        if guarded is None or asked is None or listed or held:
            continue
        about = (device.id, *device.circuits, *guarded.breakers)
        if held is None or asked.lacks:
            yield CannotTell(about, (*guarded.lacks, *asked.lacks), device.place)
            continue
        yield Fault(
            place=device.place,
            about=about,
            found=f"{device.id} is wired {' and '.join(asked.places)}, and nothing on its way to the source "
            "opens on a ground fault.",
            allowed="There, an outlet of 50 A or less that opens on a ground fault.",
            because="A fault to its case waits for whoever stands on the ground and touches it.",
            do="Put in a breaker that opens on a ground fault; ask the inspector what is amended locally.",
            edition=edition,
        )
