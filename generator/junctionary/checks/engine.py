"""Rules are found by their folder, run over a house, and what they say is put in order."""

import pkgutil
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from inspect import cleandoc
from types import MappingProxyType, ModuleType

from junctionary.checks import rules as folder
from junctionary.checks.finding import (
    LAST_CHEAP,
    SEVERITIES,
    CannotTell,
    Cheap,
    Fault,
    Finding,
    Judgement,
    Rule,
    Severity,
    Unrecorded,
)
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.marks import Place
from junctionary.sources import Citation, cite_for

Check = Callable[[House, Network, Figures], Iterator[Fault | CannotTell]]

PARTS = ("Why it matters", "What to do", "Cannot tell", "Stands")
"""The parts of every rule's docstring, in order, after the sentence that names the fault."""

_PART = re.compile(rf"^({'|'.join(PARTS)}):\s*", re.MULTILINE)
_NOWHERE = Place("", 0, 0)


class RuleCrashed(RuntimeError):  # noqa: N818 - it says what happened
    """A rule's own function failed: nothing may be said of the house."""

    def __init__(self, rule: str) -> None:
        super().__init__(f"the check {rule} failed, so nothing can be said of this house")
        self.rule = rule


class RuleUnfit(ValueError):  # noqa: N818 - it says what the file is
    """A rule file lacks one of its parts."""


@dataclass(frozen=True, slots=True)
class LoadedRule:
    """One rule as its file tells it.

    ``subject`` is its folder. ``title`` is the fault in one sentence; ``parts``
    are the headings of its page, each with its text. ``untold`` is an example
    in which a fact is missing.
    """

    id: str
    subject: str
    title: str
    parts: tuple[tuple[str, str], ...]
    severity: Severity
    cites: tuple[Citation, ...]
    stage: Cheap
    fails: str
    passes: str
    untold: str
    check: Check


@cache
def rules() -> Mapping[str, LoadedRule]:
    """Every rule under ``checks/rules/<subject>/``, by its id; raises RuleUnfit for one that is not whole."""
    found: dict[str, LoadedRule] = {}
    for subject in pkgutil.iter_modules(folder.__path__, f"{folder.__name__}."):
        if not subject.ispkg:
            continue
        for file in pkgutil.iter_modules(import_module(subject.name).__path__, f"{subject.name}."):
            rule = load_rule(import_module(file.name))
            if rule.id in found:
                raise RuleUnfit(f"two files are called {rule.id}")
            found[rule.id] = rule
    return MappingProxyType(dict(sorted(found.items())))


def load_rule(module: ModuleType) -> LoadedRule:
    """One rule from its module, named by its file; raises RuleUnfit, naming what the file lacks."""
    *_, subject, stem = module.__name__.split(".")
    missing = [part for part in ("RULE", "FAILS", "PASSES", "UNTOLD", "check") if not hasattr(module, part)]
    title, parts = read_parts(module.__doc__ or "")
    missing += [part for part in PARTS if not dict(parts).get(part)]
    if missing or not title:
        raise RuleUnfit(f"{module.__name__} lacks {', '.join(missing) or 'a sentence that names the fault'}")
    rule: Rule = module.RULE
    return LoadedRule(
        id=stem.replace("_", "-"),
        subject=subject,
        title=title,
        parts=parts,
        severity=rule.severity,
        cites=rule.cites,
        stage=rule.stage,
        fails=module.FAILS,
        passes=module.PASSES,
        untold=module.UNTOLD,
        check=module.check,
    )


def read_parts(docstring: str) -> tuple[str, tuple[tuple[str, str], ...]]:
    """The first sentence of a rule's docstring, and its parts by their headings."""
    title, *rest = _PART.split(cleandoc(docstring))
    texts = (" ".join(text.split()) for text in rest[1::2])
    texts = (text[:1].upper() + text[1:] for text in texts)
    return " ".join(title.split()), tuple(zip(rest[::2], texts, strict=True))


def judge(house: House, network: Network, figures: Figures) -> Judgement:
    """What every rule says of a house, most grave first, then by place; raises RuleCrashed."""
    findings: list[Finding] = []
    unrecorded: list[Unrecorded] = []
    for rule in rules().values():
        for said in _answers(rule, house, network, figures):
            if isinstance(said, Fault):
                findings.append(_finding(rule, said, house.edition))
            else:
                needs = tuple(dict.fromkeys(map(_wanted, said.needs)))
                unrecorded.append(Unrecorded(rule.id, said.about, needs, said.place))
    findings.sort(key=lambda each: (SEVERITIES.index(each.severity), each.place, each.rule, each.about))
    unrecorded.sort(key=lambda each: (each.place or _NOWHERE, each.rule, each.about))
    return Judgement(tuple(dict.fromkeys(findings)), tuple(dict.fromkeys(unrecorded)))


def until(stage: Cheap, judgement: Judgement) -> Judgement:
    """What is said by the checks whose faults are cheap up to that stage: a checklist for it."""
    stages = list(LAST_CHEAP)
    due = {each.id for each in rules().values() if stages.index(each.stage) <= stages.index(stage)}
    return Judgement(
        tuple(each for each in judgement.findings if each.rule in due),
        tuple(each for each in judgement.unrecorded if each.rule in due),
    )


def _wanted(need: str) -> str:
    """The fact itself, where a need is worded as the network met it: ``how box O8 is made up is unknown``."""
    for ending in (" is unknown", " is not recorded"):
        need = need.removesuffix(ending)
    return need.removeprefix("nobody could trace ")


def _answers(
    rule: LoadedRule, house: House, network: Network, figures: Figures
) -> Iterable[Fault | CannotTell]:
    # Taken whole before any is used: a rule that fails half-way has said nothing.
    try:
        return list(rule.check(house, network, figures))
    except Exception as error:
        raise RuleCrashed(rule.id) from error


def _finding(rule: LoadedRule, fault: Fault, reference: str) -> Finding:
    edition = fault.edition or reference
    return Finding(
        rule=rule.id,
        severity=rule.severity,
        place=fault.place,
        about=fault.about,
        found=fault.found,
        allowed=fault.allowed,
        because=fault.because,
        do=fault.do,
        cites=tuple(dict.fromkeys(_as_numbered_in(edition, each) for each in rule.cites)),
        working=fault.working,
    )


def _as_numbered_in(edition: str, cite: Citation) -> Citation:
    """A clause of the electrical code as the edition judged by numbers it; any other as it is."""
    numbered = cite_for(edition, cite.clause) if cite.publication.startswith("nec-") else None
    return numbered or cite
