"""What one rule says of a small record, for the rules' own tests."""

from collections.abc import Callable
from dataclasses import dataclass

import pytest

from junctionary.checks.examples import judge_example, split

COMMON = """
[rooms/den.yaml]
room: den
name: Den
kind: den
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, torque: 14 in-lb}
  single: {is: receptacle, face: 5-20R, outlets: 1}
  pair-clamp: {is: receptacle, face: 5-15R, per_terminal: 2}
  switch: {is: switch, ways: 1}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green], canopy: domed}
connectors:
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""


@dataclass(frozen=True)
class Said:
    """``found`` are the places of a rule's findings, as ``file:line``; ``needs`` the facts it lacks."""

    found: list[str]
    needs: list[str]


Says = Callable[[str, str], Said]


@pytest.fixture
def says() -> Says:
    """From a rule's id and a record, which adds to common files or tells them anew, to what the rule says."""

    def said(rule: str, text: str) -> Said:
        files = split(COMMON) | split(text)
        judgement = judge_example("".join(f"[{file}]\n{lines}" for file, lines in files.items())).judgement
        return Said(
            [f"{each.place.file}:{each.place.line}" for each in judgement.findings if each.rule == rule],
            [need for each in judgement.unrecorded if each.rule == rule for need in each.needs],
        )

    return said
