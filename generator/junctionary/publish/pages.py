"""Every sheet becomes one page, in memory: a pure function of the sheet and the theme."""

from collections.abc import Iterable

from markupsafe import Markup, escape

from junctionary.drawings.box_makeup import wide_makeup
from junctionary.drawings.box_strip import narrow_makeup
from junctionary.drawings.circuit_map import narrow_map, wide_map
from junctionary.drawings.ink import Address, Drawing, svg
from junctionary.drawings.symbols import symbol
from junctionary.publish.address import AddressBook, address_book, fragment
from junctionary.publish.prose import prose
from junctionary.publish.source_lines import source_lines
from junctionary.publish.theme import Theme
from junctionary.sheets.box import BoxSheet, MakeUp
from junctionary.sheets.circuit import CircuitMap, CircuitSheet, Symbol
from junctionary.sheets.cover import Cover
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.lists import FindingsSheet, ListSheet, NotRecordedSheet, SplicesSheet
from junctionary.sheets.lookup import MakeDeadSheet, OutageSheet, WhereToLookSheet
from junctionary.sheets.notes import NoteSheet, RulePage, SafetySheet, TermsSheet
from junctionary.sheets.panel import PanelSheet
from junctionary.sheets.point import PointSheet
from junctionary.sheets.room import RoomSheet
from junctionary.sheets.titleblock import Sheet

TEMPLATES: dict[type[Sheet], str] = {
    Cover: "cover.html",
    PanelSheet: "panel.html",
    CircuitSheet: "circuit.html",
    RoomSheet: "room.html",
    BoxSheet: "box.html",
    ListSheet: "list.html",
    SplicesSheet: "splices.html",
    FindingsSheet: "findings.html",
    NotRecordedSheet: "not_recorded.html",
    NoteSheet: "note.html",
    SafetySheet: "safety.html",
    RulePage: "rule.html",
    TermsSheet: "terms.html",
    PointSheet: "point.html",
    MakeDeadSheet: "make_dead.html",
    WhereToLookSheet: "where_to_look.html",
    OutageSheet: "outage.html",
}

PAPER_PX = 860.0
"""The widest drawing that is still legible when it is shrunk to a sheet of paper."""

NAV = (
    ("Cover", "cover"), ("Find", "find"), ("It is dead", "where-to-look"), ("Make dead", "make-dead"),
    ("Outage", "outage"), ("Panels", "panels"), ("Circuits", "circuits"), ("Rooms", "rooms"),
    ("Boxes", "boxes"), ("Splices", "splices"),
    ("Findings", "findings"), ("Not recorded", "not-recorded"), ("Safety", "notes"), ("Terms", "terms"),
)  # fmt: skip


def pages(sheets: Iterable[Sheet], theme: Theme) -> dict[str, bytes]:
    """The pages of these sheets and what the theme puts beside them, by path."""
    kept = tuple(sheets)
    book = address_book(kept)
    made = dict(theme.assets)
    for sheet in kept:
        made[book.paths[sheet.ref]] = page(sheet, book, theme).encode("utf-8")
    return made


def plate(wide: Drawing, narrow: Drawing, address: Address) -> Markup:
    """Both layouts of a drawing; the style sheet shows the one that suits the screen or the paper."""
    kind = "plate broad" if wide.width_px > PAPER_PX else "plate"
    return Markup('<div class="{}">{}{}</div>').format(kind, svg(wide, address), svg(narrow, address))


def page(sheet: Sheet, book: AddressBook, theme: Theme) -> str:
    """One page."""
    path = book.paths[sheet.ref]

    def href(ref: Ref) -> str | None:
        return book.url(path, ref)

    def say(phrase: Phrase | str) -> Markup:
        return Markup("".join(map(word, (phrase,) if isinstance(phrase, str) else phrase)))

    def word(piece: str | Link) -> str:
        if isinstance(piece, str):
            return escape(piece)
        to = href(piece.to)
        return f'<a href="{escape(to)}">{escape(piece.text)}</a>' if to else escape(piece.text)

    def draw_map(plan: CircuitMap) -> Markup:
        return plate(wide_map(plan, "map-wide"), narrow_map(plan, "map-narrow"), href)

    def draw_makeup(makeup: MakeUp) -> Markup:
        return plate(wide_makeup(makeup, "makeup-wide"), narrow_makeup(makeup, "makeup-narrow"), href)

    def draw_symbol(name: Symbol) -> Markup:
        return svg(Drawing(f"symbol-{name}", 60, 52, name, "", symbol(name, 26, 26), "legend"), href)

    return theme.environment.get_template(TEMPLATES[type(sheet)]).render(
        sheet=sheet,
        nav=NAV,
        current=sheet.section or sheet.ref.id,
        root="../" * path.count("/"),
        href=href,
        anchor=fragment,
        say=say,
        draw_map=draw_map,
        draw_makeup=draw_makeup,
        draw_symbol=draw_symbol,
        lines=source_lines,
        prose=lambda text: prose(text, href),
        ref=Ref,
    )
