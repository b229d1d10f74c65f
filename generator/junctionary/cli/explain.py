"""``junctionary explain``: what a check looks at, why, on what authority, how to mend what it finds."""

import sys
import textwrap
from argparse import Namespace

from junctionary.checks.engine import rules
from junctionary.checks.finding import LAST_CHEAP
from junctionary.problems import nearest


def run(asked: Namespace) -> int:
    """Exit code 0, or 2 for a name no check has."""
    known = rules()
    if asked.name is None:
        width = max(map(len, known))
        for each in known.values():
            print(f"{each.id:{width}}  {each.severity:7}  {each.title}")
        return 0
    rule = known.get(asked.name.replace("_", "-"))
    if rule is None:
        near = nearest(asked.name, known)
        hint = f"; the nearest is {near}" if near else ""
        print(f"no check is called {asked.name!r}{hint}", file=sys.stderr)
        return 2
    print(f"{rule.id} ({rule.severity}; cheapest to mend {LAST_CHEAP[rule.stage]})\n")
    print(_wrapped(rule.title))
    for heading, text in rule.parts:
        print(f"\n{heading}\n{_wrapped(text)}")
    print("\nRests on")
    for cite in rule.cites:
        print(_wrapped(f"{cite}: {cite.summary}"))
    print(f"\nAn example that fails\n\n{_example(rule.fails)}\n\nThe same, mended\n\n{_example(rule.passes)}")
    return 0


def _wrapped(text: str) -> str:
    return textwrap.fill(" ".join(text.split()), 88, initial_indent="    ", subsequent_indent="    ")


def _example(text: str) -> str:
    return textwrap.indent(textwrap.dedent(text).strip("\n"), "    ")
