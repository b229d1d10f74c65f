"""A photograph as a sheet shows it: the wall while it was open, a box before it was closed."""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.house.model import House
from junctionary.records.photos import PhotoRecord
from junctionary.sheets.naming import box_of, ref_of


@dataclass(frozen=True, slots=True)
class Photo:
    """``file`` is where it stands in the record, ``shown`` what it shows, for who cannot see it."""

    file: str
    says: str
    shown: str


def photos_of_wall(house: House, room: str, wall: str | None) -> tuple[Photo, ...]:
    """The pictures taken of a wall of a room; a wall without a name has none."""
    return tuple(
        _photo(house, each) for each in house.photos if wall and (each.room, each.wall) == (room, wall)
    )


def photos_of_box(house: House, box: str) -> tuple[Photo, ...]:
    """The pictures that show a box or something in it."""
    return tuple(
        _photo(house, each) for each in house.photos if any(_in_box(name, box) for name in each.shows)
    )


def _in_box(name: str, box: str) -> bool:
    return name == box or name.startswith((f"{box}.", f"{box}/"))


def _photo(house: House, photo: PhotoRecord) -> Photo:
    shows = "; ".join(_thing(house, each) for each in photo.shows)
    place = ", ".join(_place(house, photo))
    told = ", ".join(str(each) for each in (photo.date, photo.stage, photo.file) if each)
    note = f". {photo.note.rstrip('.')}" if photo.note else ""
    stage = f", {photo.stage}" if photo.stage else ""
    return Photo(
        f"photos/{photo.file}",
        f"{shows[:1].upper()}{shows[1:]}{note} ({told})",
        f"Photograph{f', {place}' if place else ''}{stage}: {shows}{note}",
    )


def _place(house: House, photo: PhotoRecord) -> Iterator[str]:
    """Where it was taken, as told; else the room of the first box in it."""
    room = photo.room or next(
        (house.boxes[box].room for box in (_box_of(house, each) for each in photo.shows) if box), None
    )
    if room:
        yield house.rooms[room].name if room in house.rooms else room
    if photo.wall:
        yield f"{photo.wall} wall"


def _box_of(house: House, name: str) -> str | None:
    ref = ref_of(house, name)
    return box_of(ref) if ref and ref.kind in ("box", "device", "joint") else None


def _thing(house: House, name: str) -> str:
    """``box D1 (by the door)``, ``cable d1``: what an id in a picture names."""
    ref = ref_of(house, name)
    if ref is None:
        return name
    box = house.boxes.get(name)
    called = f" ({box.name})" if box and box.name else ""
    return f"{'cable' if ref.kind == 'run' else ref.kind} {name}{called}"
