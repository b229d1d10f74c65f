"""The owner's Markdown, made into HTML that can load nothing and run nothing."""

import re
from collections.abc import Callable
from functools import cache
from typing import get_args

import markdown
import nh3
from markupsafe import Markup

from junctionary.sheets.links import Kind, Ref

_KINDS = frozenset(get_args(Kind))
_HREF = re.compile(r'href="([a-z-]+):([^"]+)"')


def prose(text: str, url: Callable[[Ref], str | None]) -> Markup:
    """HTML of a note, its headings below the page's own; ``[the den](circuit:den)`` links a thing."""
    made = markdown.Markdown(
        extensions=["tables", "sane_lists", "def_list", "fenced_code", "toc"],
        extension_configs={"toc": {"baselevel": 2}},
    ).convert(text)

    def resolved(match: re.Match[str]) -> str:
        kind, id_ = match[1], match[2]
        if kind not in _KINDS:
            return match[0]
        found = url(Ref(kind, id_))  # type: ignore[arg-type]
        return f'href="{found}"' if found else 'class="nowhere"'

    return Markup(_cleaner().clean(_HREF.sub(resolved, made)))


@cache
def _cleaner() -> nh3.Cleaner:
    allowed = nh3.ALLOWED_ATTRIBUTES
    return nh3.Cleaner(
        tags=set(nh3.ALLOWED_TAGS) - {"img"},
        attributes={
            **allowed,
            "*": {"id", "class"},
            "a": {"href", "title"},
            "th": {"style", "scope", "colspan", "rowspan"},
            "td": {"style", "colspan", "rowspan"},
        },
        filter_style_properties={"text-align"},
        url_schemes={"http", "https", "mailto"},
        url_relative=_within,
        link_rel="noopener noreferrer",
    )


def _within(url: str) -> str | None:
    """A relative link is kept; one that names another host without saying so is not."""
    return None if url.startswith(("//", "\\", "/\\")) else url
