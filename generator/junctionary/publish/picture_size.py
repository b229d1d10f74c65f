"""How large a cleared picture is shown: a page tells it, so that nothing moves once the picture is there."""

import struct
from typing import TypeAlias

from junctionary.publish.pictures import orientation

Size: TypeAlias = tuple[int, int]
"""Width and height in pixels, as it is seen."""

_PNG_HEADER = 16
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}


def size_px(picture: bytes) -> Size | None:
    """Width and height of a JPEG, PNG or WebP, turned as it will be shown; None where it does not tell."""
    try:
        if picture.startswith(b"\xff\xd8"):
            return _jpeg(picture)
        if picture.startswith(b"\x89PNG"):
            width, height = struct.unpack_from(">II", picture, _PNG_HEADER)
            return width, height
        return _webp(picture)
    except (struct.error, IndexError):
        return None


def _jpeg(picture: bytes) -> Size | None:
    """From its first frame; a picture lying on its side is as wide as it was high."""
    at, turned = 2, 1
    while picture[at] == 0xFF:
        kind = picture[at + 1]
        (length,) = struct.unpack_from(">H", picture, at + 2)
        if kind == 0xE1:
            turned = orientation(picture[at + 10 : at + 2 + length])
        if kind in _FRAMES:
            height, width = struct.unpack_from(">HH", picture, at + 5)
            return (height, width) if turned >= 5 else (width, height)
        at += 2 + length
    return None


def _webp(picture: bytes) -> Size | None:
    """From the first of its chunks, each kind of which tells it its own way (RFC 9649)."""
    kind, body = picture[12:16], picture[20:30]
    if kind == b"VP8X":
        return int.from_bytes(body[4:7], "little") + 1, int.from_bytes(body[7:10], "little") + 1
    if kind == b"VP8 ":
        width, height = struct.unpack_from("<HH", body, 6)
        return width & 0x3FFF, height & 0x3FFF
    if kind == b"VP8L":
        (bits,) = struct.unpack_from("<I", body, 1)
        return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    return None
