"""Facts of old cable that were inferred, not seen."""

from junctionary.house.model import House


def is_inferred(house: House, name: str) -> bool:
    """Whether what is recorded of a run is assumed; False for what is no run."""
    run = house.runs.get(name)
    return run is not None and run.evidence is not None and run.evidence.how == "assumed"
