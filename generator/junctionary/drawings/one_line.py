"""The service one-line diagram: panels side by side where they find room, one below another on a phone."""

from collections.abc import Iterator

from junctionary.drawings.ink import SIZES_PX, Drawing, Lettering, Linked, Mark, Stroke, line, rect
from junctionary.drawings.lettering import wrapped
from junctionary.drawings.one_line_key import key
from junctionary.drawings.one_line_parts import (
    RADIUS_PX,
    Drawn,
    bars,
    circuits,
    earth,
    lying,
    source,
    upright,
)
from junctionary.sheets.one_line import Bus, End, Feed, Ground, Label, OneLine, Tap

WIDE_PX = 1300.0
MIDDLE_PX = 770.0
NARROW_PX = 340.0
_LINE_PX = 15.0
_COLUMNS_PX = (142, 210)
"""The least and the most for what hangs on a bus; words wrap at it."""

_MORE_FOR_GROUND_PX = 22.0
_PAD_PX = 12.0
_LEAST_PX = 560.0
_SUPPLY_PX = 330.0
"""What the supply and its words take at the upper left; the key stands to the right of that."""

_IN_PX = 26.0
_STEP_PX = 34.0
_ASIDE_PX = 22.0

KINDS = {"space": "breaker", "circuit": "source"}
"""What a thing is called aloud, where that is not the name of its kind."""


def wide_one_line(plan: OneLine, drawing_id: str) -> Drawing:
    """The diagram for a desk, at most 1300 px wide."""
    return _beside(plan, drawing_id, WIDE_PX, "wide line")


def middle_one_line(plan: OneLine, drawing_id: str) -> Drawing:
    """The diagram for a tablet and for paper, at most 834 px wide."""
    return _beside(plan, drawing_id, MIDDLE_PX, "wide middle line")


def _beside(plan: OneLine, drawing_id: str, most_px: float, kind: str) -> Drawing:
    """What hangs on a panel side by side, panels it feeds below it; down the page where they are too many."""
    column = _column_px(plan, most_px)
    if column is None:
        return _down(plan, drawing_id, MIDDLE_PX, kind)
    width = max((*(_reach(feed.bus, 0.0, column) for feed in plan.feeds), _LEAST_PX))
    marks: list[Mark] = []
    y = 4.0
    for index, feed in enumerate(plan.feeds):
        above = _supply(feed, _IN_PX, y, width if index else _SUPPLY_PX)
        top = above.bottom
        if not index:
            keys = key(plan, _SUPPLY_PX, y, width - _SUPPLY_PX, encloses=True)
            marks.extend(keys.marks)
            top = max(top, keys.bottom)
        marks.append(line(_IN_PX, above.bottom, _IN_PX, top, "mid"))
        below = _bus_beside(feed.bus, 0.0, top, column)
        marks.extend((*above.marks, *below.marks))
        y = below.bottom + 26
    marks, y = _with_apart(plan, marks, y, width)
    return Drawing(drawing_id, width, y, plan.title, plan.says, tuple(marks), kind)


def _column_px(plan: OneLine, most_px: float) -> float | None:
    """The widest column with which every panel fits; None where even the least does not."""
    least, most = _COLUMNS_PX
    widths = (float(each) for each in range(most, least - 1, -2))
    return next(
        (each for each in widths if all(_reach(feed.bus, 0.0, each) <= most_px for feed in plan.feeds)), None
    )


def _reach(bus: Bus, left: float, column: float) -> float:
    """How far to the right a panel reaches, with those it feeds, each set below where it is fed from."""
    below = (
        _reach(tap.to, left + index * column, column)
        for index, tap in enumerate(bus.taps)
        if isinstance(tap.to, Bus)
    )
    return max(left + _bus_px(bus, column), *below, 0.0)


def narrow_one_line(plan: OneLine, drawing_id: str) -> Drawing:
    """The diagram for a phone: the supply at the top, each panel below what feeds it and set in."""
    return _down(plan, drawing_id, NARROW_PX, "narrow")


def _down(plan: OneLine, drawing_id: str, width: float, kind: str) -> Drawing:
    marks: list[Mark] = []
    y = 4.0
    for feed in plan.feeds:
        above = _supply(feed, _IN_PX, y, width)
        below = _bus_down(feed.bus, 0, above.bottom, width)
        marks.extend((*above.marks, *below.marks))
        y = below.bottom + 26
    marks, y = _with_apart(plan, marks, y, width)
    keys = key(plan, 0, y, width, encloses=False)
    return Drawing(drawing_id, width, keys.bottom + 8, plan.title, plan.says, (*marks, *keys.marks), kind)


