"""Where to look: the page's search gives what the command's does, word for word."""

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from random import Random
from typing import Any

import pytest
import yaml
from random_houses import as_text, random_house

from junctionary.checks.examples import read_example
from junctionary.house.readings import READINGS
from junctionary.house.sites import Site
from junctionary.house.suspects import Suspicion, Ways, suspects

from .conftest import HOUSES, Looked, Run, looked

CASES = yaml.safe_load((Path(__file__).parent / "cases.yaml").read_text("utf-8"))
SEARCH = """([ground, cases]) => {
  const ready = junctionarySuspects.ready(ground);
  return cases.map(([dead, live, read]) => {
    const found = junctionarySuspects.suspects(ready, dead, live, read);
    found.suspects = found.suspects.map(({site, roles}) => [...ground.sites[site].slice(0, 7), roles]);
    return found;
  });
}"""
Told = tuple[list[str], list[str], dict[str, str]]


def as_page(found: Suspicion) -> dict[str, Any]:
    """A search's answer in the shape in which a page has it."""
    test = found.next
    return {
        "dead": list(found.dead),
        "live": list(found.live),
        "stop": list(found.stop),
        "scope": {"kind": found.scope.kind, "says": list(found.scope.says), "stop": list(found.scope.stop)},
        "resets": [
            {"id": r.id, "kind": r.kind, "do": r.do, "common": r.common, "box": r.box, "by_label": r.by_label}
            for r in found.resets
        ],
        "suspects": [[*place(each.site), list(each.roles)] for each in found.suspects],
        "first_dead": found.first_dead,
        "last_live": found.last_live,
        "unexplained": list(found.unexplained),
        "unknown": list(found.unknown),
        "next": test
        and {"kind": test.kind, "at": test.at, "do": test.do, "this": test.this, "other": test.other},
    }


def place(site: Site) -> list[Any]:
    return [site.id, site.kind, site.weight, list(site.why), site.box, site.panel, site.run]


def drawn(chance: Random, known: Ways, number: int) -> Iterator[Told]:
    """Searches of every sort: neighbours dead, some that work, readings, and marks that contradict."""
    ids = list(known.supply.outlets)
    for _ in range(number if ids else 0):
        at = chance.randrange(len(ids))
        dead = ids[at : at + chance.randint(1, 5)]
        if chance.random() < 0.3:
            dead += chance.sample(ids, min(len(ids), 2))
        live = [each for each in chance.sample(ids, min(len(ids), 4)) if each not in dead]
        if chance.random() < 0.1:
            live.append(dead[0])
        read = {each: chance.choice(list(READINGS)) for each in dead[:2] if chance.random() < 0.4}
        if chance.random() < 0.1:
            dead = []
        yield list(dict.fromkeys(dead)), live, read


def asked(at: Looked, cases: list[Told]) -> list[dict[str, Any]]:
    found = (suspects(at.house, at.network, dead, live, read, at.known) for dead, live, read in cases)
    return [as_page(each) for each in found]


@pytest.fixture(scope="module")
def answers(demo: Looked, run_script: Run) -> dict[str, dict[str, Any]]:
    """What the page answers to each case, all asked at once: what a search rests on is long to hand over."""
    found = run_script(SEARCH, [demo.ground, [told_in(case) for case in CASES]])
    return dict(zip((case["says"] for case in CASES), found, strict=True))


def told_in(case: Mapping[str, Any]) -> Told:
    return (case["dead"], case.get("live", []), case.get("read", {}))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["says"])
@pytest.mark.browser
def test_one_set_of_cases_holds_for_both(
    demo: Looked, answers: dict[str, dict[str, Any]], case: Mapping[str, Any]
) -> None:
    page = answers[case["says"]]
    assert page == asked(demo, [told_in(case)])[0]
    if "places" in case:
        assert [each[0] for each in page["suspects"]] == case["places"]
    if "scope" in case:
        assert page["scope"]["kind"] == case["scope"]
    if "resets" in case:
        assert [each["id"] for each in page["resets"]] == case["resets"]
    if "next" in case:
        assert page["next"]["at"] == case["next"]
    for words in case.get("do", ()):
        assert words in page["next"]["do"]
    said = {each[0]: [each[3], each[-1]] for each in page["suspects"]}
    for name, words in case.get("why", {}).items():
        assert said[name] == words
    for part in ("stop", "unexplained"):
        for words in case.get(part, ()):
            assert any(words in each for each in page[part])


@pytest.mark.browser
def test_many_searches_of_the_demo_house_agree(demo: Looked, run_script: Run) -> None:
    cases = list(drawn(Random(1), demo.known, 5 * HOUSES))
    assert run_script(SEARCH, [demo.ground, cases]) == asked(demo, cases)


@pytest.mark.browser
def test_searches_of_random_houses_agree(run_script: Run, drawn_houses: list[Looked]) -> None:
    for seed, each in enumerate(drawn_houses):
        cases = list(drawn(Random(seed), each.known, 6))
        assert run_script(SEARCH, [each.ground, cases]) == asked(each, cases), seed


@pytest.mark.browser
@pytest.mark.parametrize(
    ("known", "lost"),
    [
        (r"feeds: [\w.]+", "feeds: unknown"),
        (r"from: main\b", "from: unknown"),
        (r"makeup: \[.*", "makeup: unknown"),
    ],
)
def test_searches_agree_where_the_record_leads_nowhere(run_script: Run, known: str, lost: str) -> None:
    unknown = 0
    for seed in range(8):
        text = re.sub(known, lost, as_text(random_house(Random(seed), 3)), count=2)
        each = looked(read_example(text))
        cases = list(drawn(Random(seed), each.known, 12))
        answers = asked(each, cases)
        assert run_script(SEARCH, [each.ground, cases]) == answers, seed
        unknown += sum(bool(answer["unknown"]) for answer in answers)
    assert unknown > 0


@pytest.mark.browser
def test_a_place_named_wrong_in_an_address_is_no_place(demo: Looked, run_script: Run) -> None:
    named = """([ground, names]) => {
      const ready = junctionarySuspects.ready(ground);
      return names.map(each => junctionarySuspects.named(ready, each));
    }"""
    assert run_script(named, [demo.ground, ["K99", "kettle", "K13"]]) == [None, ["K1.r1"], []]
