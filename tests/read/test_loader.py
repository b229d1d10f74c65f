import math
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from junctionary.marks import MarkedList, MarkedMap, Place
from junctionary.read import loader
from junctionary.read.loader import load
from junctionary.read.scalars import plain_value

PARSERS = [each for each in (getattr(yaml, "CSafeLoader", None), yaml.SafeLoader) if each]


@pytest.fixture(autouse=True, params=PARSERS, ids=lambda each: each.__name__)
def parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(loader, "PARSER", request.param)


def tree(text: str) -> Any:
    root, problems = load(text, "f.yaml")
    assert problems == []
    return root


def faults(text: str) -> list[str]:
    """Each problem as "line:column found"."""
    return [f"{each.place.line}:{each.place.column} {each.found}" for each in load(text, "f.yaml")[1]]


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("no", "no"),
        ("on", "on"),
        ("Yes", "Yes"),
        ("12:30", "12:30"),
        ("2026-04-11", "2026-04-11"),
        ("1_000", "1_000"),
        ("0b11", "0b11"),
        ("14/2 NM-B", "14/2 NM-B"),
        ("1-1/4 in", "1-1/4 in"),
        ("2+4", "2+4"),
        ("=", "="),
        ("--", "--"),
        ("014", 14),
        ("08", 8),
        ("-3", -3),
        ("0o14", 12),
        ("0x1F", 31),
        ("1.50", 1.5),
        ("01.5", 1.5),
        ("1.0e3", 1000.0),
        (".5", 0.5),
        ("-.inf", -math.inf),
        ("1e400", "1e400"),
        ("9" * 5000, "9" * 5000),
        ("true", True),
        ("False", False),
        ("tRue", "tRue"),
        ("null", None),
        ("~", None),
        ("", None),
        ("'014'", "014"),
        ('"true"', "true"),
        ("''", ""),
    ],
)
def test_a_scalar_is_what_the_core_schema_of_1_2_says(written: str, value: object) -> None:
    read = tree(f"a: {written}\n")["a"]
    assert (read, type(read)) == (value, type(value))


def test_not_a_number_is_read_as_such() -> None:
    assert math.isnan(tree("a: .nan\n")["a"])


def test_keys_stay_text_as_they_were_written() -> None:
    assert list(tree("1: a\n014: b\non: c\n2+4: d\n~: e\n'x y': f\n")) == [
        "1",
        "014",
        "on",
        "2+4",
        "~",
        "x y",
    ]


def test_everything_knows_its_place() -> None:
    root = tree("house: Heron Lodge\nlevels:\n  - {id: attic, floor: 18 ft}\n  - ground\nempty:\n")
    assert isinstance(root, MarkedMap)
    levels = root["levels"]
    assert isinstance(levels, MarkedList)
    assert root.key_places["levels"] == Place("f.yaml", 2, 1)
    assert root.value_places["house"] == Place("f.yaml", 1, 8)
    assert root.value_places["empty"] == Place("f.yaml", 5, 7)
    assert levels.item_places == [Place("f.yaml", 3, 5), Place("f.yaml", 4, 5)]
    assert levels[0].value_places["floor"] == Place("f.yaml", 3, 24)
    assert levels[0].place == Place("f.yaml", 3, 5)


def test_columns_count_characters_whatever_their_bytes_and_line_ends() -> None:
    root = tree("\ufeffa: {é😀: b, c: d}\r\ne: f\r\n")
    assert root["a"].key_places["c"] == Place("f.yaml", 1, 12)
    assert root.key_places["e"] == Place("f.yaml", 2, 1)


