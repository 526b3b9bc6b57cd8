"""`bayleaf new KIND ID`: a commented record to fill in, on standard output."""

from __future__ import annotations

import argparse
import json
import re
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.diagnosis.car import layout_of
from bayleaf.diagnosis.faults.suggest import MECHANISMS, Suggestion, suggest
from bayleaf.finding import CouldNotRun
from bayleaf.nearest import nearest
from bayleaf.records import RECORD_KINDS, Book, load
from bayleaf.records.book import ID

PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+)*\Z")  # text that YAML reads as text without quotes
WORDS_OF_YAML = {"true", "false", "null", "yes", "no", "on", "off", "y", "n"}
WIDEST = 118
USUAL = {"readings": {"at"}}  # fields that the shape leaves free and a rule asks of nearly every record


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
    if book.get(args.id) is not None:
        raise CouldNotRun(f"the id {args.id} is already used by {book.get(args.id).file}")
    drafted = _drafted(book, args)
    print("\n".join(template(root / "schemas", args.kind, drafted)))
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
    found = suggest(book, layout_of(book), args.part, args.mechanism)
    return {"part": [f"part: {args.part}"], "stages": stage_lines(args.part, args.mechanism, found)}


def stage_lines(part: str, mechanism: str, suggestions: list[Suggestion]) -> list[str]:
    """The field `stages` with one stage: every suggested reading, and as comments those that only a person can judge."""
    if not suggestions:
        return [
            f"# {part} lies on no path with readings: name the systems yourself.",
            "stages:",
            "  first-stage: {some-reading: normal}",
        ]
    said = [
        f"# What a part that {mechanism} suggests. Correct every line; add stages with like and their differences.",
        "stages:",
        "  first-stage:",
    ]
    for one in suggestions:
        answers = [_yaml(answer) for answer in one.answers]
        value = answers[0] if len(answers) == 1 else f"[{', '.join(answers)}]"
        said.append(
            f"    {one.reading}: {value}  # {one.where}"
            if answers
            else f"    # {one.reading}: any, unless you know  # {one.where}"
        )
    return said


def template(schemas: Path, kind: str, drafted: dict[str, list[str]]) -> list[str]:
    """The lines of a record: each field with what it is for; a field that may be left out is a comment."""
    schema = json.loads((schemas / f"{kind}.schema.json").read_text(encoding="utf-8"))
    needed = {*schema.get("required", []), *USUAL.get(kind, ())}
    for choice in ("oneOf", "anyOf"):  # of fields that stand for one another, the first
        needed |= set(schema.get(choice, [{}])[0].get("required", []))
    said = [f"# yaml-language-server: $schema=../../schemas/{kind}.schema.json"]
    for name, field in schema["properties"].items():
        said += ["", *_comment(field["description"])]
        if name in drafted:
            said += drafted[name]
        else:
            lines = [f"{name}: {_yaml(field['examples'][0])}"]
            said += lines if name in needed else [f"# {line}" for line in lines]
    return said


def _comment(text: str) -> list[str]:
    lines, line = [], "#"
    for word in text.split():
        if len(line) + len(word) + 1 > WIDEST:
            lines, line = [*lines, line], "#"
        line += f" {word}"
    return [*lines, line]


def _yaml(value: object) -> str:
    """A value on one line, in a form that the strict reader takes for what it is."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_yaml(key)}: {_yaml(item)}" for key, item in value.items()) + "}"
    if isinstance(value, list):
        return f"[{', '.join(map(_yaml, value))}]"
    if isinstance(value, str) and PLAIN.match(value) and value.lower() not in WORDS_OF_YAML:
        return value
    return json.dumps(value, ensure_ascii=False)


def _near(word: str, known) -> str:
    near = nearest(word, known)
    return f"did you mean {near}?" if near else f"there are {', '.join(list(known)[:12])}"
