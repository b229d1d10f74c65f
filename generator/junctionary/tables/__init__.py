"""Published values as data: one YAML file a table, with its source and its promises.

A test holds every promise a table makes, so a wrong digit has two things to get past.
"""

from junctionary.tables.reading import Column, Row, Table, UnknownKeyError, table, tables

__all__ = ["Column", "Row", "Table", "UnknownKeyError", "table", "tables"]
