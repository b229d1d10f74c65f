"""What a circuit draws, what can still be added, and what a shared neutral carries, for its sheet."""

import re
from collections.abc import Iterator
from fractions import Fraction

from junctionary.figures import CircuitLoads, FixedLoads, PoleLoad
from junctionary.figures.draws import LINE_TO_NEUTRAL
from junctionary.formulas.circuit_load import Room
from junctionary.formulas.sums import SumError, evaluate, plain
from junctionary.formulas.worked import Step
from junctionary.house.model import Circuit
from junctionary.sheets.entries import Fact, Working, WorkingLine
from junctionary.sheets.links import Ref
from junctionary.sheets.naming import breaker_words
from junctionary.sheets.put_right import first_words, put_right_first
from junctionary.sheets.survey import Survey, cited, sentence
from junctionary.units import decimal

DIGITS = 2

_QUOTIENT = re.compile(r"\(\d+ / \d+\)|\d+\.\d{3,}")
_AT_LEAST_NOUGHT = re.compile(r"max\(0, ([^(),]+)\)")
_SMALLER = re.compile(r"\bmin\(([^(),]+), ([^(),]+)\)")


def load_facts(survey: Survey, circuit: Circuit) -> Iterator[Fact]:
    """The answer at a glance, for each breaker: what is drawn of what, and what can still be plugged in."""
    loads = survey.figures.loads.get(circuit.id)
    if loads is None or not survey.figures.circuits[circuit.id].branch:
        return
    for pole in loads.poles:
        if pole.rating_a is None:
            continue
        of = f" ({breaker_words(pole.breaker)})" if len(loads.poles) > 1 else ""
        least = "at least " if pole.load.value is None else ""
        drawn = f"{least}{shown(pole.least_a)} A recorded"
        if pole.load.value is None and not pole.draws:
            drawn = "not recorded"
        yield Fact(f"load{of}", (f"{drawn}, of {shown(pole.rating_a)} A",))
        if pole.room is not None:
            open_ = first_words(put_right_first(survey, Ref("circuit", circuit.id)))
            room = _room_words(pole.room)
            yield Fact(f"room for{of}", (f"{open_}; then {room}" if open_ else room,))


def load_workings(survey: Survey, circuit: Circuit) -> Iterator[Working]:
    """The load of each breaker, what can be added, the share of what is fastened, a shared neutral."""
    loads = survey.figures.loads.get(circuit.id)
    if loads is None or not survey.figures.circuits[circuit.id].branch:
        return
    for pole in loads.poles:
        of = _of(loads, pole)
        if pole.draws:
            yield _drawn(pole, of)
        if pole.room is not None:
            yield _room(pole.room, of)
    yield from (_fixed(each) for each in survey.figures.fixed_loads if each.circuit == circuit.id)
    if loads.neutral is not None:
        yield _neutral(loads)


def _of(loads: CircuitLoads, pole: PoleLoad) -> str:
    if len(loads.poles) == 1:
        return ""
    leg = f", leg {' and '.join(pole.legs)}" if pole.legs else ""
    return f" on breaker {breaker_words(pole.breaker)}{leg}"


def _drawn(pole: PoleLoad, of: str) -> Working:
    *parts, total = pole.load.steps
    lines = [working_line(each) for each in parts]
    what = "load" if pole.load.value is not None else "load, as far as recorded"
    how = "added up" if len(parts) > 1 else ""
    lines.append(WorkingLine(what, how, shown(total.value), True))
    if pole.continuous_a:
        lines.append(working_line(pole.sized.steps[-1]))
        lines += [working_line(each) for each in pole.most_continuous.steps] if pole.most_continuous else []
    return Working(
        f"Load{of}",
        "A",
        tuple(lines),
        " ".join(_drawn_says(pole)),
        cited((*pole.load.cites, *pole.sized.cites)),
    )


def _drawn_says(pole: PoleLoad) -> Iterator[str]:
    if pole.load.lacks:
        yield f"It is at least that; not known: {'; '.join(pole.load.lacks)}."
    for each in pole.left_out:
        yield sentence(f"{each.name} never runs together with what is counted, and is left out")
    if pole.load.steps != pole.connected.steps:
        full = shown(pole.connected.steps[-1].value)
        yield f"With everything on at once it would be {full} A; a range counts by its demand."
    if pole.unsure:
        names = ", ".join(each.name for each in pole.unsure)
        yield f"Taken to run for less than three hours at a time: {names}."
    taken = dict.fromkeys(
        each
        for draw in pole.draws
        for each in draw.taken
        if each.startswith("watts") or " is continuous" in each
    )
    yield from (sentence(each) for each in taken)