def test_every_duplicate_key_names_the_first_and_the_first_counts() -> None:
    root, problems = load("a: 1\nb:\n  x: 1\n  x: {y: 2}\na: 2\n'a': 3\n", "f.yaml")
    assert [str(each.place) for each in problems] == ["f.yaml:4:3", "f.yaml:5:1", "f.yaml:6:1"]
    assert problems[0].found == "x is told twice, first on line 3"
    assert root == {"a": 1, "b": {"x": 1}}


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a: &x 1\nb: *x\n", ["1:4 &x is an anchor, which a record does not use",
                              "2:4 *x is an alias, which a record does not use"]),
        ("w: *star\n", ["1:4 *star is an alias, which a record does not use"]),
        ("a: !!str 1\n", ["1:4 !!str is a tag, which a record does not use"]),
        ("a: !here {b: 1}\n", ["1:4 !here is a tag, which a record does not use"]),
        ("<<: {a: 1}\n", ["1:1 << is a merge key, which a record does not use"]),
        ("a: {{b}}\n", ["1:5 a key is a list or a mapping"]),
        ("'': 1\n", ["1:1 there is no key before the colon"]),
        ("a: 1\n---\nb: 2\n", ["2:1 a second document begins here"]),
        ('a: "\\0"\n', ["1:4 an escape for U+0000, which nobody can see"]),
    ],
)  # fmt: skip
def test_what_a_record_does_not_use_is_refused(text: str, expected: list[str]) -> None:
    assert faults(text) == expected


def test_an_id_that_reads_as_a_power_of_ten_gets_a_warning() -> None:
    root, problems = load("feed: 7e1\n", "f.yaml")
    assert root == {"feed": 70.0}
    assert [(each.found, each.stops) for each in problems] == [("7e1 is read as the number 70", False)]


def test_a_quoted_merge_sign_is_an_ordinary_key() -> None:
    assert tree("'<<': 1\n") == {"<<": 1}


def test_all_problems_of_a_file_are_told_at_once() -> None:
    assert [each[:3] for each in faults("a: &x 1\na: *x\nb: Sink #2\nc: 3: 4\n")] == [
        "1:4",
        "2:1",
        "2:4",
        "3:9",
        "4:5",
    ]


@pytest.mark.parametrize("text", ["", "\n\n", "# a comment\n", "---\n", "~\n", "\ufeff"])
def test_an_empty_file_is_a_problem(text: str) -> None:
    assert faults(text) == ["1:1 the file is empty"]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a:\n\tb: 2\n", "2:1 a tab indents this line"),
        ("a:\n  b: 1\n \tc: 2\n", "3:2 a tab indents this line"),
        ("note: 3: 4\n", "1:8 a second colon on one line"),
        ("a: 1\n  b: 2\n", "2:3 this line is set in further than the one above, whose value is already told"),
        ("a:\n  - b\n c: 1\n",
         "3:2 this line fits neither the list or mapping that begins on line 1 nor what is around it"),
        ("rating 20 A\nb: 1\n", "1:1 there is no colon after the key"),
        ("a: 1\nrating\nb: 1\n", "2:1 there is no colon after the key"),
        (": b\n", "1:1 there is no key before the colon"),
        ("a: {: 1}\n", "1:5 there is no key before the colon"),
        ("x: @foo\n", "1:4 a value begins with @"),
        ("x: `foo`\n", "1:4 a value begins with `"),
        ("x: %5\n", "1:4 a value begins with %"),
        ("w: * star\n", "1:4 a value begins with *"),
        ("w: > 5 A\n", "1:4 a value begins with >"),
        ("%5\n", "1:1 a value or line begins with %"),
        ('n: "Sink\n', "1:4 a quote is opened here and never closed"),
        ('n: "Sink\nk: "x"\n', "1:4 a quote is opened here and never closed"),
        ("a: 'x\ny: 1\nz: 'w'\n", "1:4 a quote is opened here and never closed"),
        ("x: 'it's'\n", "1:8 text follows a closing quote"),
        ('size: "3" in\n', "1:10 text follows a closing quote"),
        ('a: {n: "Sink, x: 1}\nb: {n: "Tub"}\n', "1:8 a quote is opened here and never closed"),
        ("a: {m: 'x', n: 'Sink}\n", "1:16 a quote is opened here and never closed"),
        ("a: [1,\n  \"x]\n", "2:3 a quote is opened here and never closed"),
        ("a:\n  b: 1\n\u00a0\u00a0c: 2\n  d: 3\n", "3:1 a no-break space indents this line"),
        ("a: - b\n", "1:4 a list begins on the line of its key"),
        ("a: {b: 1\nc: 2\n", "1:4 a { is opened here and not closed"),
        ("a: [1, 2\n", "1:4 a [ is opened here and not closed"),
        ("a: ]\n", "1:4 a ] closes nothing"),
        ("- {name: Sink #2, x: 1}\n", "1:15 the # starts a comment, which takes the rest of the line"),
        ("<<<<<<< a\nb: 1\n=======\nb: 2\n>>>>>>> c\n", "1:1 a merge left its conflict marks here"),
        ("a: b\x00\n", "1:5 an invisible character, U+0000"),
        ("a: 1\nb: c\u2028d\n", "2:5 an invisible character, U+2028"),
    ],
)  # fmt: skip
def test_a_usual_trap_is_explained_where_it_is(text: str, found: str) -> None:
    root, _ = load(text, "f.yaml")
    assert root is None
    assert faults(text) == [found]


