"""The make-up of one box: its few words expanded into joints and landings, beside what is written out.

By like role, circuit by circuit: each entry joins hots with hots and neutrals
with neutrals, colour by colour where a run has more than one; the neutrals of
two entries stay apart, and all grounds that entries bring are one joint, with
a pigtail to the box's screw where the box is metal. One wire that goes to one
terminal is landed straight; otherwise it is joined, with a pigtail to each
terminal. A joint or terminal written out takes the place of the expanded one
that shares a conductor or terminal with it; what that one also held is then
told nowhere, and stands under ``untold``.

A split receptacle whose halves are fed apart: the word lands the feed's one
remaining hot on the half that nothing else takes, so at the receptacle's box
``split: {r1: brass}`` and ``terminals: {r1.brass-top: x1.red}`` beside the
word say that the red, switched elsewhere, feeds the upper half.

Nothing is guessed. A word that does not fit what is in the box is a problem;
where a cable is not known, the ends of that entry stay untold, and a run
whose conductors are not known stands there whole, as ``K1/a1``.
"""

from dataclasses import dataclass

from junctionary.house.makeup.bench import Bench
from junctionary.house.makeup.entries import expand
from junctionary.house.makeup.making import Made, make
from junctionary.house.makeup.written import Written, read_written
from junctionary.house.model import Joint, Landing
from junctionary.problems import Problem
from junctionary.records.boxes import MakeupEntry

__all__ = ["Bench", "Outcome", "make_up", "words_of"]


@dataclass(frozen=True, slots=True)
class Outcome:
    """How the conductors of one box are joined and landed, and which of their ends are told nowhere."""

    joints: tuple[Joint, ...]
    landings: tuple[Landing, ...]
    capped: tuple[str, ...]
    loose: tuple[str, ...]
    passing: tuple[str, ...]
    untold: tuple[str, ...]


def words_of(entry: MakeupEntry) -> list[str]:
    """The words an entry is written in: ``pigtailed``; or ``feed``, ``guarded``, ``switched`` and so on."""
    told = [
        each for each in MakeupEntry.keys_of() if each not in ("word", "devices") and getattr(entry, each)
    ]
    return [entry.word, *told] if entry.word else told


def make_up(bench: Bench) -> tuple[Outcome, list[Problem]]:
    """The joints and landings of a box, those written out first, and every name or word that does not fit."""
    written, problems = read_written(bench)
    knots, straight, faults = expand(bench, written)
    problems += faults
    made, more = make(bench, written, knots, straight)
    outcome = Outcome(
        joints=made.joints,
        landings=made.landings,
        capped=tuple(atom.name for atom in written.capped),
        loose=tuple(atom.name for atom in written.loose),
        passing=written.uncut,
        untold=_untold(bench, written, made),
    )
    return outcome, problems + more


def _untold(bench: Bench, written: Written, made: Made) -> tuple[str, ...]:
    told = {member.name for joint in made.joints for member in joint.members}
    told |= {member.name for landing in made.landings for member in landing.wires}
    told |= {atom.name for atom in (*written.capped, *written.loose)}
    untold = []
    for run in bench.runs.values():
        ends = [atom.name for atom in bench.conductors(run)] or [f"{bench.box}/{run.id}"]
        untold += [name for name in ends if name not in told]
    return tuple(untold)
