"""Every sheet becomes one page, in memory: a pure function of the sheet and the theme."""

from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from types import MappingProxyType
from typing import Literal

from markupsafe import Markup, escape

from junctionary.drawings.box_makeup import wide_makeup
from junctionary.drawings.box_strip import middle_makeup, narrow_makeup
from junctionary.drawings.circuit_map import middle_map, wide_map
from junctionary.drawings.circuit_strip import narrow_map
from junctionary.drawings.door_card import narrow_card, wide_card
from junctionary.drawings.drop_plot import narrow_drop, wide_drop
from junctionary.drawings.elevation import narrow_elevation, wide_elevation
from junctionary.drawings.ink import Address, Drawing, svg
from junctionary.drawings.load_bars import middle_bars, narrow_bars, wide_bars
from junctionary.drawings.one_line import middle_one_line, narrow_one_line, wide_one_line
from junctionary.drawings.panel_face import narrow_face, small_face, wide_face
from junctionary.drawings.panel_layout import NARROW, WIDE, spots
from junctionary.drawings.plan import (
    line_sample,
    middle_level,
    middle_room,
    narrow_level,
    narrow_room,
    sign_sample,
    wide_level,
    wide_room,
)
from junctionary.drawings.plan_small import narrow_small, wide_small
from junctionary.drawings.symbols import symbol
from junctionary.publish.address import AddressBook, address_book, fragment
from junctionary.publish.picture_size import Size
from junctionary.publish.prose import prose
from junctionary.publish.source_lines import source_lines
from junctionary.publish.theme import Theme
from junctionary.sheets.box import BoxSheet, MakeUp
from junctionary.sheets.card import CardSheet, DoorCard
from junctionary.sheets.checklist import ChecklistSheet
from junctionary.sheets.circuit import CircuitMap, CircuitSheet, Symbol
from junctionary.sheets.cover import Cover
from junctionary.sheets.drop_plot import DropPlot
from junctionary.sheets.elevation import Elevation
from junctionary.sheets.face import LitFace, PanelFace
from junctionary.sheets.links import Link, Phrase, Ref, plain
from junctionary.sheets.lists import FindingsSheet, ListSheet, NotRecordedSheet, SplicesSheet
from junctionary.sheets.loads import LoadsSheet
from junctionary.sheets.lookup import MakeDeadSheet, OneMoreSheet, OutageSheet, WhereToLookSheet
from junctionary.sheets.notes import NoteSheet, RulePage, SafetySheet, TermsSheet
from junctionary.sheets.one_line import OneLine, OneLineSheet
from junctionary.sheets.panel import PanelSheet
from junctionary.sheets.plan import LevelSheet, Plan
from junctionary.sheets.point import PointSheet
from junctionary.sheets.room import RoomSheet
from junctionary.sheets.titleblock import Sheet

TEMPLATES: dict[type[Sheet], str] = {
    Cover: "cover.html",
    PanelSheet: "panel.html",
    CardSheet: "card.html",
    OneLineSheet: "one_line.html",
    CircuitSheet: "circuit.html",
    LevelSheet: "level.html",
    RoomSheet: "room.html",
    BoxSheet: "box.html",
    ListSheet: "list.html",
    SplicesSheet: "splices.html",
    LoadsSheet: "loads.html",
    FindingsSheet: "findings.html",
    NotRecordedSheet: "not_recorded.html",
    ChecklistSheet: "checklist.html",
    NoteSheet: "note.html",
    SafetySheet: "safety.html",
    RulePage: "rule.html",
    TermsSheet: "terms.html",
    PointSheet: "point.html",
    MakeDeadSheet: "make_dead.html",
    WhereToLookSheet: "where_to_look.html",
    OutageSheet: "outage.html",
    OneMoreSheet: "one_more.html",
}

PAPER_PX = 860.0
"""The widest drawing that is still legible when it is shrunk to a sheet of paper."""

TABLET_PX = 734.0
"""The widest drawing that a tablet shows as large as it is drawn."""

PRINT_PX = 650.0
"""The width that a sheet of paper leaves a drawing."""

TALL_PX = 430.0
"""The height from which a drawing seldom finds room on paper under what precedes it."""

DRAFTED = frozenset(
    {"wide plan", "wide wall", "wide bars", "wide drop", "wide map", "wide line", "wide makeup", "wide small"}
)
"""Drawings whose wide layout still reads on a tablet: the narrow one is for a phone only."""

