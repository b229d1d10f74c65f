"""The key of a one-line diagram: the signs that are used in it, and what each stands for."""

from collections.abc import Callable, Iterable, Iterator

from junctionary.drawings.ink import Lettering, Mark, line, rect
from junctionary.drawings.lettering import wrapped
from junctionary.drawings.one_line_parts import Drawn, circuits, earth, lying
from junctionary.sheets.one_line import Bus, OneLine, buses

_ENTRY_PX = 196.0
_SIGN_PX = 56.0
_ROW_PX = 32.0

_Sign = Callable[[float, float], Iterable[Mark]]


def key(plan: OneLine, x: float, y: float, width: float, *, encloses: bool) -> Drawn:
    """The signs in as many columns as the width has room for; nothing where no panel is drawn.

    ``encloses`` where panels are drawn with their enclosures.
    """
    entries = list(_entries(plan, encloses=encloses))
    if not entries:
        return Drawn((), y)
    columns = max(1, min(int(width // _ENTRY_PX), 3))
    rows = -(-len(entries) // columns)
    entry = width / columns
    marks: list[Mark] = [Lettering(x, y + 12, "Key", "room"), line(x, y + 19, x + width - 4, y + 19, "hair")]
    for index, (sign, says) in enumerate(entries):
        left, middle = x + (index // rows) * entry, y + 42 + (index % rows) * _ROW_PX
        marks.extend(sign(left + 24, middle))
        lines = wrapped(says, entry - _SIGN_PX - 6, 12)
        for number, text in enumerate(lines):
            marks.append(Lettering(left + _SIGN_PX, middle + 4 - 7.5 * (len(lines) - 1) + number * 15, text))
    return Drawn(tuple(marks), y + 42 + rows * _ROW_PX)


def _entries(plan: OneLine, *, encloses: bool) -> Iterator[tuple[_Sign, str]]:
    every = list(buses(plan.feeds))
    taps = [tap for bus in every for tap in bus.taps]
    if not every:
        return
    if any(tap.breaker for tap in taps) or any(bus.device == "breaker" for bus in every):
        yield lying, "breaker"
    if encloses:
        yield lambda x, y: (rect(x - 15, y - 9, 30, 18, "mid dashed"),), "enclosure of a panel"
    yield lambda x, y: (rect(x - 15, y - 2.2, 30, 4.4, "solid"),), "bus of a panel"
    yield lambda x, y: _bars(x, y), f"neutral and ground bars{_bonds(every)}"
    if any(bus.ground.electrodes for bus in every):
        yield lambda x, y: earth(x, y - 5), "grounding electrodes"
    if any(tap.interlocked for tap in taps):
        yield lambda x, y: (line(x - 15, y, x + 15, y, "mid dashed-fine"),), "interlock: never both on"
    if any(not isinstance(tap.to, Bus) and not tap.to.sign for tap in taps):
        yield lambda x, y: (line(x, y - 10, x, y + 8, "mid"), *circuits(x, y + 8)), "branch circuits"


def _bars(x: float, y: float) -> Iterator[Mark]:
    """Both bars side by side, as small as a line of the key."""
    for at, letter in ((x - 11, "N"), (x + 11, "G")):
        yield rect(at - 9, y - 8, 18, 16, "part")
        yield Lettering(at, y + 4.2, letter, "tag", "middle")


def _bonds(every: list[Bus]) -> str:
    """What the line between them says, where one is drawn."""
    return ", joined where a line is" if any(bus.ground.bond != "apart" for bus in every) else ""
