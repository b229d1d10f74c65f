"""The volume of a box: marked, or a standard metal box's, with what is added and taken."""

from dataclasses import dataclass
from fractions import Fraction

from junctionary.formulas.sums import exact
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite, cite_in
from junctionary.tables import table

UNMARKED_DIVIDER_IN3 = {True: Fraction(1, 2), False: Fraction(1)}
"""What an unmarked divider takes, by whether it is metal (IRC E3905.12.1)."""

PER_GANG = ", per gang"


@dataclass(frozen=True, slots=True)
class Addition:
    """A ring, extension or domed cover and the volume marked on it, None where that is not recorded.

    A metal extension ring without a mark adds what the standard box of its trade size holds.
    """

    what: str
    volume_in3: Fraction | None
    standard: str | None = None


@dataclass(frozen=True, slots=True)
class Divider:
    """A barrier in a box: metal or not, None where not recorded; its marked volume, None where unmarked."""

    metal: bool | None
    volume_in3: Fraction | None = None


@dataclass(frozen=True, slots=True)
class BoxVolume:
    """What is known of a box's volume; ``standard`` is a trade size such as ``4 x 1-1/2 octagonal``."""

    box: str
    marked_in3: Fraction | None = None
    standard: str | None = None
    gangs: int = 1
    additions: tuple[Addition, ...] = ()
    dividers: tuple[Divider, ...] = ()


def volume(box: BoxVolume, edition: str) -> Worked:
    """The volume there is, in in³; lacking where the box or anything in it is not marked or recorded.

    A marked volume counts before the table's. Never worked out from outside dimensions.
    """
    lacks: list[str] = []
    steps = _own(box, edition)
    if not steps:
        known = f": {box.standard} is no standard metal box" if box.standard else ""
        lacks.append(f"the marked volume of box {box.box}{known}")
    for each in box.additions:
        adds = _added(each, edition)
        if adds is None:
            lacks.append(f"the marked volume of the {each.what} on box {box.box}")
        else:
            steps.append(adds)
    added = len(steps)
    for divider in box.dividers:
        if divider.volume_in3 is not None:
            steps.append(step("divider", exact(divider.volume_in3), "in3", cite_in(edition, "314.16(A)")))
        elif divider.metal is None:
            lacks.append(f"what the divider in box {box.box} is made of, or its marked volume")
        else:
            what = f"unmarked {'metal' if divider.metal else 'nonmetallic'} divider"
            steps.append(step(what, exact(_taken(divider)), "in3", cite("irc-2018", "E3905.12.1")))
    if lacks:
        return lacking(lacks, "in3", steps)
    if len(steps) > 1:
        sum_ = " + ".join(exact(each.value) for each in steps[:added])
        sum_ += "".join(f" − {exact(each.value)}" for each in steps[added:])
        steps.append(step("volume", sum_, "in3"))
    return finished(steps[-1].value, "in3", steps)


def least_volume(box: BoxVolume, edition: str) -> Fraction | None:
    """What the box holds in in³ even if what is not recorded goes against it; None with no volume at all.

    A ring of unknown volume adds nothing, a divider of unknown make takes what a nonmetallic one does.
    """
    own = _own(box, edition)
    if not own:
        return None
    adds = [_added(each, edition) for each in box.additions]
    added = sum((each.value for each in adds if each is not None), own[0].value)
    return added - sum((_taken(each) for each in box.dividers), Fraction(0))


def _added(addition: Addition, edition: str) -> Step | None:
    if addition.volume_in3 is not None:
        return step(addition.what, exact(addition.volume_in3), "in3", cite_in(edition, "314.16(A)"))
    return _standard(addition.what, addition.standard, 1, edition)


def _taken(divider: Divider) -> Fraction:
    if divider.volume_in3 is not None:
        return divider.volume_in3
    return UNMARKED_DIVIDER_IN3[divider.metal is True]


def _own(box: BoxVolume, edition: str) -> list[Step]:
    if box.marked_in3 is not None:
        return [step("marked volume", exact(box.marked_in3), "in3", cite_in(edition, "314.16(A)"))]
    found = _standard("standard metal box", box.standard, box.gangs, edition)
    return [] if found is None else [found]


def _standard(what: str, trade_size: str | None, gangs: int, edition: str) -> Step | None:
    if trade_size is None:
        return None
    printed = table("metal-boxes")
    name = trade_size if trade_size in printed else trade_size.removesuffix(PER_GANG) + PER_GANG
    if name not in printed:
        return None
    each_in3 = printed.row(name).text("volume")
    sum_ = f"{gangs} × {each_in3}" if name.endswith(PER_GANG) else each_in3
    return step(f"{what} {name}", sum_, "in3", printed.cite_for(edition))
