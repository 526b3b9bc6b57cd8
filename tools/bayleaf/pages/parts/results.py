"""What each answer of each reading means, and which faults show it."""

from __future__ import annotations

from bayleaf.diagnosis.faults.stages import healthy_of
from bayleaf.pages.building.blocks import blocks, heading, table
from bayleaf.pages.building.frame import shown
from bayleaf.pages.building.inline import small, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.shown_by import answers_of, fault_cell, showing
from bayleaf.records import Record, listed, mapped


def results(view: Uses, record: Record, readings: list[str], systems: list[str]) -> Markup:
    """A table for each reading of a procedure that somebody explains or some fault shows."""
    said = _results(view, record, frozenset())
    return blocks(
        *(_table(view, reading, mapped(said.get(reading)), systems) for reading in dict.fromkeys([*readings, *said]))
    )


def _results(view: Uses, record: Record, above: frozenset[str]) -> dict:
    """What a procedure says of its readings, and before it what the procedures say that it follows."""
    said: dict = {}
    for step in listed(record.data.get("steps")):
        followed = view.get(mapped(step).get("follow"), "procedures")
        if followed is not None and followed.id not in above:
            said |= _results(view, followed, above | {record.id})
    return said | mapped(record.data.get("results"))


def _table(view: Uses, reading: str, said: dict, systems: list[str]) -> Markup:
    record = view.get(reading, "readings")
    if record is None:
        return Markup("")
    showers = showing(view, reading, systems)
    healthy = healthy_of(view.book, reading, tuple(systems))
    rows = []
    for answer in dict.fromkeys([*answers_of(view, reading), *said]):
        if answer in said or answer in showers:
            name = shown(answer) if answer in healthy else strong(shown(answer))
            there = showers.get(answer, [])
            faults = (
                fault_cell(view, there, len(systems), answer in healthy)
                if there
                else small("no fault in this book shows it")
            )
            rows.append((name, view.prose(said.get(answer)), faults))
    if not rows:
        return Markup("")
    head = ("You found", "It means", "Faults that show it")
    return blocks(heading(3, f"means-{reading}", view.link(reading)), table(head, rows, css="bl-results"))
