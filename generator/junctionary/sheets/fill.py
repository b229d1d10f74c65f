"""The fill of a box with its sum written out."""

from junctionary.figures.fill import Fill
from junctionary.formulas.worked import Step
from junctionary.sheets.entries import Working, WorkingLine
from junctionary.sheets.survey import cited, edition_words
from junctionary.units import decimal

DIGITS = 2
FEW = 3
"""So many signs of addition stand on one line; a longer chain only repeats the column above it."""


def fill_working(fill: Fill) -> Working:
    """The sum of a box's fill; what is missing is said in its place, and never counted as nothing."""
    *steps, total = fill.filled.steps or (None,)
    lines = [_line(step) for step in steps if step is not None]
    if fill.filled.value is not None and total is not None:
        how = total.sum if total.sum.count(" + ") < FEW else "added up"
        lines.append(WorkingLine(total.what, how, decimal(fill.filled.value, DIGITS), True))
    else:
        lines += [_line(total)] if total is not None else []
        lines.append(WorkingLine("filled, as far as recorded", "at least", decimal(fill.least, DIGITS), True))
        if fill.most is not None:
            more = f"{decimal(fill.least, DIGITS)} + {decimal(fill.most - fill.least, DIGITS)}"
            lines.append(WorkingLine("filled, at most", more, decimal(fill.most, DIGITS)))
    volume = [_line(step) for step in fill.volume.steps]
    if fill.volume.value is not None and len(volume) != 1:
        volume.append(WorkingLine("volume", "", decimal(fill.volume.value, DIGITS)))
    lines += volume or [WorkingLine("volume", "not recorded", "?")]
    if fill.left is not None:
        lines.append(WorkingLine("left", _less(fill), decimal(fill.left, DIGITS), True))
    return Working(
        f"Box {fill.box}, by {edition_words(fill.edition)}",
        "in³",
        tuple(lines),
        _says(fill),
        cited((*fill.filled.cites, *fill.volume.cites)),
    )


def _less(fill: Fill) -> str:
    if fill.volume.value is None or fill.filled.value is None:
        return ""
    return f"{decimal(fill.volume.value, DIGITS)} − {decimal(fill.filled.value, DIGITS)}"


def _line(step: Step) -> WorkingLine:
    return WorkingLine(step.what, step.sum, decimal(step.value, DIGITS))


def _says(fill: Fill) -> str:
    if not fill.governed:
        return "Its conductors are so large that the box is sized by its dimensions, not by this sum."
    if fill.fits is False:
        return "It holds more than it may."
    if fill.fits is None:
        return f"Cannot be told without: {'; '.join(fill.lacks)}."
    if fill.lacks:
        return f"It fits, whichever way what is not recorded turns out: {'; '.join(fill.lacks)}."
    return "It fits."
