"""The vocabulary: one page a list, each entry under its own anchor."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bayleaf.pages.building.amounts import amount, band, basis, remark
from bayleaf.pages.building.blocks import blocks, facts, para
from bayleaf.pages.building.frame import shown
from bayleaf.pages.building.index import entry_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small, stacked
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import kind_order
from bayleaf.pages.kinds.variables import effects, variables
from bayleaf.records import Record, listed, mapped

OPENED = {
    True: "The text was open when its values were written.",
    False: "Recalled: nobody had the text open when its values were written.",
}


def terms(view: Uses) -> str:
    """The glossary."""

    def inner(r: Record) -> Markup:
        return blocks(para(view.prose(r.data["means"])), para(small("Basis: ", basis(view, r.data["basis"]), ".")))

    return _page(view, "terms", "The words of this book and of the trade.", inner)


def sources(view: Uses) -> str:
    """Where published numbers come from, and who cites them."""

    def inner(r: Record) -> Markup:
        cited = [view.link(other.id) for other in sorted(view.referrers.get(r.id, []), key=kind_order)]
        said = para(
            f"{r.data['issuer']}, {r.data['year']}. {OPENED[r.data['opened']]} ", view.prose(r.data.get("note"))
        )
        return blocks(said, para(small("Cited by: "), joined(cited)) if cited else EMPTY)

    about = "Books, standards and papers, and whether anybody had them open. A number without a source is common practice and says so."
    return _page(view, "sources", about, inner)


def fuels(view: Uses) -> str:
    """What cars run on."""

    def inner(r: Record) -> Markup:
        data = r.data

        def row(field: str) -> Markup:
            value = band(view, r, (field,)) if "min" in mapped(data[field]) else amount(view, r, (field,))
            return inline(value, " ", small("[", remark(view, data[field]), "]"))

        return blocks(
            para(view.prose(data.get("summary"))),
            facts(
                [
                    ("Ethanol by volume", row("ethanol")),
                    ("Air to fuel by mass, all used up", row("stoichiometric")),
                    ("Density", row("density")),
                    ("Cautions", joined(view.links(data.get("cautions")))),
                ]
            ),
        )

    return _page(view, "fuels", "What cars run on, with the numbers that calculators use.", inner)


def quantities(view: Uses) -> str:
    """What can be measured, its reference, its units and the limits outside which a number is a slip."""

    def inner(r: Record) -> Markup:
        data = r.data
        spelled = [
            joined([unit, small("also ", joined(others)) if listed(others) else EMPTY], " ")
            for unit, others in data["units"].items()
        ]
        readings = [view.link(o.id) for o in view.live("readings") if (q := view.quantity(o.id)) and q.id == r.id]
        return blocks(
            para(view.prose(data.get("summary"))),
            facts(
                [
                    ("Reference", data["reference"] if data["reference"] != "none" else ""),
                    ("Units", joined(spelled, "; ")),
                    (
                        "Plausible",
                        inline(
                            band(view, r, ("plausible",), view.desk.quantities.get(r.id)),
                            " ",
                            small("[", remark(view, data["plausible"]), "]"),
                        ),
                    ),
                    ("Readings", joined(readings)),
                ]
            ),
        )

    about = "A number is nothing without its unit and, for a pressure, what it is counted from: gauge, absolute, difference or vacuum."
    return _page(view, "quantities", about, inner)


def conditions(view: Uses) -> str:
    """Operating conditions and the readings taken in them."""

    def inner(r: Record) -> Markup:
        readings = [view.link(o.id) for o in view.live("readings") if o.data["when"] == r.id]
        return blocks(
            para(view.prose(r.data["summary"])),
            facts([("Implies", joined(view.links(r.data["implies"]))), ("Readings", joined(readings))]),
        )

    return _page(view, "conditions", "The states of car and engine in which readings are taken.", inner)


def states(view: Uses) -> str:
    """What holds until something ends it."""

    def inner(r: Record) -> Markup:
        data = r.data
        proof = mapped(data.get("proved_by"))
        return blocks(
            para(view.prose(data["summary"])),
            facts(
                [
                    (
                        "Set by",
                        joined(
                            [*view.links(data.get("set_by")), *(view.link(p.id) for p in view.leavers.get(r.id, []))]
                        ),
                    ),
                    (
                        "Ended by",
                        joined(
                            [*view.links(data.get("ended_by")), *(view.link(p.id) for p in view.enders.get(r.id, []))]
                        ),
                    ),
                    ("Verify with", inline(view.link(proof["reading"]), ": ", shown(proof["answer"])) if proof else ""),
                    ("Needs first", joined(view.links(data.get("requires")))),
                    ("Forbids", joined(view.links(data.get("forbids")))),
                    ("Needs at hand", joined(view.links(data.get("needs")))),
                ]
            ),
        )

    return _page(
        view, "states", "What holds until something ends it: pressure relieved, engine cool, joint open.", inner
    )


def acts(view: Uses) -> str:
    """What a step can do."""

    def inner(r: Record) -> Markup:
        return blocks(
            para(view.prose(r.data.get("summary"))),
            facts(
                [
                    ("Implies", joined(view.links(r.data["implies"]))),
                    ("Undone by", view.link(r.data["undone_by"]) if "undone_by" in r.data else ""),
                    ("Lasts", _lasts(view, mapped(r.data.get("lasts")))),
                ]
            ),
        )

    return _page(view, "acts", "The closed list of what a step can do; hazards are derived from it.", inner)


def _lasts(view: Uses, limit: dict[str, Any]) -> Markup:
    """The least and the most that an act lasts, with where both come from."""
    if not limit:
        return EMPTY
    return inline(f"{limit['least']:g} to {limit['most']:g} {limit['unit']} ", small("[", remark(view, limit), "]"))


def hazards(view: Uses) -> str:
    """What can hurt or damage, what leads to it, and which cautions guard against it."""
    guards: dict[str, list[Markup]] = {}
    for caution in view.live("cautions"):
        for id in caution.data["hazards"]:
            guards.setdefault(id, []).append(view.link(caution.id))

    def inner(r: Record) -> Markup:
        met = lines(_trigger(view, r, i) for i in range(len(listed(r.data["triggers"]))))
        return blocks(
            para(view.prose(r.data["summary"])),
            facts(
                [
                    ("Guarded by", joined(guards.get(r.id, []))),
                    ("Met when", met or small("carried by the preparations, always shown")),
                ]
            ),
        )

    return _page(
        view,
        "hazards",
        "What can hurt or damage. A procedure that meets a hazard without its caution is refused.",
        inner,
    )


def _trigger(view: Uses, record: Record, i: int) -> Markup:
    """Everything that must hold at one step, in words."""
    data: dict = record.data["triggers"][i]
    said: list[object] = []
    labels = {
        "acts": "a step does ",
        "with": "while it holds: ",
        "without": "without: ",
        "conditions": "in ",
        "equipment": "using ",
        "quantities": "reading ",
    }
    for field, label in labels.items():
        said.append(
            inline(label, joined(view.links(data[field]), " and " if field == "with" else " or "))
            if field in data
            else EMPTY
        )
    side = f", {data['side']} side" if "side" in data else ""
    said.append(f"on a path that carries {' or '.join(data['carries'])}{side}" if "carries" in data else EMPTY)
    if "greatest_at_least" in data:
        path = ("triggers", i, "greatest_at_least")
        said.append(
            inline(
                "where the pressure can reach ",
                amount(view, record, path),
                " ",
                small("[", remark(view, data["greatest_at_least"]), "]"),
            )
        )
    said.append(f"in a place such as {' or '.join(data['places']).replace('-', ' ')}" if "places" in data else EMPTY)
    return joined(said, ", ")


def _page(view: Uses, kind: str, about: str, inner: Callable[[Record], Markup]) -> str:
    return entry_page(view, kind, about, ((r, inner(r)) for r in view.all(kind)))


def histories(view: Uses) -> str:
    """What may have happened before, and what that makes likelier."""

    def inner(r: Record) -> Markup:
        likelier = [
            ("Likelier faults", stacked(view.links(r.data.get("faults")))),
            ("Likelier, every fault of", stacked(view.links(r.data.get("parts")))),
        ]
        return blocks(para(view.prose(r.data["summary"])), facts(likelier))

    about = (
        "What may have happened to a car before the complaint. It makes some faults likelier in a job, and clears none."
    )
    return _page(view, "histories", about, inner)


PAGES = {
    "terms": terms,
    "sources": sources,
    "fuels": fuels,
    "quantities": quantities,
    "conditions": conditions,
    "variables": variables,
    "effects": effects,
    "histories": histories,
    "states": states,
    "acts": acts,
    "hazards": hazards,
}
