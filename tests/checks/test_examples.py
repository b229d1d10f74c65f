"""Rules' examples as records: split into files, their marks, their own mistakes."""

import pytest

from junctionary.checks.examples import USUAL_HOUSE, ExampleError, marked, read_example, split

TWO_FILES = """
[panels/main.yaml]
panel: main
spaces: 8    #! some-rule
[circuits/den.yaml]

circuit: den
name: Den    #! other-rule
"""


def test_each_file_begins_at_its_own_line() -> None:
    assert split(TWO_FILES) == {
        "house.yaml": USUAL_HOUSE,
        "panels/main.yaml": "panel: main\nspaces: 8    #! some-rule\n",
        "circuits/den.yaml": "\ncircuit: den\nname: Den    #! other-rule\n",
    }


def test_a_house_that_is_told_is_kept() -> None:
    assert split("[house.yaml]\nhouse: Told\nreference: nec-2017\n") == {
        "house.yaml": "house: Told\nreference: nec-2017\n"
    }


def test_marks_are_counted_within_their_file() -> None:
    assert marked(TWO_FILES) == [("some-rule", "panels/main.yaml", 2), ("other-rule", "circuits/den.yaml", 3)]


def test_text_outside_every_file_is_refused() -> None:
    with pytest.raises(ExampleError, match="stands in no file"):
        split("panel: main\n[circuits/den.yaml]\ncircuit: den\n")


def test_a_file_that_begins_twice_is_refused() -> None:
    with pytest.raises(ExampleError, match=r"panels/main.yaml begins twice"):
        split("[panels/main.yaml]\npanel: main\n[panels/main.yaml]\nspaces: 8\n")


def test_an_example_that_is_no_record_says_where_it_fails() -> None:
    with pytest.raises(ExampleError, match=r"panels/main.yaml:1:8.*"):
        read_example("[panels/main.yaml]\npanel: [main]\nspaces: 8\n")
