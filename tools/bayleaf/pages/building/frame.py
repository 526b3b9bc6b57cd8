"""What every page has: the way back, one title, the summary, its standing, and links to all that speak of it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bayleaf.pages.building.amounts import INVENTED
from bayleaf.pages.building.jumps import bar, jumps
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import KIND_TITLES, address_of, kind_order, name_of
from bayleaf.pages.building.write import (
    EMPTY,
    blocks,
    box,
    few,
    folds,
    heading,
    joined,
    page,
    para,
    section,
    small,
    strong,
    table,
    tiles,
    to,
    words,
)
from bayleaf.records import Record, listed

# Kinds whose index is not in the navigation: their way back goes over the page that lists them.
OVER_MORE = (
    "vehicles",
    "jobs",
    "sources",
    "tasks",
    "fuels",
    "quantities",
    "conditions",
    "variables",
    "effects",
    "histories",
    "states",
    "acts",
    "hazards",
    "rules",
    "fields",
)
PAGES_OVER_MORE = ("class", "instruments")  # single pages beside the one that lists them
NAMES = KIND_TITLES | {"rules": "Rules", "fields": "Field reference"}
MOST_OPEN = 24  # records of an index that stand open: about four screens of a phone
MOST_ROWS = 12  # rows of a table that do: a phone makes a block of each
NOTHING = "There are none in this book yet."


def crumbs(kind: str = "") -> Markup:
    """Links back to the home page and to the index of a kind."""
    way = [to("index.md", "Home")]
    if kind in OVER_MORE or kind in PAGES_OVER_MORE:
        way.append(to("more/index.md", "More"))
    if kind and kind not in PAGES_OVER_MORE:
        way.append(to(f"{kind}/index.md", NAMES[kind]))
    return Markup(f'<nav class="bl-crumbs" aria-label="Way back" markdown="span">{joined(way, " › ")}</nav>')


def finish(view: Uses, record: Record, parts: Iterable[object], top: object = EMPTY, jump: bool = True) -> str:
    """The page of a record: title, summary, standing, the way to its sections, then `parts`, then what else speaks of it."""
    data, parts = record.data, [text(part) for part in parts]
    also = listed(data.get("also_called"))
    head = blocks(
        crumbs(record.kind),
        heading(1, "top", name_of(record)),
        _standing(view, record),
        para(view.prose(data.get("summary")), css="bl-lead"),
        para("Also called: ", joined(also), css="bl-also") if also else EMPTY,
    )
    related = _related(view, record, blocks(head, top, *parts))
    way = jumps(address_of(record), [*parts, related]) if jump else EMPTY
    return page(address_of(record), name_of(record), head, way, top, *parts, related, _draft(data))


def _draft(data: dict) -> Markup:
    return (
        para("Draft: no maintainer has reviewed this page yet.", css="bl-also")
        if data.get("status") == "draft"
        else EMPTY
    )


def _standing(view: Uses, record: Record) -> Markup:
    status, said = record.data.get("status"), []
    if record.data.get("invented") is True:
        said.append(
            box(
                "bl-invented",
                para(
                    strong(INVENTED),
                    ". No such car, person or workshop exists, and no figure on this page is anybody's.",
                ),
            )
        )
    if status == "retired":
        other = record.data.get("replaced_by")
        said.append(
            box(
                "bl-retired",
                para(strong("Retired."), " Do not use it", words(": use ", view.link(other)) if other else "", "."),
            )
        )
    return blocks(*said)


def _related(view: Uses, record: Record, body: str) -> Markup:
    """Everything that speaks of this record and is not linked above."""
    others = [r for r in view.referrers.get(record.id, []) if r.id != record.id and f"](@/{address_of(r)})" not in body]
    rows = []
    for kind in dict.fromkeys(r.kind for r in sorted(others, key=kind_order)):
        rows.append(
            (KIND_TITLES[kind], few([view.link(r.id) for r in sorted(others, key=kind_order) if r.kind == kind]))
        )
    return box("bl-related", section("see-also", "Also spoken of in", table(("Kind", "Pages"), rows)))


def cards(view: Uses, records: Sequence[Record], field: str = "summary") -> Markup:
    """Records as big targets, each with a line about it."""
    return tiles((address_of(r), name_of(r), view.plain(r.data.get(field))) for r in records)


def grouped(view: Uses, groups: Iterable[tuple[str, object, Sequence[Record]]], field: str = "summary") -> Markup:
    """Records under headings: (anchor, heading, records). Where they are many, each group opens when it is touched."""
    full = [(anchor, title, records) for anchor, title, records in groups if records]
    if len(full) < 2 or sum(len(records) for *_rest, records in full) <= MOST_OPEN:
        return blocks(*(section(anchor, title, cards(view, records, field)) for anchor, title, records in full))
    return folds((anchor, title, str(len(records)), cards(view, records, field)) for anchor, title, records in full)


def long(count: int, anchor: str, what: str, made: Markup) -> Markup:
    """Rows or tiles that open together when they are touched, where they are many beside the rest of a page."""
    return folds([(anchor, f"{count} {what}", "", made)]) if count > MOST_ROWS else made


def index_page(kind: str, about: object, *parts: object, top: object = EMPTY) -> str:
    """The index of a kind; says so where there is nothing in it."""
    name = NAMES[kind]
    inner = blocks(*parts)
    return page(
        f"{kind}/index.md",
        name,
        blocks(
            _crumbs_of_index(kind), heading(1, "top", name), para(about, css="bl-lead"), top, inner or para(NOTHING)
        ),
    )


def _crumbs_of_index(kind: str) -> Markup:
    way = [to("index.md", "Home"), to("more/index.md", "More")] if kind in OVER_MORE else [to("index.md", "Home")]
    return Markup(f'<nav class="bl-crumbs" aria-label="Way back" markdown="span">{joined(way, " › ")}</nav>')


def entry_page(view: Uses, kind: str, about: object, rows: Iterable[tuple[Record, object]]) -> str:
    """One page for all entries of a vocabulary, each under its own anchor."""
    rows, parts = list(rows), []
    for record, inner in rows:
        also = listed(record.data.get("also_called"))
        body = blocks(para(small("Also called: ", joined(also))) if also else EMPTY, inner)
        parts.append(box("bl-entry", blocks(heading(2, record.id, record.title), _standing(view, record), body)))
    return index_page(
        kind,
        about,
        *parts,
        top=bar(f"{kind}/index.md", _places([record for record, _inner in rows])) if len(rows) > 3 else EMPTY,
    )


def _places(entries: list[Record]) -> list[tuple[str, str]]:
    """(anchor, title) of each entry, or where they are many of the first under each letter."""
    if len(entries) <= MOST_OPEN:
        return [(record.id, record.title) for record in entries]
    first = {record.title[0].upper(): record.id for record in reversed(entries)}
    return [(first[letter], letter) for letter in dict.fromkeys(record.title[0].upper() for record in entries)]


def shown(value: object) -> Markup:
    """An answer or another word of a closed list as people read it: hyphens become spaces."""
    return text(str(value).replace("-", " "))
