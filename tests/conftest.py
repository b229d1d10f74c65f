"""What several tests share: a real browser, and the demo house published once."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser

ROOT = Path(__file__).parents[1]
QUIET = [
    "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip


def no_browser(why: str) -> None:
    """A browser test is skipped where there is no Chromium, and fails where one is required."""
    if os.environ.get("JUNCTIONARY_BROWSER") == "required":
        pytest.fail(why)
    pytest.skip(why)


@pytest.fixture(scope="session")
def browser() -> "Iterator[Browser]":
    program = shutil.which("chromium") or shutil.which("chromium-browser")
    if program is None:
        no_browser("no Chromium on this machine")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        no_browser("playwright is not installed")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=program, args=QUIET)
        yield started
        started.close()


@pytest.fixture(scope="session")
def demo_manual(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo house, published by the command as a user would."""
    folder = tmp_path_factory.mktemp("published") / "house-manual"
    done = subprocess.run(
        [sys.executable, "-m", "junctionary", "publish", str(ROOT / "content"), "-o", str(folder)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return folder
