"""`bayleaf new KIND ID`: a commented record to fill in, on standard output."""

from __future__ import annotations

import argparse
from collections.abc import Iterable

from bayleaf.cli import book_options, root_of
from bayleaf.diagnosis.car import layout_of
from bayleaf.diagnosis.faults.suggest import MECHANISMS, Suggestion, suggest
from bayleaf.finding import CouldNotRun
from bayleaf.nearest import nearest
from bayleaf.records import RECORD_KINDS, Book, load
from bayleaf.records.book import ID
from bayleaf.records.shape import Shapes
from bayleaf.records.template import one_line, template


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("kind", metavar="KIND", help=f"one of {', '.join(RECORD_KINDS)}")
    parser.add_argument("id", metavar="ID", help="the id of the new record, which is its file name")
    parser.add_argument("--part", metavar="P", help="faults: the component that fails")
    parser.add_argument("--mechanism", metavar="M", help=f"faults: how it fails, one of {', '.join(MECHANISMS)}")


def run(args: argparse.Namespace) -> int:
    """Print the record; 0, or 2 with one line when the kind, the id, the part or the mechanism cannot be."""
    if args.kind not in RECORD_KINDS:
        raise CouldNotRun(f"there is no kind of record {args.kind!r}; {_near(args.kind, RECORD_KINDS)}")
    if not ID.match(args.id):
        raise CouldNotRun(f"{args.id!r} is no id; use lower-case letters, digits and single hyphens")
    root = root_of(args)
    book = load(root, args.overlay)
    held = book.get(args.id)
    if held is not None:
        raise CouldNotRun(f"the id {args.id} is already used by {held.file}")
    drafted = _drafted(book, args)
    print("\n".join(template(Shapes(root / "schemas").schema(args.kind), args.kind, drafted)))
    return 0


def _drafted(book: Book, args: argparse.Namespace) -> dict[str, list[str]]:
    """Lines that replace a field's example: those of a fault whose part and mechanism are named."""
    if args.part is None and args.mechanism is None:
        return {}
    if args.kind != "faults" or args.part is None or args.mechanism is None:
        raise CouldNotRun("--part and --mechanism go together, and only with faults")
    if args.part not in book.of("components"):
        raise CouldNotRun(f"there is no component {args.part!r}; {_near(args.part, book.of('components'))}")
    if args.mechanism not in MECHANISMS:
        raise CouldNotRun(f"there is no mechanism {args.mechanism!r}; {_near(args.mechanism, MECHANISMS)}")
    result = suggest(book, layout_of(book), args.part, args.mechanism)
    return {"part": [f"part: {args.part}"], "stages": stage_lines(args.part, args.mechanism, result)}


def stage_lines(part: str, mechanism: str, suggestions: list[Suggestion]) -> list[str]:
    """The field `stages` with one stage: every reading that is reached, each a blank with the suggestion beside it, which check refuses."""
    if not suggestions:
        return [
            f"# {part} lies on no path with readings: name the systems yourself.",
            "stages:",
            "  first-stage: {some-reading: normal}",
        ]
    said = [
        f"# What a part that {mechanism} suggests stands beside a blank. Answer each, or delete the line where anything may show.",
        "# What nothing reaches is healthy and is not listed. Add stages with like and their differences.",
        "stages:",
        "  first-stage:",
    ]
    for one in suggestions:
        answers = [one_line(answer) for answer in one.answers]
        value = answers[0] if len(answers) == 1 else f"[{', '.join(answers)}]"
        guess = f"{value}? " if answers else "only a person can say; "
        said.append(f"    {one.reading}:  # {guess}{one.where}")
    return said


def _near(word: str, known: Iterable[str]) -> str:
    near = nearest(word, known)
    return f"did you mean {near}?" if near else f"there are {', '.join(list(known)[:12])}"
