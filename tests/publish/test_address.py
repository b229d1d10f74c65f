"""Where things stand: relative, so that a manual works from any folder."""

import pytest
from samples import BOX, CIRCUIT, COVER, PANEL, title

from junctionary.publish.address import address_book, fragment
from junctionary.sheets.box import BoxSheet
from junctionary.sheets.links import Ref

BOOK = address_book((COVER, BOX, CIRCUIT, PANEL))


def box(id_: str) -> BoxSheet:
    return BoxSheet(
        title=title(id_, "E-500"),
        ref=Ref("box", id_),
        heading=id_,
        before=BOX.before,
        facts=(),
        makeup=None,
        fill=None,
        evidence=(),
    )


@pytest.mark.parametrize(
    ("start", "to", "url"),
    [
        ("index.html", Ref("box", "D1"), "box/D1.html"),
        ("box/D1.html", Ref("circuit", "den"), "../circuit/den.html"),
        ("box/D1.html", Ref("sheet", "cover"), "../index.html"),
        ("circuit/den.html", Ref("device", "D1.r1"), "../box/D1.html#device-D1.r1"),
        ("circuit/den.html", Ref("joint", "D1/j1"), "../box/D1.html#joint-D1/j1"),
        ("box/D1.html", Ref("run", "p4"), "../circuit/den.html#run-p4"),
        ("box/D1.html", Ref("space", "main/2+4"), "../panel/main.html#space-main/2+4"),
        ("box/D1.html", Ref("device", "D1.r1"), "#device-D1.r1"),
        ("box/D1.html", Ref("box", "D1"), "D1.html"),
    ],
)
def test_a_thing_has_one_relative_address(start: str, to: Ref, url: str) -> None:
    assert BOOK.url(start, to) == url


def test_what_has_no_place_has_no_address() -> None:
    assert BOOK.url("index.html", Ref("box", "Z9")) is None


def test_names_that_differ_in_capitals_get_files_of_their_own() -> None:
    paths = address_book((box("K1"), box("k1"))).paths
    assert len({each.casefold() for each in paths.values()}) == 2


@pytest.mark.parametrize("id_", ["con", "AUX", "nul.1", "..", "a/b", "a b", "ü?"])
def test_a_name_no_drive_can_keep_is_changed(id_: str) -> None:
    path = address_book((box(id_),)).paths[Ref("box", id_)]
    folder, name = path.split("/")
    assert folder == "box"
    assert name.split(".")[0].casefold() not in ("con", "aux", "nul", "")
    assert not set(name) & set('?*:"<>| ')


def test_a_fragment_holds_no_blank() -> None:
    assert " " not in fragment(Ref("term", "home run"))
