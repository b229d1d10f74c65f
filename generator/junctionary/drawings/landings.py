"""What a make-up says at a terminal: the letters of what lands there, and how tight it was made."""

import re

from junctionary.drawings.conductors import letters
from junctionary.sheets.box import MakeUp, Terminal

_OTHER_UNIT = re.compile(r" \([^)]*\)")


def lettered(makeup: MakeUp) -> dict[str, str]:
    """The letters of every conductor of the box, by its id."""
    return {
        each.id: letters(each.colour, each.marked) for cable in makeup.cables for each in cable.conductors
    }


def landing_letters(terminal: Terminal, known: dict[str, str]) -> str:
    """The letters of what lands on a terminal: ``BK``, ``WH>BK``, ``BK+BK``; empty where nothing does."""
    landed = [known.get(each, letters(terminal.colour)) for each in terminal.wires]
    landed += [letters(terminal.colour)] if terminal.from_joint and terminal.colour else []
    return "+".join(landed)


def listed(terminal: Terminal) -> str:
    """The torque that is listed, in one unit, for the list under the drawing has both."""
    return _OTHER_UNIT.sub("", terminal.torque)


def tightened(terminal: Terminal) -> str:
    """How tight it was made, in words that tell it from what is listed; empty where no screw is."""
    text = _OTHER_UNIT.sub("", terminal.measured)
    if text in ("not recorded", "unknown"):
        return f"torque {text}"
    if text == "not to a value":
        return "not set to a value"
    return f"set {'' if text.startswith('to ') else 'to '}{text}" if text else ""
