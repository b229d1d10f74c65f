"""Pictures leave their metadata behind; what cannot be taken apart is refused, never copied as it is."""

import io
import struct
import zlib
from pathlib import Path

import pytest

from junctionary.cli import main
from junctionary.cli.opening import open_record
from junctionary.publish.picture_size import size_px
from junctionary.publish.pictures import NotBare, bare, bare_pictures

PIL = pytest.importorskip("PIL")
from PIL import Image, ImageOps, PngImagePlugin  # noqa: E402

SECRETS = (
    b"Somewhere 12",
    b"Maker & Sons",
    b"52/1",
    b"ICC_PROFILE",
    b"http://ns.adobe.com",
    b"Photoshop",
    b"GPS",
)
GPS, MAKE, TURNED = 0x8825, 0x010F, 0x0112


def wall(mode: str = "RGB") -> Image.Image:
    image = Image.new(mode, (48, 32))
    for x in range(48):
        for y in range(32):
            image.putpixel((x, y), {"L": x * 5, "CMYK": (x, y, 9, 3)}.get(mode, (x * 5, y * 7, 90)))
    return image


def exif(turned: int = 1) -> Image.Exif:
    told = Image.Exif()
    told[MAKE] = "Maker & Sons"
    told[TURNED] = turned
    told.get_ifd(GPS)[29] = "Somewhere 12"
    return told


def saved(image: Image.Image, kind: str, **how: object) -> bytes:
    kept = io.BytesIO()
    image.save(kept, kind, **how)
    return kept.getvalue()


def opened(raw: bytes) -> Image.Image:
    image = Image.open(io.BytesIO(raw))
    image.load()
    return image


@pytest.mark.parametrize("mode", ["RGB", "L", "CMYK"])
@pytest.mark.parametrize("progressive", [False, True])
def test_a_jpeg_keeps_every_dot_and_nothing_else(mode: str, progressive: bool) -> None:
    raw = saved(
        wall(mode),
        "JPEG",
        exif=exif(),
        comment=b"Somewhere 12",
        progressive=progressive,
        icc_profile=b"ICC_PROFILE",
    )
    assert b"Somewhere 12" in raw
    made = bare(raw)
    assert not any(each in made for each in SECRETS)
    assert opened(made).tobytes() == opened(raw).tobytes()
    assert not opened(made).getexif()
    assert "comment" not in opened(made).info


@pytest.mark.parametrize("turned", range(2, 9))
def test_which_side_is_up_is_all_that_is_kept_of_exif(turned: int) -> None:
    made = bare(saved(wall(), "JPEG", exif=exif(turned)))
    assert dict(opened(made).getexif()) == {TURNED: turned}
    assert not any(each in made for each in SECRETS)


def test_what_follows_the_end_of_a_jpeg_is_left_behind() -> None:
    raw = saved(wall(), "JPEG")
    made = bare(raw + saved(wall(), "JPEG", exif=exif()) + b"Somewhere 12")
    assert made == bare(raw)


def test_a_thumbnail_goes_with_its_exif() -> None:
    thumbnail = saved(wall("L").resize((8, 8)), "JPEG")
    body = b"Exif\0\0MM\0*\0\0\0\x08" + struct.pack(">HI", 0, 0) + thumbnail
    raw = saved(wall(), "JPEG")
    told = raw[:2] + struct.pack(">BBH", 0xFF, 0xE1, len(body) + 2) + body + raw[2:]
    made = bare(told)
    assert made.count(b"\xff\xd8") == 1
    assert opened(made).tobytes() == opened(raw).tobytes()


def test_a_png_keeps_every_dot_and_nothing_else() -> None:
    words = PngImagePlugin.PngInfo()
    words.add_text("Comment", "Somewhere 12")
    words.add_text("Description", "Somewhere 12", zip=True)
    words.add_itxt("XML:com.adobe.xmp", "http://ns.adobe.com")
    image = wall().convert("RGBA")
    image.putalpha(90)
    raw = saved(image, "PNG", pnginfo=words, exif=exif(), icc_profile=b"ICC_PROFILE")
    made = bare(raw + b"Somewhere 12")
    kinds = {made[at + 4 : at + 8] for at in starts(made)}
    assert kinds == {b"IHDR", b"IDAT", b"IEND"}
    assert opened(made).tobytes() == opened(raw).tobytes()


def starts(png: bytes) -> list[int]:
    found, at = [], 8
    while at < len(png):
        found.append(at)
        at += 12 + struct.unpack_from(">I", png, at)[0]
    return found


@pytest.mark.parametrize("how", [{"lossless": True}, {"quality": 80}])
@pytest.mark.parametrize("mode", ["RGB", "RGBA"])
def test_a_webp_keeps_every_dot_and_nothing_else(mode: str, how: dict[str, object]) -> None:
    image = wall().convert(mode)
    if mode == "RGBA":
        image.putalpha(90)
    raw = saved(image, "WEBP", exif=exif(), xmp=b"http://ns.adobe.com", icc_profile=b"ICC_PROFILE", **how)
    assert b"EXIF" in raw
    made = bare(raw + b"Somewhere 12")
    assert not any(each in made for each in (*SECRETS, b"EXIF", b"XMP ", b"ICCP"))
    assert opened(made).tobytes() == opened(raw).tobytes()
    assert opened(made).mode == opened(raw).mode


