"""What the search box finds: one entry a record, with its other names and the figures people type."""

from __future__ import annotations

from collections.abc import Sequence

from bayleaf.pages.building.amounts import typed
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import address_of, site_address
from bayleaf.pages.kinds.rules import RuleData
from bayleaf.pages.parts import across
from bayleaf.records import KIND, Book, Record
from bayleaf.search import Entry

MOST = 160  # characters of a summary in the list of results


def entries(book: Book, rules: Sequence[RuleData] = ()) -> list[Entry]:
    """Every record that is not retired, every index page, the pages over many records, and every rule."""
    view = Uses(book)
    found = [_entry(view, record) for kind in KIND for record in view.live(kind)]
    found += [
        Entry(f"All {kind.title.lower()}", f"{kind.name}/index.html", "List", (kind.name,), "", 1)
        for kind in KIND.values()
    ]
    found += [
        Entry(title, site_address(path), "Page", across.WORDS[path], across.REMARKS[path], 3)
        for path, title in across.TITLES.items()
    ]
    found += [
        Entry(
            f"{r['code']} {r['title']}", f"rules/{r['code']}.html", "Rule", (str(r["code"]),), str(r["what"])[:MOST], 1
        )
        for r in rules
    ]
    return found


def _entry(view: Uses, record: Record) -> Entry:
    kind = KIND[record.kind]
    gist = view.plain(record.data.get(kind.gist))
    short = gist if len(gist) <= MOST else gist[: MOST - 1].rsplit(" ", 1)[0] + "…"
    address = site_address(address_of(record))
    return Entry(record.title, address, kind.singular.capitalize(), _words(view, record), short, kind.weight)


def _words(view: Uses, record: Record) -> tuple[str, ...]:
    found = [w for w in record.data.get("also_called", []) if isinstance(w, str)]
    if "code" in record.data:
        found.insert(0, record.data["code"])
    if record.kind == "readings":
        found += _figures(view, record.id)
    return tuple(dict.fromkeys(found))


def _figures(view: Uses, reading: str) -> list[str]:
    """The limits that the systems give for a reading, as they were typed: "36 to 65 psi"."""
    made = []
    for system in view.live("systems"):
        band = system.data.get("bands", {}).get(reading, {})
        sides = [typed(system, ("bands", reading, side)) for side in ("min", "max") if side in band]
        if sides:
            made.append(f"{' to '.join(sides)} {band['unit']}")
    return made
