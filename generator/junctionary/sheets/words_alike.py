"""Words of the trade and of plain speech that mean one thing, for whoever looks something up.

A table, not a rule: a word finds what the others of its line find, after what it finds itself.
"""

ALIKE: tuple[tuple[str, ...], ...] = (
    ("receptacle", "outlet", "plug", "socket", "duplex", "gfci-receptacle"),
    ("light", "lamp", "luminaire", "lighting", "fixture", "bulb", "pendant", "sconce"),
    ("switch", "dimmer", "rocker", "toggle"),
    ("gfci", "gfi", "reset", "protector"),
    ("breaker", "fuse", "overcurrent"),
    ("panel", "fusebox", "breakerbox", "loadcenter", "loadcentre", "switchboard", "subpanel"),
    ("box", "junction", "jbox"),
    ("cable", "run", "wire"),
    ("source", "inlet", "generator", "genny", "genset", "outage", "blackout"),
    ("alarm", "smoke", "detector"),
    ("refrigerator", "fridge", "icebox"),
    ("freezer", "deepfreeze"),
    ("range", "stove", "cooker", "oven", "cooktop", "hob"),
    ("disposer", "disposal", "grinder"),
    ("washer", "washing", "washingmachine"),
    ("laundry", "washing"),
    ("dryer", "drier"),
    ("hood", "extractor"),
    ("fan", "ventilator"),
    ("heater", "heating", "furnace", "boiler", "radiator", "baseboard"),
    ("conditioner", "ac", "cooling", "aircon"),
    ("charger", "car", "vehicle", "ev"),
    ("sump", "pump"),
    ("network", "router", "modem", "internet", "wifi"),
    ("television", "tv", "telly"),
    ("cellar", "basement"),
    ("attic", "loft"),
    ("bath", "bathroom", "washroom", "restroom", "toilet", "lavatory"),
    ("bedroom", "bed"),
    ("living", "lounge", "parlour", "parlor", "sitting"),
    ("hall", "hallway", "corridor", "passage", "landing"),
    ("porch", "veranda", "deck", "patio"),
    ("outdoor", "outside", "exterior", "yard", "garden"),
    ("workshop", "shed", "shop"),
    ("drive", "driveway"),
    ("counter", "worktop", "countertop"),
    ("sink", "basin"),
    ("couch", "sofa"),
    ("upper", "upstairs"),
    ("ground", "downstairs"),
    ("permit", "inspection"),
    ("insurer", "insurance"),
    ("buyer", "seller", "buying", "selling", "sale"),
    ("stair", "staircase"),
)

PASSED_OVER: tuple[str, ...] = (
    "a", "an", "the", "of", "in", "on", "at", "to", "for", "my", "our", "is", "are", "and", "with", "by",
    "near", "behind", "under", "over", "above", "below", "beside", "next", "what", "which", "where", "that",
    "from", "feed", "does", "turn", "off",
)  # fmt: skip
"""Words that say nothing of what is looked for, unless nothing else was typed."""
