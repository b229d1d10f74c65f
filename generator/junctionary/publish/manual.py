"""A house, worked out and judged, becomes the files of its manual, in memory."""

import hashlib
from collections.abc import Iterator, Mapping
from types import MappingProxyType

from junctionary.checks.finding import Judgement
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.suspects import Ways, ways
from junctionary.publish.address import address_book
from junctionary.publish.pages import pages
from junctionary.publish.picture_size import size_px
from junctionary.publish.scripts import find_data, more_data, off_data, script, suspect_data
from junctionary.publish.theme import theme
from junctionary.read import RecordFiles
from junctionary.read.source import lines_of
from junctionary.sheets.boxes import box_sheet
from junctionary.sheets.cards import card_sheet
from junctionary.sheets.checklists import checklist_sheet
from junctionary.sheets.checks_pages import rule_pages, rules_list
from junctionary.sheets.circuits import circuit_sheet
from junctionary.sheets.covers import cover
from junctionary.sheets.finding_things import things
from junctionary.sheets.found import Found
from junctionary.sheets.histories import history_sheet
from junctionary.sheets.legend import terms_sheet
from junctionary.sheets.levels import level_sheet, levels_of
from junctionary.sheets.load_calculation import loads_sheet
from junctionary.sheets.lookups import find_sheet, make_dead_sheet, where_to_look_sheet
from junctionary.sheets.one_lines import one_line_sheet
from junctionary.sheets.outages import outage_sheet
from junctionary.sheets.panels import panel_sheet
from junctionary.sheets.points import point_sheets
from junctionary.sheets.put_right import open_hazards
from junctionary.sheets.room_for_more import RoomForMore, one_more_sheet, room_for_more
from junctionary.sheets.rooms import room_sheet
from junctionary.sheets.safety import note_sheets, safety_sheet
from junctionary.sheets.schedules import (
    boxes_list,
    circuits_list,
    findings_sheet,
    not_recorded_sheet,
    panels_list,
    rooms_list,
)  # fmt: skip
from junctionary.sheets.sources import source_sheet
from junctionary.sheets.splices import splices_sheet
from junctionary.sheets.statement import statement_sheet
from junctionary.sheets.survey import Survey, survey
from junctionary.sheets.titleblock import Sheet

TEXTS = (".yaml", ".md")


class RecordChanged(OSError):  # noqa: N818 - it says what happened
    """A file of the record is no longer what was read and judged."""


def manual(
    house: House,
    network: Network,
    figures: Figures,
    judgement: Judgement,
    files: RecordFiles,
    theme_name: str = "drafting",
    pictures: Mapping[str, bytes] = MappingProxyType({}),
) -> dict[str, bytes]:
    """Every file of the manual by its path; raises RecordChanged when the record changed meanwhile."""
    texts = {each.file: each.text for each in files.sources if each.file.endswith(TEXTS)}
    lines = {file: lines_of(text) for file, text in texts.items()}
    surveyed = survey(house, network, figures, judgement, files.digest, lines)
    known = ways(house, network)
    found = things(surveyed, known.supply)
    room = room_for_more(surveyed, known.supply)
    kept = tuple(sheets(surveyed, texts, known, found, room))
    made = pages(kept, theme(theme_name), {file: size_px(each) for file, each in pictures.items()})
    data = _lookup_data(surveyed, known, found, kept, room)
    return {**made, **data, **dict(_record_copy(files)), **pictures}


def _lookup_data(
    surveyed: Survey, known: Ways, found: tuple[Found, ...], kept: tuple[Sheet, ...], room: RoomForMore
) -> dict[str, bytes]:
    book, house, network = address_book(kept), surveyed.house, surveyed.network
    off = off_data(house, network, surveyed.isolations, book)
    suspects = suspect_data(house, network, known, open_hazards(surveyed), book)
    return {
        "lookup/find-data.js": script("junctionaryFindData", find_data(found, book)),
        "lookup/off-data.js": script("junctionaryOffData", off),
        "lookup/suspect-data.js": script("junctionarySuspectData", suspects),
        "lookup/more-data.js": script("junctionaryMoreData", more_data(house, room, book)),
    }


def sheets(
    surveyed: Survey, texts: Mapping[str, str], known: Ways, found: tuple[Found, ...], room: RoomForMore
) -> Iterator[Sheet]:
    """Every sheet, in the order of their numbers."""
    house = surveyed.house
    notes = note_sheets(surveyed, {file: text for file, text in texts.items() if file.endswith(".md")})
    yield cover(surveyed, bool(notes))
    yield safety_sheet(surveyed, notes)
    yield terms_sheet(surveyed)
    yield rules_list(surveyed)
    yield find_sheet(surveyed, found)
    yield make_dead_sheet(surveyed)
    yield where_to_look_sheet(surveyed, known.supply)
    yield outage_sheet(surveyed)
    yield one_more_sheet(surveyed, room)
    yield statement_sheet(surveyed)
    yield from rule_pages(surveyed)
    yield from notes
    yield rooms_list(surveyed)
    yield from (level_sheet(surveyed, each) for each in levels_of(house))
    yield from (room_sheet(surveyed, each) for each in house.rooms)
    yield boxes_list(surveyed)
    yield from (box_sheet(surveyed, each) for each in house.boxes)
    yield from point_sheets(surveyed, known.supply)
    yield panels_list(surveyed)
    yield circuits_list(surveyed)
    yield splices_sheet(surveyed)
    yield loads_sheet(surveyed)
    yield findings_sheet(surveyed)
    yield not_recorded_sheet(surveyed)
    yield checklist_sheet(surveyed)
    yield history_sheet(surveyed)
    yield one_line_sheet(surveyed)
    yield from (panel_sheet(surveyed, each) for each in house.panels)
    yield from (card_sheet(surveyed, each) for each in house.panels)
    yield from (circuit_sheet(surveyed, each) for each in house.circuits)
    yield from (source_sheet(surveyed, each) for each in house.sources)


def _record_copy(files: RecordFiles) -> Iterator[tuple[str, bytes]]:
    """The record's text files. Pictures as taken are left out, for they tell where and when that was."""
    for source in files.sources:
        if source.file.endswith(TEXTS):
            raw = (files.folder / source.file).read_bytes()
            if hashlib.sha256(raw).hexdigest() != source.sha256:
                raise RecordChanged(f"{source.file} changed while the manual was made; publish again")
            yield f"record/{source.file}", raw
