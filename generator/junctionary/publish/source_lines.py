"""Lines of the record, set as they were written, with their numbers."""

from functools import cache

from markupsafe import Markup
from pygments import highlight
from pygments.formatters import HtmlFormatter
from pygments.lexers import YamlLexer

from junctionary.sheets.entries import Excerpt


def source_lines(excerpt: Excerpt) -> Markup:
    """The excerpt as numbered lines; weight tells keys from values, since colour means insulation."""
    text = highlight(excerpt.text, _lexer(), _formatter())
    lines = Markup(text.rstrip("\n")).split("\n")
    return Markup("\n").join(
        Markup('<span class="ln" aria-hidden="true">{}</span>{}').format(number, line)
        for number, line in enumerate(lines, excerpt.first_line)
    )


@cache
def _lexer() -> YamlLexer:
    return YamlLexer(stripnl=False)


@cache
def _formatter() -> HtmlFormatter[str]:
    return HtmlFormatter(nowrap=True, classprefix="y-")
