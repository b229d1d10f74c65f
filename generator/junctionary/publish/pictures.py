"""Pictures for the manual: what is seen in them, and nothing of where, when or with what they were taken.

A picture is taken apart and put together again from the parts that make
the image; all else is left behind: EXIF with its place and thumbnail, XMP,
IPTC, comments, colour profiles, further pictures, and whatever follows the
end. Only which side is up is kept, for a wall lying on its side misleads.
"""

import hashlib
import struct
import zlib
from collections.abc import Collection, Iterable, Iterator, Mapping

from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.read import RecordFiles
from junctionary.read.folder import PICTURES
from junctionary.records.photos import PhotoRecord

_PNG = b"\x89PNG\r\n\x1a\n"
_PNG_KEPT = frozenset({b"IHDR", b"PLTE", b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"IDAT", b"IEND"})
_WEBP_KEPT = frozenset({b"VP8 ", b"VP8L", b"VP8X", b"ALPH"})
_EXIF = b"Exif\0\0"
_ORIENTATION = 0x0112
_ALPHA = 0x10
"""The one flag of a VP8X chunk that speaks of what is kept."""


class NotBare(ValueError):  # noqa: N818 - it says what the picture is
    """A picture that could not be taken apart, and why; it is never copied as it is."""


def bare_pictures(
    files: RecordFiles, photos: Iterable[PhotoRecord]
) -> tuple[dict[str, bytes], list[Problem]]:
    """The pictures listed, by name (``photos/k.jpg``), without metadata, and a warning for each refused.

    A picture nobody listed is not copied: nobody said what it shows.
    """
    listed = {f"photos/{each.file}": each for each in photos}
    kept: dict[str, bytes] = {}
    refused = _absent(listed, {each.file for each in files.sources})
    for source in files.sources:
        if source.file not in listed or not source.file.lower().endswith(PICTURES):
            continue
        try:
            raw = (files.folder / source.file).read_bytes()
            if hashlib.sha256(raw).hexdigest() != source.sha256:
                raise NotBare("it changed while the manual was made")
            kept[source.file] = bare(raw)
        except (OSError, NotBare) as why:
            told = why.strerror or str(why) if isinstance(why, OSError) else str(why)
            refused.append(
                Problem(
                    Place(source.file, 1, 1),
                    f"{source.file} is left out of the manual: {told}",
                    "a JPEG, PNG or WebP picture that can be cleared of its metadata",
                    "save it again as a plain JPEG",
                    stops=False,
                )
            )
    return kept, refused


def _absent(listed: Mapping[str, PhotoRecord], there: Collection[str]) -> list[Problem]:
    return [
        Problem(
            photo.value_place("file"),
            f"there is no {file} among the pictures of the record",
            f"a picture ({', '.join(PICTURES)}) of that name",
            "put it there, or mend the name",
            stops=False,
        )
        for file, photo in listed.items()
        if file not in there
    ]


def bare(raw: bytes) -> bytes:
    """The same image with nothing besides; raises NotBare for what is no whole JPEG, PNG or still WebP."""
    try:
        if raw.startswith(b"\xff\xd8"):
            return b"".join(_jpeg(raw))
        if raw.startswith(_PNG):
            return _PNG + b"".join(_png(raw))
        if raw[:4] == b"RIFF" and raw[8:12] == b"WEBP":
            return _webp(raw)
    except (struct.error, IndexError):
        raise NotBare("it is cut short") from None
    raise NotBare("it is no JPEG, PNG or WebP")


