"""Pages made of sample sheets: quiet, linked, cautions first, no colour but a conductor's."""

import re
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path
from typing import TYPE_CHECKING, get_type_hints

import pytest
from samples import BOX, CIRCUIT, HAZARD, sheets

from junctionary.publish.address import address_book
from junctionary.publish.folder import swap_in
from junctionary.publish.pages import TEMPLATES, is_short, page, pages
from junctionary.publish.theme import NoSuchTheme, theme
from junctionary.sheets.caution import BeforeOpening

if TYPE_CHECKING:
    from playwright.sync_api import Browser

THEME = theme()
MADE = pages(sheets(), THEME)
HTML = {path: data.decode() for path, data in MADE.items() if path.endswith(".html")}
every_page = pytest.mark.parametrize("path", sorted(HTML))


class Words(HTMLParser):
    def __init__(self, html: str) -> None:
        super().__init__()
        self.text = ""
        self.feed(html)

    def handle_data(self, data: str) -> None:
        self.text += data


def words(path: str) -> str:
    return " ".join(Words(HTML[path]).text.split())


def test_there_is_a_sample_of_every_kind_of_sheet() -> None:
    assert {type(each) for each in sheets()} == set(TEMPLATES)


@every_page
def test_a_page_has_its_title_block(path: str) -> None:
    for part in ("House", "Sheet", "Record of", "Digest", "Known by", "No.", "not a certificate"):
        assert part in words(path)


@every_page
def test_a_page_names_one_place_current_and_stays_out_of_indexes(path: str) -> None:
    assert HTML[path].count("aria-current=") == 1
    assert '<meta name="robots" content="noindex">' in HTML[path]
    assert "default-src 'none'" in HTML[path]


@pytest.mark.parametrize(
    "path",
    sorted(each for each in HTML if re.match(r"(findings|not-recorded|checklist|rule/.*)\.html", each)),
)
def test_a_sheet_that_may_send_somebody_to_a_box_cautions_before_its_first_section(path: str) -> None:
    told = HTML[path].partition("<section")[0]
    for due in ("Before any box is opened", "its own sheet lists", "prove it dead", "licensed electrician"):
        assert due in told


@every_page
def test_a_page_never_says_safe(path: str) -> None:
    assert not re.search(r"\bsafe\b", words(path), re.IGNORECASE)


@pytest.mark.parametrize(
    "path",
    ["box/D1.html", "box/D5.html", "circuit/den.html", "room/den.html", "panel/main.html", "splices.html"],
)
def test_the_caution_comes_before_everything_else(path: str) -> None:
    said = words(path)
    first = said.index("Before opening")
    for later in ("Make-up", "Circuit map", "Boxes here", "Its face", "Joints", "Hard to reach"):
        assert later not in said[:first]
    assert said.count("known live source") >= 2


def test_every_breaker_is_listed_with_its_reasons_and_a_link() -> None:
    said = words("circuit/den.html")
    assert "All 3 of these must be off" in said
    assert "its neutral is joined to the den's in box J7; passes through box D1 uncut" in said
    assert '<a href="../panel/main.html#space-main/14">main 14</a>' in HTML["circuit/den.html"]


def test_an_unknown_adds_the_main_and_leaves_the_list() -> None:
    said = words("circuit/den.html")
    assert "unknown: main off, and still test" in said
    assert "one end of run x3 is unknown" in said
    assert "main 16" in said


def test_no_breaker_known_is_never_an_all_clear() -> None:
    sheet = replace(BOX, before=BeforeOpening("box D1", ()))
    html = page(sheet, address_book(sheets()), THEME)
    assert "unknown: main off, and still test" in html
    assert "must be off" not in html


@pytest.mark.parametrize("path", sorted(path for path in HTML if not path.startswith("note/")))
def test_a_table_tells_what_it_is_of_unless_its_owner_wrote_it(path: str) -> None:
    for named, begins in re.findall(r"<table([^>]*)>\s*(.{8})", HTML[path], re.DOTALL):
        by = re.search(r'aria-labelledby="([^" ]+)"', named)
        assert begins == "<caption" or (by and f'id="{by[1]}"' in HTML[path])


def test_text_of_a_record_is_escaped() -> None:
    html = page(replace(BOX, heading='Box <script>"'), address_book(sheets()), THEME)
    assert "Box &lt;script&gt;" in html
    assert "Box <script" not in html


