"""From the records of a book to its site, or only to the pages: check, lay out, build. The command only prints."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from bayleaf.checks import all_rules, check
from bayleaf.finding import Finding
from bayleaf.pages import entries, pages
from bayleaf.pages.kinds.rules import RuleData
from bayleaf.records import Book, load
from bayleaf.records.license import license_of
from bayleaf.report import text
from bayleaf.report.source import line_reader
from bayleaf.site.build import BuildReport, build_site
from bayleaf.site.errors import SiteError
from bayleaf.site.progress import SILENT, Progress
from bayleaf.site.swap import staged

SETTINGS = "mkdocs.yml"


@dataclass(frozen=True)
class Source:
    """What a site is made from: the root of the book, a shop's own records over it, and whether warnings are errors."""

    root: Path
    overlays: Sequence[Path] = ()
    strict: bool = False

    @property
    def watched(self) -> tuple[Path, ...]:
        """What a rebuild reads; of an overlay only its records, since the site may lie beside them."""
        return (
            self.root / "kb",
            self.root / "schemas",
            self.root / SETTINGS,
            *(overlay / "kb" for overlay in self.overlays),
        )


class RefusedError(SiteError):
    """The book has errors; the message holds them as text."""

    def __init__(self, findings: Iterable[Finding], root: Path) -> None:
        findings = list(findings)
        super().__init__(f"{text.listing(findings, line_reader(root), False)}\n{text.tally(findings)}")


def publish(source: Source, out: Path, progress: Progress = SILENT) -> BuildReport:
    """Check the book and build its site into `out`. Raises RefusedError, or what `build_site` raises; the old site stays."""
    with progress.shown():
        book = checked_book(source, progress)
        progress.stage("writing the pages")
        tree = page_tree(book, source.root)
        return build_site(tree, entries(book, rule_data()), out, source.root / SETTINGS, progress)


def write_tree(source: Source, folder: Path) -> int:
    """Check the book and write its pages into `folder`, whole or not at all; gives the number of files."""
    tree = page_tree(checked_book(source), source.root)
    with staged(folder, "pages") as new:
        for path, content in tree.items():
            (new / path).parent.mkdir(parents=True, exist_ok=True)
            (new / path).write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
    return len(tree)


def checked_book(source: Source, progress: Progress = SILENT) -> Book:
    """The book. Raises RefusedError with every error, with `strict` every warning too."""
    progress.stage("reading the records")
    book = load(source.root, list(source.overlays))
    progress.stage("checking them")
    stopping = ("error", "warning") if source.strict else ("error",)
    findings = [finding for finding in check(book) if finding.level in stopping]
    if findings:
        raise RefusedError(findings, book.root)
    return book


def page_tree(book: Book, root: Path) -> dict[str, str | bytes]:
    """Every file that the site engine reads, from a book and the schemas and the license beside it."""
    schemas = {
        path.name.removesuffix(".schema.json"): json.loads(path.read_text(encoding="utf-8"))
        for path in sorted((root / "schemas").glob("*.schema.json"))
    }
    return pages(book, rule_data(), schemas) | license_of(root)


def rule_data() -> list[RuleData]:
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
