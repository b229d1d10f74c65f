"""``python -m junctionary`` is the command ``junctionary``."""

from junctionary.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
