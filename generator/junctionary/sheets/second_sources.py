"""A second source in a list of what to switch off: what makes its own side dead.

The breaker at which it enters parts it from the panel, and leaves all between
that breaker and the source live while the source runs: so that breaker is never
told as where the source is shut off.
"""

from collections.abc import Iterable, Iterator

from junctionary.house.model import House
from junctionary.house.network import breaker_named, entering
from junctionary.records.house import Source
from junctionary.sheets.naming import source_words
from junctionary.sheets.spoken import breakers_spoken

NOT_TOLD = "where it is shut off is not recorded"
_PLAIN = {"generator-inlet": "generator", "standby-generator": "generator"}


def stopping(house: House, source: Source) -> str:
    """What to do that a source makes nothing live: ``stop it and take its cord out of I1``."""
    said = [*_by_kind(source), *_own_shut_off(house, source), *_in_words(house, source)]
    if not said or (source.is_ == "standby-generator" and len(said) == 1):
        said.append(NOT_TOLD)
    return "; ".join(said)


def sources_off(house: House, sources: Iterable[str]) -> str:
    """Sources for a list in a line: ``Portable generator: stop it and take its cord out of I1``."""
    return "; ".join(f"{source_words(house.sources[each])}: {stopping(house, house.sources[each])}"
                     for each in sources if each in house.sources)  # fmt: skip


def _by_kind(source: Source) -> Iterator[str]:
    if source.is_ == "generator-inlet":
        yield f"stop it and take its cord out{f' of {source.at}' if source.at else ''}"
    elif source.is_ == "standby-generator":
        yield "stop it and set it so that it cannot start by itself"


def _own_shut_off(house: House, source: Source) -> Iterator[str]:
    if source.shut_off is None:
        return
    breaker = breaker_named(house, source.shut_off)
    where = breakers_spoken(house, (breaker.id,)) if breaker else source.shut_off
    if breaker is None or breaker.id != entering(house).get(source.id):
        yield f"shut off at {where}"
    else:
        yield f"its own shut-off is not recorded: {where} is where it enters, and leaves its own side live"


def _in_words(house: House, source: Source) -> Iterator[str]:
    """What the house's list of shut-offs says of it."""
    kind = source.is_.replace("-", " ")
    called = {each.lower() for each in (source.id, source_words(source), kind, _PLAIN.get(source.is_, kind))}
    for each in house.record.shut_off:
        if each.what.strip().lower() in called:
            yield f"as the house has it: {each.where}"
