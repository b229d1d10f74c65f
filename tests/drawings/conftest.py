"""The sample sheets serve the drawings too, and the demo house surveyed once."""

import sys
from pathlib import Path

import pytest

from junctionary.cli.opening import open_record
from junctionary.sheets.survey import Survey, survey

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parents[1] / "sheets")]


@pytest.fixture(scope="session")
def demo_survey() -> Survey:
    result = open_record(Path(__file__).parents[2] / "content").result
    assert result is not None
    return survey(result.house, result.network, result.figures, result.judgement, "0123456789abcdef" * 4, {})
