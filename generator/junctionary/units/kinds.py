"""The kinds of quantity a record speaks of, and how their units are spelled."""

from collections.abc import Mapping
from dataclasses import dataclass


class UnitError(ValueError):
    """A quantity that cannot be read or turned into another unit.

    ``found`` and ``expected`` are phrases, ``do`` is an instruction, as in a
    Problem; whoever knows the place makes one of it.
    """

    def __init__(self, found: str, expected: str, do: str) -> None:
        super().__init__(f"{found}; expected {expected}; {do}")
        self.found = found
        self.expected = expected
        self.do = do


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of quantity.

    ``called`` is it with its article, ``example`` one as a person writes it;
    ``units`` gives each tidy unit its other spellings, the usual unit first.
    ``measures`` is the kind its quantities belong to: a height is a length
    that may be below zero, and compares with lengths.
    """

    name: str
    called: str
    example: str
    units: Mapping[str, tuple[str, ...]]
    measures: str
    signed: bool = False

    def tidy(self, spelling: str) -> str | None:
        """The tidy unit for a spelling of it, or None when it is no unit of this kind."""
        for unit, others in self.units.items():
            if spelling == unit or spelling in others:
                return unit
        return None

    def spellings(self) -> list[str]:
        """Every spelling of every unit of this kind, tidy ones first."""
        return [*self.units, *(other for others in self.units.values() for other in others)]

    @property
    def expected(self) -> str:
        """What is due, as a phrase: "a current such as 20 A"."""
        return f"{self.called} such as {self.example}"


_LENGTH = {
    "in": ("in.", "inch", "inches", '"', "″"),
    "ft": ("ft.", "foot", "feet", "'", "′"),
    "mm": (),
    "cm": (),
    "m": ("metre", "metres", "meter", "meters"),
    "yd": ("yard", "yards"),
}
_AREA = {
    "ft2": ("ft^2", "ft²", "sq ft", "sq. ft.", "square feet", "square foot"),
    "m2": ("m^2", "m²", "sq m", "square metres", "square meters"),
    "in2": ("in^2", "in²", "sq in", "square inches"),
    "cm2": ("cm^2", "cm²", "sq cm"),
    "mm2": ("mm^2", "mm²", "sq mm"),
}
_VOLUME = {
    "in3": ("in^3", "in³", "cu in", "cu. in.", "cubic inches", "cubic inch"),
    "cm3": ("cm^3", "cm³", "cu cm", "cc", "mL", "ml"),
    "L": ("l", "litre", "litres", "liter", "liters"),
    "ft3": ("ft^3", "ft³", "cu ft"),
    "m3": ("m^3", "m³", "cu m"),
}
_AMPERE = ("amp", "amps", "ampere", "amperes")
_TORQUE = {
    "in-lb": ("in-lbs", "in lb", "in lbs", "in·lb", "lb-in", "lbf-in", "lbf·in", "lbf in", "in-lbf", "in lbf",
              "in·lbf", "inch-pounds", "inch pounds"),
    "ft-lb": ("ft-lbs", "ft lb", "ft lbs", "ft·lb", "lb-ft", "lbf-ft", "lbf·ft", "lbf ft", "ft-lbf", "ft lbf",
              "ft·lbf", "foot-pounds", "foot pounds"),
    "N m": ("Nm", "N·m", "N-m", "newton metres", "newton meters"),
}  # fmt: skip
_WEIGHT = {
    "lb": ("lbs", "pound", "pounds"),
    "kg": ("kilogram", "kilograms"),
}
_TIME = {
    "s": ("sec", "second", "seconds"),
    "ms": ("msec", "milliseconds"),
    "min": ("minute", "minutes"),
    "h": ("hour", "hours"),
}
_RESISTANCE = {
    "ohm": ("ohms", "\u03a9"),
    "mohm": ("m\u03a9", "milliohm", "milliohms"),
    "kohm": ("k\u03a9", "kilohm", "kilohms"),
    "Mohm": ("M\u03a9", "megohm", "megohms"),
    "Gohm": ("G\u03a9", "gigohm", "gigohms"),
}

KINDS: Mapping[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("length", "a length", "42 in", _LENGTH, "length"),
        Kind("height", "a height", "-8 ft", _LENGTH, "length", signed=True),
        Kind("position", "a position", "14 ft", _LENGTH, "length", signed=True),
        Kind("area", "an area", "2240 ft2", _AREA, "area"),
        Kind("volume", "a volume", "20.3 in3", _VOLUME, "volume"),
        Kind("current", "a current", "20 A", {"A": _AMPERE, "mA": ("milliamps",), "kA": ()}, "current"),
        Kind("voltage", "a voltage", "120 V", {"V": ("volt", "volts"), "mV": (), "kV": ()}, "voltage"),
        Kind(
            "load",
            "a load",
            "1500 W",
            {"W": ("watt", "watts"), "kW": ("kilowatts",), "VA": (), "kVA": (), "A": _AMPERE, "mA": ()},
            "load",
        ),
        Kind("resistance", "a resistance", "0.5 ohm", _RESISTANCE, "resistance"),
        Kind("torque", "a torque", "14 in-lb", _TORQUE, "torque"),
        Kind("weight", "a weight", "6 lb", _WEIGHT, "weight"),
        Kind(
            "temperature",
            "a temperature",
            "86 F",
            {"C": ("degC", "°C", "deg C"), "F": ("degF", "°F", "deg F")},
            "temperature",
            signed=True,
        ),
        Kind("angle", "an angle", "90 deg", {"deg": ("°", "degree", "degrees")}, "angle", signed=True),
        Kind("time", "a time", "25 ms", _TIME, "time"),
    )
}
"""Every kind by name, in the order in which a strange unit is looked for among them."""
