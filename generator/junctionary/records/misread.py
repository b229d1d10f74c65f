"""What pydantic refused, as problems: each at its place, with what was expected and how it is written."""

from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from junctionary.marks import MarkedList, MarkedMap
from junctionary.problems import Problem
from junctionary.records.keys import example
from junctionary.records.reading import Record
from junctionary.records.values import shown


def problems_of(error: ValidationError, root: MarkedMap | MarkedList, model: type[Record]) -> list[Problem]:
    """Every fault pydantic found in one tree, each at its place."""
    found = [_problem_of(each, root, model) for each in error.errors(include_url=False)]
    return list(dict.fromkeys(found))


def _problem_of(detail: ErrorDetails, root: MarkedMap | MarkedList, model: type[Record]) -> Problem:
    place = root.place
    at: Any = root
    for step, after in zip(detail["loc"], (*detail["loc"][1:], None), strict=True):
        if isinstance(at, MarkedMap) and after == "[key]":
            place = at.key_places.get(str(step), place)
            break
        if isinstance(at, MarkedMap) and step in at:
            place, at = at.value_places[str(step)], at[str(step)]
        elif isinstance(at, MarkedList) and isinstance(step, int) and step < len(at):
            place, at = at.item_places[step], at[step]
    context, like = detail.get("ctx", {}), example(model, detail["loc"])
    if detail["type"] == "missing":
        key = str(detail["loc"][-1])
        return Problem(
            place,
            f"no {key!r} here",
            f"the key {key!r}",
            f"add it, such as {like}" if like else f"add {key}:",
        )
    if detail["type"] == "record":
        do = context["do"]
        if like and context["found"] in ("a mapping", "a list"):
            do = f"write it like {like}"
        return Problem(place, context["found"], context["expected"], do)
    if detail["type"] in ("list_type", "tuple_type"):
        do = f"write it like {like}" if like else "write it as a list: [one, two]"
        return Problem(place, shown(detail["input"]), "a list", do)
    if detail["type"] == "dict_type":
        do = f"write it like {like}" if like else "write it as keys and values: {key: value}"
        return Problem(place, shown(detail["input"]), "a mapping", do)
    return Problem(place, f"{shown(detail['input'])}", detail["msg"].lower(), "correct the value")