def _with_apart(plan: OneLine, marks: list[Mark], y: float, width: float) -> tuple[list[Mark], float]:
    """The sources of which nobody wrote where they enter, below all else."""
    for end in plan.apart:
        drawn = _disc(end, _IN_PX, y, width - _IN_PX - _ASIDE_PX)
        marks.extend(drawn.marks)
        y = drawn.bottom + 12
    return marks, y


def _supply(feed: Feed, x: float, y: float, width: float) -> Drawn:
    """The parts from the supply down, and the wire on to the panel."""
    marks: list[Mark] = []
    room = width - x - _ASIDE_PX
    for index, part in enumerate(feed.parts):
        drawn = _disc(part, x, y, room)
        start = y if index else _disc_middle(part, y, room)
        marks.extend((line(x, start, x, drawn.bottom + 8, "mid"), *drawn.marks))
        y = drawn.bottom + 8
    if feed.wire is not None:
        words = _words(feed.wire, x + _ASIDE_PX, y + 14, room)
        marks.extend(words.marks)
        marks.append(line(x, y, x, words.bottom + 4, "mid"))
        y = words.bottom + 4
    if feed.aside is not None:
        branch = x + _STEP_PX
        drawn = _disc(feed.aside, branch, y, room - _STEP_PX)
        middle = _disc_middle(feed.aside, y, room - _STEP_PX)
        bottom = drawn.bottom + 14
        marks.extend((line(x, middle, branch - RADIUS_PX, middle, "mid"), *drawn.marks))
        marks.append(line(x, y, x, bottom, "mid"))
        y = bottom
    return Drawn(tuple(marks), y)


def _bus_px(bus: Bus, column: float) -> float:
    return (len(bus.taps) + 1) * column + _MORE_FOR_GROUND_PX + 2 * _PAD_PX


def _panel_head(bus: Bus, x: float, y: float, room: float) -> Drawn:
    """What stands at the top of a panel: its name and its main, in the wire that enters at x."""
    words = _words(bus.label, x + _ASIDE_PX, y + 20, room)
    main_y = words.bottom + 22
    said = _words(bus.main, x + _ASIDE_PX, main_y - (_LINE_PX / 2) * len(bus.main.lines) + 4, room)
    bus_y = max(main_y + 36, said.bottom + 14)
    marks = (
        *words.marks,
        *said.marks,
        line(x, y, x, main_y - 14, "mid"),
        *upright(x, main_y, bus.device),
        line(x, main_y + 14, x, bus_y, "mid"),
    )
    return Drawn(marks, bus_y)


def _bus_beside(bus: Bus, left: float, y: float, column: float) -> Drawn:
    """A panel with its bus across and what hangs on it side by side, and below it the panels it feeds."""
    width = _bus_px(bus, column)
    ground_px = column + _MORE_FOR_GROUND_PX - _IN_PX - _ASIDE_PX
    x = left + _IN_PX
    head = _panel_head(bus, x, y + 8, width - _IN_PX - _ASIDE_PX - _PAD_PX)
    bus_y = head.bottom
    marks: list[Mark] = [line(x, y, x, y + 8, "mid"), *head.marks]
    inner = bus_y + 60
    xs = [x + index * column for index in range(len(bus.taps))]
    for tap, tap_x in zip(bus.taps, xs, strict=True):
        drawn = _tap_top(tap, tap_x, bus_y, column - _ASIDE_PX - 6)
        marks.extend(drawn.marks)
        inner = max(inner, drawn.bottom)
        if tap.interlocked:
            marks.extend(_interlock(x, bus_y - 36, tap_x, bus_y + 30))
    marks.append(line(x - 12, bus_y, max(xs[-1] + 12 if xs else 0, x + 76), bus_y, "bus"))
    ground_x = x + len(bus.taps) * column
    marks.extend(bars(ground_x, bus_y + 12, bus.ground.bond))
    words = _words(bus.ground.label, ground_x + _ASIDE_PX, bus_y + 12, ground_px)
    marks.extend(words.marks)
    edge = max(inner, words.bottom, bus_y + 62) + 10
    marks.insert(0, rect(left + 1, y + 8, width - 2, edge - y - 8, "mid dashed"))
    bottom = edge
    feeders: list[tuple[Bus, float, float]] = []
    for tap, tap_x in zip(bus.taps, xs, strict=True):
        below = _below(tap, tap_x, (bus_y + 44, edge), column)
        marks.extend(below.marks)
        bottom = max(bottom, below.bottom)
        if isinstance(tap.to, Bus):
            feeders.append((tap.to, tap_x, below.bottom))
    ground = _to_earth(bus.ground, ground_x, bus_y + 50, edge, ground_px)
    marks.extend(ground.marks)
    bottom = max(bottom, ground.bottom)
    # The rightmost first, so that no feeder runs through a panel that another feeds.
    for fed, tap_x, from_y in reversed(feeders):
        marks.append(line(tap_x, from_y, tap_x, bottom + 14, "mid"))
        panel = _bus_beside(fed, tap_x - _IN_PX, bottom + 14, column)
        marks.extend(panel.marks)
        bottom = panel.bottom
    return Drawn(tuple(marks), bottom)


