"""The package's own YAML: every scalar stays the text that was printed."""

from pathlib import Path
from typing import Any

import yaml

# The base loader keeps 2.00 apart from 2.0 and 310.10 apart from 310.1; the C
# one does it about ten times faster, where the YAML library was built with it.
_LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


def load_datafile(path: Path) -> dict[str, Any]:
    """The mapping in one of the package's YAML files, all scalars as text."""
    with path.open("rb") as stream:
        loaded = yaml.load(stream, Loader=_LOADER)
    if not isinstance(loaded, dict):
        raise ValueError(f"{path.name} does not hold a mapping")
    return loaded
