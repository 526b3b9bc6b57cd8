"""A component: what it does, where it sits, how it fails, and what can be measured on it."""

from __future__ import annotations

from bayleaf.pages.building.blocks import bullets, facts, para, section
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import cards, grouped, index_page
from bayleaf.pages.building.inline import inline, lines, small, stacked
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.tasks import work
from bayleaf.records import Record, listed


def page(view: Uses, record: Record) -> str:
    """The page of one component."""
    data, id = record.data, record.id
    inside = [r for r in view.live("components") if r.data.get("part_of") == id]
    readings = [r for r in view.live("readings") if id in view.places(r.id)]
    faults = [r for r in view.live("faults") if r.data["part"] == id]
    jobs = [r for r in view.referrers.get(id, []) if r.kind == "procedures"]
    return record_page(
        view,
        record,
        [
            facts(
                [
                    ("Part of", view.link(data["part_of"]) if "part_of" in data else ""),
                    ("One for each", data.get("each", "")),
                    ("Has in it", stacked(view.link(r.id) for r in inside)),
                    ("On the paths", lines(_paths(view, id))),
                    ("Carries", stacked(view.links(data.get("variables")))),
                ]
            ),
            section("does", "What it does", para(view.prose(data["does"]))),
            section("found", "Where it is", para(view.prose(data["found"]))),
            section("fails", "How it fails", bullets(view.prose(item) for item in data["fails"])),
            section(
                "mistaken",
                "Often taken for",
                bullets(
                    inline(view.link(m["component"]), ": ", view.prose(m["because"]))
                    for m in listed(data.get("mistaken_for"))
                ),
            ),
            section("faults", "Faults in it", cards(view, faults)),
            section("readings", "Readings taken here", cards(view, readings)),
            section("work", "Work on it", work(view, jobs)),
        ],
    )


def _paths(view: Uses, id: str) -> list[Markup]:
    """Each path by its name once, with the systems that have it."""
    by_name: dict[str, list[Markup]] = {}
    for name, system in sorted((name, system) for system, name in view.layout.paths(id)):
        by_name.setdefault(name, []).extend(view.links([system]) if view.get(system) else [])
    return [line for name, links in by_name.items() if links for line in (inline(name, small(" of")), *links)]


def index(view: Uses) -> str:
    """Components by what they carry."""
    groups = view.by_carried(view.live("components"), lambda component: component.id)
    return index_page("components", "The parts: what they do, where they sit, how they fail.", grouped(view, groups))
