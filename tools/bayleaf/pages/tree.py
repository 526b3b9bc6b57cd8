"""Every page of the tree, by its path."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from importlib import import_module
from importlib.resources import files
from typing import Protocol, cast

from bayleaf.formulas.output.javascript import script
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import address_of
from bayleaf.pages.kinds import fields, home, overviews, vocabulary
from bayleaf.pages.kinds import notices as notice_page
from bayleaf.pages.kinds import rules as rule_pages
from bayleaf.pages.kinds.rules import RuleData
from bayleaf.records import KIND, KINDS, Book, Record


class Kind(Protocol):
    """What a module in `kinds` that bears the name of a kind of record gives; a kind without pages only its index."""

    def page(self, view: Uses, record: Record) -> str:
        """The page of one record."""

    def index(self, view: Uses) -> str:
        """The page that lists all of them."""


def pages(
    book: Book, rules: Sequence[RuleData] = (), schemas: Mapping[str, Mapping] | None = None
) -> dict[str, str | bytes]:
    """Path to content of every file of the tree.

    `rules` are the checker's rules as plain data, `schemas` is kind to schema with `common` among them. Records that
    are not sound have no page; a build does not get here while there are errors.
    """
    view = Uses(book)
    schemas = schemas or {}
    counts = {kind: len(view.live(kind)) for kind in KINDS}
    tree: dict[str, str | bytes] = {
        "index.md": home.home(view, counts),
        "more/index.md": home.more(counts, len(rules), sum(kind in schemas for kind in KINDS)),
        overviews.CLASS: overviews.for_class(view),
        overviews.INSTRUMENTS: overviews.instruments(view),
    }
    for kind in KINDS:
        tree |= _kind_pages(view, kind)
    tree |= rule_pages.rule_pages(rules)
    tree |= fields.field_pages(schemas)
    tree |= notice_page.notice_pages()
    return tree | _assets(view)


def _kind_pages(view: Uses, kind: str) -> dict[str, str]:
    """The index of a kind, and a page for each of its records where it has them."""
    if kind in vocabulary.PAGES:
        return {f"{kind}/index.md": vocabulary.PAGES[kind](view)}
    module = cast("Kind", import_module(f"bayleaf.pages.kinds.{kind}"))
    records = view.all(kind) if KIND[kind].paged else []
    return {f"{kind}/index.md": module.index(view)} | {address_of(r): module.page(view, r) for r in records}


def _assets(view: Uses) -> dict[str, str | bytes]:
    folder = files("bayleaf.pages").joinpath("assets")
    style, ours = (folder.joinpath(name).read_text(encoding="utf-8") for name in ("bayleaf.css", "bayleaf.js"))
    return {"assets/bayleaf.css": style, "assets/bayleaf.js": script(view.calculators) + ours}
