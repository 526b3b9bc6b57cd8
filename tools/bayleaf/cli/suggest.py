"""`bayleaf suggest READING`: what each fault may show of a reading, as blanks with a guess beside them."""

from __future__ import annotations

import argparse

from bayleaf.cli import book_options, root_of
from bayleaf.diagnosis.faults.draft import Draft, drafts
from bayleaf.finding import CouldNotRun
from bayleaf.nearest import nearest
from bayleaf.records import load


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("reading", metavar="READING", help="the id of a reading")


def run(args: argparse.Namespace) -> int:
    """Print a blank for every stage that is reached and silent; 0, or 2 with one line when there is no such reading."""
    book = load(root_of(args), args.overlay)
    if args.reading not in book.of("readings"):
        near = nearest(args.reading, book.of("readings"))
        raise CouldNotRun(f"there is no reading {args.reading!r}" + (f"; did you mean {near}?" if near else ""))
    result = drafts(book, args.reading)
    print(
        f"# {args.reading}: {len(result)} stages are reached and do not speak of it. A blank is no answer: write what a car"
    )
    print("# shows, a list where it may be either, or delete the line where anything may show.")
    for draft in result:
        print("\n".join(_lines(args.reading, draft)))
    return 0


def _lines(reading: str, draft: Draft) -> list[str]:
    guess = (
        f"{' or '.join(draft.answers)}? as {draft.like} there" if draft.answers else "no reading near it is spoken of"
    )
    way = f"; reached by {' → '.join(draft.way)}" if len(draft.way) > 1 else ""
    return [f"# {draft.fault.file}, stage {draft.stage}{way}", f"    {reading}:  # {guess}"]