def test_a_severity_is_told_by_word_and_shape() -> None:
    html = page(replace(CIRCUIT, findings=(HAZARD,)), address_book(sheets()), THEME)
    assert re.search(r'<svg class="shape".*?</svg><b>hazard</b>', html, re.DOTALL)


def test_only_conductors_are_coloured() -> None:
    css = MADE["assets/style.css"].decode()
    hues = re.findall(r"var\(--(red|blue|brown|orange|yellow|green|grey|violet|pink|bare)\)", css)
    rules = re.findall(
        r"([^{}]*)\{[^{}]*var\(--(?:red|blue|brown|orange|yellow|green|grey|violet|pink|bare)\)", css
    )
    assert hues
    assert all(".core.c-" in each for each in rules)


def test_every_part_a_page_is_given_is_shown_by_its_template() -> None:
    for kind, template in TEMPLATES.items():
        source = (Path(__file__).parents[2] / "themes/drafting/templates" / template).read_text()
        for name in set(get_type_hints(kind)) - {"title", "ref", "heading", "lead", "section"}:
            assert f"sheet.{name}" in source, f"{template} never shows {name}"


def test_an_unknown_theme_is_named() -> None:
    with pytest.raises(NoSuchTheme, match="brutal"):
        theme("brutal")


def test_a_theme_may_extend_another(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import junctionary.publish.theme as module

    own = tmp_path / "plain"
    (own / "templates").mkdir(parents=True)
    (own / "assets").mkdir()
    (own / "extends").write_text("drafting\n")
    (own / "assets/style.css").write_text("body { color: black }")
    real = module.data_dir("themes")
    (tmp_path / "drafting").symlink_to(real / "drafting", target_is_directory=True)
    monkeypatch.setattr(module, "data_dir", lambda name: tmp_path)
    made = pages(sheets(), theme("plain"))
    assert made["assets/style.css"] == b"body { color: black }"
    assert set(made) == set(MADE)


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("pages") / "manual"
    swap_in(MADE, folder)
    return folder


OVERLAPS = """() => {
  const found = [];
  for (const svg of document.querySelectorAll('svg.drawing')) {
    if (!svg.getClientRects().length) continue;
    const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    const boxes = [...svg.querySelectorAll('text')].map(t => [t.textContent, t.getBoundingClientRect(),
      parseFloat(getComputedStyle(t).fontSize) * scale]);
    for (const [text, box, size] of boxes) if (size < 9) found.push(text + ' is ' + size + ' px');
    for (let i = 0; i < boxes.length; i++) for (let j = i + 1; j < boxes.length; j++) {
      const a = boxes[i][1], b = boxes[j][1];
      const beside = a.left >= b.right - 1 || b.left >= a.right - 1;
      const over = a.top + 3 >= b.bottom - 2 || b.top + 3 >= a.bottom - 2;
      if (!beside && !over)
        found.push(boxes[i][0] + ' / ' + boxes[j][0]);
    }
  }
  return found;
}"""


@pytest.mark.browser
@pytest.mark.parametrize("width", [320, 390, 768, 961, 1280])
def test_lettering_as_drawn_never_collides_and_stays_legible(
    browser: "Browser", published: Path, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 900})
    tab = context.new_page()
    asked: list[str] = []
    tab.on("request", lambda request: asked.append(request.url))
    told: list[str] = []
    tab.on("console", lambda message: told.append(message.text))
    for path in (
        "box/D1.html",
        "box/D5.html",
        "circuit/den.html",
        "terms.html",
        "panel/main.html",
        "card/main.html",
        "one-line.html",
    ):
        tab.goto((published / path).as_uri())
        assert tab.evaluate(OVERLAPS) == [], path
        assert tab.evaluate("document.documentElement.scrollWidth") <= width, path
    context.close()
    assert all(each.startswith("file:") for each in asked)
    assert told == []


@pytest.mark.parametrize(
    ("cell", "short"),
    [
        ("2026-10-31", True),
        ("main 9+11", True),
        ("as-found", True),
        ("verified", False),
        ("press it monthly", False),
    ],
)
def test_a_date_or_a_breaker_in_a_table_stands_on_one_line(cell: str, short: bool) -> None:
    assert is_short((cell,)) is short
