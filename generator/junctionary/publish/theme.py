"""A theme: a folder of templates and a style sheet, which may extend another theme."""

from dataclasses import dataclass
from pathlib import Path

import jinja2
from markupsafe import Markup

from junctionary.data import data_dir
from junctionary.drawings.conductors import colour_class
from junctionary.drawings.ink import Drawing, svg
from junctionary.drawings.symbols import severity_mark
from junctionary.sheets import caution
from junctionary.sheets.entries import SEVERITY_MEANS, Severity
from junctionary.sheets.titleblock import NOT_A_CERTIFICATE


class NoSuchTheme(LookupError):  # noqa: N818 - it says what is wrong
    """A theme that has no folder."""


@dataclass(frozen=True, slots=True)
class Theme:
    """Templates by name, and the files copied beside the pages."""

    environment: jinja2.Environment
    assets: tuple[tuple[str, bytes], ...]


def theme(name: str = "drafting") -> Theme:
    """The theme of that name, over what it extends; raises NoSuchTheme."""
    folders = _chain(name)
    environment = jinja2.Environment(
        loader=_loader(folders),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    environment.globals.update(
        steps=caution.STEPS,
        steps_elsewhere=caution.STEPS_ELSEWHERE,
        before_any=caution.BEFORE_ANY,
        cautions=caution.CAUTIONS,
        unknown_words=caution.UNKNOWN,
        severity_means=SEVERITY_MEANS,
        not_a_certificate=NOT_A_CERTIFICATE,
        severity_shape=severity_shape,
        colour_class=colour_class,
    )
    assets: dict[str, bytes] = {}
    for folder in reversed(folders):
        for file in sorted((folder / "assets").glob("*")):
            assets[f"assets/{file.name}"] = file.read_bytes()
    return Theme(environment, tuple(sorted(assets.items())))


def severity_shape(severity: Severity) -> Markup:
    """The mark of a severity for running text; its word always stands beside it."""
    shape = Drawing("", 18, 18, "", "", severity_mark(severity, 9, 9))
    inner = svg(shape, lambda _: None)
    paths = inner[inner.index("<path") :]
    return Markup('<svg class="shape" viewBox="0 0 18 18" width="16" height="16" aria-hidden="true">') + paths


def _loader(folders: list[Path]) -> jinja2.BaseLoader:
    """A template by its plain name is the nearest; ``drafting/base.html`` is that theme's own."""
    own = {folder.name: jinja2.FileSystemLoader(folder / "templates") for folder in folders}
    return jinja2.ChoiceLoader([*own.values(), jinja2.PrefixLoader(own)])


def _chain(name: str) -> list[Path]:
    folders: list[Path] = []
    next_name: str | None = name
    while next_name is not None:
        folder = data_dir("themes") / next_name
        if not (folder / "templates").is_dir() or folder in folders:
            raise NoSuchTheme(f"there is no theme called {next_name!r} in {data_dir('themes')}")
        folders.append(folder)
        extends = folder / "extends"
        next_name = extends.read_text("utf-8").strip() if extends.is_file() else None
    return folders
