"""What a person writes as a quantity, read exactly or refused in plain words."""

import re
import unicodedata
from fractions import Fraction
from math import isfinite

from junctionary.units.kinds import KINDS, Kind, UnitError
from junctionary.units.quantity import Quantity, convert
from junctionary.units.showing import INCHES_PER_FOOT

_LONGEST = 60
_LARGEST = 10**9
_FINEST_FRACTION = 128

_NUMBER = r"(?:[0-9]{1,3}(?:,[0-9]{3})+|[0-9]+)(?:\.[0-9]+)?|\.[0-9]+"
_MIXED = r"(?:[0-9]+[- ])?[0-9]+/[0-9]+"
_AMOUNT = re.compile(rf"(?P<sign>-?)(?P<number>{_MIXED}|{_NUMBER}) ?(?P<unit>[^0-9\s.,+*/-][^0-9]*[0-9]?)?")
_FEET = re.compile(
    rf"(?P<sign>-?)(?P<feet>[0-9]+) ?(?:ft\.?|feet|foot|['′])[ ,-]?"
    rf"(?P<inches>{_MIXED}|{_NUMBER}) ?(?:in\.?|inch|inches|[\"″])"
)
_PAIR = re.compile(rf"({_NUMBER})/({_NUMBER}) ?(V|volts?)")
_COMMA = re.compile(r"(-?[0-9]+),([0-9]+)( ?\D.*)?")
_EXPONENT = re.compile(r"[-+]?[0-9.]+[eE][-+]?[0-9]+( ?\D.*)?")
_WIRE = re.compile(r"(?:[1-4]/0|[0-9]+) ?(?:AWG|kcmil|MCM)", re.IGNORECASE)
_VULGAR = re.compile("[¼½¾⅐-⅞]")


def read_quantity(text: object, kind: str) -> Quantity:
    """The quantity of one kind (a key of KINDS) that was written.

    Takes whatever stood in the file, so that a bare number is told that it
    lacks a unit. ``3 ft 6 in`` is 42 in; fractions are read in inches and
    feet only. Heights and positions may be below zero and give lengths.
    Raises UnitError with found, expected and do.
    """
    due = KINDS[kind]
    if not isinstance(text, str):
        raise _not_text(text, due)
    words = _plain(text)
    if len(words) > _LONGEST:
        raise UnitError(
            f"{_said(words)} is too long to be {due.called}", due.expected, "write one number and its unit"
        )
    magnitude, unit = _feet(words, due) or _amount(words, due)
    if abs(magnitude) >= _LARGEST:
        raise UnitError(f"{words} is too large for any house", due.expected, "check the number and the unit")
    if magnitude < 0 and not due.signed:
        raise UnitError(f"{words} is below zero", due.expected, "leave out the sign")
    if due.name == "temperature" and convert(magnitude, unit, "C") < Fraction("-273.15"):
        raise UnitError(f"{words} is colder than can be", due.expected, "check the number and the unit")
    return Quantity(magnitude, unit, due.measures, text)


def kind_of(text: str) -> Kind | None:
    """The kind of quantity a text is written as, were it good, or None."""
    match = _AMOUNT.fullmatch(_plain(text))
    return _owner(match["unit"]) if match and match["unit"] else None


def _plain(text: str) -> str:
    """One plain space between words, a plain minus and ohm sign, ½ as 1/2."""
    text = _VULGAR.sub(lambda sign: " " + unicodedata.normalize("NFKC", sign[0]).replace("\u2044", "/"), text)
    return " ".join(text.replace("\u2212", "-").replace("\u2126", "\u03a9").split())


def _said(text: object) -> str:
    words = " ".join(str(text).split())
    return words if len(words) <= 40 else f"{words[:37]}..."


def _owner(spelling: str) -> Kind | None:
    return next((kind for kind in KINDS.values() if kind.tidy(spelling)), None)


def _units_of(due: Kind) -> str:
    first, *others = list(due.units)[:4]
    return f"{', '.join([first, *others][:-1])} or {others[-1]}" if others else first


def _not_text(value: object, due: Kind) -> UnitError:
    if isinstance(value, bool) or not isinstance(value, int | float):
        called = {dict: "a mapping", list: "a list"}
        said = next((word for sort, word in called.items() if isinstance(value, sort)), None)
        if said is None:
            said = (
                "nothing"
                if value is None
                else str(value).lower()
                if isinstance(value, bool)
                else _said(value)
            )
        return UnitError(f"{said} is not {due.called}", due.expected, "write a number and its unit")
    if isinstance(value, float) and not isfinite(value):
        return UnitError(f"{value} is not a number", due.expected, "write a number and its unit")
    return _bare(_said(value), due)


