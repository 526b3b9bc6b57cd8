"""A small page tree in the shape that the pages stage hands on: enough for the engine, the seal and the search."""

from __future__ import annotations

import json

from bayleaf.search import Entry

INDEXES = (
    "symptoms",
    "systems",
    "procedures",
    "readings",
    "faults",
    "codes",
    "calculators",
    "equipment",
    "components",
    "cautions",
    "terms",
    "more",
)


def escaped(text: str) -> str:
    """Every character but ASCII letters, digits and spaces as a number reference: no markup is left in it."""
    return "".join(c if c.isascii() and (c.isalnum() or c == " ") else f"&#{ord(c)};" for c in text)


def page(title: str, body: str, listed: bool = False) -> str:
    """A page with the front matter that every generated page carries."""
    head = f"title: {json.dumps(escaped(title))}\n" + ("" if listed else "search:\n  exclude: true\n")
    return f"---\n{head}---\n\n# {escaped(title)}\n\n{body}\n"


def sample(extra: dict[str, str | bytes] | None = None) -> dict[str, str | bytes]:
    """The pages: a home page, one index a kind, a procedure, a code and a reading; `extra` is laid over them."""
    pages: dict[str, str | bytes] = {
        "index.md": page("Home", "[Procedures](procedures/index.md) [Codes](codes/index.md)"),
        "procedures/measure-primed-rail-pressure.md": page(
            "Measure primed rail pressure",
            "!!! warning\n    Fuel sprays under pressure.\n\n## Steps\n\n1. Switch the key on.\n\n"
            "| car | psi |\n|---|---|\n| van | 43.5 |\n\n[Reading](../readings/rail-pressure-primed.md#limits)",
        ),
        "readings/rail-pressure-primed.md": page("Rail pressure, primed", "## Limits\n\n36 to 65 psi"),
        "codes/p0171.md": page("P0171", "Bank 1 runs lean, trims high."),
        "assets/bayleaf.css": ":root{--md-primary-fg-color:#3d4f44;--md-accent-fg-color:#8a5a1f}\n",
        "assets/bayleaf.js": "document.documentElement.dataset.bayleaf = 'ready';\n",
    }
    for kind in INDEXES:
        pages[f"{kind}/index.md"] = page(kind.capitalize(), "Everything of this kind.")
    return pages | (extra or {})


ENTRIES = (
    Entry(
        "Measure primed rail pressure",
        "procedures/measure-primed-rail-pressure.html",
        "Procedure",
        ("fuel pressure test", "43.5 psi"),
        "Gauge on the rail, key on.",
        3,
    ),
    Entry(
        "Rail pressure, primed",
        "readings/rail-pressure-primed.html",
        "Reading",
        ("static pressure",),
        "Pressure at the rail while the pump primes.",
        2,
    ),
    Entry("P0171", "codes/p0171.html", "Code", ("P0171", "lean code"), "Bank 1 runs lean, trims high.", 2),
)
