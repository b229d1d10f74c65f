"""The command line: verbs and what each may be told."""

import argparse
from importlib import import_module
from pathlib import Path
from typing import Any

from junctionary import __version__
from junctionary.data import themes

STAGES = ("roughed", "made-up", "energised")
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


def _asks(verb: argparse.ArgumentParser) -> None:
    """What the lookups take: the record by name, so that no id can be mistaken for it, and how to print."""
    verb.add_argument(
        "--record", type=Path, metavar="FOLDER", help="the record's folder (default: content/ here)"
    )
    verb.add_argument("--demo", action="store_true", help="take the demo house that comes with the program")
    verb.add_argument(
        "--format", choices=("text", "json"), default="text", help="how to print (default: text)"
    )


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
        "--format", choices=("text", "json", "sarif"), default="text", help="how to print (default: text)"
    )
    check.add_argument(
        "--stage",
        choices=STAGES,
        help="only what is cheap to mend up to that stage: roughed, before the wall closes; made-up, "
        "before energising; energised, before final (default: all)",
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
    publish.add_argument(
        "--theme",
        choices=themes(),
        default="drafting",
        help="how it looks: drafting, or plain, which is large, without colour and told by letters alone "
        "(default: drafting)",
    )
    publish.set_defaults(run=_run("publish"))

    _lookups(verbs)

    explain = verbs.add_parser(
        "explain",
        help="what a check looks at and how to mend what it finds; what a key of the record says",
        description="Explains a check: what it looks at, why it matters, on what authority, how to mend it. "
        "Or a file of the record: every key it may have, with an example. Without a name, lists all checks.",
    )
    explain.add_argument(
        "name",
        nargs="?",
        metavar="NAME",
        help="a check, such as box-overfilled; a file of the record: house, panels, circuits, rooms, "
        "boxes, devices, log, accepted, photos; or a key, such as outline",
    )
    explain.set_defaults(run=_run("explain"))
    return top


def _lookups(verbs: Any) -> None:
    """The three that answer from the conductors: 0 an answer, 2 no such id or no readable record."""
    trace = verbs.add_parser(
        "trace",
        help="the way from a point back to its breaker",
        description="Gives the ways of a device, a half of one, a terminal or a conductor's end back to the "
        "source, joint by joint. Exit code: 0 an answer, 2 nothing has that name, or no readable record.",
    )
    trace.add_argument("id", metavar="ID", help="such as K1.r1, K1.r1.top, K1.r1.brass-top, K1/a1.black")
    _asks(trace)
    trace.set_defaults(run=_run("trace"))

    isolate = verbs.add_parser(
        "isolate",
        help="which breakers must all be off before a box is opened",
        description="Lists all that must be off before a box, the box of a device, or a panel is opened, and "
        "why. Exit code: 0 an answer, 2 nothing has that name, or no readable record.",
    )
    isolate.add_argument("id", metavar="ID", help="a box, a device or a panel, such as K1, K1.r1 or main")
    _asks(isolate)
    isolate.set_defaults(run=_run("isolate"))

    suspect = verbs.add_parser(
        "suspect",
        help="where to look first when something is dead",
        description="From what is dead and what works: what to reset, then the places whose single failure "
        "explains it, likeliest first by common practice. Exit code: 0 an answer, 2 nothing has that name, "
        "or no readable record.",
    )
    for word, what in (("--dead", "what is dead"), ("--live", "what works")):
        suspect.add_argument(
            word,
            nargs="+",
            action="extend",
            default=[],
            metavar="ID",
            help=f"{what}: devices, halves, boxes or loads, such as K1.r1, K1.r1.top, K1, kettle",
        )
    suspect.add_argument(
        "--reading",
        action="append",
        default=[],
        metavar="ID=READING",
        help="what a meter shows there, such as K1.r1=hot-only; --reading list tells them all",
    )
    _asks(suspect)
    suspect.set_defaults(run=_run("suspect"))
