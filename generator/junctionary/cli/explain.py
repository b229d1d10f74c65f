"""``junctionary explain``: a check, with what it rests on; or the keys of the record, with what each says."""

import sys
import textwrap
from argparse import Namespace
from collections.abc import Iterable, Iterator

from junctionary.checks.engine import LoadedRule, rules
from junctionary.checks.finding import LAST_CHEAP
from junctionary.problems import nearest
from junctionary.records import FILES
from junctionary.records.keys import Key, keys
from junctionary.records.reading import Record

WHERE = {
    "house": "house.yaml: the house itself",
    "panels": "panels/*.yaml: one panel a file",
    "circuits": "circuits/*.yaml: one circuit a file",
    "rooms": "rooms/*.yaml: one room a file",
    "boxes": "boxes/*.yaml: the boxes of one room",
    "devices": "devices/*.yaml: the kinds of device, connector and breaker in this house",
    "log": "log.yaml: a list of what was inspected, tested, tripped and changed; each entry",
    "accepted": "accepted.yaml: a list of findings that may stand; each entry",
    "photos": "photos/photos.yaml: what each picture shows",
}
"""What each kind of file is called and holds."""


def run(asked: Namespace) -> int:
    """Exit code 0, or 2 for a name that no check, no file and no key has."""
    known = rules()
    name = asked.name
    if name is None:
        width = max(map(len, known))
        for each in known.values():
            print(f"{each.id:{width}}  {each.severity:7}  {each.title}")
        print(f"\nThe keys of the record: junctionary explain {' | '.join(FILES)}, or a key by its name.")
        return 0
    if rule := known.get(name.replace("_", "-")):
        return _print(_rule(rule))
    kind = name.rstrip("/").removesuffix(".yaml")
    if kind in FILES:
        return _print([f"{WHERE[kind]}\n", *_keys(FILES[kind], "    ")])
    if places := [(way, key) for way, key in _everywhere() if key.name == name]:
        return _print(line for way, key in places for line in (" > ".join((*way, name)), *_key(key, "    ")))
    near = nearest(name, (*known, *FILES, *(key.name for _, key in _everywhere())))
    hint = f"; the nearest is {near}" if near else ""
    print(f"no check, file or key of the record is called {name!r}{hint}", file=sys.stderr)
    return 2


def _print(lines: Iterable[str]) -> int:
    for line in lines:
        print(line)
    return 0


def _rule(rule: LoadedRule) -> Iterator[str]:
    yield f"{rule.id} ({rule.severity}; cheapest to mend {LAST_CHEAP[rule.stage]})\n"
    yield _wrapped(rule.title)
    for heading, text in rule.parts:
        yield f"\n{heading}\n{_wrapped(text)}"
    yield "\nRests on"
    for cite in rule.cites:
        yield _wrapped(f"{cite}: {cite.summary}")
    yield f"\nAn example that fails\n\n{_example(rule.fails)}\n\nThe same, mended\n\n{_example(rule.passes)}"


def _keys(model: type[Record], indent: str) -> Iterator[str]:
    """Each key, and set in beneath it those of what it holds."""
    for key in keys(model):
        yield from _key(key, indent)


def _key(key: Key, indent: str) -> Iterator[str]:
    must = " (must be there)" if key.must else ""
    inner = f"{indent}        "
    yield _filled(f"{key.name}{must}: {key.says}", indent, inner)
    if key.words:
        yield _filled(f"one of {', '.join(key.words)}", inner, inner)
    yield f"{inner}{key.name}: {key.like}"
    for each in key.within:
        yield from _keys(each, f"{indent}    ")


def _everywhere() -> Iterator[tuple[tuple[str, ...], Key]]:
    """Every key of the record, with the way to it."""
    to_do: list[tuple[tuple[str, ...], type[Record]]] = [((kind,), model) for kind, model in FILES.items()]
    while to_do:
        way, model = to_do.pop(0)
        for key in keys(model):
            yield way, key
            to_do += [((*way, key.name), each) for each in key.within]


def _wrapped(text: str) -> str:
    return textwrap.fill(" ".join(text.split()), 88, initial_indent="    ", subsequent_indent="    ")


def _filled(text: str, first: str, others: str) -> str:
    return textwrap.fill(text, 96, initial_indent=first, subsequent_indent=others, break_on_hyphens=False)


def _example(text: str) -> str:
    return textwrap.indent(textwrap.dedent(text).strip("\n"), "    ")
