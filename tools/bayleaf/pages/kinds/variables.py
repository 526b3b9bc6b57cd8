"""The graph as pages: what can be disturbed and what that moves, and the effects that many faults share."""

from __future__ import annotations

from bayleaf.diagnosis.faults.graph import Influence, graph_of
from bayleaf.diagnosis.faults.stages import healthy_of
from bayleaf.pages.building.blocks import blocks, facts, para, table
from bayleaf.pages.building.index import entry_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.shown_by import answer_words
from bayleaf.records import Record, listed, mapped


def variables(view: Uses) -> str:
    """What a fault can disturb, what that moves, and who carries, disturbs and observes it."""
    graph = graph_of(view.book)
    into: dict[str, list[str]] = {}
    for name, found in graph.influences.items():
        for influence in found:
            into.setdefault(influence.to, []).append(name)

    def using(kind: str, field: str, id: str) -> Markup:
        return joined(view.link(r.id) for r in view.live(kind) if id in listed(r.data.get(field)))

    def inner(r: Record) -> Markup:
        return blocks(
            para(view.prose(r.data["summary"])),
            facts(
                [
                    ("Moves", lines(_influence(view, i) for i in graph.influences[r.id])),
                    ("Moved by", joined(view.links(into.get(r.id)))),
                    ("Carried by", using("components", "variables", r.id)),
                    ("Disturbed by", using("faults", "disturbs", r.id)),
                    ("Looked at by", using("readings", "observes", r.id)),
                ]
            ),
        )

    about = "What a fault can disturb, and what that moves. A reading that looks at nothing that is moved is healthy: a claim of this book and no proof, for an influence that is missing clears what it must not."
    return entry_page(view, "variables", about, ((r, inner(r)) for r in view.all("variables")))


def _influence(view: Uses, influence: Influence) -> Markup:
    limits = [
        inline("while ", joined(view.links(sorted(influence.when)), " or ")) if influence.when else EMPTY,
        inline("not with ", joined(view.links(sorted(influence.unless)), " or ")) if influence.unless else EMPTY,
        inline("on ", joined(view.links(sorted(influence.systems)), " or ")) if influence.systems else EMPTY,
    ]
    limited = [limit for limit in limits if limit]
    return inline(view.link(influence.to), small(" (", joined(limited, "; "), ")") if limited else EMPTY)


def effects(view: Uses) -> str:
    """What many faults show in the same way."""

    def inner(r: Record) -> Markup:
        rows = [
            (view.link(reading), answer_words(_answers(said), healthy_of(view.book, reading)))
            for reading, said in r.data["shows"].items()
        ]
        users = [
            f.id
            for f in view.live("faults")
            if any(r.id in listed(mapped(stage).get("effect")) for stage in f.data["stages"].values())
        ]
        return blocks(
            para(view.prose(r.data["summary"])),
            table(("Reading", "Shows"), rows),
            facts([("Used by", joined(view.links(users)))]),
        )

    about = (
        "What many faults show in the same way, said once. Where nothing reaches a reading, it is healthy all the same."
    )
    return entry_page(view, "effects", about, ((r, inner(r)) for r in view.all("effects")))


def _answers(said: object) -> frozenset[str]:
    return frozenset(said) if isinstance(said, list) else frozenset({str(said)})
