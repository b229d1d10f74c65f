"""Thirty seconds from question to answer: each job, from the cover, by the keyboard alone and by touch alone."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from lookup_jobs import JOBS, Job, by_clicks, by_keys, missing

if TYPE_CHECKING:
    from playwright.sync_api import Browser

MOST_KEYS, MOST_CLICKS = 12, 3
MOST_KEYS_TO_A_LINK = 24
"""A link within the page that was found is reached by Tab, one link at a time."""


@pytest.mark.browser
@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.asks)
def test_a_job_is_answered_by_the_keyboard_alone(browser: "Browser", demo_manual: Path, job: Job) -> None:
    context = browser.new_context(offline=True)
    said, keys = by_keys(context.new_page(), demo_manual, job)
    context.close()
    assert missing(said, *job.shows, *job.listed) == []
    assert keys <= (MOST_KEYS_TO_A_LINK if job.tabs else MOST_KEYS)


@pytest.mark.browser
@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.asks)
def test_a_job_is_answered_by_touch_with_nothing_typed(
    browser: "Browser", demo_manual: Path, job: Job
) -> None:
    context = browser.new_context(offline=True, viewport={"width": 390, "height": 844}, has_touch=True)
    said = by_clicks(context.new_page(), demo_manual, job)
    context.close()
    assert missing(said, *job.shows, *job.there) == []
    assert len(job.clicks) <= MOST_CLICKS


@pytest.mark.browser
def test_who_types_and_presses_enter_at_once_gets_there_all_the_same(
    browser: "Browser", demo_manual: Path
) -> None:
    page = browser.new_page()
    page.goto((demo_manual / "index.html").as_uri())
    page.evaluate(
        """() => {
          const field = document.getElementById('find');
          field.focus();
          field.value = 'K2.r1';
          field.dispatchEvent(new Event('input'));
          field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter' }));
        }"""
    )
    page.wait_for_url("**/point/K2.r1.html*")
    page.close()
