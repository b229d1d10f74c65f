"""The closed lists: every word the record may choose from, in one place.

A list grows by adding a word here; the schema, the messages and the checks
follow. Words are the trade's own.
"""

ROOM_KINDS = (
    "kitchen", "dining", "living", "family", "bedroom", "bathroom", "hall", "foyer", "stair", "closet",
    "office", "den", "library", "sunroom", "recreation", "laundry", "utility", "pantry", "garage",
    "cellar", "basement", "crawlspace", "attic", "workshop", "storage", "porch", "deck", "outdoors", "other",
)  # fmt: skip

PURPOSES = (
    "small-appliance", "laundry", "bathroom", "garage", "general", "lighting", "receptacles", "appliance",
    "range", "dryer", "water-heater", "heating", "cooling", "heat-pump", "car-charger", "outdoor",
    "smoke-alarms", "pump", "feeder", "source", "workshop", "other", "untraced",
)  # fmt: skip

LOADS = (
    "range", "oven", "cooktop", "dryer", "washer", "dishwasher", "disposer", "microwave", "refrigerator",
    "freezer", "water-heater", "space-heater", "furnace", "air-handler", "heat-pump", "air-conditioner",
    "car-charger", "pump", "sump-pump", "fan", "hood", "lighting", "tool", "alarm", "network", "medical",
    "garage-door", "other",
)  # fmt: skip

DEVICES = (
    "receptacle", "gfci-receptacle", "gfci-device", "switch", "dimmer", "timer", "sensor", "disconnect",
    "luminaire", "fan", "smoke-alarm", "appliance", "inlet", "doorbell-transformer",
)  # fmt: skip

ELECTRODES = (
    "rod", "pipe", "plate", "concrete-encased", "ring", "water-pipe", "building-steel", "other",
)  # fmt: skip

SOURCES = ("generator-inlet", "standby-generator", "solar", "battery", "vehicle")
WITHOUT_UTILITY = ("stops", "runs", "islands")
PANEL_KINDS = ("breaker-panel", "fuse-panel", "disconnect")
GUARDS = ("gfci", "afci")
SURGE_AT = ("before-main", "lugs", "built-in")
BREAKER_KINDS = ("plug-fuse", "cartridge-fuse")

STAGES = ("planned", "roughed", "covered", "made-up", "energised", "verified", "as-found")
EVIDENCE = ("measured", "seen", "photo", "told", "assumed")
ROLES = ("owner", "electrician", "inspector", "unknown")

WAYS_TO_LAND = ("loop", "clamp-plate", "push-in", "lead", "lug")
CONNECTORS = ("twist-on", "lever", "push-in", "crimp", "set-screw")
JOINED_WITHOUT = ("none", "solder", "tape", "unknown")
COVERS = ("none", "blank", "plate", "in-use", "canopy")
CLAMPS = ("none", "inside", "outside")
METAL_BOXES = ("steel", "aluminium")
SURFACES = ("plaster", "board", "tile", "masonry", "wood", "panelling")
BURNS = ("wood", "panelling")
BOX_MATERIALS = ("plastic", "steel", "aluminium", "porcelain", "fibre")
BOX_SHAPES = ("round", "octagonal", "square", "device")
MARKS = (
    "tamper-resistant", "weather-resistant", "self-testing", "isolated-ground",
    "aluminium-rated", "fan-rated", "wireless",
)  # fmt: skip
LABELS = ("gfci-protected", "no-equipment-ground")
METALS = ("copper", "aluminium", "copper-clad")

SPLITS = ("brass", "silver", "both", "unknown")
MAKEUP_WORDS = ("end-of-run", "pigtailed", "feed-through", "splice-through", "unknown")

THINGS = (
    "door", "opening", "window", "fireplace", "cabinets", "counter", "sink", "cooktop", "range", "basin",
    "tub", "shower", "refrigerator", "washer", "dryer", "furnace", "water-heater", "railing",
)  # fmt: skip

TESTS = (
    "continuity", "insulation-resistance", "polarity", "voltage", "loop-impedance", "fault-current",
    "protector-trip-time", "gfci-button", "afci-button", "torque", "breaker-off", "smoke-alarm",
    "surge-indicator",
)  # fmt: skip

INSPECTIONS = ("rough-in", "cover", "service", "underground", "final", "other")
MATTERS = ("food", "heat", "water", "alarm", "medical", "data")
EDITIONS = (
    "nec-1940", "nec-1947", "nec-1951", "nec-1953", "nec-1956", "nec-1959", "nec-1962", "nec-1965",
    "nec-1968", "nec-1971", "nec-1975", "nec-1978", "nec-1981", "nec-1984", "nec-1987", "nec-1990",
    "nec-1993", "nec-1996", "nec-1999", "nec-2002", "nec-2005", "nec-2008", "nec-2011", "nec-2014",
    "nec-2017", "nec-2020", "nec-2023", "nec-2026",
)  # fmt: skip

COLOURS = (
    "black", "red", "blue", "white", "grey", "bare", "green", "green-yellow", "orange", "yellow", "brown",
    "purple", "pink", "white-red", "white-black", "armor", "a", "b", "c", "d",
)  # fmt: skip
NEUTRAL_COLOURS = ("white", "grey", "white-red", "white-black")
GROUND_COLOURS = ("bare", "green", "green-yellow", "armor")
UNTOLD_COLOURS = ("a", "b", "c", "d")
