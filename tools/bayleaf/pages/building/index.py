"""Pages that list records: tiles, groups of them, and the pages of the vocabulary with an anchor for each entry."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bayleaf.pages.building.blocks import blocks, box, folds, heading, para, section, tiles
from bayleaf.pages.building.contents import bar
from bayleaf.pages.building.frame import TITLES, crumbs, standing
from bayleaf.pages.building.inline import EMPTY, joined, small
from bayleaf.pages.building.page import page
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import address_of, name_of
from bayleaf.records import Record

MOST_OPEN = 24  # records of an index that stand open: about four screens of a phone
MOST_ROWS = 12  # rows of a table that do: a phone makes a block of each
NOTHING = "There are none in this book yet."


def cards(view: Uses, records: Sequence[Record], field: str = "summary") -> Markup:
    """Records as big targets, each with a line about it."""
    return tiles((address_of(r), name_of(r), view.plain(r.data.get(field))) for r in records)


def grouped(view: Uses, groups: Iterable[tuple[str, object, Sequence[Record]]], field: str = "summary") -> Markup:
    """Records under headings: (anchor, heading, records). Where they are many, each group opens when it is touched."""
    full = [(anchor, title, records) for anchor, title, records in groups if records]
    if len(full) < 2 or sum(len(records) for *_rest, records in full) <= MOST_OPEN:
        return blocks(*(section(anchor, title, cards(view, records, field)) for anchor, title, records in full))
    return folds((anchor, title, str(len(records)), cards(view, records, field)) for anchor, title, records in full)


def long(count: int, anchor: str, what: str, content: Markup) -> Markup:
    """Rows or tiles that open together when they are touched, where they are many beside the rest of a page."""
    return folds([(anchor, f"{count} {what}", "", content)]) if count > MOST_ROWS else content


def index_page(kind: str, about: object, *parts: object, top: object = EMPTY) -> str:
    """The index of a kind; says so where there is nothing in it."""
    return page(
        f"{kind}/index.md",
        TITLES[kind],
        crumbs(kind, index=True),
        heading(1, "top", TITLES[kind]),
        para(about, css="bl-lead"),
        top,
        blocks(*parts) or para(NOTHING),
    )


def entry_page(view: Uses, kind: str, about: object, rows: Iterable[tuple[Record, object]]) -> str:
    """One page for all entries of a vocabulary, each under its own anchor."""
    rows = list(rows)
    return index_page(
        kind,
        about,
        *(_entry(view, record, content) for record, content in rows),
        top=bar(f"{kind}/index.md", _places([record for record, _content in rows])) if len(rows) > 3 else EMPTY,
    )


def _entry(view: Uses, record: Record, content: object) -> Markup:
    names = record.data.get("also_called", [])
    return box(
        "bl-entry",
        heading(2, record.id, record.title),
        standing(view, record),
        para(small("Also called: ", joined(names))) if names else EMPTY,
        content,
    )


def _places(entries: list[Record]) -> list[tuple[str, str]]:
    """(anchor, title) of each entry, or where they are many of the first under each letter."""
    if len(entries) <= MOST_OPEN:
        return [(record.id, record.title) for record in entries]
    first = {record.title[0].upper(): record.id for record in reversed(entries)}
    return [(first[letter], letter) for letter in dict.fromkeys(record.title[0].upper() for record in entries)]
