import pytest
import yaml

import junctionary.sources as sources
from junctionary.sources import (
    UnknownSourceError,
    cite,
    cite_for,
    cite_in,
    known_edition,
    publication,
    publications,
)
from junctionary.sources.citing import CONFIRMED


class _NoDoubles(yaml.SafeLoader):
    def construct_mapping(self, node, deep=False):
        keys = [self.construct_object(key, deep=True) for key, _ in node.value]
        assert len(keys) == len(set(map(str, keys))), f"{node.start_mark}: a key stands twice"
        return super().construct_mapping(node, deep)


def test_a_citation_reads_as_the_trade_writes_it():
    assert str(cite("nec-2023", "240.4(D)")) == "NEC 2023, 240.4(D)"
    assert str(cite("cfr-29-1910", "1910.304(b) Table S-5")) == "29 CFR, 1910.304(b) Table S-5"


def test_practice_takes_any_sentence():
    found = cite("practice", "push-in terminals loosen sooner than screws")
    assert (found.summary, found.confirmed) == ("push-in terminals loosen sooner than screws", "practice")


@pytest.mark.parametrize(
    ("publication_id", "clause", "near"),
    [
        ("nec-202", "240.4(D)", "nec-202"),
        ("nec-2023", "240.4(d)", "240.4(D)"),
        ("ul-489", "feed-through", "ul-498"),
    ],
)
def test_a_misspelt_source_is_refused_with_the_nearest(publication_id, clause, near):
    with pytest.raises(UnknownSourceError, match=near.replace("(", r"\(").replace(")", r"\)")):
        cite(publication_id, clause)


@pytest.mark.parametrize(
    ("edition", "clause", "number"),
    [
        ("nec-2008", "310.16", "310.16"),
        ("nec-2014", "310.16", "310.15(B)(16)"),
        ("nec-2020", "310.16", "310.16"),
        ("nec-2008", "310.15(C)(1)", "310.15(B)(2)(a)"),
        ("nec-2017", "310.15(C)(1)", "310.15(B)(3)(a)"),
        ("nec-2017", "310.15(B)(1)", "310.15(B)(2)(a)"),
        ("nec-2020", "210.18", "210.3"),
        ("nec-2008", "408.4(A)", "408.4"),
    ],
)
def test_a_rule_that_moved_is_cited_by_its_number_in_that_edition(edition, clause, number):
    assert cite_in(edition, clause).clause == number


def test_a_rule_younger_than_the_edition_is_not_there():
    assert cite_for("nec-2014", "110.14(D)") is None
    assert cite_for("nec-2017", "110.14(D)") is not None
    with pytest.raises(UnknownSourceError, match="nec-2014"):
        cite_in("nec-2014", "110.14(D)")


def test_a_clause_no_edition_has_is_refused():
    with pytest.raises(UnknownSourceError, match=r"240\.4"):
        cite_for("nec-2023", "240.44")


@pytest.mark.parametrize(
    ("asked", "answered"),
    [("nec-1999", "nec-2008"), ("nec-2012", "nec-2011"), ("nec-2023", "nec-2023"), ("nec-2040", "nec-2026")],
)
def test_an_edition_without_a_file_is_answered_from_the_one_before_it_or_the_oldest(asked, answered):
    assert known_edition(asked) == answered


@pytest.mark.parametrize("asked", ["2023", "nec", "bs-7671"])
def test_what_is_no_nec_edition_is_refused(asked):
    with pytest.raises(UnknownSourceError):
        known_edition(asked)


def test_the_edition_nobody_has_seen_says_so_of_every_clause():
    assert {each.confirmed for each in publication("nec-2026").clauses.values()} == {"memory"}


@pytest.mark.parametrize("publication_id", publications())
def test_every_publication_loads_and_says_how_each_clause_is_known(publication_id):
    found = publication(publication_id)
    assert found.title
    for each in found.clauses.values():
        assert each.confirmed in CONFIRMED
        assert each.says.endswith("."), each.number


@pytest.mark.parametrize(
    "path",
    [*sources.citing._FOLDER.glob("*.yaml"), *(sources.citing._FOLDER.parent / "tables").glob("*.yaml")],
    ids=str,
)
def test_no_data_file_says_a_key_twice(path):
    assert yaml.load(path.read_text(encoding="utf-8"), _NoDoubles)


@pytest.mark.parametrize(
    ("edition", "said"),
    [("nec-1956", "NEC 2008 (the earliest edition held here), 314.29"), ("nec-2008", "NEC 2008, 314.29")],
)
def test_work_older_than_every_edition_held_here_is_not_said_to_be_of_the_oldest(edition, said):
    assert str(cite_in(edition, "314.29")) == said
