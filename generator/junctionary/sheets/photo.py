"""A photograph as a sheet shows it: the wall while it was open, a box before it was closed."""

from collections.abc import Iterable
from dataclasses import dataclass

from junctionary.records.photos import PhotoRecord


@dataclass(frozen=True, slots=True)
class Photo:
    """``file`` is where it stands in the record, ``shown`` what it shows, for who cannot see it."""

    file: str
    says: str
    shown: str


def photos_of_wall(photos: Iterable[PhotoRecord], room: str, wall: str | None) -> tuple[Photo, ...]:
    """The pictures taken of a wall of a room; a wall without a name has none."""
    return tuple(_photo(each) for each in photos if wall and (each.room, each.wall) == (room, wall))


def photos_of_box(photos: Iterable[PhotoRecord], box: str) -> tuple[Photo, ...]:
    """The pictures that show a box or something in it."""
    return tuple(_photo(each) for each in photos if any(_in_box(name, box) for name in each.shows))


def _in_box(name: str, box: str) -> bool:
    return name == box or name.startswith((f"{box}.", f"{box}/"))


def _photo(photo: PhotoRecord) -> Photo:
    told = ", ".join(str(each) for each in (photo.date, photo.stage) if each)
    place = ", ".join(each for each in (photo.room, f"{photo.wall} wall" if photo.wall else None) if each)
    what = ", ".join(photo.shows)
    shown = f"Photograph: {what}{f' ({place})' if place else ''}{f'. {photo.note}' if photo.note else ''}"
    return Photo(f"photos/{photo.file}", f"{photo.file}{f' ({told})' if told else ''}", shown)
