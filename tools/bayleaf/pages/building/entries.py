"""What the search box finds: one entry a record, with its other names and the figures people type."""

from __future__ import annotations

from collections.abc import Sequence

from bayleaf.pages.building.amounts import typed
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import KIND_TITLES, address_of, site_address
from bayleaf.pages.kinds import overviews
from bayleaf.pages.kinds.rules import RuleData
from bayleaf.records import KINDS, SINGULAR, Book, Record, listed, mapped
from bayleaf.search import Entry

# Which of two pages that fit a query equally well comes first: what a technician is after before what explains it.
WEIGHTS = {
    "procedures": 8,
    "symptoms": 7,
    "codes": 7,
    "readings": 6,
    "faults": 6,
    "calculators": 5,
    "systems": 5,
    "components": 4,
    "equipment": 3,
    "cautions": 3,
    "terms": 3,
    "vehicles": 2,
    "jobs": 2,
    "fuels": 2,
    "tasks": 2,
}
SUMMARY = {"cautions": "danger", "terms": "means"}
MOST = 160  # characters of a summary in the list of results


def entries(book: Book, rules: Sequence[RuleData] = ()) -> list[Entry]:
    """Every record that is not retired, every index page, the pages over many records, and every rule."""
    view = Uses(book)
    found = [_entry(view, record) for kind in KINDS for record in view.live(kind)]
    found += [
        Entry(f"All {title.lower()}", f"{kind}/index.html", "List", (kind,), "", 1)
        for kind, title in KIND_TITLES.items()
    ]
    found += [
        Entry(title, site_address(path), "Page", overviews.WORDS[path], overviews.REMARKS[path], 3)
        for path, title in overviews.TITLES.items()
    ]
    found += [
        Entry(
            f"{r['code']} {r['title']}", f"rules/{r['code']}.html", "Rule", (str(r["code"]),), str(r["what"])[:MOST], 1
        )
        for r in rules
    ]
    return found


def _entry(view: Uses, record: Record) -> Entry:
    summary = view.plain(record.data.get(SUMMARY.get(record.kind, "summary")))
    short = summary if len(summary) <= MOST else summary[: MOST - 1].rsplit(" ", 1)[0] + "…"
    kind = SINGULAR[record.kind].capitalize()
    return Entry(
        record.title, site_address(address_of(record)), kind, _words(view, record), short, WEIGHTS.get(record.kind, 1)
    )


def _words(view: Uses, record: Record) -> tuple[str, ...]:
    found = [w for w in listed(record.data.get("also_called")) if isinstance(w, str)]
    if "code" in record.data:
        found.insert(0, record.data["code"])
    if record.kind == "readings":
        found += _figures(view, record.id)
    return tuple(dict.fromkeys(found))


def _figures(view: Uses, reading: str) -> list[str]:
    """The limits that the systems give for a reading, as they were typed: "36 to 65 psi"."""
    made = []
    for system in view.live("systems"):
        band = mapped(mapped(system.data.get("bands")).get(reading))
        sides = [typed(system, ("bands", reading, side)) for side in ("min", "max") if side in band]
        if sides:
            made.append(f"{' to '.join(sides)} {band['unit']}")
    return made