_SHORT = 12
"""Letters of a cell that is never broken in two."""

NO_PICTURES: Mapping[str, Size | None] = MappingProxyType({})

FIRST = (
    ("Find", "find"), ("It is dead", "where-to-look"), ("Make dead", "make-dead"), ("Outage", "outage"),
    ("Cover", "cover"),
)  # fmt: skip
"""Sheets that stand first on every page: those that somebody in trouble wants, and the way home."""

REST = (
    ("Panels", "panels"), ("Circuits", "circuits"), ("Rooms", "rooms"), ("Boxes", "boxes"),
    ("Room for more", "one-more"), ("Splices", "splices"), ("Loads", "loads"), ("Findings", "findings"),
    ("Not recorded", "not-recorded"), ("Safety", "notes"), ("Terms", "terms"),
)  # fmt: skip


def pages(
    sheets: Iterable[Sheet], theme: Theme, pictures: Mapping[str, Size | None] = NO_PICTURES
) -> dict[str, bytes]:
    """The pages of these sheets and what the theme puts beside them, by path; they show these pictures."""
    kept = tuple(sheets)
    book = address_book(kept)
    made = dict(theme.assets)
    for sheet in kept:
        made[book.paths[sheet.ref]] = page(sheet, book, theme, pictures).encode("utf-8")
    return made


def plate(wide: Drawing, narrow: Drawing, address: Address, middle: Drawing | None = None) -> Markup:
    """The layouts of a drawing; the style sheet shows the one that suits the screen or the paper.

    ``middle`` is for a tablet and for paper, where the wide one is too wide for either.
    """
    layouts: tuple[Drawing, ...] = (wide, narrow)
    kind = "plate"
    if wide.width_px > TABLET_PX and middle is not None:
        layouts, kind = (wide, middle, narrow), "plate three"
    elif wide.width_px > PAPER_PX:
        kind = "plate broad"
    if wide.kind in DRAFTED:
        kind += " drafted"
    printed = wide if kind.startswith("plate drafted") or kind == "plate" else layouts[1]
    if printed.height_px * min(1.0, PRINT_PX / printed.width_px) > TALL_PX:
        kind += " tall"
    drawn = Markup("").join(svg(each, address) for each in layouts)
    # Where a theme lets a drawing scroll, the keyboard must be able to reach it.
    reach = "" if "<a " in drawn else Markup(' tabindex="0"')
    return Markup('<div class="{}"{}>{}</div>').format(kind, reach, drawn)


def lightable(drawn: Markup, face: PanelFace) -> Markup:
    """The face with a place to land on over each of its spaces, which lights what a link led to."""
    broad, slim = spots(face, WIDE), spots(face, NARROW)
    landings = Markup("").join(
        Markup('<span class="spot" id="{}" style="--w:{};--n:{}"></span>').format(
            fragment(ref), _inset(broad[ref]), _inset(slim[ref])
        )
        for ref in broad
    )
    return Markup('<div class="face">{}{}</div>').format(drawn, landings)


def _inset(keeps: tuple[float, ...]) -> str:
    return " ".join(f"{each:.2f}%" for each in keeps)


# Whatever hangs on the same breakers shows the same face: few of them, each on many pages.
@lru_cache(maxsize=256)
def lit_face(small: LitFace) -> Markup:
    """The small face of a panel; nothing on it leads anywhere, so it is the same on every page."""
    return svg(small_face(small, f"lit-{fragment(small.face.ref)}"), lambda _: None)


def is_short(cell: Phrase) -> bool:
    """Whether a cell is a date, a breaker, a figure with its unit: what must stand on one line."""
    words = plain(cell)
    return len(words) <= _SHORT and not words.isalpha()


# The same names and words stand on many pages.
@cache
def _escaped(text: str) -> str:
    return str(escape(text))


def _found(sheets: Iterable[tuple[str, str]], href: Address) -> list[tuple[str, str, str]]:
    """Those of the sheets that this manual has: word, id and URL of each."""
    return [(word, id_, url) for word, id_ in sheets if (url := href(Ref("sheet", id_)))]


