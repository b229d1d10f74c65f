"""``junctionary publish``: writes the house manual, or touches nothing."""

import sys
from argparse import Namespace

from junctionary.cli.opening import open_record, record_folder
from junctionary.cli.saying import counted, problem_lines, say, tally
from junctionary.publish.folder import NotAManual, swap_in
from junctionary.publish.manual import manual
from junctionary.publish.pictures import bare_pictures


def run(asked: Namespace) -> int:
    """Exit code 0 once the manual is written, 2 when it is not."""
    opened = open_record(record_folder(asked))
    for problem in opened.problems:
        for line in problem_lines(opened.folder, opened.files, problem):
            print(line, file=sys.stderr)
    if opened.result is None:
        stopping = sum(problem.stops for problem in opened.problems)
        told = f"The record cannot be read: {counted(stopping, 'problem')}. Nothing was written."
        print(told, file=sys.stderr)
        return 2
    result = opened.result
    pictures, refused = bare_pictures(opened.files, result.house.photos)
    for problem in refused:
        for line in problem_lines(opened.folder, opened.files, problem):
            print(line, file=sys.stderr)
    pages = manual(
        result.house, result.network, result.figures, result.judgement, opened.files, asked.theme, pictures
    )
    try:
        swap_in(pages, asked.output)
    except NotAManual as error:
        print(f"{asked.output}: {error}", file=sys.stderr)
        return 2
    except OSError as error:
        told = f"{asked.output}: cannot be written: {error.strerror or error}. Nothing was changed."
        print(told, file=sys.stderr)
        return 2
    counts = tally(result.judgement.findings)
    sheets = sum(path.endswith(".html") for path in pages)
    say([f"{result.house.name}: {sheets} sheets; {counts}.", f"Open {asked.output / 'index.html'}"])
    return 0