def test_a_backslash_in_double_quotes_is_explained() -> None:
    assert "a backslash in double quotes" in faults('a: "\\q"\n')[0]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("name: Sink #2\n", ["1:12 #2 is read as a comment"]),
        ("- Sink #2\n", ["1:8 #2 is read as a comment"]),
        ("a: #5\n", ["1:4 #5 is read as a comment"]),
        ("a: b # a comment\n", []),
        ("a: b #! some-rule\n", []),
        ("a: b#2\n", []),
        ("a: 'b #2'\n", []),
        ("#5\na: b\n", []),
        ("a: b #\n", []),
        ("a: |\n  b #2\n", []),
    ],
)
def test_a_comment_that_was_meant_as_text_gets_a_warning(text: str, expected: list[str]) -> None:
    root, problems = load(text, "f.yaml")
    assert root is not None
    assert faults(text) == expected
    assert not any(each.stops for each in problems)


@pytest.mark.parametrize(("opening", "closing"), [("[", "]"), ("{a: ", "}")])
def test_nesting_is_read_to_its_limit_and_refused_beyond(opening: str, closing: str) -> None:
    deepest = opening * loader.MAX_DEPTH + closing * loader.MAX_DEPTH
    assert faults(deepest) == []
    root, problems = load(opening * 5000, "f.yaml")
    assert root is None
    assert problems[0].found == "too many levels of nesting"
    spread = "[\n" * (loader.MAX_DEPTH + 1)
    assert faults(spread) == [f"{loader.MAX_DEPTH + 1}:1 too many levels of nesting"]


def test_a_file_of_too_many_values_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(loader, "MAX_NODES", 4)
    assert faults("[1, 2, 3]") == []
    assert faults("[1, 2, 3, 4]") == ["1:11 more than 4 values in one file"]


def test_a_bomb_of_aliases_costs_nothing() -> None:
    bomb = "a: &a [x, x]\n" + "".join(f"b{n}: &b{n} [*a, *a, *a]\n" for n in range(9))
    root, problems = load(bomb, "f.yaml")
    assert isinstance(root, MarkedMap)
    assert root["b8"] == [None, None, None]
    assert all(each.stops for each in problems)


words = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "S")), min_size=1, max_size=8)
# The 1.1 writer leaves some text unquoted that 1.2 reads as a number, such as 0o7 and 08.
words = words.filter(lambda word: plain_value(word) == word)
scalars = st.none() | st.booleans() | st.integers(-9999, 9999) | words | st.just("no") | st.just("a #2")
nested = st.recursive(
    scalars,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(words, inner, max_size=3),
    max_leaves=12,
)


@settings(deadline=None)
@given(value=st.dictionaries(words, nested, min_size=1, max_size=3), flow=st.booleans())
def test_both_parsers_give_back_what_was_written(value: Any, flow: bool) -> None:
    written = yaml.safe_dump(value, default_flow_style=flow, allow_unicode=True, width=10_000)
    read = []
    for parser in PARSERS:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(loader, "PARSER", parser)
            read.append(load(written, "f.yaml"))
    assert all(each == (value, []) for each in read)


@settings(deadline=None)
@given(text=st.text(max_size=60) | st.text("abc:-#[]{}'\"|>&*!%@`?, \n\t01", max_size=60))
def test_any_text_gives_a_tree_or_a_problem_within_it(text: str) -> None:
    root, problems = load(text, "f.yaml")
    assert root is not None or problems
    rows = text.replace("\r\n", "\n").replace("\r", "\n").removeprefix("\ufeff").split("\n")
    for problem in problems:
        assert 1 <= problem.place.line <= len(rows)
        assert 1 <= problem.place.column <= len(rows[problem.place.line - 1]) + 1
