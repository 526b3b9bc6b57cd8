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
    return [
        *(_entry(view, record) for kind in KINDS for record in view.live(kind)),
        *(
            Entry(f"All {title.lower()}", f"{kind}/index.html", "List", (kind,), "", 1)
            for kind, title in KIND_TITLES.items()
        ),
        *(
            Entry(title, site_address(path), "Page", overviews.SYNONYMS[path], overviews.REMARKS[path], 3)
            for path, title in overviews.TITLES.items()
        ),
        *(_rule_entry(rule) for rule in rules),
    ]


def _entry(view: Uses, record: Record) -> Entry:
    summary = view.plain(record.data.get(SUMMARY.get(record.kind, "summary")))
    short = summary if len(summary) <= MOST else summary[: MOST - 1].rsplit(" ", 1)[0] + "…"
    return Entry(
        record.title,
        site_address(address_of(record)),
        SINGULAR[record.kind].capitalize(),
        _synonyms(view, record),
        short,
        WEIGHTS.get(record.kind, 1),
    )


def _rule_entry(rule: RuleData) -> Entry:
    code, what = str(rule["code"]), str(rule["what"])
    return Entry(f"{code} {rule['title']}", f"rules/{code}.html", "Rule", (code,), what[:MOST], 1)


def _synonyms(view: Uses, record: Record) -> tuple[str, ...]:
    """The code, the other names, and the limits of a reading."""
    code = [record.data["code"]] if "code" in record.data else []
    names = [name for name in listed(record.data.get("also_called")) if isinstance(name, str)]
    limits = _limits(view, record.id) if record.kind == "readings" else []
    return tuple(dict.fromkeys([*code, *names, *limits]))


def _limits(view: Uses, reading: str) -> list[str]:
    """The limits that the systems give for a reading, as they were typed: "36 to 65 psi"."""
    limits = []
    for system in view.live("systems"):
        band = mapped(mapped(system.data.get("bands")).get(reading))
        sides = [typed(system, ("bands", reading, side)) for side in ("min", "max") if side in band]
        if sides:
            limits.append(f"{' to '.join(sides)} {band['unit']}")
    return limits
