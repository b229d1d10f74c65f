"""A picture of one sheet of every kind, on a phone, a tablet and a desk, light and dark; and what is printed, as PDF.

    .venv/bin/python tests/screens.py FOLDER [MANUAL]

writes PNG files to FOLDER, and PDF files of a door card, a room, a circuit and a box on both sizes of
paper; MANUAL is ``house-manual`` here unless named.
"""

import shutil
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

sys.path.insert(0, str(Path(__file__).parent))
from conftest import QUIET
from test_manual import one_of_each_kind

PRINTED = ("card", "room", "circuit", "box")
PAPER = ("Letter", "A4")


def main(folder: Path, manual: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=QUIET)
        for scheme in ("light", "dark"):
            for width in (390, 834, 1440):
                context = browser.new_context(
                    viewport={"width": width, "height": 900}, color_scheme=scheme, device_scale_factor=1
                )
                page = context.new_page()
                for path in one_of_each_kind(manual):
                    page.goto(path.resolve().as_uri())
                    name = "-".join(path.relative_to(manual).with_suffix("").parts)
                    page.screenshot(path=folder / f"{name}-{width}-{scheme}.png", full_page=True)
                context.close()
        page = browser.new_page()
        for path in one_of_each_kind(manual):
            if path.parent.name in PRINTED:
                page.goto(path.resolve().as_uri())
                for paper in PAPER:
                    page.pdf(path=folder / f"{path.parent.name}-{path.stem}-{paper}.pdf", format=paper)
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2] if len(sys.argv) > 2 else "house-manual"))
