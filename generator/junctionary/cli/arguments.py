"""The command line: verbs and what each may be told."""

import argparse
from importlib import import_module
from pathlib import Path
from typing import Any

from junctionary import __version__

SEVERITIES = ("hazard", "defect", "advice", "never")


def _run(verb: str) -> Any:
    """A verb's work, imported only when it is asked for, so that --help answers at once."""

    def run(asked: argparse.Namespace) -> int:
        code: int = import_module(f"junctionary.cli.{verb}").run(asked)
        return code

    return run


def _record(verb: argparse.ArgumentParser) -> None:
    verb.add_argument(
        "record", nargs="?", type=Path, metavar="RECORD", help="the record's folder (default: content/ here)"
    )
    verb.add_argument("--demo", action="store_true", help="take the demo house that comes with the program")


def parser() -> argparse.ArgumentParser:
    """The whole command line."""
    top = argparse.ArgumentParser(
        prog="junctionary",
        description="Checks a house's electrical record and publishes it as a house manual.",
        epilog="An aid, not a certificate: the local code, the inspector and a licensed electrician decide.",
    )
    top.add_argument("--version", action="version", version=f"junctionary {__version__}")
    verbs = top.add_subparsers(title="verbs", metavar="VERB", required=True)

    check = verbs.add_parser(
        "check",
        help="read and judge a record",
        description="Reads and judges a record and prints what it finds. Exit code: 0 nothing at or above "
        "the asked severity, 1 findings, 2 the record cannot be read.",
    )
    _record(check)
    check.add_argument(
        "--format", choices=("text", "json"), default="text", help="how to print (default: text)"
    )
    check.add_argument(
        "--fail-on",
        choices=SEVERITIES,
        default="hazard",
        help="the severity from which the exit code is 1 (default: hazard)",
    )
    check.set_defaults(run=_run("check"))

    publish = verbs.add_parser(
        "publish",
        help="write the house manual",
        description="Reads and judges a record and writes the house manual. Exit code: 0 the manual is "
        "written, 2 the record cannot be read, and then nothing is touched.",
    )
    _record(publish)
    publish.add_argument(
        "-o",
        "--output",
        type=Path,
        default=Path("house-manual"),
        metavar="FOLDER",
        help="where (default: house-manual/ here)",
    )
    publish.set_defaults(run=_run("publish"))

    explain = verbs.add_parser(
        "explain",
        help="what a check looks at, why, and how to mend what it finds",
        description="Explains a check: what it looks at, why it matters, on what authority, how to mend it. "
        "Without a name, lists them all.",
    )
    explain.add_argument("name", nargs="?", metavar="NAME", help="the check's name, such as box-overfilled")
    explain.set_defaults(run=_run("explain"))
    return top
