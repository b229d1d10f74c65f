"""Builds the safety sheet and the notes of the house."""

import re
from collections.abc import Mapping

from junctionary.sheets.caution import CAUTIONS, STEPS_ELSEWHERE
from junctionary.sheets.entries import Fact
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.notes import NoteSheet, SafetySheet
from junctionary.sheets.survey import Survey, title
from junctionary.sheets.titleblock import GENERAL, note_number

EMERGENCY = (
    (
        "somebody is being shocked",
        "Do not touch them or what they touch. Call the emergency number, in every case."
        " Switch off the main if that can be done without touching either.",
    ),
    (
        "smell, smoke, heat or buzzing",
        "Leave that circuit alone, switch off the main if it can be reached, get out, call the fire service."
        " Never put water on it.",
    ),
    ("water at a panel or outlet", "Keep away. Have the supply cut from outside."),
    (
        "lamps that flare and dim together",
        "Switch off the main and call the utility: its neutral may be open.",
    ),
)

_HEADER = re.compile(r"\A---\s*\n(?P<header>.*?)\n---\s*\n", re.DOTALL)
_HEADING = re.compile(r"^#\s+(?P<title>.+?)\s*#*\s*$", re.MULTILINE)


def safety_sheet(survey: Survey, notes: tuple[NoteSheet, ...]) -> SafetySheet:
    """The cautions that hold everywhere, and the notes of this house."""
    shut = tuple(Fact(f"shut off: {each.what}", (each.where,)) for each in survey.house.record.shut_off)
    return SafetySheet(
        title=title(survey, "Safety", GENERAL["notes"], "general"),
        ref=Ref("sheet", "notes"),
        heading="Safety",
        lead=("Read this before opening anything. If in doubt, leave it and call a licensed electrician.",),
        steps=STEPS_ELSEWHERE,
        cautions=CAUTIONS,
        emergency=(*shut, *(Fact(what, (do,)) for what, do in EMERGENCY)),
        notes=tuple(
            (Link(each.heading, each.ref), f", {each.written_by}, {each.written_on}") for each in notes
        ),
    )


def note_sheets(survey: Survey, texts: Mapping[str, str]) -> tuple[NoteSheet, ...]:
    """A sheet for each note, by file; a header between lines of ``---`` may say ``by`` and ``date``."""
    sheets = []
    for position, (file, text) in enumerate(sorted(texts.items()), 1):
        match = _HEADER.match(text)
        header = dict(_fields(match["header"])) if match else {}
        body = text[match.end() :] if match else text
        name = file.rpartition("/")[2].removesuffix(".md")
        first = _HEADING.search(body)
        heading = header.get("title") or (first["title"] if first else name)
        if first and not body[: first.start()].strip():
            body = body[first.end() :]
        sheets.append(
            NoteSheet(
                title=title(survey, heading, note_number(position), header.get("by", "author not recorded")),
                ref=Ref("note", name),
                heading=heading,
                written_by=header.get("by", "somebody not recorded"),
                written_on=header.get("date", "date not recorded"),
                markdown=body,
            )
        )
    return tuple(sheets)


def _fields(header: str) -> list[tuple[str, str]]:
    pairs = (line.partition(":") for line in header.splitlines())
    return [(key.strip(), value.strip().strip("\"'")) for key, colon, value in pairs if colon]
