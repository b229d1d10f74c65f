"""How full a box is: each thing in it, its allowance, the sum, and what is left (314.16).

Not counted, and so not asked for: pigtails and jumpers that do not leave the box,
connectors, cable sheath, cable connectors fixed from outside, and the few small
luminaire wires that come in from a domed canopy.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from junctionary.formulas.box_volume import BoxVolume, least_volume, volume
from junctionary.formulas.sums import exact
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import Citation, cite_in, edition_year
from junctionary.tables import table
from junctionary.units import WireSize

FREE_CONDUCTOR_IN = 6
"""What 300.14 wants free at a box; an unbroken loop of twice this counts as two conductors."""

QUARTER_ALLOWANCE_SINCE = 2020
GROUNDS_IN_ONE_ALLOWANCE = 4
TERMINAL_BLOCKS_SINCE = 2023
OUTSIDE = WireSize("4 AWG")
"""From this size up a box is sized by 314.28, not by volume."""


@dataclass(frozen=True, slots=True)
class Entering:
    """Insulated conductors of one size that come in together and end here or pass through unbroken.

    ``size`` and, for those that pass, ``loop_in`` (the length of the loop in the
    box, in inches) are None where not recorded.
    """

    what: str
    size: WireSize | None
    count: int
    how: Literal["ends", "passes"] = "ends"
    loop_in: Fraction | None = Fraction(0)


@dataclass(frozen=True, slots=True)
class Yoke:
    """One strap with its device or devices: the largest conductor on it (None: not recorded), its gangs."""

    what: str
    largest: WireSize | None
    gangs: int = 1


@dataclass(frozen=True, slots=True)
class BoxContents:
    """Everything in a box that takes up room. None is a fact not recorded; ``()``, 0 and False are looked at.

    ``grounds`` and ``isolated_grounds`` hold one size for each equipment grounding
    conductor that enters; ``terminal_blocks`` the largest conductor on each;
    ``studs`` counts fixture studs and hickeys. ``lacks`` are gaps the caller knows of.
    """

    entering: tuple[Entering, ...] = ()
    grounds: tuple[WireSize | None, ...] = ()
    clamps_inside: bool | None = False
    studs: int | None = 0
    yokes: tuple[Yoke, ...] = ()
    terminal_blocks: tuple[WireSize | None, ...] = ()
    isolated_grounds: tuple[WireSize | None, ...] = ()
    lacks: tuple[str, ...] = ()


Counted = tuple[str, str, WireSize, Citation]


@dataclass(frozen=True, slots=True)
class BoxFill:
    """The figure of one box, in in³.

    ``least`` is what the known things take, whatever is not recorded besides; ``most`` what all
    can take whichever way the missing facts turn out, None where nothing bounds them. ``fits`` is
    False as soon as the least is too much, True as soon as the most is not, else None.
    ``governed`` is False for a box with 4 AWG or larger, which volume does not judge.
    """

    filled: Worked
    volume: Worked
    left: Worked
    least: Fraction
    most: Fraction | None
    fits: bool | None
    governed: bool = True


def box_fill(contents: BoxContents, box: BoxVolume, edition: str) -> BoxFill:
    """How full the box is, what it holds and what is left, each with its steps."""
    steps, lacks = _allowances(contents, edition)
    least = sum((each.value for each in steps), Fraction(0))
    room = volume(box, edition)
    heavy = sorted({each for each in _sizes(contents) if each >= OUTSIDE})
    if heavy:
        why = f"box {box.box} holds {heavy[-1]}, so it is sized by its entries and not by volume"
        none = lacking([why], "in3", (), [cite_in(edition, "314.28")])
        return BoxFill(none, room, none, least, None, None, governed=False)
    clause = cite_in(edition, "314.16(B)")
    filled = lacking(lacks, "in3", steps, [clause]) if lacks else _total(steps, clause)
    beyond = _beyond(contents)
    most = None if beyond is None else least + beyond
    sure = least_volume(box, edition)
    fits: bool | None = None
    if room.value is not None and least > room.value:
        fits = False
    elif sure is not None and most is not None and most <= sure:
        fits = True
    return BoxFill(filled, room, _left(filled, room, least), least, most, fits)


def _total(steps: list[Step], clause: Citation) -> Worked:
    sum_ = " + ".join(exact(each.value) for each in steps) or "0"
    total = step("filled", sum_, "in3", clause)
    return finished(total.value, "in3", (*steps, total))


def _left(filled: Worked, room: Worked, least: Fraction) -> Worked:
    if filled.value is not None and room.value is not None:
        part = step("left", f"{exact(room.value)} − {exact(filled.value)}", "in3")
        return finished(part.value, "in3", [part], (*room.cites, *filled.cites))
    needs = f"at least {exact(least)}" if filled.lacks else exact(least)
    wanted = tuple(f"{each} (it needs {needs} in3)" if least else each for each in room.lacks[:1])
    return lacking((*wanted, *room.lacks[1:], *filled.lacks), "in3", (), (*room.cites, *filled.cites))


def _allowances(contents: BoxContents, edition: str) -> tuple[list[Step], list[str]]:
    """A step for each thing in the box, and a phrase for each that cannot be counted."""
    printed = table("volume-allowance")
    steps: list[Step] = []
    lacks = [*contents.lacks, *_sizes_wanted(contents)]
    for what, times, size, clause in _counted(contents, edition, lacks):
        if size.name in printed:
            allowance = printed.row(size.name).text("volume")
            steps.append(step(f"{what}, {size}", f"{times} × {allowance}", "in3", clause))
        else:
            lacks.append(f"a volume allowance for {size} ({what}): the table has none")
    return steps, lacks


def _beyond(contents: BoxContents) -> Fraction | None:
    """What the facts not recorded can add to the least at most, in in³; None where nothing bounds it.

    A loop of unknown length counts once more, clamps nobody looked for once. How many
    studs there are, or how large a wire of unknown size is, has no bound.
    """
    if contents.lacks or contents.studs is None or any(_sizes_wanted(contents)):
        return None
    open_ = [
        (each.count, each.size)
        for each in contents.entering
        if each.how == "passes" and each.loop_in is None and each.size is not None
    ]
    largest = max(_sizes(contents), default=None)
    if contents.clamps_inside is None and largest is not None:
        open_.append((1, largest))
    printed = table("volume-allowance")
    if any(size.name not in printed for size in _sizes(contents)):
        return None
    volumes = (count * Fraction(printed.row(size.name).text("volume")) for count, size in open_)
    return sum(volumes, Fraction(0))


def _sizes_wanted(contents: BoxContents) -> Iterator[str]:
    named = [(each.what, each.size) for each in contents.entering if each.count]
    named += [(each.what, each.largest) for each in contents.yokes]
    named += [("an equipment ground", each) for each in (*contents.grounds, *contents.isolated_grounds)]
    named += [("a terminal block", each) for each in contents.terminal_blocks]
    yield from (f"the wire size of {what}" for what, size in named if size is None)


def _counted(contents: BoxContents, edition: str, lacks: list[str]) -> Iterator[Counted]:
    """What is counted: words, how many allowances as a sum, of which size, by which clause.

    With a size missing, what goes by the largest in the box is counted by the
    largest known: the sum is then a least value, and the missing size is named.
    """

    def clause(number: str) -> Citation:
        return cite_in(edition, f"314.16(B)({number})")

    for each in contents.entering:
        times = each.count
        if each.how == "passes" and each.loop_in is None:
            lacks.append(f"how long the loop of {each.what} is")
        elif each.how == "passes" and each.loop_in is not None and each.loop_in >= 2 * FREE_CONDUCTOR_IN:
            times = 2 * each.count
        if times and each.size is not None:
            yield each.what, str(times), each.size, clause("1")
    largest = max(_sizes(contents), default=None)
    if contents.clamps_inside is None:
        lacks.append("whether the box has clamps inside")
    elif contents.clamps_inside and largest is not None:
        yield "clamps inside", "1", largest, clause("2")
    if contents.studs is None:
        lacks.append("whether the box has a fixture stud or hickey")
    elif contents.studs and largest is not None:
        yield "fixture stud or hickey", str(contents.studs), largest, clause("3")
    for yoke in contents.yokes:
        if yoke.largest is not None:
            yield yoke.what, str(2 * yoke.gangs), yoke.largest, clause("4")
    yield from _grounds(contents, edition_year(edition), clause("5"))
    if edition_year(edition) >= TERMINAL_BLOCKS_SINCE:
        for block in contents.terminal_blocks:
            if block is not None:
                yield "terminal block", "1", block, clause("6")


def _grounds(contents: BoxContents, year: int, clause: Citation) -> Iterator[Counted]:
    sets = [
        ("equipment grounds", contents.grounds),
        ("isolated equipment grounds", contents.isolated_grounds),
    ]
    if year >= QUARTER_ALLOWANCE_SINCE:
        sets = [("equipment grounds", (*contents.grounds, *contents.isolated_grounds))]
    for what, sizes in sets:
        largest = max((each for each in sizes if each is not None), default=None)
        if largest is not None:
            beyond = len(sizes) - GROUNDS_IN_ONE_ALLOWANCE
            quarters = year >= QUARTER_ALLOWANCE_SINCE and beyond > 0
            counted = f"{len(sizes)} {what}" if len(sizes) > 1 else what.removesuffix("s")
            yield counted, f"(1 + {beyond} / 4)" if quarters else "1", largest, clause


def _sizes(contents: BoxContents) -> Iterator[WireSize]:
    """Every recorded size in the box."""
    recorded = (
        *(each.size for each in contents.entering if each.count),
        *(each.largest for each in contents.yokes),
        *contents.grounds,
        *contents.isolated_grounds,
        *contents.terminal_blocks,
    )
    yield from (each for each in recorded if each is not None)
