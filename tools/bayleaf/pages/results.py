"""What each answer of each reading means, and which faults show it."""

from __future__ import annotations

from bayleaf.pages.frame import shown
from bayleaf.pages.shown_by import answers_of, fault_words, showing
from bayleaf.pages.text import Markup
from bayleaf.pages.uses import Uses
from bayleaf.pages.write import blocks, heading, small, strong, table, words
from bayleaf.records import Record, mapped


def results(view: Uses, record: Record, readings: list[str], systems: list[str]) -> Markup:
    """A table for each reading of a procedure that somebody explains or some fault shows."""
    said = mapped(record.data.get("results"))
    return blocks(*(_table(view, reading, mapped(said.get(reading)), systems) for reading in dict.fromkeys([*readings, *said])))


def _table(view: Uses, reading: str, said: dict, systems: list[str]) -> Markup:
    record = view.get(reading, "readings")
    if record is None:
        return Markup("")
    showers = showing(view, reading, systems)
    normal = record.data.get("normal", "normal")
    rows = []
    for answer in dict.fromkeys([*answers_of(view, reading), *said]):
        if answer in said or answer in showers:
            name = shown(answer) if answer == normal else strong(shown(answer))
            there = showers.get(answer, [])
            faults = fault_words(view, there, len(systems), " · " if answer == normal else "<br>") or small("no fault in this book shows it")
            faults = words(small("does not rule out: "), faults) if answer == normal and there else faults
            rows.append((name, view.prose(said.get(answer)), faults))
    if not rows:
        return Markup("")
    head = ("You found", "It means", "Faults that show it")
    return blocks(heading(3, f"means-{reading}", view.link(reading)), table(head, rows, css="bl-results"))
