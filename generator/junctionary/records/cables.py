"""What a cable is made of, read from the words on its sheath.

``12/2 NM-B`` holds a black, a white and a bare conductor of 12 AWG copper.
The order of the insulated colours is common practice in cable made for
dwellings; the size of the ground in larger cable likewise.
"""

import re
from dataclasses import dataclass
from typing import Any

from junctionary.marks import MarkedMap
from junctionary.problems import nearest
from junctionary.records.values import UNKNOWN, Said, refused, shown
from junctionary.records.words import COLOURS, GROUND_COLOURS
from junctionary.units import UnitError, WireSize, read_wire_size

KINDS = ("NM-B", "NM", "NMC-B", "UF-B", "UF", "MC", "AC", "SER", "SEU", "USE", "TC", "cord")
INSULATED = {
    1: ("black",),
    2: ("black", "white"),
    3: ("black", "red", "white"),
    4: ("black", "red", "blue", "white"),
}
RACEWAYS = ("EMT", "PVC", "FMC", "LFNC", "LFMC", "RMC", "IMC", "ENT")
NOT_MADE = frozenset(str(gauge) for gauge in (5, 7, 9, 11, 13, 15, 17))  # practice
OPEN_KINDS = ("knob-and-tube", "open wires")
PAIRED = re.compile(r"(?P<size>\d+(?:/0)?)/(?P<count>\d)(?P<twice>/2)?\s+(?P<kind>[A-Za-z-]+)(?P<rest>.*)")
LISTED = re.compile(r"(?P<sizes>\d+(?:/0)?(?:-\d+(?:/0)?){2,3})\s+(?P<kind>[A-Za-z-]+)(?P<rest>.*)")
SECOND_CIRCUIT = ("red", "white-red")
"""The other circuit of a cable of two, each with its own neutral: ``12/2/2``."""

GROUND_OF = {"8": "10", "6": "10", "4": "8", "3": "8", "2": "8", "1": "6", "1/0": "6", "2/0": "6"}  # practice


@dataclass(frozen=True, slots=True)
class Conductor:
    """One conductor of a cable: its colour names it within its run."""

    colour: str
    size: WireSize
    metal: str
    insulated: bool

    @property
    def is_ground(self) -> bool:
        """Whether its colour marks it as an equipment grounding conductor."""
        return self.colour in GROUND_COLOURS


@dataclass(frozen=True, slots=True)
class Cable:
    """A cable, raceway or open wiring: what it says, its kind, its conductors."""

    text: str
    kind: str
    conductors: tuple[Conductor, ...]
    raceway: str | None = None
    insulation: str | None = None

    def conductor(self, colour: str) -> Conductor | None:
        """The conductor of that colour, or None."""
        return next((each for each in self.conductors if each.colour == colour), None)

    @property
    def largest(self) -> WireSize:
        """The largest of its conductors."""
        return max(each.size for each in self.conductors)


def read_cable(value: object) -> Cable | Said:
    """A cable from its words, or ``unknown``; raises ``refused``."""
    if value == UNKNOWN.value:
        return UNKNOWN
    if isinstance(value, MarkedMap):
        return _from_wires(value)
    if not isinstance(value, str):
        raise _odd(value)
    if match := PAIRED.fullmatch(value.strip()):
        return _paired(value, match)
    if match := LISTED.fullmatch(value.strip()):
        return _listed(value, match)
    raise _odd(value)


def _odd(value: object) -> Exception:
    return refused(
        f"{shown(value)} is no cable known here",
        "a cable such as 12/2 NM-B, 14/2 NM no ground or 2-2-2-4 SER aluminium",
        "write the size, the number of conductors and the kind as on the sheath, or unknown",
    )


def _kind_and_rest(value: str, match: re.Match[str]) -> tuple[str, str, bool]:
    kind = match["kind"]
    known = {each.lower(): each for each in KINDS}
    if kind.lower() not in known:
        near = nearest(kind, KINDS)
        raise refused(
            f"{kind!r} in {value!r} is no kind of cable known here",
            f"{near!r}, the nearest known kind" if near else f"one of {', '.join(KINDS)}",
            f"write {near}" if near else "write the kind as on the sheath",
        )
    rest = match["rest"].strip().lower()
    ground = "no ground" not in rest
    rest = rest.replace("no ground", "").replace("with ground", "").strip()
    metals = {"": "copper", "copper": "copper", "aluminium": "aluminium", "aluminum": "aluminium",
              "copper-clad": "copper-clad"}  # fmt: skip
    if rest not in metals:
        raise refused(
            f"{match['rest'].strip()!r} after the kind in {value!r}",
            "copper, aluminium or no ground",
            "say the metal or that there is no ground, nothing else",
        )
    return known[kind.lower()], metals[rest], ground


def _size(text: str) -> WireSize:
    try:
        size = read_wire_size(f"{text} AWG")
    except UnitError as error:
        raise refused(error.found, error.expected, error.do) from None
    if text in NOT_MADE:
        expected = "a size that cable is made in, such as 14, 12 or 10 AWG"
        raise refused(f"no cable has {text} AWG wires", expected, "read the sheath again, or write unknown")
    return size