def _room(room: Room, of: str) -> Working:
    *before, now = room.now.steps
    lines = [working_line(each) for each in before]
    at_most = ", at most" if room.now.value is None else ""
    lines.append(WorkingLine(f"{now.what}{at_most}", _readable(now), shown(now.value), True))
    watts = now.value * LINE_TO_NEUTRAL
    sum_ = f"{shown(now.value)} × {plain(LINE_TO_NEUTRAL)}"
    if decimal(evaluate(sum_), 0) == decimal(watts, 0):
        lines.append(WorkingLine("at 120 V", sum_, f"{decimal(watts, 0)} W"))
    long, lasting = room.continuous.steps
    lines += [working_line(long), WorkingLine(lasting.what, _readable(lasting), shown(lasting.value), True)]
    says = f"The limit is {room.limit}. It is what is left with all recorded loads on."
    if room.now.lacks:
        says = f"It may be less; not known: {'; '.join(room.now.lacks)}."
    return Working(
        f"Room for more{of}", "A", tuple(lines), says, cited((*room.now.cites, *room.continuous.cites))
    )


def _fixed(fixed: FixedLoads) -> Working:
    *parts, total = fixed.total.steps
    lines = [working_line(each) for each in parts]
    least = "" if fixed.total.value is not None else ", as far as recorded"
    how = "added up" if len(parts) > 1 else ""
    lines.append(WorkingLine(f"fastened in place{least}", how, shown(total.value), True))
    lines += [working_line(each) for each in fixed.most.steps]
    beside = ", ".join(fixed.beside)
    says = f"Beside it on breaker {breaker_words(fixed.breaker)}: {beside}. Lamps do not count."
    if fixed.total.lacks:
        says = f"Not known: {'; '.join(fixed.total.lacks)}. {says}"
    return Working(
        "Fastened in place, beside lights or receptacles", "A", tuple(lines), says, cited(fixed.most.cites)
    )


def _room_words(room: Room) -> str:
    value = room.now.steps[-1].value
    if not value:
        return "nothing more"
    least = "at most " if room.now.value is None else ""
    watts = f"{decimal(value * LINE_TO_NEUTRAL, 0)} W at 120 V"
    return f"{least}{shown(value)} A more ({watts}); the limit is {room.limit}"


def _neutral(loads: CircuitLoads) -> Working:
    neutral = loads.neutral
    assert neutral is not None
    *parts, step = neutral.now.steps
    lines = [*map(working_line, parts), WorkingLine(step.what, _readable(step), shown(step.value), True)]
    if neutral.one_leg:
        says = "Both hots are on one leg: the neutral carries all that both draw, and no breaker guards it."
    else:
        says = (
            f"With the loads of one leg alone it carries up to {shown(neutral.most_a)} A. "
            "Were it open, the two legs would be in series, and what is on the lighter one would burn out."
        )
    if neutral.now.lacks:
        says = f"Reckoned from what is recorded; not known: {'; '.join(neutral.now.lacks)}. {says}"
    return Working("Current of the shared neutral", "A", tuple(lines), says, cited(neutral.now.cites))


def working_line(step: Step) -> WorkingLine:
    """One step as a line of a working."""
    return WorkingLine(step.what, _readable(step), shown(step.value))


def _readable(step: Step) -> str:
    """A step's sum as a person reads it, wherever what is read comes to the figure shown; else nothing."""
    for digits in (DIGITS, DIGITS + 1, DIGITS + 2):
        text = _AT_LEAST_NOUGHT.sub(r"\1", _rounded(step.sum, digits))
        try:
            right = shown(evaluate(text)) == shown(step.value)
        except SumError:
            right = False
        if right:
            spoken = in_words(text)
            return "" if spoken == shown(step.value) else spoken
    return ""


def in_words(sum_: str) -> str:
    """A sum as a person reads it: the smaller of two is said in words."""
    return _SMALLER.sub(r"the smaller of \1 and \2", sum_)


def _rounded(sum_: str, digits: int) -> str:
    return _QUOTIENT.sub(lambda found: decimal(evaluate(found[0]), digits), sum_)


def shown(value: Fraction) -> str:
    """Amperes as a sheet shows them: to hundredths, with no digits they do not need."""
    return decimal(value, DIGITS).rstrip("0").rstrip(".") if value.denominator > 1 else str(value.numerator)