def _tap_top(tap: Tap, x: float, bus_y: float, room: float) -> Drawn:
    """The breaker of a tap, below the bus and within the panel."""
    if tap.breaker is None:
        return Drawn((line(x, bus_y, x, bus_y + 44, "mid"),), bus_y + 44)
    words = _words(tap.breaker, x + _ASIDE_PX, bus_y + 24, room)
    marks = (
        line(x, bus_y, x, bus_y + 16, "mid"),
        *upright(x, bus_y + 30, "breaker"),
        *words.marks,
    )
    return Drawn(marks, max(words.bottom, bus_y + 46))


def _below(tap: Tap, x: float, ys: tuple[float, float], column: float) -> Drawn:
    """The wire of a tap out of its panel, from one height to another, and what ends it but a panel."""
    from_y, edge = ys
    marks: list[Mark] = [line(x, from_y, x, edge, "mid")]
    y = edge
    room = column - _ASIDE_PX - 16
    if tap.wire is not None:
        words = _words(tap.wire, x + _ASIDE_PX, y + 24, room)
        marks.extend((line(x, y, x, words.bottom + 6, "mid"), *words.marks))
        y = words.bottom + 6
    if isinstance(tap.to, Bus):
        return Drawn(tuple(marks), y)
    if tap.to.sign:
        drawn = _disc(tap.to, x, y + 4, room)
        wire = line(x, y, x, _disc_middle(tap.to, y + 4, room), "mid")
        return Drawn((*marks, wire, *drawn.marks), drawn.bottom)
    marks.extend((line(x, y, x, y + 26, "mid"), *circuits(x, y + 26)))
    words = _words(tap.to.label, x + _ASIDE_PX, y + 22, room)
    return Drawn((*marks, *words.marks), words.bottom)


def _to_earth(ground: Ground, x: float, from_y: float, edge: float, room: float) -> Drawn:
    """From the ground bar out of the panel to the electrodes, where it has any."""
    if not ground.electrodes:
        return Drawn((), edge)
    words = _words(Label("", ground.electrodes), x + _ASIDE_PX, edge + 26, room)
    return Drawn((line(x, from_y, x, edge + 22, "mid"), *earth(x, edge + 22), *words.marks), words.bottom)


def _interlock(main_x: float, main_y: float, tap_x: float, tap_y: float) -> Iterator[Mark]:
    """The dashed line of two that cannot both be on, left of the bus."""
    side = min(main_x, tap_x) - 17
    yield Stroke(f"M{main_x - 4:.1f} {main_y:.1f}H{side:.1f}V{tap_y:.1f}H{tap_x - 4:.1f}", "mid dashed-fine")


