"""What keeps a file from being read as YAML at all, said in plain words.

The parsers' own messages speak of tokens and differ from one another, so the
line itself is looked at first for the traps people fall into.
"""

import re
from dataclasses import dataclass

import yaml

from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.read.source import place_after

_CLIP = 40
UNSEEN = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff]")
_MERGED = re.compile(r"^(?:<{7}|={7}|>{7}|\|{7})(?: |$)")
_TAB_INDENT = re.compile(r" *\t")
_VALUE = re.compile(r"^\s*(?:- +)*(?:[^\s'\"{\[#][^:#]*:\s+)?")
_AFTER_QUOTE = re.compile(r"""(?:^|[:\-,\[{]\s*)(?:'[^']*'(?=[^\s,\]}:'])|"(?:[^"\\]|\\.)*"(?=[^\s,\]}:])|"""
                          r"""'[^']*'(?= +[^\s,\]}#:])|"(?:[^"\\]|\\.)*"(?= +[^\s,\]}#:]))""")  # fmt: skip
_COLONS = re.compile(r":(?=\s|$)")
_KEYLESS = re.compile(r"(?:^\s*|[{,] *):(?=\s|$)")
_COMMENT = re.compile(r"\s#")
_QUOTED = re.compile(r"""(?<=[\s,\[{:])(?:'(?:[^']|'')*'|"(?:[^"\\]|\\.)*")""")
_OPEN_IN_BRACKET = re.compile(r"""[,\[{:]\s*["']""")

_LOOK_BACK = 20

QUOTE_IT = "put quotes around the whole value"


def _blank(quoted: re.Match[str]) -> str:
    return " " * len(quoted[0])


def clipped(text: str) -> str:
    """A text short enough to be quoted in a message."""
    text = " ".join(text.split())
    return text if len(text) <= _CLIP else f"{text[: _CLIP - 3]}..."


def unprintable(text: str, file: str) -> list[Problem]:
    """A problem for each line with a sign in it that nobody can see or YAML does not allow.

    Line separators other than a line feed or carriage return are among
    them: an editor and a parser would count lines differently.
    """
    problems: dict[int, Problem] = {}
    for sign in UNSEEN.finditer(text):
        place = place_after(file, text[: sign.start()])
        problems.setdefault(
            place.line,
            Problem(
                place,
                f"an invisible character, U+{ord(sign[0]):04X}",
                "plain text",
                "delete it and save again",
            ),
        )
        if len(problems) >= 20:
            break
    return list(problems.values())


@dataclass(frozen=True, slots=True)
class _Fault:
    """A parser's complaint beside the lines it is about; marks count from 0."""

    said: str
    context: str
    at: tuple[int, int]
    since: tuple[int, int] | None
    lines: tuple[str, ...]

    @property
    def line(self) -> str:
        return self.lines[self.at[0]]


def explain(error: yaml.MarkedYAMLError, file: str, lines: tuple[str, ...]) -> Problem:
    """The problem behind a parser's error, placed where the mistake most likely is."""
    last = len(lines) - 1
    while last > 0 and not lines[last].strip():
        last -= 1

    def within(mark: yaml.Mark | None) -> tuple[int, int] | None:
        if mark is None:
            return None
        return (mark.line, mark.column) if mark.line <= last else (last, len(lines[last]))

    since = within(error.context_mark)
    fault = _Fault(
        error.problem or "", error.context or "", within(error.problem_mark) or since or (0, 0), since, lines
    )
    for look in (_conflict, _tab, _no_break_space, _quote, _sign, _colon, _bracket, _layout):
        if told := look(fault):
            (row, column), found, expected, do = told
            return Problem(Place(file, row + 1, column + 1), found, expected, do)
    row, column = fault.at
    return Problem(
        Place(file, row + 1, column + 1),
        f"this cannot be read as YAML: {fault.said or fault.context}",
        "a key, a colon and a value, or a hyphen and a value",
        "look at this line and the one above it",
    )


_Told = tuple[tuple[int, int], str, str, str] | None


def _conflict(fault: _Fault) -> _Told:
    for row in range(max(0, fault.at[0] - 1), min(fault.at[0] + 2, len(fault.lines))):
        if _MERGED.match(fault.lines[row]):
            return (
                (row, 0),
                "a merge left its conflict marks here",
                "one version",
                "keep one side, delete the marks",
            )
    return None


def _tab(fault: _Fault) -> _Told:
    for row in (fault.at[0], fault.at[0] + 1, fault.at[0] - 1):
        if 0 <= row < len(fault.lines) and (tab := _TAB_INDENT.match(fault.lines[row])):
            return (row, tab.end() - 1), "a tab indents this line", "spaces", "replace each tab by spaces"
    return None


def _no_break_space(fault: _Fault) -> _Told:
    # The parser takes it for a part of a key, and stumbles only over a later line.
    for row in range(fault.at[0], max(-1, fault.at[0] - _LOOK_BACK), -1):
        if fault.lines[row].lstrip(" ").startswith("\u00a0"):
            place = row, _indent_of_spaces(fault.lines[row])
            return place, "a no-break space indents this line", "plain spaces", "replace it by spaces"
    return None


