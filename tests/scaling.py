"""Processor seconds against size: linking, the network, every isolation, of houses up to a hundred times the demo's size.

    .venv/bin/python tests/scaling.py

The houses are random valid ones. The last lines give the exponent b of
seconds = a * boxes ** b between the smallest and the largest; 1 is linear.
"""

import gc
import itertools
import sys
import time
from math import log
from random import Random

from random_houses import as_text, random_house

from junctionary.checks.examples import split
from junctionary.house.isolate import isolate
from junctionary.house.link import link
from junctionary.house.network import network
from junctionary.read.loader import load
from junctionary.records import Records, understand

CIRCUITS = (20, 200, 2000)
"""Twenty circuits of these have about as many boxes as the demo house."""


def read(text: str) -> Records:
    """The records of a house; stops with the first problem."""
    records, problems = understand([(name, load(lines, name)[0]) for name, lines in split(text).items()])
    if records is None:
        sys.exit(str(problems[0]))
    return records


def main() -> None:
    """A line for each size, then the exponents."""
    taken: list[tuple[int, dict[str, float]]] = []
    for circuits in CIRCUITS:
        records = read(as_text(random_house(Random(1), circuits)))
        gc.collect()
        marks = [time.process_time()]
        house, problems = link(records)
        if house is None:
            sys.exit(str(problems[0]))
        marks.append(time.process_time())
        net = network(house)
        marks.append(time.process_time())
        for box in house.boxes:
            isolate(house, net, box)
        marks.append(time.process_time())
        seconds = [after - before for before, after in itertools.pairwise(marks)]
        taken.append((len(house.boxes), dict(zip(("link", "network", "isolate"), seconds, strict=True))))
        told = ", ".join(f"{name} {each:.2f} s" for name, each in taken[-1][1].items())
        print(f"{circuits} circuits, {len(house.boxes)} boxes, {len(net.at)} points: {told}", flush=True)
    (small, first), (large, last) = taken[0], taken[-1]
    for name in first:
        print(f"{name}: exponent {log(last[name] / first[name]) / log(large / small):.2f}")


if __name__ == "__main__":
    main()
