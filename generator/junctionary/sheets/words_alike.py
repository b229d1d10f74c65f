"""Words of the trade and of plain speech that mean one thing, for whoever looks something up.

A table, not a rule: a word finds what the others of its line find, after what it finds itself. The first
word of a line is what a record most likely calls it, and comes before the others. Two words are written as
one: ``fusebox`` is found by ``fuse box``.
"""

ALIKE: tuple[tuple[str, ...], ...] = (
    ("receptacle", "outlet", "plug", "socket", "duplex", "powerpoint", "gfci-receptacle"),
    ("luminaire", "light", "lite", "lamp", "lighting", "fixture", "bulb", "pendant", "sconce", "chandelier",
     "downlight", "spotlight"),
    ("switch", "dimmer", "rocker", "toggle", "lightswitch"),
    ("gfci", "gfi", "reset", "resetbutton", "button", "protector", "groundfault"),
    ("afci", "arcfault"),
    ("breaker", "fuse", "overcurrent"),
    ("panel", "fusebox", "breakerbox", "loadcenter", "loadcentre", "switchboard", "subpanel", "fusepanel",
     "breakerpanel", "circuitbreaker"),
    ("box", "junction", "jbox"),
    ("cable", "run", "wire"),
    ("source", "inlet", "generator", "genny", "genset", "outage", "blackout"),
    ("alarm", "smoke", "detector", "smokealarm"),
    ("refrigerator", "fridge", "frig", "icebox"),
    ("freezer", "deepfreeze", "deepfreezer", "icechest"),
    ("range", "stove", "cooker", "oven", "cooktop", "hob", "burner"),
    ("disposer", "disposal", "grinder", "garburator", "garbagedisposal", "wastedisposal"),
    ("washer", "washing", "washingmachine", "clotheswasher"),
    ("laundry", "washing", "washroom", "utility"),
    ("dryer", "drier", "tumbledryer", "clothesdryer"),
    ("dishwasher", "dishes"),
    ("microwave", "nuker"),
    ("hood", "extractor"),
    ("fan", "ventilator", "exhaust"),
    ("waterheater", "hotwater", "hotwatertank", "immersion", "geyser", "calorifier", "boiler"),
    ("heater", "heating", "furnace", "radiator", "baseboard", "heat"),
    ("airhandler", "furnace", "hvac", "airconditioning", "aircon", "ac", "heating"),
    ("heatpump", "hvac", "airconditioning", "aircon", "airconditioner", "ac", "condenser", "cooling",
     "heating"),
    ("conditioner", "ac", "cooling", "aircon"),
    ("charger", "car", "vehicle", "ev"),
    ("sump", "pump"),
    ("network", "router", "modem", "internet", "wifi"),
    ("television", "tv", "telly"),
    ("doorbell", "chime"),
    ("cellar", "basement"),
    ("attic", "loft"),
    ("bathroom", "bath", "washroom", "restroom", "toilet", "lavatory", "shower", "powderroom"),
    ("bedroom", "bed"),
    ("living", "lounge", "parlour", "parlor", "sitting", "den", "family"),
    ("hall", "hallway", "corridor", "passage", "landing", "foyer", "entry", "entrance"),
    ("porch", "veranda", "deck", "patio"),
    ("outdoor", "outside", "exterior", "yard", "garden", "backyard"),
    ("workshop", "shed", "shop"),
    ("drive", "driveway", "carport"),
    ("counter", "worktop", "countertop"),
    ("sink", "basin", "vanity"),
    ("couch", "sofa"),
    ("upper", "upstairs"),
    ("ground", "downstairs"),
    ("permit", "inspection"),
    ("insurer", "insurance"),
    ("buyer", "seller", "buying", "selling", "sale"),
    ("stair", "staircase"),
    ("saw", "tablesaw"),
)  # fmt: skip

PASSED_OVER: tuple[str, ...] = (
    "a", "an", "the", "of", "in", "on", "at", "to", "for", "my", "our", "is", "are", "and", "with", "by",
    "near", "behind", "under", "over", "above", "below", "beside", "next", "what", "which", "where", "that",
    "from", "feed", "does", "turn", "off", "how", "do", "i", "can", "it", "its", "this", "there", "why",
    "who", "kill", "shut", "number", "has", "have", "will", "please", "help", "me", "room", "runs",
    "control", "power", "electricity", "circuit", "goes", "amp", "volt", "electric",
    "electrical",
)  # fmt: skip
"""Words that say nothing of what is looked for, unless nothing else was typed."""

COMPLAINTS: tuple[str, ...] = (
    "dead", "not", "working", "work", "wont", "doesnt", "isnt", "dont", "broken", "broke", "out", "lost",
    "gone", "stopped", "quit", "tripped", "trip", "tripping", "trips", "keeps", "went", "dark", "fails",
    "failed", "nothing", "down", "cold", "thawing", "warm", "reset", "no",
)  # fmt: skip
"""Words of who has something that is dead: passed over as well, and where to look is offered beside."""
