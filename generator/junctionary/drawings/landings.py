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


def torque_words(terminal: Terminal) -> tuple[str, ...]:
    """What is listed and how tight it was made; in one unit, for the list under the drawing has both.

    One phrase where both are the same; none where no screw is.
    """
    due, made = (_OTHER_UNIT.sub("", each) for each in (terminal.torque, terminal.measured))
    if made == "to the listed value" and due.endswith(" listed"):
        return (f"set to the {due}",)
    if made in ("not recorded", "unknown"):
        made = f"torque {made}"
    elif made == "not to a value":
        made = "not set to a value"
    elif made:
        made = f"set {'' if made.startswith('to ') else 'to '}{made}"
    return tuple(each for each in (due, made) if each)
