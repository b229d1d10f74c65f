"""The stretches of wall and counter on a plan that no receptacle reaches, where a finding says so."""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.figures import Reached
from junctionary.figures.coverage import COUNTER_REACH, WALL_REACH, Stretch
from junctionary.house.geometry import Shape
from junctionary.house.model import Room
from junctionary.sheets.links import Ref
from junctionary.sheets.naming import said
from junctionary.sheets.plan import Inches, PlanFar
from junctionary.sheets.survey import Survey
from junctionary.units import Quantity, beside_its_own

WALL_RULE = "wall-space-without-receptacle"
COUNTER_RULE = "counter-without-receptacle"


def out_of_reach(survey: Survey, room: Room, shape: Shape) -> Iterator[PlanFar]:
    """Each stretch that fails, around its corners; none where no finding stands, for then nothing fails."""
    ref = Ref("room", room.id)
    found = {each.rule.id for each in survey.findings_at.get(ref, ())}
    today = {each.rule.id for each in survey.today_at.get(ref, ())}
    figures = survey.figures
    for rule, reached, asked in (
        (WALL_RULE, figures.wall_spaces.get(room.id), WALL_REACH),
        (COUNTER_RULE, figures.counters.get(room.id), COUNTER_REACH),
    ):
        limit = beside_its_own(asked, survey.house.record.shows)
        if reached is not None and rule in found | today:
            for corners, length_in in _joined(reached, shape):
                # To the nearest eighth of an inch, as the finding says it.
                length = Quantity(Fraction(round(length_in * 8), 8), "in", "length")
                yield PlanFar(
                    corners, said(survey.house, length), rule == COUNTER_RULE, rule not in found, limit
                )


def _joined(reached: Reached, shape: Shape) -> list[tuple[tuple[Inches, ...], Fraction]]:
    """Stretches that meet at a corner as one, with the length of the whole."""
    made: list[tuple[tuple[Inches, ...], Fraction]] = []
    for stretch in reached.far:
        ends = _ends(stretch, shape)
        if ends is None:
            continue
        corners, length_in = ends, stretch.to_in - stretch.from_in
        if made and made[-1][0][-1] == ends[0]:
            before, so_far = made.pop()
            corners, length_in = (*before, *ends[1:]), so_far + length_in
        made.append((corners, length_in))
    # The walls are measured from one corner round to itself: what meets there is one stretch too.
    if len(made) > 1 and made[-1][0][-1] == made[0][0][0]:
        (last, last_in), (first, first_in) = made.pop(), made.pop(0)
        made.append(((*last, *first[1:]), last_in + first_in))
    return made


def _ends(stretch: Stretch, shape: Shape) -> tuple[Inches, ...] | None:
    wall = shape.wall(stretch.wall)
    if wall is None:
        return None
    (x1, y1), (x2, y2) = wall.at(stretch.from_in), wall.at(stretch.to_in)
    return (float(x1), float(y1)), (float(x2), float(y2))