def page(
    sheet: Sheet, book: AddressBook, theme: Theme, pictures: Mapping[str, Size | None] = NO_PICTURES
) -> str:
    """One page."""
    path = book.paths[sheet.ref]
    told: set[str] = set()

    def on_sheet(ref: Ref) -> str:
        """Marks a link with its sheet's number, for paper: the first on a page that leads to that sheet."""
        number = book.number(path, ref)
        if number is None or number in told:
            return Markup("")
        told.add(number)
        return Markup(f' data-sheet="{escape(number)}"')

    def href(ref: Ref) -> str | None:
        return book.url(path, ref)

    def say(phrase: Phrase | str) -> Markup:
        return Markup("".join(map(word, (phrase,) if isinstance(phrase, str) else phrase)))

    def word(piece: str | Link) -> str:
        if isinstance(piece, str):
            return _escaped(piece)
        to, text = href(piece.to), _escaped(piece.text)
        return f'<a href="{_escaped(to)}"{on_sheet(piece.to)}>{text}</a>' if to else text

    def draw_map(plan: CircuitMap) -> Markup:
        drawn = wide_map(plan, "map-wide"), narrow_map(plan, "map-narrow")
        return plate(*drawn, href, middle_map(plan, "map-middle"))

    def draw_drop(plot: DropPlot) -> Markup:
        return plate(wide_drop(plot, "drop-wide"), narrow_drop(plot, "drop-narrow"), href)

    def draw_bars(loads: LoadsSheet) -> Markup:
        drawn = wide_bars(loads, "bars-wide"), narrow_bars(loads, "bars-narrow")
        return plate(*drawn, href, middle_bars(loads, "bars-middle"))

    def draw_makeup(makeup: MakeUp) -> Markup:
        wide = wide_makeup(makeup, "makeup-wide")
        middle = middle_makeup(makeup, "makeup-middle") if wide.width_px > PAPER_PX else None
        return plate(wide, narrow_makeup(makeup, "makeup-narrow"), href, middle)

    def draw_room(plan: Plan) -> Markup:
        return plate(wide_room(plan), narrow_room(plan), href, middle_room(plan))

    def draw_level(plan: Plan) -> Markup:
        return plate(wide_level(plan), narrow_level(plan), href, middle_level(plan))

    def draw_small(plan: Plan, widest_in: float) -> Markup:
        return plate(wide_small(plan, widest_in), narrow_small(plan, widest_in), href)

    def draw_line(pattern: int | Literal["leg", "far"], number: int) -> Markup:
        """The line of a circuit or another line of a plan, for the key."""
        return svg(line_sample(pattern, number), href)

    def draw_sign(name: Symbol, *, of_room: bool) -> Markup:
        """A symbol as a plan has it, for the key."""
        return svg(sign_sample(name, of_room=of_room), href)

    def draw_wall(wall: Elevation) -> Markup:
        return plate(wide_elevation(wall), narrow_elevation(wall), href)

    def draw_face(face: PanelFace) -> Markup:
        drawn = wide_face(face, "face-wide"), narrow_face(face, "face-narrow")
        return lightable(plate(*drawn, href), face)

    def draw_card(card: DoorCard) -> Markup:
        return plate(wide_card(card, "card-wide"), narrow_card(card, "card-narrow"), href)

    def draw_one_line(plan: OneLine) -> Markup:
        drawn = wide_one_line(plan, "line-wide"), narrow_one_line(plan, "line-narrow")
        return plate(*drawn, href, middle_one_line(plan, "line-middle"))

    def draw_symbol(name: Symbol) -> Markup:
        return svg(Drawing(f"symbol-{name}", 60, 52, name, "", symbol(name, 26, 26), "legend"), href)

    return theme.environment.get_template(TEMPLATES[type(sheet)]).render(
        sheet=sheet,
        first=_found(FIRST, href),
        rest=_found(REST, href),
        current=sheet.section or sheet.ref.id,
        root="../" * path.count("/"),
        href=href,
        on_sheet=on_sheet,
        pictures=pictures,
        anchor=fragment,
        say=say,
        is_short=is_short,
        draw_map=draw_map,
        draw_bars=draw_bars,
        draw_drop=draw_drop,
        draw_makeup=draw_makeup,
        draw_room=draw_room,
        draw_level=draw_level,
        draw_wall=draw_wall,
        draw_small=draw_small,
        draw_line=draw_line,
        draw_sign=draw_sign,
        draw_face=draw_face,
        draw_lit=lit_face,
        draw_one_line=draw_one_line,
        draw_card=draw_card,
        draw_symbol=draw_symbol,
        lines=source_lines,
        prose=lambda text: prose(text, href),
        ref=Ref,
    )
