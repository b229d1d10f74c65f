"""From a folder of text files to marked trees, with every fault placed.

Never judges what a record means: words, units and ids are read by ``records``.
"""

from junctionary.read.folder import RecordFiles, Tree, read_record
from junctionary.read.loader import load
from junctionary.read.source import Source, caret, digest, source_line

__all__ = ["RecordFiles", "Source", "Tree", "caret", "digest", "load", "read_record", "source_line"]
