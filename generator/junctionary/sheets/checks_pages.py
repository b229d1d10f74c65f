"""Builds the pages of the checks: one for each rule, and their list."""

from textwrap import dedent

from junctionary.checks.engine import LoadedRule, rules
from junctionary.checks.finding import LAST_CHEAP
from junctionary.sheets.entries import SEVERITIES, Excerpt, Row, Table
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.lists import Group, ListSheet
from junctionary.sheets.naming import counted, raised
from junctionary.sheets.notes import RulePage
from junctionary.sheets.survey import Survey, sentence, title
from junctionary.sheets.titleblock import GENERAL, rule_number

SAID = {"Cannot tell": "When it cannot tell", "Stands": "Where it is reported"}
"""Parts of a rule whose heading is for who writes one; a reader gets a whole phrase."""


def rule_pages(survey: Survey) -> tuple[RulePage, ...]:
    """A page for every rule, with where it was met in this house."""
    return tuple(_page(survey, rule) for rule in rules().values())


def rules_list(survey: Survey) -> ListSheet:
    """Every check, the gravest first."""
    met = [each.rule.id for each in survey.findings]
    groups = []
    for severity in SEVERITIES:
        rows = tuple(
            Row(
                (
                    (Link(rule.id, Ref("rule", rule.id)),),
                    (rule.title,),
                    (rule.subject,),
                    (str(met.count(rule.id)) if rule.id in met else "not met",),
                )
            )
            for rule in rules().values()
            if rule.severity == severity
        )
        if rows:
            groups.append(
                Group(severity, (), Table(("check", "finds", "looks at", "met here"), rows, figures=(3,)))
            )
    return ListSheet(
        title=title(survey, "Checks", GENERAL["rules"], "general"),
        ref=Ref("sheet", "rules"),
        heading="Checks",
        lead=(
            sentence(counted(len(rules()), "check")),
            " What a check cannot judge is among the facts ",
            Link("not recorded", Ref("sheet", "not-recorded")),
            ".",
        ),
        groups=tuple(groups),
    )


def _page(survey: Survey, rule: LoadedRule) -> RulePage:
    return RulePage(
        title=title(survey, f"Check: {rule.id}", rule_number(rule.id), "general"),
        ref=Ref("rule", rule.id),
        heading=rule.title,
        lead=(rule.id,),
        severity=rule.severity,
        stage=LAST_CHEAP[rule.stage],
        parts=tuple((SAID.get(heading, heading), raised(text)) for heading, text in rule.parts),
        # Common practice is its own sentence; a clause has a number and what it asks.
        cites=tuple(
            str(each) if each.clause == each.summary else f"{each}: {each.summary}" for each in rule.cites
        ),
        fails=_example(rule.fails),
        passes=_example(rule.passes),
        met=tuple(each for each in survey.findings if each.rule.id == rule.id),
    )


def _example(text: str) -> Excerpt | None:
    shown = dedent(text).strip("\n")
    return Excerpt("", 1, shown) if shown else None
