"""What a switch turns on draws more than the switch is rated for.

Why it matters: the breaker guards the wire, not the switch. The contacts of a switch that carries too much
    burn and weld; it grows hot in the wall, and one day it does not open.
What to do: put in a switch rated for the load, or have fewer loads on it.
Cannot tell: when the switch's rating, or what a load behind it draws, is not recorded. A switch rated as its
    breaker, or above, is not asked, and the load is taken as it is recorded, without the margin that a
    motor's switch must have. From memory.
Stands: on the switch's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.figures.switched import switch_loads
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "404.14(A)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [gfci, afci], feeds: heat, says: "Bathroom heater"}
[circuits/heat.yaml]
circuit: heat
name: Bathroom heater
purpose: heating
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 12/2 NM-B, from: D1, to: D2}
loads:
  - {id: panel-heater, is: space-heater, draws: 1500 W, wired: D2.h1}
[rooms/bath.yaml]
room: bath
name: Bathroom
kind: bathroom
[boxes/bath.yaml]
room: bath
boxes:
  D1:
    devices: {s1: timer-10}    #! switch-overloaded
    makeup: {feed: b1, switched: {s1: b2}}
  D2: {devices: {h1: heater}, makeup: end-of-run}
[devices/all.yaml]
devices:
  timer-10: {is: timer, rating: 10 A}
  timer-15: {is: timer, rating: 15 A}
  heater: {is: appliance, volts: 120 V, leads: [14 AWG black, 14 AWG white, 14 AWG green]}
"""

PASSES = FAILS.replace("{s1: timer-10}", "{s1: timer-15}").replace("    #! switch-overloaded", "")

UNTOLD = PASSES.replace("draws: 1500 W, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each switch that is rated below its breaker, by what it turns on."""
    for each in switch_loads(house, figures.draws, figures.lamps):
        device = house.devices[each.switch]
        about = (device.id, *device.circuits, *each.draws)
        if each.rating_a is not None and each.least_a > each.rating_a:
            yield Fault(
                place=device.place,
                about=about,
                found=f"{device.id} is rated {amps(each.rating_a)}, and {listed(each.draws)} behind it "
                f"draw{'s' if len(each.draws) == 1 else ''} {amps(each.least_a)}.",
                allowed=f"At most {amps(each.rating_a)} behind that switch.",
                because="Its contacts burn or weld, and the breaker does not guard it.",
                do="Put in a switch rated for the load, or have fewer loads on it.",
                working=each.steps,
                edition=house.boxes[device.box].edition,
            )
            continue
        needs = (*([] if each.rating_a is not None else [f"the rating of {device.id}"]), *each.lacks)
        if needs:
            yield CannotTell(about, needs, device.place)
