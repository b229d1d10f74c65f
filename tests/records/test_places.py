"""A record knows where it, its keys and its values stand."""

from collections.abc import Callable

from junctionary.records import Records

RecordsOf = Callable[[str, str], Records]

PANEL = "panel: main\nspaces: 8\nbreakers:\n  1:\n    guards: [gfci, afci]\n    feeds: den\n"


def test_a_mapping_stands_where_its_first_key_does(records_of: RecordsOf) -> None:
    breaker = records_of("panels/main.yaml", PANEL).panels[0].breakers["1"]
    assert str(breaker.place) == "panels/main.yaml:5:5"


def test_a_key_and_its_value_stand_apart(records_of: RecordsOf) -> None:
    panel = records_of("panels/main.yaml", PANEL).panels[0]
    assert str(panel.place_of("spaces")) == "panels/main.yaml:2:1"
    assert str(panel.value_place("spaces")) == "panels/main.yaml:2:9"


def test_a_value_inside_lists_and_mappings_has_its_own_place(records_of: RecordsOf) -> None:
    panel = records_of("panels/main.yaml", PANEL).panels[0]
    assert str(panel.value_place("breakers", "1", "guards", 1)) == "panels/main.yaml:5:20"
    assert str(panel.key_place("breakers", "1")) == "panels/main.yaml:4:3"


def test_what_is_not_written_stands_where_it_would(records_of: RecordsOf) -> None:
    panel = records_of("panels/main.yaml", PANEL).panels[0]
    assert str(panel.place_of("rating")) == "panels/main.yaml:1:1"
    assert str(panel.value_place("breakers", "2", "feeds")) == "panels/main.yaml:4:3"
    assert str(panel.key_place("breakers", "2")) == "panels/main.yaml:3:1"
