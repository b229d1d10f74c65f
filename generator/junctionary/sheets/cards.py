"""Builds the directory card of a panel: from what the record says, not from what its door says now."""

from collections.abc import Iterator

from junctionary.house.model import House, Panel
from junctionary.sheets.card import CardEntry, CardSheet, DoorCard
from junctionary.sheets.face import PanelFace
from junctionary.sheets.links import Link, Ref, plain
from junctionary.sheets.naming import said, source_words
from junctionary.sheets.panels import fed_from, rooms_served
from junctionary.sheets.survey import Survey, title
from junctionary.sheets.titleblock import card_number, panel_number

PROVE = "Off is not dead: switch off, lock or tag, then prove it dead with a tester."


def card_sheet(survey: Survey, panel_id: str) -> CardSheet:
    """The card of one panel."""
    house = survey.house
    panel = house.panels[panel_id]
    position = list(house.panels).index(panel_id) + 1
    block = title(survey, f"Panel {panel_id}, directory card", card_number(position), "as recorded")
    face = survey.faces[panel.id]
    return CardSheet(
        title=block,
        ref=Ref("card", panel_id),
        heading=f"Directory card, {panel.name}",
        lead=("Made from the record, not from what the door says now. Prints on one sheet, Letter or A4.",),
        card=DoorCard(
            title=f"Directory of circuits, {panel.name}",
            says=f"{face.says} What each feeds, in which rooms, and its rating.",
            name=panel.name,
            under=f"{house.name}. {_under(house, panel)}.",
            rows=face.rows,
            entries=tuple(_entries(house, panel, face)),
            foot=(
                *_other_sources(house, panel),
                PROVE,
                f"From the record of {block.record_date}, digest {block.digest}, sheet {block.number}. "
                "An aid, not a certificate.",
            ),
        ),
        panel=Link(f"{panel_number(position)}, face and schedule", Ref("panel", panel_id)),
    )


def _under(house: House, panel: Panel) -> str:
    rating = said(house, panel.record.rating)
    main = f"main {said(house, panel.record.main)}" if panel.record.main is not None else "main not recorded"
    return f"Rated {rating}, {main}, {plain(fed_from(house, panel))}"


def _entries(house: House, panel: Panel, face: PanelFace) -> Iterator[CardEntry]:
    where = {Ref("space", each.id): rooms_served(house, each) for each in panel.breakers}
    for handle in face.handles:
        rooms = where.get(handle.ref, "")
        named = rooms if rooms.casefold() not in handle.words.casefold() else ""
        yield CardEntry(
            handle.ref,
            handle.slots,
            "; ".join((_short(handle.words), *handle.notes)),
            named,
            handle.rating,
        )


def _short(words: str) -> str:
    """``spare`` where the face explains ``spare: a breaker that feeds nothing``."""
    head, colon, _ = words.partition(": ")
    return head if colon and head in ("spare", "blank", "open") else words


def _other_sources(house: House, panel: Panel) -> Iterator[str]:
    for breaker in panel.breakers:
        source = house.sources.get(str(breaker.feeds))
        if source is not None:
            yield (
                f"{' + '.join(breaker.spaces)} is a second source, {source_words(source)}: "
                "with the main off this panel can still be live."
            )
