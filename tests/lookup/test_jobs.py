"""Thirty seconds from question to answer: each job that the manual can answer, from the cover."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from lookup_jobs import JOBS, Job, done

if TYPE_CHECKING:
    from playwright.sync_api import Browser

ANSWERED = [job for job in JOBS if job.shows]
MOST_KEYS, MOST_CLICKS = 9, 2


@pytest.mark.browser
@pytest.mark.parametrize("job", ANSWERED, ids=lambda job: job.asks)
def test_a_job_is_answered_within_a_few_keys_or_clicks(
    browser: "Browser", demo_manual: Path, job: Job
) -> None:
    context = browser.new_context(offline=True)
    said = done(context.new_page(), demo_manual, job).lower()
    context.close()
    assert [each for each in job.shows if each.lower() not in said] == []
    assert job.keys <= MOST_KEYS
    assert len(job.clicks) <= MOST_CLICKS
