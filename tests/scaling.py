"""Processor seconds against size: linking, the network, every isolation, of houses up to a hundred times the demo's size.

    .venv/bin/python tests/scaling.py

The houses are random valid ones. The exponents are the b of
seconds = a * boxes ** b between the smallest and the largest; 1 is linear.
Then the whole commands `check` and `publish`, start included: the demo house,
and a random house of about ten times its size.
"""

import gc
import itertools
import resource
import subprocess
import sys
import tempfile
import time
from math import log
from pathlib import Path
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
    demo = Path(__file__).parents[1] / "content"
    with tempfile.TemporaryDirectory() as name:
        ten_fold = Path(name) / "record"
        for file, lines in split(as_text(random_house(Random(1), CIRCUITS[1]))).items():
            (ten_fold / file).parent.mkdir(parents=True, exist_ok=True)
            (ten_fold / file).write_text(lines, encoding="utf-8")
        for told, record in (("the demo house", demo), (f"{CIRCUITS[1]} circuits", ten_fold)):
            check = spent("check", str(record))
            publish = spent("publish", str(record), "-o", str(Path(name) / f"manual-{record.name}"))
            print(f"{told}: check {check:.2f} s, publish {publish:.2f} s", flush=True)


def spent(*command: str) -> float:
    """Processor seconds of one whole process; stops where the record cannot be read."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    ran = subprocess.run(
        [sys.executable, "-m", "junctionary", *command], capture_output=True, text=True, check=False
    )
    if ran.returncode == 2:
        sys.exit(ran.stderr)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


if __name__ == "__main__":
    main()
