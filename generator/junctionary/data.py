"""Where the files that come with the program lie: the themes and the demo record."""

from pathlib import Path

HERE = Path(__file__).parent


def data_dir(name: str) -> Path:
    """The folder ``themes`` or ``content``: in the installed package, or at the top of a checkout."""
    packed = HERE / "_data" / name
    return packed if packed.is_dir() else HERE.parents[1] / name


def themes() -> list[str]:
    """The names of the themes there are: a folder each."""
    return sorted(each.name for each in data_dir("themes").iterdir() if (each / "templates").is_dir())
