"""Lines of the record, set as they were written, with their numbers."""

from functools import cache
from html import escape

from markupsafe import Markup
from pygments.lexers.data import YamlLexer
from pygments.token import Comment, Name, Punctuation, _TokenType

from junctionary.sheets.entries import Excerpt


def source_lines(excerpt: Excerpt) -> Markup:
    """The excerpt as numbered lines; weight tells keys from values, since colour means insulation."""
    numbered = (
        f'<span class="ln" aria-hidden="true">{number}</span>{line}'
        for number, line in enumerate(_set(excerpt.text), excerpt.first_line)
    )
    return Markup("\n".join(numbered))


def _set(text: str) -> list[str]:
    """Each line with its keys, comments and punctuation marked."""
    tokens = _lexer().get_tokens_unprocessed(text.rstrip("\n"))  # type: ignore[no-untyped-call]
    return "".join(_marked(token, words) for _, token, words in tokens).split("\n")


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
