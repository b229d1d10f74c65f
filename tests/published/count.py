"""How many published examples are held, by the kind of figure.

.venv/bin/python tests/published/count.py
"""

from collections import Counter
from pathlib import Path

import yaml


def main() -> None:
    kinds: Counter[str] = Counter()
    for path in sorted(Path(__file__).parent.glob("*.yaml")):
        data = yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)
        kinds.update(each["formula"] for each in data["examples"])
    width = max(map(len, kinds))
    for kind, count in sorted(kinds.items()):
        print(f"{kind:<{width}}  {count:>3}")
    print(f"{'all':<{width}}  {kinds.total():>3}")


if __name__ == "__main__":
    main()
