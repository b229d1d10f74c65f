"""What is said of a value that cannot be read: where, what was found, what was expected, what to do."""

from collections.abc import Callable

import pytest

ProblemsOf = Callable[[str, str], list[str]]

BOX = "boxes/den.yaml"
ROOM = "rooms/den.yaml"
PANEL = "panels/main.yaml"
CIRCUIT = "circuits/c.yaml"
DEVICES = "devices/all.yaml"

SAID: dict[str, tuple[str, str, str]] = {
    "an unknown key": (
        ROOM,
        "room: den\nname: Den\nkind: den\ncieling: 8 ft\n",
        "rooms/den.yaml:4:1: unknown key 'cieling'; expected 'ceiling', the nearest known key; "
        "write ceiling or take the key out",
    ),
    "an unknown key deep inside": (
        BOX,
        "room: den\nboxes:\n  K1:\n    size: {gang: 2}\n",
        "boxes/den.yaml:4:12: unknown key 'gang'; expected 'gangs', the nearest known key; "
        "write gangs or take the key out",
    ),
    "an unknown key like none": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, supported: {zzz: 1}}]\n",
        "circuits/c.yaml:3:29: unknown key 'zzz'; expected one of first, every; "
        "take the key out; junctionary explain tells what each key of a file says",
    ),
    "an age that is no date": (
        PANEL,
        "panel: main\nspaces: 4\ninstalled: last spring\n",
        "panels/main.yaml:3:12: 'last spring'; expected a year, a month or a day, such as 1957, 2025-10 or "
        "2025-10-11; write as much of the date as is known, the year first",
    ),
    "an age on no day": (
        PANEL,
        "panel: main\nspaces: 4\ninstalled: 2025-02-29\n",
        "panels/main.yaml:3:12: there is no 2025-02-29; expected a day of the calendar, as year, month and day; "
        "correct the month or the day",
    ),
    "an entry of no day": (
        "log.yaml",
        "- {date: 2026-02-30, change: seen}\n",
        "log.yaml:1:10: there is no 2026-02-30; expected a day of the calendar, as year, month and day; "
        "correct the month or the day",
    ),
    "a permit closed on no day": (
        "house.yaml",
        "house: Hut\nreference: nec-2023\npermits: [{number: B-1, closed: 2026-13-01}]\n",
        "house.yaml:3:33: there is no 2026-13-01; expected a day of the calendar, as year, month and day; "
        "correct the month or the day",
    ),
    "a cable of three and of two circuits": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: 14/3/2 NM-B}]\n",
        "circuits/c.yaml:3:24: '14/3/2 NM-B' is no cable known here; expected a cable such as 12/2 NM-B, "
        "14/2 NM no ground or 2-2-2-4 SER aluminium; "
        "write the size, the number of conductors and the kind as on the sheath, or unknown",
    ),
    "a cable with a ground and without": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: 2-2-2-4 SER no ground}]\n",
        "circuits/c.yaml:3:24: '2-2-2-4 SER no ground' has a ground, its last size, and has none; "
        "expected one of the two: 2-2-2-4 SER, or 2-2-2 SER no ground; "
        "leave out no ground, or the size of the ground",
    ),
    "a panel of no house's size": (
        PANEL,
        "panel: main\nspaces: 30000000\n",
        "panels/main.yaml:2:9: 30000000; expected how many spaces the panel has, from 1 to 200; "
        "count its spaces, empty ones too",
    ),
    "a breaker of nought": (
        PANEL,
        "panel: main\nspaces: 4\nbreakers: {1: {rating: 0 A}}\n",
        "panels/main.yaml:3:24: 0 A is nothing; expected a current above zero; leave it out if it is not known",
    ),
    "a load across nought": (
        CIRCUIT,
        "circuit: c\nname: C\nloads: [{id: fan, is: fan, volts: 0 V}]\n",
        "circuits/c.yaml:3:35: 0 V is nothing; expected a voltage above zero; leave it out if it is not known",
    ),
    "a transformer of nought": (
        "house.yaml",
        "house: Hut\nreference: nec-2023\nservice: {transformer: {rating: 0 kVA, impedance: 1.8 %}}\n",
        "house.yaml:3:33: 0 kVA is nothing; expected a load above zero; leave it out if it is not known",
    ),
    "an island without corners": (
        ROOM,
        "room: den\nname: Den\nkind: kitchen\nislands: [{outline: []}]\n",
        "rooms/den.yaml:4:21: 0 corners; expected three corners or more; add the others, or take the island out",
    ),
    "surge protection of no type": (
        PANEL,
        "panel: main\nspaces: 4\nsurge: {type: 4}\n",
        "panels/main.yaml:3:15: 4; expected the type on its label: 1, 2 or 3; write type: 1, 2 or 3, or unknown",
    ),
    "surge protection nowhere": (
        PANEL,
        "panel: main\nspaces: 4\nsurge: {type: 2, connected: cellar}\n",
        "panels/main.yaml:3:29: 'cellar' is not where it is connected; expected where it is connected such as "
        "before-main, lugs, built-in, or the breaker's spaces 39+41; "
        "write it like before-main, lugs, built-in, or the breaker's spaces 39+41",
    ),
    "surge protection in a word": (
        PANEL,
        "panel: main\nspaces: 4\nsurge: yes\n",
        "panels/main.yaml:3:8: 'yes' is no answer known here; expected one of none, unknown, or "
        "{type: 2, connected: lugs}; choose a known answer",
    ),
    "a permit without its number": (
        "house.yaml",
        "house: Hut\nreference: nec-2023\npermits: [{authority: County}]\n",
        "house.yaml:3:11: no 'number' here; expected the key 'number'; add it, such as number: E-2024-318",
    ),
    "a day no permit is closed on": (
        "house.yaml",
        "house: Hut\nreference: nec-2023\npermits: [{number: B-1, closed: 2026}]\n",
        "house.yaml:3:33: 2026; expected a date such as 2026-03-04; write year, month and day",
    ),
    "a missing key": (
        ROOM,
        "name: Den\nkind: den\n",
        "rooms/den.yaml:1:1: no 'room' here; expected the key 'room'; add it, such as room: kitchen",
    ),
    "a missing key deep inside": (
        CIRCUIT,
        "circuit: c\nname: C\nruns:\n  - {cable: 12/2 NM-B}\n",
        "circuits/c.yaml:4:5: no 'id' here; expected the key 'id'; add it, such as id: a1",
    ),
    "a missing key that has another name in the program": (
        DEVICES,
        "devices:\n  duplex: {face: 5-15R}\n",
        "devices/all.yaml:2:11: no 'is' here; expected the key 'is'; add it, such as is: receptacle",
    ),
    "a listing that says nothing of sizes": (
        DEVICES,
        'connectors:\n  odd: {is: twist-on, holds: ["2 x 14 AWG", "a handful"]}\n',
        "devices/all.yaml:2:45: 'a handful'; expected numbers and sizes such as 2 to 4 x 14 AWG or "
        "1 x 12 AWG + 2 x 18 AWG; write one combination as on the connector's box, the smaller number first",
    ),
    "a number without its unit": (
        PANEL,
        "panel: main\nspaces: 8\nbreakers:\n  1: {rating: 20}\n",
        "panels/main.yaml:4:15: 20 has no unit; expected a current with its unit, such as 20 A; "
        "write its unit after it, such as 20 A",
    ),
    "a quantity of another kind": (
        PANEL,
        "panel: main\nspaces: 8\nrating: 200 V\n",
        "panels/main.yaml:3:9: 200 V is a voltage; a current is due here; expected a current such as 20 A; "
        "use A, mA or kA",
    ),
    "a word of no list": (
        ROOM,
        "room: den\nname: Den\nkind: kitchn\n",
        "rooms/den.yaml:3:7: 'kitchn' is no kind of room known here; "
        "expected 'kitchen', the nearest known word; "
        "write kitchen",
    ),
    "a word like none of a short list": (
        PANEL,
        "panel: main\nspaces: 8\nkind: hutch\n",
        "panels/main.yaml:3:7: 'hutch' is no kind of panel known here; "
        "expected one of breaker-panel, fuse-panel, disconnect; choose a known kind of panel",
    ),
    "a word in a list of words": (
        PANEL,
        "panel: main\nspaces: 8\nbreakers:\n  1: {guards: [gfci, acfi]}\n",
        "panels/main.yaml:4:22: 'acfi' is no kind of protection known here; "
        "expected 'afci', the nearest known word; write afci",
    ),
    "a list where a mapping is due": (
        BOX,
        "room: den\nboxes:\n  K1: [a, b]\n",
        "boxes/den.yaml:3:7: a list; expected a mapping such as {termination: ..., torque: ...}; "
        "write it like boxes: {K1: {name: left of the sink, devices: {r1: gfci-20}}}",
    ),
    "a list where a mapping of names is due": (
        BOX,
        "room: den\nboxes: [K1]\n",
        "boxes/den.yaml:2:8: a list; expected a mapping; "
        "write it like boxes: {K1: {name: left of the sink, devices: {r1: gfci-20}}}",
    ),
    "a mapping where a list is due": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: {id: a1}\n",
        "circuits/c.yaml:3:7: a mapping; expected a list; "
        "write it like runs: [{id: a1, cable: 12/2 NM-B, from: main, to: K1, length: 38 ft}]",
    ),
    "a word where a list is due": (
        CIRCUIT,
        "circuit: c\nname: C\nserves: den\n",
        "circuits/c.yaml:3:9: 'den'; expected a list; write it like serves: [kitchen, den]",
    ),
    "nothing where a mapping is due": (
        BOX,
        "room: den\nboxes:\n  K1:\n    devices:\n",
        "boxes/den.yaml:4:13: nothing; expected a mapping; write it like devices: {r1: gfci-20, s1: switch}",
    ),
    "a name no marker could write": (
        BOX,
        "room: den\nboxes:\n  K 1: {}\n",
        "boxes/den.yaml:3:3: 'K 1' is not an id; expected an id such as K3; write it like K3",
    ),
    "a number where an id is due": (
        CIRCUIT,
        "circuit: 12\nname: C\n",
        'circuits/c.yaml:1:10: the number 12; expected an id; put it in quotes if it is meant: "12"',
    ),
    "yes where true is due": (
        PANEL,
        "panel: main\nspaces: 8\nbonded: yes\n",
        "panels/main.yaml:3:9: 'yes'; expected true or false; write true or false",
    ),
    "half a space": (
        PANEL,
        "panel: main\nspaces: 8.5\n",
        "panels/main.yaml:2:9: 8.5; expected how many spaces the panel has, from 1 to 200; "
        "count its spaces, empty ones too",
    ),
    "a day of no calendar's form": (
        BOX,
        "room: den\nboxes:\n  K1: {seen: May 2026}\n",
        "boxes/den.yaml:3:14: 'May 2026' is not a date; "
        "expected a date such as 2026-03-04; write it like 2026-03-04",
    ),
    "a cable of no known kind": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: 12/2 NMB}]\n",
        "circuits/c.yaml:3:24: 'NMB' in '12/2 NMB' is no kind of cable known here; "
        "expected 'NM-B', the nearest known kind; write NM-B",
    ),
    "a cable that is none": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: twelve two}]\n",
        "circuits/c.yaml:3:24: 'twelve two' is no cable known here; "
        "expected a cable such as 12/2 NM-B, 14/2 NM no ground or 2-2-2-4 SER aluminium; "
        "write the size, the number of conductors and the kind as on the sheath, or unknown",
    ),
    "a cable with a word too many": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: 12/2 NM-B orange}]\n",
        "circuits/c.yaml:3:24: 'orange' after the kind in '12/2 NM-B orange'; "
        "expected copper, aluminium or no ground; say the metal or that there is no ground, nothing else",
    ),
    "a cable of a size there is not": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: 55/2 NM-B}]\n",
        "circuits/c.yaml:3:24: there is no size 55 AWG; "
        "expected a wire size such as 14 AWG, 4/0 AWG or 250 kcmil; "
        "the gauge ends at 4/0 AWG; kcmil goes from 212 to 2000",
    ),
    "a raceway without wires": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: {raceway: 3/4 in EMT}}]\n",
        "circuits/c.yaml:3:24: a cable with the keys raceway; "
        "expected {raceway: 3/4 in EMT, wires: [12 AWG black, ...]} or {open: knob-and-tube, wires: [...]}; "
        "name the raceway or the open wiring, and list its wires",
    ),
    "a raceway of no known kind": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: {raceway: 3, wires: [12 AWG black]}}]\n",
        "circuits/c.yaml:3:24: 3 is no raceway known here; expected a size and a kind such as 3/4 in EMT; "
        "the kinds are EMT, PVC, FMC, LFNC, LFMC, RMC, IMC, ENT; write the kind last",
    ),
    "open wiring of no known kind": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: {open: knob and tub, wires: [14 AWG a]}}]\n",
        "circuits/c.yaml:3:24: 'knob and tub' is no kind of open wiring known here; "
        "expected one of knob-and-tube, open wires; write knob-and-tube",
    ),
    "a colour there is not": (
        DEVICES,
        "devices:\n  f: {is: luminaire, leads: [18 AWG blak]}\n",
        "devices/all.yaml:2:30: 'blak' in '18 AWG blak' is no colour known here; "
        "expected 'black', the nearest known colour; write black",
    ),
    "two wires of one colour in one run": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, "
        "cable: {raceway: 1 in EMT, wires: [8 AWG black, 8 AWG black]}}]\n",
        "circuits/c.yaml:3:24: two wires of one colour among black, black; "
        "expected a colour for each wire of its own within the run; "
        "tell them apart, for example as black and red, or record them as two runs",
    ),
    "a word of make-up misspelt": (
        BOX,
        "room: den\nboxes:\n  K1: {makeup: pigtaled}\n",
        "boxes/den.yaml:3:16: 'pigtaled' is no word of make-up known here; "
        "expected 'pigtailed', the nearest known word; write pigtailed",
    ),
    "a word of make-up misspelt in a list": (
        BOX,
        "room: den\nboxes:\n  K1:\n    makeup:\n      - {feed: a1}\n      - splice-thru\n",
        "boxes/den.yaml:6:9: 'splice-thru' is no word of make-up known here; "
        "expected 'splice-through', the nearest known word; write splice-through",
    ),
    "a box of no size that is spelt": (
        BOX,
        "room: den\nboxes:\n  K1: {size: nonne}\n",
        "boxes/den.yaml:3:14: 'nonne' is no size of a box known here; "
        "expected 'none', the nearest known word; write none",
    ),
    "a box of a size in words": (
        BOX,
        "room: den\nboxes:\n  K1: {size: big}\n",
        "boxes/den.yaml:3:14: 'big' is no size of a box known here; "
        "expected one of none, unknown, or a mapping; choose a known size of a box",
    ),
    "what a connector accepts, misspelt": (
        DEVICES,
        "connectors:\n  l3: {is: lever, accepts: 20-12}\n",
        "devices/all.yaml:2:28: '20-12'; expected sizes and metal such as 14 to 10 AWG copper; "
        "write the smallest and largest size and the metal",
    ),
    "a point of one length": (
        BOX,
        "room: den\nboxes:\n  K1: {at: {ceiling: [7 ft]}}\n",
        "boxes/den.yaml:3:22: a list; expected a point [x, y] of two lengths; write it like ceiling: [7 ft, 5 ft]",
    ),
    "a measured value without its unit": (
        "log.yaml",
        "- {date: 2026-01-02, test: voltage, value: 121}\n",
        "log.yaml:1:44: 121; expected a measured value with its unit, such as 14 in-lb, 120 V, 20 A; "
        "write the value with its unit",
    ),
    "an unknown key of the log": (
        "log.yaml",
        "- {date: 2026-01-02, test: voltage, abuot: K1}\n",
        "log.yaml:1:37: unknown key 'abuot'; expected 'about', the nearest known key; "
        "write about or take the key out",
    ),
    "a log that is no list": (
        "log.yaml",
        "date: 2026-01-02\n",
        "log.yaml:1:1: a mapping; expected a list of entries; begin each entry with - {date: ...}",
    ),
    "a key for another that must be there": (
        ROOM,
        "room: den\nname: Den\nkind: den\nthings:\n  - {is: window, what: window, wall: north}\n",
        "rooms/den.yaml:5:6: unknown key 'is'; expected one of what, wall, along, width, up, height, depth, to, "
        "hinged, swings_into, note; take the key out; junctionary explain tells what each key of a file says",
    ),
    "a box outside boxes": (
        BOX,
        "room: den\nK1: {name: by the door}\n",
        "boxes/den.yaml:2:1: unknown key 'K1'; expected one of room, defaults, boxes; "
        "take the key out; junctionary explain tells what each key of a file says",
    ),
    "a key that may be another": (
        BOX,
        "room: den\nboxes:\n  K1: {makeup: {feed: a1, switch: {s1: a2}}}\n",
        "boxes/den.yaml:3:27: unknown key 'switch'; expected 'switched', the nearest known key; "
        "write switched or take the key out",
    ),
    "a word that is a part of one": (
        "log.yaml",
        "- {date: 2026-01-02, test: gfci, about: K1}\n",
        "log.yaml:1:28: 'gfci' is no test known here; expected one of continuity, insulation-resistance, polarity, "
        "voltage, loop-impedance, fault-current, protector-trip-time, gfci-button, afci-button, torque, "
        "breaker-off, smoke-alarm, surge-indicator; write gfci-button if that is meant, else another of these",
    ),
    "a word near one of another meaning": (
        CIRCUIT,
        "circuit: c\nname: C\nloads: [{id: hair, is: hair-dryer}]\n",
        "circuits/c.yaml:3:24: 'hair-dryer' is no kind of load known here; expected one of range, oven, cooktop, "
        "dryer, washer, dishwasher, disposer, microwave, refrigerator, freezer, water-heater, space-heater, "
        "furnace, air-handler, heat-pump, air-conditioner, car-charger, pump, sump-pump, fan, hood, lighting, "
        "tool, alarm, network, medical, garage-door, other; write dryer if that is meant, else another of these",
    ),
    "a comma between quotes of the printer's kind": (
        PANEL,
        "panel: main\nspaces: 4\nbreakers:\n  1: {says: \u201cCounter, left\u201d}\n",
        "panels/main.yaml:4:23: unknown key 'left\u201d'; expected plain quotes around a value that holds a comma; "
        'write " for \u201d and where that begins',
    ),
    "an edition by its year": (
        "house.yaml",
        "house: Hut\nreference: 2023\n",
        "house.yaml:2:12: 2023 is no edition known here; expected one of nec-1940, nec-1947, nec-1951, nec-1953, "
        "nec-1956, nec-1959, nec-1962, nec-1965, nec-1968, nec-1971, nec-1975, nec-1978, nec-1981, nec-1984, "
        "nec-1987, nec-1990, nec-1993, nec-1996, nec-1999, nec-2002, nec-2005, nec-2008, nec-2011, nec-2014, "
        "nec-2017, nec-2020, nec-2023, nec-2026; write nec-2023 if that is meant, else another of these",
    ),
    "a day that no month has": (
        BOX,
        "room: den\nboxes:\n  K1: {evidence: {how: seen, date: 2026-02-30}}\n",
        "boxes/den.yaml:3:36: there is no 2026-02-30; expected a day of the calendar, as year, month and day; "
        "correct the month or the day",
    ),
    "an age on a day that no month has": (
        PANEL,
        "panel: main\nspaces: 4\nmade: 2025-11-31\n",
        "panels/main.yaml:3:7: there is no 2025-11-31; expected a day of the calendar, as year, month and day; "
        "correct the month or the day",
    ),
    "more spaces than any panel has": (
        PANEL,
        "panel: main\nspaces: 999999999999\n",
        "panels/main.yaml:2:9: 999999999999; expected how many spaces the panel has, from 1 to 200; "
        "count its spaces, empty ones too",
    ),
    "a number that no house has": (
        BOX,
        "room: den\nboxes:\n  K1: {size: {gangs: 99999999}}\n",
        "boxes/den.yaml:3:22: 99999999; expected a number that a house may have; check the number",
    ),
    "a cable of a size that none is made in": (
        CIRCUIT,
        "circuit: c\nname: C\nruns: [{id: a1, cable: 13/2 NM-B}]\n",
        "circuits/c.yaml:3:24: no cable has 13 AWG wires; expected a size that cable is made in, such as 14, 12 "
        "or 10 AWG; read the sheath again, or write unknown",
    ),
    "an outline in words": (
        ROOM,
        "room: den\nname: Den\nkind: den\noutline: 12 ft x 10 ft\n",
        "rooms/den.yaml:4:10: '12 ft x 10 ft'; expected a list; "
        "write it like outline: [[0 ft, 0 ft], [14 ft, 0 ft], [14 ft, 11 ft], [0 ft, 11 ft]]",
    ),
    "a point without units": (
        BOX,
        "room: den\nboxes:\n  K1: {at: {ceiling: [0, 5 ft]}}\n",
        "boxes/den.yaml:3:22: 0 has no unit; expected a position with its unit, such as 14 ft; "
        "write its unit after it, such as 0 ft",
    ),
    "the kind of a device told in its box": (
        BOX,
        "room: den\nboxes:\n  K1: {devices: {s1: {is: switch}}}\n",
        "boxes/den.yaml:3:22: a mapping; expected an id; write it like devices: {r1: gfci-20, s1: switch}",
    ),
    "a file that is a list": (
        ROOM,
        "- room: den\n",
        "rooms/den.yaml:1:1: a list; expected keys and values; begin the file with room: ...",
    ),
}


@pytest.mark.parametrize("name", SAID)
def test_it_is_said_where_and_what_to_do(problems_of: ProblemsOf, name: str) -> None:
    file, text, said = SAID[name]
    assert problems_of(file, text) == [said]


def test_a_key_that_stands_for_one_that_must_be_there_names_it(problems_of: ProblemsOf) -> None:
    missing, unknown = sorted(problems_of("log.yaml", "- {when: 2026-01-02, test: voltage}\n"))
    assert (
        missing == "log.yaml:1:3: no 'date' here; expected the key 'date'; add it, such as date: 2026-05-18"
    )
    assert unknown.endswith("while, died, by, note; write date if that is meant, else take the key out")


def test_every_fault_of_a_file_is_told(problems_of: ProblemsOf) -> None:
    said = problems_of(
        PANEL, "panel: main\nspaces: many\nratting: 100 A\nbreakers:\n  1: {rating: 15}\n  2: {guards: [x]}\n"
    )
    assert sorted(each.partition(": ")[0] for each in said) == [
        "panels/main.yaml:2:9",
        "panels/main.yaml:3:1",
        "panels/main.yaml:5:15",
        "panels/main.yaml:6:16",
    ]