def _jpeg(raw: bytes) -> Iterator[bytes]:
    """Tables, frames and scans (ITU-T T.81), the transform of its colours, and which side is up."""
    turned, parts, at = 1, [], 2
    while True:
        if raw[at] != 0xFF:
            raise NotBare("its segments are broken")
        kind = raw[at + 1]
        if kind == 0xFF:  # a fill byte
            at += 1
            continue
        if kind == 0xD9:
            break
        (length,) = struct.unpack_from(">H", raw, at + 2)
        body = raw[at + 4 : at + 2 + length]
        if length < 2 or len(body) != length - 2:
            raise NotBare("it is cut short")
        at += 2 + length
        if kind == 0xE1 and body.startswith(_EXIF):
            turned = orientation(body[len(_EXIF) :])
        elif kind == 0xEE and body.startswith(b"Adobe") and len(body) == 12:
            parts.append(_segment(0xEE, b"Adobe\0\x64\0\0\0\0" + body[11:]))
        elif kind == 0xDA:
            start, at = at, _end_of_scan(raw, at)
            parts.append(_segment(kind, body) + raw[start:at])
        elif 0xC0 <= kind <= 0xCF or kind in (0xDB, 0xDC, 0xDD):
            parts.append(_segment(kind, body))
        elif not (0xE0 <= kind <= 0xEF or kind == 0xFE):
            raise NotBare("it holds a segment that is not known")
    if not parts:
        raise NotBare("it holds no image")
    yield b"\xff\xd8"
    if turned != 1:
        told = struct.pack(">2sHIHHHIHHI", b"MM", 42, 8, 1, _ORIENTATION, 3, 1, turned, 0, 0)
        yield _segment(0xE1, _EXIF + told)
    yield from parts
    yield b"\xff\xd9"


def _segment(kind: int, body: bytes) -> bytes:
    return struct.pack(">BBH", 0xFF, kind, len(body) + 2) + body


def _end_of_scan(raw: bytes, at: int) -> int:
    """Where the next marker stands that is neither a stuffed byte nor a restart within the scan."""
    while True:
        at = raw.find(b"\xff", at)
        if at < 0 or at + 1 >= len(raw):
            raise NotBare("it is cut short")
        if raw[at + 1] == 0 or 0xD0 <= raw[at + 1] <= 0xD7:
            at += 2
        else:
            return at


def orientation(tiff: bytes) -> int:
    """Which side is up, 1 to 8, from the first directory of an EXIF block; 1 where it does not tell."""
    order = {b"II": "<", b"MM": ">"}.get(tiff[:2])
    if order is None or len(tiff) < 8:
        return 1
    try:
        (first,) = struct.unpack_from(f"{order}I", tiff, 4)
        (count,) = struct.unpack_from(f"{order}H", tiff, first)
        for entry in range(first + 2, first + 2 + 12 * count, 12):
            tag, kind, _, value = struct.unpack_from(f"{order}HHIH", tiff, entry)
            if (tag, kind) == (_ORIENTATION, 3):
                return value if 1 <= value <= 8 else 1
    except struct.error:
        return 1
    return 1


def _png(raw: bytes) -> Iterator[bytes]:
    """The chunks that make the image, each as sound as its checksum says."""
    at = len(_PNG)
    while True:
        length, kind = struct.unpack_from(">I4s", raw, at)
        whole = raw[at : at + 12 + length]
        (told,) = struct.unpack_from(">I", whole, 8 + length)
        if zlib.crc32(whole[4 : 8 + length]) != told:
            raise NotBare("it is damaged")
        if kind in _PNG_KEPT:
            yield whole
        elif kind == b"eXIf":
            _upright(whole[8:-4])
        elif not kind[0] & 0x20:
            raise NotBare("it holds a part that is not known")
        at += 12 + length
        if kind == b"IEND":
            return


def _webp(raw: bytes) -> bytes:
    """The image and its transparency; a moving one is refused."""
    (size,) = struct.unpack_from("<I", raw, 4)
    end, at, parts = 8 + size, 12, []
    if end > len(raw):
        raise NotBare("it is cut short")
    while at < end:
        kind, length = struct.unpack_from("<4sI", raw, at)
        body = raw[at + 8 : at + 8 + length]
        if len(body) != length:
            raise NotBare("it is cut short")
        at += 8 + length + length % 2
        if kind in (b"ANIM", b"ANMF"):
            raise NotBare("it is a moving picture")
        if kind == b"EXIF":
            _upright(body.removeprefix(_EXIF))
        if kind in _WEBP_KEPT:
            if kind == b"VP8X":
                body = bytes((body[0] & _ALPHA, 0, 0, 0)) + body[4:10]
            parts.append(struct.pack("<4sI", kind, len(body)) + body + b"\0" * (len(body) % 2))
    if not parts:
        raise NotBare("it holds no image")
    whole = b"WEBP" + b"".join(parts)
    return struct.pack("<4sI", b"RIFF", len(whole)) + whole


def _upright(tiff: bytes) -> None:
    if orientation(tiff) != 1:
        raise NotBare("it lies on its side, and only a JPEG can say so without its other metadata")
