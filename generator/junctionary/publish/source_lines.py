"""Lines of the record, set as they were written, with their numbers."""

import re
from functools import cache
from html import escape

from markupsafe import Markup

from junctionary.sheets.entries import Excerpt

# For the looks of a page, so of YAML only what a record may hold: no anchors, no tags, one document.
_QUOTED = r""" "(?:\\.|[^"\\])*+"? | '[^']*+'? """
_LINES = re.compile(
    rf"""(?P<mark>[:-](?=\s|$)) | (?P<key>[^\s\#,?\[\]{{}}"'][^\#,?\[\]{{}}"'\n]*?(?=:(?:\s|$)))
    | (?P<remark>\#.*) | (?P<open>[\[{{]) | [ \n]+ | {_QUOTED}
    | [|>].*\n([ ]+).*(?:\n(?:\5.*|[ ]*$))* | .+?(?=[ ]+\#|$)""",
    re.VERBOSE | re.MULTILINE,
)
_IN_BRACKETS = re.compile(
    rf"""(?P<key>[^,:?\[\]{{}}"'\n]++(?=:(?:\s|$))) | (?P<mark>[,:?]) | (?P<remark>\#.*)
    | (?P<open>[\[{{]) | (?P<close>[\]}}]) | [ ]+ | \n+ | {_QUOTED}
    | [^,:?\[\]{{}}\n]+?(?=[ ]+\#|[,:?\[\]{{}}\n]|$)""",
    re.VERBOSE | re.MULTILINE,
)
_SET_AS = {"key": "key", "remark": "remark", "mark": "mark", "open": "mark", "close": "mark"}
_DEEPER = {"open": 1, "close": -1}


def source_lines(excerpt: Excerpt) -> Markup:
    """The excerpt as numbered lines; weight tells keys from values, since colour means insulation."""
    numbered = (
        f'<span class="ln" aria-hidden="true">{number}</span>{line}'
        for number, line in enumerate(_set(excerpt.text), excerpt.first_line)
    )
    return Markup("\n".join(numbered))


def _set(text: str) -> list[str]:
    """Each line with its keys, comments and punctuation marked."""
    text = text.rstrip("\n")
    said: list[str] = []
    at = depth = 0
    while piece := (_IN_BRACKETS if depth else _LINES).match(text, at):
        said.append(_marked(piece.lastgroup, piece[0]))
        at, depth = piece.end(), depth + _DEEPER.get(piece.lastgroup or "", 0)
    return "".join(said).split("\n")


# The same few keys and signs make up most of a record.
@cache
def _marked(kind: str | None, words: str) -> str:
    said = escape(words)
    return f'<span class="{_SET_AS[kind]}">{said}</span>' if kind else said
