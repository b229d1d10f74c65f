"""Houses from the text of a few files, all the way to the survey the sheets are built from."""

from collections.abc import Mapping
from types import MappingProxyType

from junctionary.checks.engine import judge
from junctionary.figures import work_out
from junctionary.house.link import link
from junctionary.house.network import network
from junctionary.read.loader import load
from junctionary.records import understand
from junctionary.sheets.survey import Survey, survey

HOUSE = "house: Tern Cottage\nreference: nec-2023\nlevels: [{id: ground, name: Ground floor}]\n"
DEN = "room: den\nname: Den\nkind: den\nlevel: ground\n"
DEVICES = """\
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, torque: 14 in-lb}
  switch: {is: switch, ways: 1}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
connectors:
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""


def surveyed(files: Mapping[str, str] = MappingProxyType({}), **folders: str) -> Survey:
    """A survey of files by path, and of one file a folder (``panels=...``); a den and kinds are supplied."""
    texts = {"house.yaml": folders.pop("house", HOUSE), "rooms/den.yaml": DEN, "devices/all.yaml": DEVICES}
    if "rooms" in folders:
        del texts["rooms/den.yaml"]
    texts.update(files)
    for folder, text in folders.items():
        texts[f"{folder}/all.yaml" if folder != "log" else "log.yaml"] = text
    trees = []
    for name, text in texts.items():
        tree, problems = load(text, name)
        assert problems == []
        trees.append((name, tree))
    records, problems = understand(trees)
    assert records is not None
    house, more = link(records)
    assert house is not None, "\n".join(map(str, (*problems, *more)))
    joined = network(house)
    figures = work_out(house, joined)
    lines = {name: tuple(text.splitlines()) for name, text in texts.items()}
    return survey(house, joined, figures, judge(house, joined, figures), "0123456789abcdef" * 4, lines)
