"""``python -m junctionary`` is the command ``junctionary``."""

from junctionary.cli import command

if __name__ == "__main__":
    command()
