"""What is open of a thing and has to be put right before anything is added to it."""

from collections.abc import Iterable

from junctionary.sheets.entries import SEVERITIES, FindingEntry
from junctionary.sheets.links import Ref
from junctionary.sheets.survey import Survey

FIRST = ("hazard", "defect")


def put_right_first(survey: Survey, *at: Ref) -> tuple[str, ...]:
    """Hazards, then defects, that nobody lets stand: ``hazard at O4.r1: a device's hot terminal is …``."""
    still = _open(survey, *at)
    still.sort(key=lambda each: SEVERITIES.index(each.severity))
    return tuple(dict.fromkeys(f"{each.severity} at {_words(each)}" for each in still))


def first_words(open_: Iterable[str]) -> str:
    """The same before what is said of room; empty where nothing is open."""
    said = "; ".join(open_)
    return f"to be put right first: {said}" if said else ""


def open_hazards(survey: Survey) -> dict[str, tuple[str, ...]]:
    """By box, the hazards that are open in it: ``O2.r1.silver-top: more than one wire …``."""
    found = {
        id_: tuple(_words(each) for each in _open(survey, Ref("box", id_)) if each.severity == "hazard")
        for id_ in survey.house.boxes
    }
    return {id_: some for id_, some in found.items() if some}


def _open(survey: Survey, *at: Ref) -> list[FindingEntry]:
    found = dict.fromkeys(each for ref in at for each in survey.findings_at.get(ref, ()))
    return [each for each in found if each.severity in FIRST and not each.accepted]


def _words(each: FindingEntry) -> str:
    """Its subject, or its line where it has none, and the title of its rule."""
    names = [piece if isinstance(piece, str) else piece.text for piece in each.about[:1]]
    says = each.says.rstrip(".")
    # What begins with capitals alone keeps them.
    if not says[1:2].isupper():
        says = f"{says[:1].lower()}{says[1:]}"
    return f"{names[0] if names else each.place}: {says}"
