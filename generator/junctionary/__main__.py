"""``python -m junctionary`` is the command ``junctionary``."""

import sys

from junctionary.cli import main

if __name__ == "__main__":
    sys.exit(main())
