"""All entries of a box expanded into knots, each word by its own rule, the grounds of the box as one."""

from collections.abc import Iterable

from junctionary.house.makeup.bench import Atom, Bench
from junctionary.house.makeup.feeding import feed
from junctionary.house.makeup.knots import Doubt, Key, Knot, Tie, tie_up
from junctionary.house.makeup.plan import Plan, plan_entries
from junctionary.house.makeup.sides import sides_of
from junctionary.house.makeup.switching import switching
from junctionary.house.makeup.written import Written
from junctionary.problems import Problem

GROUND: Key = ("", "ground")
ARMOR: Key = ("", "armor")


def expand(bench: Bench, written: Written) -> tuple[list[Knot], frozenset[Key], list[Problem]]:
    """The knots the words of a box give, the keys of those that land together on one terminal, the problems.

    What is written out has already replaced the knots it shares a conductor
    or terminal with, and answered the doubts it is about.
    """
    plans, problems = plan_entries(bench, written)
    ties: list[Tie] = []
    doubts: list[Doubt] = []
    straight: set[Key] = set()
    known = [plan for plan in plans if all(run.conductors for run in plan.runs)]
    for plan in known:
        legs = switching(bench, plan)
        work = feed(bench, plan, legs, written.mentioned)
        ties += [*work.ties, *legs.ties]
        doubts += [*legs.doubts, *work.doubts]
        straight |= work.straight
    ties += _grounds(bench, known)
    ended = {atom.name for atom in (*written.capped, *written.loose)}
    ties = [tie for tie in ties if tie.atom.name not in ended]
    places = {"": known[0].place if known else bench.record.place} | {
        str(plan.number): plan.place for plan in known
    }
    knots, twice = tie_up(ties, places)
    problems += [*_standing(doubts, written), *twice]
    kept = [knot for knot in knots if not any(atom.name in written.mentioned for atom in knot.atoms)]
    return kept, frozenset(straight), problems


def _standing(doubts: Iterable[Doubt], written: Written) -> list[Problem]:
    """The problems of the doubts that nothing written out has answered."""
    return list(dict.fromkeys(each.problem for each in doubts if not each.names & written.mentioned))


def _grounds(bench: Bench, plans: list[Plan]) -> list[Tie]:
    """All grounds of the box as one: of every run and device of its entries, and the screw of a metal box.

    The armor of a cable is bonded by its fitting, not by a wire: it lands on
    the box itself.
    """
    atoms: list[Atom] = []
    armors: list[Atom] = []
    for plan in plans:
        for run in plan.runs:
            for atom in bench.conductors(run):
                if bench.role(atom) == "ground":
                    (armors if atom.colour == "armor" else atoms).append(atom)
    if bench.is_metal and (atoms or armors):
        atoms.append(bench.screw())
    for plan in plans:
        for device in plan.devices:
            atoms += [bench.terminal(device, each) for each in sides_of(bench.devices[device]).ground]
    word = plans[0].word if plans else "feed"
    joined = any(each.kind in ("conductor", "box") for each in atoms)
    ties = [Tie(GROUND, atom, word) for atom in atoms if joined]
    if bench.is_metal:
        ties += [Tie(ARMOR, atom, word) for atom in [*armors, bench.screw()] if armors]
    return ties
