"""Old work is judged by its own time, and what today's edition would ask besides is told apart."""

from junctionary.checks.examples import judge_example
from junctionary.checks.today import asked_today

RECORD = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [], feeds: den, says: Den}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1, length: 20 ft}
[rooms/den.yaml]
room: den
name: Den
kind: bedroom
built_to: nec-1990
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: d}, makeup: end-of-run}
[devices/all.yaml]
devices:
  d: {is: receptacle, face: 5-15R, rating: 15 A, marks: []}
"""


def test_old_work_is_left_alone_and_told_what_today_would_ask() -> None:
    old = judge_example(RECORD)
    found = {each.rule for each in old.judgement.findings}
    today = {each.rule for each in asked_today(old.house, old.network, old.judgement)}
    assert "afci-missing" not in found
    assert "afci-missing" in today


def test_new_work_is_told_once() -> None:
    new = judge_example(RECORD.replace("built_to: nec-1990\n", ""))
    assert "afci-missing" in {each.rule for each in new.judgement.findings}
    assert asked_today(new.house, new.network, new.judgement) == ()