def _paired(value: str, match: re.Match[str]) -> Cable:
    kind, metal, ground = _kind_and_rest(value, match)
    count = int(match["count"])
    if count not in INSULATED or (match["twice"] and count != 2):
        raise _odd(value)
    size = _size(match["size"])
    colours = (*INSULATED[count], *(SECOND_CIRCUIT if match["twice"] else ()))
    conductors = [Conductor(colour, size, metal, insulated=True) for colour in colours]
    if ground:
        conductors.append(_ground(kind, match["size"], metal))
    return Cable(value.strip(), kind, tuple(conductors))


def _ground(kind: str, size: str, metal: str) -> Conductor:
    if kind == "AC":
        return Conductor("armor", _size(size), "steel", insulated=False)
    insulated = kind in ("MC", "cord")
    return Conductor("green" if insulated else "bare", _size(GROUND_OF.get(size, size)), metal, insulated)


def _listed(value: str, match: re.Match[str]) -> Cable:
    kind, metal, ground = _kind_and_rest(value, match)
    sizes = match["sizes"].split("-")
    if len(sizes) > len(INSULATED[3]) and not ground:
        raise refused(
            f"{value!r} has a ground, its last size, and has none",
            "one of the two: 2-2-2-4 SER, or 2-2-2 SER no ground",
            "leave out no ground, or the size of the ground",
        )
    # Three sizes are a service cable: two legs and a bare neutral, which is no ground.
    colours = (*INSULATED[3], "bare")
    conductors = [
        Conductor(colour, _size(size), metal, insulated=colour != "bare")
        for colour, size in zip(colours, sizes, strict=False)
    ]
    return Cable(value.strip(), kind, tuple(conductors))


def _from_wires(value: MarkedMap) -> Cable:
    allowed = {"open", "raceway", "wires", "insulation"}
    odd = [key for key in value if key not in allowed]
    if odd or "wires" not in value or ("open" in value) == ("raceway" in value):
        raise refused(
            f"a cable with the keys {', '.join(value) or 'none'}",
            "{raceway: 3/4 in EMT, wires: [12 AWG black, ...]} or {open: knob-and-tube, wires: [...]}",
            "name the raceway or the open wiring, and list its wires",
        )
    wires = value["wires"]
    if not isinstance(wires, list) or not wires:
        raise refused(shown(wires), "a list of wires such as [12 AWG black, 12 AWG white]", "list each wire")
    conductors = tuple(read_wire(each) for each in wires)
    colours = [each.colour for each in conductors]
    if len(set(colours)) != len(colours):
        raise refused(
            f"two wires of one colour among {', '.join(colours)}",
            "a colour for each wire of its own within the run",
            "tell them apart, for example as black and red, or record them as two runs",
        )
    kind = _open_kind(value["open"]) if "open" in value else _raceway_kind(value["raceway"])
    text = ", ".join(str(each) for each in wires)
    raceway = str(value["raceway"]) if "raceway" in value else None
    insulation: Any = value.get("insulation")
    return Cable(
        f"{raceway or kind}: {text}",
        kind,
        conductors,
        raceway,
        None if insulation is None else str(insulation),
    )


def _open_kind(said: object) -> str:
    if said not in OPEN_KINDS:
        near = nearest(str(said), OPEN_KINDS)
        raise refused(
            f"{shown(said)} is no kind of open wiring known here",
            f"one of {', '.join(OPEN_KINDS)}",
            f"write {near}" if near else "choose a known kind",
        )
    return str(said)


def _raceway_kind(said: object) -> str:
    kind = said.split()[-1].upper() if isinstance(said, str) and said.strip() else ""
    if kind not in RACEWAYS:
        raise refused(
            f"{shown(said)} is no raceway known here",
            f"a size and a kind such as 3/4 in EMT; the kinds are {', '.join(RACEWAYS)}",
            "write the kind last",
        )
    return kind


def read_wire(value: object) -> Conductor:
    """``12 AWG black``, ``14 AWG copper``, ``12 AWG bare``: one wire, its colour ``a`` when none is said."""
    text = value if isinstance(value, str) else ""
    match = re.fullmatch(r"(\d+(?:/0)?\s*(?:AWG|kcmil))((?:\s+[A-Za-z-]+)*)", text.strip())
    if match is None:
        raise refused(shown(value), "a wire such as 12 AWG black", "write its size and colour")
    said = match[2].split()
    metal = next((each for each in said if each in ("copper", "aluminium", "copper-clad")), "copper")
    colours = [
        each for each in said if each not in ("copper", "aluminium", "copper-clad", "stranded", "solid")
    ]
    colour = "-".join(colours) or "a"
    if colour not in COLOURS:
        near = nearest(colour, COLOURS)
        raise refused(
            f"{colour!r} in {text!r} is no colour known here",
            f"{near!r}, the nearest known colour" if near else f"one of {', '.join(COLOURS)}",
            f"write {near}" if near else "choose a known colour",
        )
    try:
        size = read_wire_size(match[1])
    except UnitError as error:
        raise refused(error.found, error.expected, error.do) from None
    return Conductor(colour, size, metal, insulated=colour not in ("bare", "armor"))
