"""Random houses of careless owners: valid records with many faults at once, and with facts left out.

``careless_house`` takes a random sound house and writes slips into it, each at random places. A slip
that makes the record unreadable is taken back, so that every house can be judged.

    .venv/bin/python tests/careless_houses.py [HOUSES]

prints how many of the rules find a fault, and how many speak at all, in that many houses.
"""

import re
import sys
from collections import Counter
from random import Random

from random_houses import as_text, random_house

from junctionary.checks.engine import rules
from junctionary.checks.examples import ExampleError, judge_example, read_example

ROOMS = (
    "kitchen", "bathroom", "bedroom", "garage", "outdoors", "laundry", "hall", "basement", "attic",
    "crawlspace", "living", "workshop",
)  # fmt: skip
PURPOSES = (
    "general", "lighting", "receptacles", "small-appliance", "laundry", "bathroom", "garage", "appliance",
    "outdoor",
)  # fmt: skip
LOADS = (
    "is: space-heater, draws: 2000 W, volts: 120 V, fastened: true",
    "is: water-heater, draws: 4500 W, volts: 240 V, fastened: true",
    "is: car-charger, draws: 40 A, volts: 240 V, fastened: true",
    "is: range, draws: 12 kW, volts: 240 V",
    "is: dryer, draws: 5000 W, volts: 240 V",
    "is: disposer, draws: 900 W, volts: 120 V, motor: true, fastened: true",
    "is: tool, draws: 1700 W, volts: 120 V, motor: true",
    "is: other",
)
SLIPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"rating: 15 A, guards", ("rating: 20 A, guards", "rating: 17 A, guards", "rating: 40 A, guards")),
    (r"rating: 50 A, guards", ("rating: 30 A, guards",)),
    (r"guards: \[[a-z, ]*\]", ("guards: []", "guards: [afci]", "guards: [gfci, afci]")),
    (r"14/2 NM-B", ("12/2 NM-B", "14/2 NM no ground", "14/2 UF-B", "12/2 NM-B aluminium", "unknown")),
    (r"6/3 NM-B", ("8/3 NM-B", "6/2 NM-B")),
    (r"volume: 400 in3", ("volume: 14 in3", "volume: 18 in3", "volume: unknown")),
    (r"of: plastic", ("of: steel", "gangs: 1, of: plastic", "gangs: 1, depth: 1-1/2 in, of: plastic")),
    (r"cover: plate", ("cover: none", "cover: blank", "reach: {hidden_by: plaster}", "set_back: 1/2 in", "depth: 1 in")),
    (r"says: \"[^\"]*\"", ('says: "Lights"', 'says: "Nina, her room"', 'says: "?"')),
    (r"termination: loop", ("termination: push-in", "termination: clamp-plate")),
    (r"torque: listed", ("torque: none", "torque: 9 in-lb")),
    (r"free_conductor: 8 in", ("free_conductor: 4 in", "free_conductor: 6 in, supported: {first: 10 in, every: 4 ft}, from_edge: 1 in")),
    (r"splice: \[[^\]]*\]", ("splice: [lever-2]", "splice: [lever-3]")),
    (r"(?<=\n)ties: [^\n]*\n", ("",)),
    (r"(?<=\n)interlocks: [^\n]*\n", ("",)),
    (r"bonded: true", ("bonded: false", "bonded: unknown")),
    (r"bonded: false", ("bonded: true",)),
    (r"lugs: 75 C\n", ("clear: {width: 20 in, depth: 30 in, height: 7 ft}\n", "lugs: 60 C\n")),
    (r"kind: workshop", tuple(f"kind: {each}" for each in ROOMS)),
    (r"circuit: (c\d+)\nname: ([^\n]*)\nruns", tuple(f"circuit: \\1\nname: \\2\npurpose: {each}\nruns" for each in PURPOSES)),
    (r"circuit: (c\d+)\nname: ([^\n]*)\n(?=runs|purpose: [^f])", tuple(f"circuit: \\1\nname: \\2\nloads: [{{id: load-\\1, {each}}}]\n" for each in LOADS)),
    (r"rating: 200 A, disconnect", ("rating: 60 A, disconnect", "conductors: {size: 2 AWG, metal: aluminium}, disconnect")),
    (r"reference: nec-2023\n", ("reference: nec-2008\n", "reference: nec-2026\nbuilt: 1960\n", "reference: nec-2023\nfloor_area: 1800 ft2\n")),
    (r"marked: \{[^}]*\}", ("marked: {}",)),
    (r"takes: black", ("takes: red",)),
    (r"guarded: ", ("onward: ",)),
    (r"length: \d+ ft", ("length: 290 ft", "length: unknown", "length: 40 ft, buried: 6 in", "length: 40 ft, stage: roughed")),
    (r"duplex: \{is: receptacle, face: 5-15R, rating: 15 A", ("duplex: {is: receptacle, face: 5-20R, rating: 20 A", "duplex: {is: receptacle, outlets: 1, face: 5-15R, rating: 15 A")),
    (r"accepts: 14 to 12 AWG copper", ("accepts: 14 AWG copper",)),
    (r"(w\d+)\.black, (w\d+)\.black", (r"\1.black, \2.white",)),
    (r"makeup: \[end-of-run\]", ("makeup: unknown",)),
    (r"capped: \[[^\]]*\]", ("capped: []", "loose: []")),
    (r"lamp: \{is: luminaire, draws: 12 W", ("lamp: {is: luminaire, weight: 9 lb, draws: 60 W",)),
)  # fmt: skip
"""What stands in a random house, and what a careless owner has in its place."""


def careless_house(chance: Random) -> str:
    """The text of a random house with many slips, at random places."""
    text = as_text(random_house(chance, chance.randint(1, 5)))
    for was, slips in chance.sample(SLIPS, chance.randint(3, 14)):
        places = list(re.finditer(was, text))
        if not places:
            continue
        chosen = chance.sample(places, chance.randint(1, len(places)))
        slipped = text
        for place in sorted(chosen, key=lambda each: -each.start()):
            slipped = slipped[: place.start()] + place.expand(chance.choice(slips)) + slipped[place.end() :]
        try:
            read_example(slipped)
        except ExampleError:
            continue
        text = slipped
    return text


def main(houses: int) -> None:
    """Prints what the rules say of so many houses."""
    found, asked = Counter[str](), Counter[str]()
    for seed in range(houses):
        judgement = judge_example(careless_house(Random(seed))).judgement
        found.update({each.rule for each in judgement.findings})
        asked.update({each.rule for each in judgement.unrecorded})
    for rule in sorted(rules()):
        print(f"{rule:40}{found[rule]:6}{asked[rule]:6}")
    either = found.keys() | asked.keys()
    print(f"{len(found)} of {len(rules())} rules find a fault, {len(either)} speak, in {houses} houses")


if __name__ == "__main__":
    main(int(sys.argv[1]) if sys.argv[1:] else 200)