# A panel that another feeds stands among what hangs on it here, so that no outline says it is within it.
def _bus_down(bus: Bus, lane: int, y: float, width: float) -> Drawn:
    """A panel with its bus running down and what hangs on it one below another."""
    left = lane * _STEP_PX
    x = left + _IN_PX
    head = _panel_head(bus, x, y + 8, width - x - _ASIDE_PX - 8)
    top = head.bottom
    marks: list[Mark] = [line(x, y, x, y + 8, "mid"), *head.marks]
    at, last = top + 4, top + 24
    words_x = x + _STEP_PX + _ASIDE_PX
    for tap in bus.taps:
        tap_y = last = at + 18
        drop_x = x + _STEP_PX
        if tap.breaker is not None:
            marks.extend((line(x, tap_y, x + 4, tap_y, "mid"), *lying(x + 18, tap_y)))
            marks.append(line(x + 32, tap_y, drop_x, tap_y, "mid"))
            said = _words(_one(tap.breaker), words_x, tap_y + 4, width - words_x - 8)
            marks.extend(said.marks)
        else:
            marks.append(line(x, tap_y, drop_x, tap_y, "mid"))
            said = Drawn((), tap_y - 10)
        inner = _onward(tap, drop_x, tap_y, max(said.bottom, tap_y + 6), width, lane)
        marks.extend(inner.marks)
        at = inner.bottom
    marks.append(line(x, top, x, last, "bus"))
    ground_y = at + 24
    marks.extend(bars(x, ground_y, bus.ground.bond))
    words = _words(bus.ground.label, x + _ASIDE_PX, ground_y + 4, width - x - _ASIDE_PX - 8)
    marks.extend(words.marks)
    edge = max(words.bottom, ground_y + 42) + 6
    ground = _to_earth(bus.ground, x, ground_y + 38, edge, width - x - _ASIDE_PX)
    return Drawn((*marks, *ground.marks), ground.bottom)


def _onward(tap: Tap, x: float, tap_y: float, y: float, width: float, lane: int) -> Drawn:
    """What is at the end of a tap of a bus that runs down."""
    words_x = x + _ASIDE_PX
    room = width - words_x - 8
    marks: list[Mark] = []
    if tap.wire is not None:
        words = _words(_one(tap.wire), words_x, y + 14, room)
        marks.extend(words.marks)
        y = words.bottom
    if isinstance(tap.to, Bus):
        marks.append(line(x, tap_y, x, y + 4, "mid"))
        drawn = _bus_down(tap.to, lane + 1, y + 4, width)
        return Drawn((*marks, *drawn.marks), drawn.bottom + 6)
    if not tap.to.sign:
        words = _words(_one(tap.to.label), words_x, tap_y + 4, room)
        head = (line(x, tap_y, x + 8, tap_y, "mid"), Stroke(f"M{x + 1:.1f} {tap_y - 5:.1f}l8 5l-8 5", "mid"))
        return Drawn((*marks, *head, *words.marks), words.bottom)
    drawn = _disc(tap.to, x, y + 4, room)
    wire = line(x, tap_y, x, _disc_middle(tap.to, y + 4, room), "mid")
    return Drawn((*marks, wire, *drawn.marks), drawn.bottom + 4)


def _one(label: Label) -> Label:
    """A label whose lines are run together under its name."""
    return Label(label.name, (" · ".join(label.lines),) if label.lines else (), label.ref)


def _disc(end: End, x: float, y: float, room: float) -> Drawn:
    """A source or a meter from y down, its words beside it about its middle."""
    middle = _disc_middle(end, y, room)
    tall = _words(end.label, 0, 0, room).bottom + 8
    words = _words(end.label, x + _ASIDE_PX, middle - tall / 2 + 10, room)
    return Drawn((*source(x, middle, end.sign), *words.marks), max(words.bottom, middle + RADIUS_PX))


def _disc_middle(end: End, y: float, room: float) -> float:
    return y + max(RADIUS_PX, (_words(end.label, 0, 0, room).bottom + 8) / 2) + 2


def _words(label: Label, x: float, y: float, room: float) -> Drawn:
    """A label with its first line on y: its name bold, each line under it, linked if it leads somewhere."""
    lines = [("tag", text) for text in wrapped(label.name, room, SIZES_PX["tag"], bold=True)]
    lines += [("note", text) for each in label.lines for text in wrapped(each, room, SIZES_PX["note"])]
    marks = tuple(Lettering(x, y + index * _LINE_PX, text, kind) for index, (kind, text) in enumerate(lines))
    bottom = y + (len(lines) - 1) * _LINE_PX + 5
    if label.ref is None or not marks:
        return Drawn(marks, bottom)
    kind = KINDS.get(label.ref.kind, label.ref.kind)
    return Drawn((Linked(label.ref, f"{kind} {label.name}", marks),), bottom)
