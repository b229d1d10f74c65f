"""The command: the only place that prints, and the only place that decides an exit code."""

import gc
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

from junctionary.cli.arguments import parser

CLEAN, FOUND, UNREADABLE, INTERRUPTED = 0, 1, 2, 130


def command() -> NoReturn:
    """The whole command: runs what the command line asks and ends the process with its exit code."""
    code = main()
    # All that was said is written. To take a house apart again, object by object, takes time for nothing.
    os._exit(code)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one verb and give its exit code.

    0 nothing at or above the asked severity (or the manual was written);
    1 findings; 2 the record or the command line cannot be read, or a rule
    failed. A crash is never a clean house, and never a house with findings:
    it is 2 as well.
    """
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    # What a run makes it keeps to its end: the collector would walk all of it for nothing.
    gc.disable()
    try:
        asked = parser().parse_args(argv)
        code: int = asked.run(asked)
        if sys.stdout is not None:
            sys.stdout.flush()
    except BrokenPipeError:
        # The reader of our output has gone before all was said: that is no clean house.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return UNREADABLE
    except OSError as error:
        print(f"junctionary: {error}; this says nothing about the house", file=sys.stderr)
        return UNREADABLE
    except KeyboardInterrupt:
        print("interrupted; nothing was left half done", file=sys.stderr)
        return INTERRUPTED
    except Exception:
        import traceback

        traceback.print_exc()
        print("junctionary itself failed; this says nothing about the house", file=sys.stderr)
        return UNREADABLE
    finally:
        gc.enable()
    return code
