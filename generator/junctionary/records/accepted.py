"""accepted.yaml: findings that the owner or an inspector has accepted, each with a reason and a date."""

from junctionary.records.log import Several
from junctionary.records.reading import Record
from junctionary.records.values import Date, Id, Role, Text


class Acceptance(Record):
    """One finding accepted, by its check and what it is about; it stays visible as accepted."""

    rule: Id
    about: Several
    reason: Text
    date: Date
    by: Role
