"""The tasks of the trade, and which procedures of the book cover them."""

from __future__ import annotations

from bayleaf.pages.frame import cards, index_page
from bayleaf.pages.uses import Uses
from bayleaf.pages.write import box, heading, joined, para, small, strong, table
from bayleaf.records import mapped


def index(view: Uses) -> str:
    """A table of coverage, then each task under its anchor."""
    tasks = view.live("tasks")
    covered = sum(1 for task in tasks if view.of_task.get(task.id))
    rows, parts = [], []
    for task in tasks:
        procedures = view.of_task.get(task.id, [])
        readings = {mapped(s.get("takes"))["reading"]: None for p in procedures for s in p.data["steps"] if mapped(s.get("takes"))}
        rows.append((view.link(task.id), str(len(procedures)), str(len(readings)), "" if procedures else strong("not covered yet")))
        parts.append(box("bl-entry", heading(2, task.id, task.title), para(view.prose(task.data["summary"])),
                         cards(view, procedures) if procedures else para(strong("No procedure of this book covers it yet.")),
                         para(small("Readings: "), joined(view.links(list(readings)))) if readings else ""))  # fmt: skip
    head = ("Task", "Procedures", "Readings taken", "")
    return index_page("tasks", f"What the trade is asked to do, and what this book holds for it: {covered} of {len(tasks)} covered.", table(head, rows), *parts)
