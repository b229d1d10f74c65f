"""Data written as scripts: one name set, nothing a page could take for its own markup."""

import json

from junctionary.publish.address import address_book
from junctionary.publish.scripts import find_data, script
from junctionary.sheets.found import Found
from junctionary.sheets.links import Ref


def test_a_script_sets_one_name_to_data_that_reads_back() -> None:
    text = script("given", {"a": ["Café", 'x"y']}).decode()
    assert text.startswith("globalThis.given = ")
    assert json.loads(text.removeprefix("globalThis.given = ").removesuffix(";\n")) == {"a": ["Café", 'x"y']}


def test_words_of_a_record_cannot_end_a_script() -> None:
    assert b"</script" not in script("given", {"name": "</script><script>alert(1)"})
    assert "\u2028" not in script("given", "a\u2028b").decode()


def test_places_of_a_word_are_steps_in_base_36_of_thrice_the_number_and_how_closely_it_belongs() -> None:
    things = tuple(
        Found(
            "point",
            f"A{at}",
            f"A{at}",
            "Hall",
            "main 1",
            Ref("point", f"A{at}"),
            ("lamp",) if at in (0, 3) else (),
            (),
            ("lamp",) if at == 40 else (),
        )
        for at in range(41)
    )
    data = find_data(things, address_book(()))
    assert data["words"] == "lamp"
    assert data["at"] == ["2,9,31"]
    assert data["places"] == ["Hall"]
