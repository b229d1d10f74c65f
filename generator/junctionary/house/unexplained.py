"""Why no single fault explains what was told; which of several reasons it is, nobody guesses."""

from collections.abc import Collection, Iterator, Mapping

from junctionary.house.model import Role
from junctionary.house.network import listed
from junctionary.house.supply import Supply
from junctionary.house.told import Told

LAST = "two faults, a wrong mark or a wrong record: which of them, the record cannot tell"


def unexplained(
    held: Supply,
    marks: Told,
    common: Mapping[Role, Collection[str]],
    left: Mapping[Role, Collection[str]],
) -> tuple[str, ...]:
    """The reasons, in words; called only where no place is left."""
    if not marks.dead and not marks.ground:
        return ("nothing was told to be dead",)
    if marks.wrong:
        return (*marks.wrong, LAST)
    searched = marks.dead or marks.ground
    lost = [each for each in searched if all(each in held.lost[role] for role in common)]
    if len(lost) == len(searched):
        return (f"the record leads from {listed(lost)} to no source: what feeds it is not recorded",)
    if any(left.values()):
        return ("the marks leave some places, but the readings rule out every one of them", LAST)
    ruled_out = _ruled_out(held, marks, common) if any(common.values()) else ()
    return (*_apart(held, marks), *ruled_out, LAST)


def _ruled_out(held: Supply, marks: Told, common: Mapping[Role, Collection[str]]) -> Iterator[str]:
    """The working points that hang on all that the dead have in common."""
    found = []
    for each in marks.live or marks.proved_ground:
        own = {
            (role, point)
            for role in common
            for start in held.starts[role][each]
            for point in held.trees[role].way(start)
        }
        if all((role, point) in own for role, points in common.items() for point in points):
            found.append(each)
    if found:
        yield f"everything that the dead points have in common feeds {listed(found)} too, told to work"
    else:
        yield "everything that the dead points have in common feeds one or another that is told to work"


def _apart(held: Supply, marks: Told) -> Iterator[str]:
    """Which of the dead hang on which breakers, where they hang on several."""
    by: dict[str, list[str]] = {}
    for each in marks.dead:
        breakers = dict.fromkeys(feed.breaker for feed in held.feeds[each])
        by.setdefault(listed(breakers) if breakers else "no breaker on record", []).append(each)
    if len(by) > 1:
        hung = "; ".join(f"{listed(points)} on {breakers}" for breakers, points in by.items())
        yield f"the dead points hang on several breakers: {hung}"
