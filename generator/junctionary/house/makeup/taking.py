"""Which hot of the supply each hot terminal or lead of a device takes."""

from dataclasses import dataclass, replace

from junctionary.house.makeup.bench import Wrong
from junctionary.house.terminals import has_leads
from junctionary.records.devices import DeviceKind


@dataclass(frozen=True, slots=True)
class Takes:
    """A device's hot terminals, the hots it may take (by colour where there are several), and does take."""

    box: str
    device: str
    kind: DeviceKind
    terminals: tuple[str, ...]
    labels: tuple[str, ...]
    on: str | None
    pairs: tuple[tuple[str, str], ...] = ()
    problem: Wrong | None = None


def legs_for(asked: Takes) -> Takes:
    """The same with its pairs of terminal and hot, or with the problem that keeps them from being known.

    One terminal takes the one hot, or the one named by ``takes:``. Two poles
    take the first two in the cable's order: black, then red or a white that
    is hot. Leads take their own colour, and of what is left the only one the
    only other; nothing is chosen between two.
    """
    terminals, labels = asked.terminals, asked.labels
    if not terminals or not labels:
        return asked
    if has_leads(asked.kind) and len(terminals) > 1:
        return _leads(asked)
    if len(terminals) == 1:
        if len(labels) == 1:
            return replace(asked, pairs=((terminals[0], labels[0]),))
        return replace(asked, pairs=((terminals[0], asked.on),)) if asked.on else _which(asked)
    if len(labels) < len(terminals):
        problem = Wrong(
            f"{asked.device} of {asked.box} takes two hots, and the feed brings one",
            "two hots, such as black and red",
            "correct the cable or the device, or write the terminals out",
        )
        return replace(asked, problem=problem)
    return replace(asked, pairs=tuple(zip(terminals, labels, strict=False)))


def _leads(asked: Takes) -> Takes:
    leads, labels = list(asked.terminals), list(asked.labels)
    if asked.on:
        return replace(asked, pairs=(("black" if "black" in leads else leads[0], asked.on),))
    if len(labels) == 1:
        # One hot, several leads: the black is the supply, what the others want is not told.
        return replace(asked, pairs=(("black", labels[0]),)) if "black" in leads else _which(asked)
    pairs = [(each, each) for each in leads if each in labels]
    rest = [each for each in leads if each not in labels]
    over = [each for each in labels if each not in leads]
    if len(rest) == 1 and len(over) == 1:
        pairs.append((rest[0], over[0]))
    elif rest and over:
        return replace(_which(asked), pairs=tuple(pairs))
    return replace(asked, pairs=tuple(pairs))


def _which(asked: Takes) -> Takes:
    hots = " and ".join(each or "one hot" for each in asked.labels)
    where = f"{asked.device} of {asked.box} takes at {', '.join(asked.terminals)}"
    out = f"terminals: {{{asked.device}.{asked.terminals[0]}: ...}}"
    problem = Wrong(
        f"the feed brings {hots}, and which {where} is not told",
        "takes: and its colour, or the terminal written out",
        f"write takes: {asked.labels[0] or 'black'}, or {out}",
    )
    return replace(asked, problem=problem)