def test_a_cleared_picture_is_already_clear() -> None:
    for raw in (saved(wall(), "JPEG", exif=exif(6)), saved(wall(), "PNG"), saved(wall(), "WEBP")):
        assert bare(bare(raw)) == bare(raw)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_picture_cut_short_is_refused(kind: str) -> None:
    raw = saved(wall(), kind)
    for length in range(len(raw)):
        with pytest.raises(NotBare):
            bare(raw[:length])


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"GIF89a" + b"\0" * 40,
        b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        b"\xff\xd8\xff\xd9",
        saved(wall(), "TIFF"),
        saved(wall(), "WEBP", save_all=True, append_images=[wall().rotate(90)]),
        saved(wall(), "PNG", exif=exif(6)),
        saved(wall(), "WEBP", exif=exif(6)),
    ],
    ids=["empty", "gif", "svg", "no image", "tiff", "moving", "png on its side", "webp on its side"],
)
def test_what_cannot_be_cleared_is_refused(raw: bytes) -> None:
    with pytest.raises(NotBare):
        bare(raw)


def test_a_damaged_png_is_refused() -> None:
    raw = bytearray(saved(wall(), "PNG"))
    raw[60] ^= 1
    with pytest.raises(NotBare, match="damaged"):
        bare(bytes(raw))


def test_a_png_part_nobody_knows_but_that_it_needs_is_refused() -> None:
    raw = saved(wall(), "PNG")
    part = b"ABCD" + b"Somewhere 12"
    odd = raw[:33] + struct.pack(">I", 12) + part + struct.pack(">I", zlib.crc32(part)) + raw[33:]
    with pytest.raises(NotBare, match="not known"):
        bare(odd)


@pytest.mark.parametrize(
    "raw",
    [
        saved(wall(), "JPEG"),
        saved(wall(), "JPEG", progressive=True),
        saved(wall(), "PNG"),
        saved(wall(), "WEBP", quality=50),
        saved(wall(), "WEBP", lossless=True),
        saved(wall("RGBA"), "WEBP", quality=50),
    ],
    ids=["jpeg", "progressive", "png", "webp", "lossless", "transparent"],
)
def test_the_size_of_a_picture_is_what_a_picture_library_reads(raw: bytes) -> None:
    assert size_px(bare(raw)) == opened(raw).size == (48, 32)


@pytest.mark.parametrize("turned", range(1, 9))
def test_a_picture_lying_on_its_side_is_as_wide_as_it_was_high(turned: int) -> None:
    made = bare(saved(wall(), "JPEG", exif=exif(turned)))
    assert size_px(made) == ImageOps.exif_transpose(opened(made)).size


def test_what_tells_no_size_has_none() -> None:
    assert size_px(b"\xff\xd8\xff\xd9") is None
    assert size_px(b"RIFF") is None


@pytest.fixture
def record(tmp_path: Path) -> Path:
    """A wall and a box of a den that were photographed; one picture is none, one is not there, one is not listed."""
    folder = tmp_path / "record"
    for file, text in {
        "house.yaml": "house: Short Straw\nreference: nec-2023\n",
        "rooms/den.yaml": "room: den\nname: Den\nkind: den\noutline: [[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 8 ft], [0 ft, 8 ft]]\n"
        "walls: [north, east, south, west]\n",
        "boxes/den.yaml": "room: den\nboxes:\n  D1: {at: {wall: north, along: 2 ft, up: 16 in}}\n",
        "photos/photos.yaml": "photos:\n"
        "  - {file: good.jpg, shows: [D1], room: den, wall: north, date: 2026-03-01, stage: roughed}\n"
        "  - {file: bad.jpg, shows: [D1], room: den, wall: north}\n"
        "  - {file: gone.jpg, shows: [D1], room: den, wall: north}\n",
    }.items():
        (folder / file).parent.mkdir(parents=True, exist_ok=True)
        (folder / file).write_text(text)
    (folder / "photos/good.jpg").write_bytes(saved(wall(), "JPEG", exif=exif()))
    (folder / "photos/bad.jpg").write_bytes(b"not a picture, Somewhere 12")
    (folder / "photos/unlisted.jpg").write_bytes(saved(wall(), "JPEG", exif=exif()))
    return folder


def test_the_manual_holds_what_is_listed_and_could_be_cleared(
    record: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    manual = tmp_path / "manual"
    assert main(["publish", str(record), "-o", str(manual)]) == 0
    said = capsys.readouterr().err
    assert [path.name for path in sorted((manual / "photos").iterdir())] == ["good.jpg"]
    assert "photos/bad.jpg is left out of the manual" in said
    assert "photos/photos.yaml:4:" in said
    assert "there is no photos/gone.jpg" in said
    for path in manual.rglob("*"):
        assert not path.is_file() or b"Somewhere 12" not in path.read_bytes(), path


def test_a_picture_stands_beside_its_wall_and_its_box_with_words_for_it(record: Path, tmp_path: Path) -> None:
    manual = tmp_path / "manual"
    assert main(["publish", str(record), "-o", str(manual)]) == 0
    for page in ("room/den.html", "box/D1.html"):
        html = (manual / page).read_text("utf-8")
        assert (
            '<img src="../photos/good.jpg" width="48" height="32" alt="Photograph, Den, north wall, roughed: box D1">'
            in html
        )
        assert "Box D1 (bad.jpg). The picture is not in this manual." in html
        assert 'src="../photos/bad.jpg"' not in html


def test_a_picture_that_changed_since_it_was_read_is_refused(record: Path) -> None:
    opened_record = open_record(record)
    assert opened_record.result is not None
    (record / "photos/good.jpg").write_bytes(saved(wall("L"), "JPEG"))
    kept, refused = bare_pictures(opened_record.files, opened_record.result.house.photos)
    assert kept == {}
    assert any("good.jpg" in each.found and "changed" in each.found for each in refused)