def _indent_of_spaces(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _quote(fault: _Fault) -> _Told:
    if "quoted scalar" in fault.context and fault.since:
        if "escape" in fault.said or "hexadecimal" in fault.said:
            return (
                fault.at,
                "a backslash in double quotes",
                "an escape YAML knows",
                "use single quotes, or double it",
            )
        return (
            fault.since,
            "a quote is opened here and never closed",
            "a closing quote",
            "close it on this line",
        )
    # A quote left open swallows lines until the next one closes it, so look back for it.
    for row in range(fault.at[0], max(-1, fault.at[0] - _LOOK_BACK), -1):
        line = fault.lines[row]
        if match := _AFTER_QUOTE.search(line):
            mark = "doubled" if "'" in match[0] else 'written \\"'
            return (
                (row, match.end()),
                "text follows a closing quote",
                "the value to end with its quote",
                f"put the whole value in quotes; a quote inside is {mark}",
            )
        for sign in "\"'":
            opened = _VALUE.sub("", line).startswith(sign)
            if opened and line.count(sign) % 2:
                where = row, line.index(sign)
                return (
                    where,
                    "a quote is opened here and never closed",
                    "a closing quote",
                    "close it on this line",
                )
    return None


def _sign(fault: _Fault) -> _Told:
    line, column = fault.line, fault.at[1]
    if "block scalar" in fault.context or "anchor" in fault.context or "alias" in fault.context:
        row, column = fault.since or fault.at
        sign = fault.lines[row][column : column + 1]
        return (row, column), f"a value begins with {sign}", "quotes around such a value", QUOTE_IT
    if "tag" in fault.context or "directive" in fault.context:
        row, column = fault.since or fault.at
        sign = fault.lines[row][column : column + 1]
        return (row, column), f"a value or line begins with {sign}", "quotes around such a value", QUOTE_IT
    if line.startswith("%"):
        return (fault.at[0], 0), "a value or line begins with %", "quotes around such a value", QUOTE_IT
    sign = line[column : column + 1]
    if sign and sign in "@`%":
        return fault.at, f"a value begins with {sign}", "quotes around such a value", QUOTE_IT
    return None


def _bracket(fault: _Fault) -> _Told:
    inside = "flow mapping" in fault.context or "flow sequence" in fault.context
    if not inside or fault.since is None:
        sign = fault.line[fault.at[1] : fault.at[1] + 1]
        if sign and sign in "]}":
            return (
                fault.at,
                f"a {sign} closes nothing",
                "an opening bracket before it",
                "remove it or open it",
            )
        return None
    first, column = fault.since
    opened = fault.lines[first][column : column + 1]
    for row in range(first, fault.at[0] + 1):
        if comment := _COMMENT.search(fault.lines[row]):
            if fault.lines[row][comment.end() : comment.end() + 1] in ("", " ", "!"):
                continue
            return (
                (row, comment.end() - 1),
                "the # starts a comment, which takes the rest of the line",
                f"the closing bracket of the {opened} on line {first + 1}",
                "put quotes around the text that holds the #",
            )
    for row in range(first, min(fault.at[0] + 1, len(fault.lines))):
        if opened_quote := _OPEN_IN_BRACKET.search(_QUOTED.sub(_blank, fault.lines[row])):
            return (
                (row, opened_quote.end() - 1),
                "a quote is opened here and never closed",
                "a closing quote",
                "close it on this line",
            )
    if fault.at[0] > first or fault.at[1] >= len(fault.line.rstrip()):
        return fault.since, f"a {opened} is opened here and not closed", "a closing bracket", "close it"
    return (
        fault.at,
        f"a comma is missing, or a sign that needs quotes stands in the {opened} from line {first + 1}",
        "a comma between two values",
        "add the comma, or put quotes around the value",
    )


_NO_COLON = "there is no colon after the key"


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def _colon(fault: _Fault) -> _Told:
    if keyless := _KEYLESS.search(fault.line):
        place = fault.at[0], keyless.end() - 1
        return place, "there is no key before the colon", "a key, a colon and a value", "write the key"
    if "mapping values are not allowed" in fault.said:
        before = [colon for colon in _COLONS.finditer(fault.line) if colon.start() < fault.at[1]]
        if before:
            return (
                fault.at,
                "a second colon on one line",
                "one key and one value",
                f"{QUOTE_IT}, or start a new line",
            )
        start, row = _indent(fault.line), fault.at[0] - 1
        while row > 0 and not fault.lines[row].strip():
            row -= 1
        if row >= 0 and start <= _indent(fault.lines[row]) and not _COLONS.search(fault.lines[row]):
            return (
                (row, _indent(fault.lines[row])),
                _NO_COLON,
                "a key, a colon, a space and a value",
                "add the colon",
            )
        return (
            (fault.at[0], start),
            "this line is set in further than the one above, whose value is already told",
            "keys of one thing under one another",
            "align it with the keys beside it",
        )
    if "expected ':'" in fault.said:
        return fault.since or fault.at, _NO_COLON, "a key, a colon, a space and a value", "add the colon"
    return None


def _layout(fault: _Fault) -> _Told:
    if "nesting depth" in fault.said:
        return fault.at, "too many levels of nesting", "a flatter record", "write it flatter"
    if "sequence entries are not allowed" in fault.said:
        return (
            fault.at,
            "a list begins on the line of its key",
            "its first hyphen on a new line",
            "start a new line",
        )
    if "block mapping" in fault.context or "block collection" in fault.context or "sequence" in fault.context:
        row = fault.at[0]
        since = f" that begins on line {fault.since[0] + 1}" if fault.since else ""
        return (
            (row, _indent(fault.lines[row])),
            f"this line fits neither the list or mapping{since} nor what is around it",
            "keys of one thing, or hyphens of one list, under one another",
            "align it with the lines it belongs to",
        )
    return None
