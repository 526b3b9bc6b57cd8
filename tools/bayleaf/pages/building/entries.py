"""What the search box finds: one entry a record, with its other names and the figures people type."""

from __future__ import annotations

from collections.abc import Sequence

from bayleaf.pages.building.amounts import typed
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import address_of, site_address
from bayleaf.pages.kinds import overviews
from bayleaf.pages.kinds.rules import RuleData
from bayleaf.records import KIND, Book, Record
from bayleaf.search import Entry

MOST = 160  # characters of a summary in the list of results


def entries(book: Book, rules: Sequence[RuleData] = ()) -> list[Entry]:
    """Every record that is not retired, every index page, the pages over many records, and every rule."""
    view = Uses(book)
    return [
        *(_entry(view, record) for kind in KIND for record in view.live(kind)),
        *(
            Entry(f"All {kind.title.lower()}", f"{kind.name}/index.html", "List", (kind.name,), "", 1)
            for kind in KIND.values()
        ),
        *(
            Entry(title, site_address(path), "Page", overviews.SYNONYMS[path], overviews.REMARKS[path], 3)
            for path, title in overviews.TITLES.items()
        ),
        *(_rule_entry(rule) for rule in rules),
    ]


def _entry(view: Uses, record: Record) -> Entry:
    kind = KIND[record.kind]
    gist = view.plain(record.data.get(kind.gist))
    short = gist if len(gist) <= MOST else gist[: MOST - 1].rsplit(" ", 1)[0] + "…"
    address = site_address(address_of(record))
    return Entry(record.title, address, kind.singular.capitalize(), _synonyms(view, record), short, kind.weight)


def _rule_entry(rule: RuleData) -> Entry:
    code, what = str(rule["code"]), str(rule["what"])
    return Entry(f"{code} {rule['title']}", f"rules/{code}.html", "Rule", (code,), what[:MOST], 1)


def _synonyms(view: Uses, record: Record) -> tuple[str, ...]:
    """The code, the other names, and the limits of a reading."""
    code = [record.data["code"]] if "code" in record.data else []
    names = [name for name in record.data.get("also_called", []) if isinstance(name, str)]
    limits = _limits(view, record.id) if record.kind == "readings" else []
    return tuple(dict.fromkeys([*code, *names, *limits]))


def _limits(view: Uses, reading: str) -> list[str]:
    """The limits that the systems give for a reading, as they were typed: "36 to 65 psi"."""
    limits = []
    for system in view.live("systems"):
        band = system.data.get("bands", {}).get(reading, {})
        sides = [typed(system, ("bands", reading, side)) for side in ("min", "max") if side in band]
        if sides:
            limits.append(f"{' to '.join(sides)} {band['unit']}")
    return limits