def _bare(number: str, due: Kind) -> UnitError:
    offered = list(due.units)[:2]
    return UnitError(
        f"{number} has no unit", due.expected, "write " + " or ".join(f"{number} {unit}" for unit in offered)
    )


def _value(number: str, words: str, due: Kind) -> Fraction:
    """An unsigned number, mixed number or fraction, exactly."""
    if "/" not in number:
        return Fraction(number.replace(",", ""))
    *whole, fraction = re.split("[- ]", number)
    over, under = (int(each) for each in fraction.split("/"))
    if not 0 < under <= _FINEST_FRACTION or (whole and over >= under):
        raise UnitError(f"{words} holds the fraction {fraction}", due.expected, "check the fraction")
    return Fraction(over, under) + sum(int(each) for each in whole)


def _feet(words: str, due: Kind) -> tuple[Fraction, str] | None:
    """Feet with inches as inches, or None where the words are not that."""
    match = _FEET.fullmatch(words)
    if not match:
        return None
    if due.measures != "length":
        raise UnitError(
            f"{words} is a length; {due.called} is due here", due.expected, f"use {_units_of(due)}"
        )
    inches = _value(match["inches"], words, due)
    if inches >= INCHES_PER_FOOT:
        raise UnitError(f"{words} has a foot or more in its inches", due.expected, "carry them into the feet")
    # Twelve is said here too, beside pint, so that reading a record need not wake it.
    total = int(match["feet"]) * INCHES_PER_FOOT + inches
    return (-total if match["sign"] else total), "in"


def _amount(words: str, due: Kind) -> tuple[Fraction, str]:
    """One number and one unit of the kind that is due."""
    if _PAIR.fullmatch(words):
        raise UnitError(f"{words} is two voltages", due.expected, "write the one that is meant here")
    match = _AMOUNT.fullmatch(words)
    if not match:
        raise _unreadable(words, due)
    if not match["unit"]:
        if "/" in match["number"] and due.measures != "length":
            raise _unreadable(words, due)
        raise _bare(words, due)
    unit = due.tidy(match["unit"])
    if unit is None:
        raise _wrong_unit(words, match["sign"] + match["number"], match["unit"], due)
    if "/" in match["number"] and unit not in ("in", "ft"):
        raise UnitError(
            f"{words} holds a fraction, which is read in inches and feet only",
            due.expected,
            "write it with a point",
        )
    value = _value(match["number"], words, due)
    return (-value if match["sign"] else value), unit


def _wrong_unit(words: str, number: str, spelling: str, due: Kind) -> UnitError:
    if owner := _owner(spelling):
        return UnitError(
            f"{words} is {owner.called}; {due.called} is due here", due.expected, f"use {_units_of(due)}"
        )
    if _WIRE.fullmatch(words):
        return UnitError(
            f"{words} is a wire size; {due.called} is due here", due.expected, f"use {_units_of(due)}"
        )
    alike = {due.tidy(each) for each in due.spellings() if each.lower() == spelling.lower()}
    if len(alike) == 1:
        return UnitError(
            f"{spelling} is not how the unit is written", due.expected, f"write {number} {alike.pop()}"
        )
    return UnitError(f"{_said(spelling)} is not a unit of {due.name}", due.expected, f"use {_units_of(due)}")


def _unreadable(words: str, due: Kind) -> UnitError:
    if words.lower().lstrip("+-.").split(" ")[0] in ("nan", "inf", "infinity"):
        return UnitError(f"{words} is not a number", due.expected, "write a number and its unit")
    if _WIRE.fullmatch(words):
        return _wrong_unit(words, "", "", due)
    if match := _COMMA.fullmatch(words):
        return UnitError(
            f"{words} has a comma that is not between thousands",
            due.expected,
            f"write {match[1]}.{match[2]}{match[3] or ''} if a point was meant",
        )
    if _EXPONENT.fullmatch(words):
        return UnitError(f"{words} is in powers of ten", due.expected, "write the number out")
    if not words:
        return UnitError(f"there is no {due.name}", due.expected, "write a number and its unit")
    return UnitError(f"{_said(words)} is not {due.called}", due.expected, "write one number and its unit")
