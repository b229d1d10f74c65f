"""Lines of the record, set as they were written, with their numbers."""

import re
from functools import cache
from html import escape

from markupsafe import Markup
from pygments.lexers.data import YamlLexer
from pygments.token import Comment, Name, Punctuation, _TokenType

from junctionary.sheets.entries import Excerpt

_AT_THE_MARGIN = re.compile(r"^(?=[\w-]+:)", re.MULTILINE)
"""Where a key stands at the margin nothing before it is still open."""


def source_lines(excerpt: Excerpt) -> Markup:
    """The excerpt as numbered lines; weight tells keys from values, since colour means insulation."""
    numbered = (
        f'<span class="ln" aria-hidden="true">{number}</span>{line}'
        for number, line in enumerate(_lines(excerpt.text), excerpt.first_line)
    )
    return Markup("\n".join(numbered))


def _lines(text: str) -> list[str]:
    """Each line with its keys, comments and punctuation marked."""
    return "".join(map(_set, _AT_THE_MARGIN.split(text.rstrip("\n")))).split("\n")


# The examples of the checks have most of their parts in common.
@cache
def _set(part: str) -> str:
    tokens = _lexer().get_tokens_unprocessed(part)  # type: ignore[no-untyped-call]
    return "".join(_marked(token, words) for _, token, words in tokens)


# The same few keys and signs make up most of a record.
@cache
def _marked(token: _TokenType, words: str) -> str:
    said = escape(words)
    for whole, kind in ((Name.Tag, "key"), (Comment, "remark"), (Punctuation, "mark")):
        if token[: len(whole)] == whole and "\n" not in words:
            return f'<span class="{kind}">{said}</span>'
    return said


@cache
def _lexer() -> YamlLexer:
    return YamlLexer(stripnl=False)
