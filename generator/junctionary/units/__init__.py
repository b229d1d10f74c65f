"""Quantities with their units, exactly; wire sizes; how both are shown.

What a person writes (``3 ft 6 in``, ``1-1/4 in``, ``20.3 in3``) is read by a
parser of our own; conversion factors come from pint, which is imported only
when the first one is asked for.
"""

from junctionary.units.kinds import KINDS, Kind, UnitError
from junctionary.units.numerals import decimal
from junctionary.units.quantity import Quantity, convert
from junctionary.units.reading import read_quantity
from junctionary.units.showing import beside_its_own, feet_and_inches, metric, show, show_as
from junctionary.units.wire import WireSize, read_wire_size

__all__ = [
    "KINDS",
    "Kind",
    "Quantity",
    "UnitError",
    "WireSize",
    "beside_its_own",
    "convert",
    "decimal",
    "feet_and_inches",
    "metric",
    "read_quantity",
    "read_wire_size",
    "show",
    "show_as",
]
