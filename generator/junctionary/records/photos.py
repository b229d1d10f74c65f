"""photos/photos.yaml: what each picture shows, when it was taken and at which stage."""

from junctionary.records.log import Several
from junctionary.records.reading import Record
from junctionary.records.values import Date, Id, Stage, Text


class PhotoRecord(Record):
    """One picture."""

    file: Text
    shows: Several
    room: Id | None = None
    wall: Text | None = None
    date: Date | None = None
    stage: Stage | None = None
    note: Text | None = None


class PhotosFile(Record):
    """photos/photos.yaml."""

    photos: list[PhotoRecord] = []
