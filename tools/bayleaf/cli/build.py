"""`bayleaf build`: check, write the pages, run the site engine, verify, and swap the site in."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterable
from pathlib import Path

from bayleaf.checks import all_rules, check
from bayleaf.cli import book_options, root_of
from bayleaf.finding import CouldNotRun, Finding
from bayleaf.pages import entries, pages
from bayleaf.records import Book, load
from bayleaf.report import text
from bayleaf.report.source import line_reader
from bayleaf.site import BuildReport, SealError, SiteError, build_site

SETTINGS = "mkdocs.yml"


class Refused(SiteError):
    """The book has errors; the message holds them as text."""


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("--out", type=Path, metavar="DIR", help="the folder of the site (default: site beside kb)")
    parser.add_argument("--strict", action="store_true", help="warnings count as errors")


def run(args: argparse.Namespace) -> int:
    """Build; 0, or 1 with the errors, the old site left as it was."""
    out = out_of(args)
    try:
        print(say(build(args, out)))
    except (Refused, SealError) as err:
        print(f"{err}\nnot built; {out} is as it was")
        return 1
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ")) from None
    return 0


def out_of(args: argparse.Namespace) -> Path:
    """The folder of the site, as given or beside kb."""
    return args.out or root_of(args) / "site"


def build(args: argparse.Namespace, out: Path) -> BuildReport:
    """Check and build the book of the arguments. Raises Refused with the findings, or what the site stage raises."""
    root = root_of(args)
    book = proved(args)
    return build_site(tree(book, root), entries(book, rule_data()), out, root / SETTINGS)


def proved(args: argparse.Namespace) -> Book:
    """The book, checked. Raises Refused with every error (with --strict every warning too) as text."""
    book = load(root_of(args), args.overlay)
    found = [f for f in check(book) if f.level == "error" or (args.strict and f.level == "warning")]
    if found:
        raise Refused(_told(found, book))
    return book


def _told(found: Iterable[Finding], book: Book) -> str:
    found = list(found)
    return f"{text.listing(found, line_reader(book.root), False)}\n{text.tally(found)}"


def tree(book: Book, root: Path) -> dict[str, str | bytes]:
    """Every file that the site engine reads, from a book and the schemas beside it."""
    schemas = {
        path.name.removesuffix(".schema.json"): json.loads(path.read_text(encoding="utf-8"))
        for path in sorted((root / "schemas").glob("*.schema.json"))
    }
    return pages(book, rule_data(), schemas)


def rule_data() -> list[dict]:
    """The rules as plain data, as the pages take them."""
    return [
        {
            "code": rule.code,
            "level": rule.level,
            "title": rule.title,
            "what": rule.what,
            "why": rule.why,
            "mend": rule.mend,
            "excusable": rule.excusable,
            "file": rule.example.file,
            "good": rule.example.good,
            "bad": rule.example.bad,
        }
        for rule in all_rules()
    ]


def say(report: BuildReport) -> str:
    """One line about a build, and the file to open."""
    return f"{report.pages} pages, {report.entries} entries to search, {report.bytes / 1e6:.1f} MB: open {report.out / 'index.html'}"
