"""The tasks of the trade, and which procedures of the book cover them."""

from __future__ import annotations

from collections.abc import Sequence

from bayleaf.pages.building.blocks import blocks, folds, para
from bayleaf.pages.building.index import MOST_OPEN, cards, index_page
from bayleaf.pages.building.inline import EMPTY, joined, small, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.records import Record, listed, mapped


def index(view: Uses) -> str:
    """Each task under its anchor, with how much of the book covers it; it opens when it is touched or led to."""
    tasks = view.live("tasks")
    covered = sum(1 for task in tasks if view.of_task.get(task.id))
    about = f"What the trade is asked to do, and what this book holds for it: {covered} of {len(tasks)} covered."
    return index_page("tasks", about, folds(_task(view, task) for task in tasks))


def _task(view: Uses, task: Record) -> tuple[str, str, object, Markup]:
    procedures = view.of_task.get(task.id, [])
    readings = dict.fromkeys(
        mapped(step.get("takes"))["reading"]
        for p in procedures
        for step in p.data["steps"]
        if mapped(step.get("takes"))
    )
    remark = (
        f"{_many(len(procedures), 'procedure')}, {_many(len(readings), 'reading')}"
        if procedures
        else strong("not covered yet")
    )
    return (
        task.id,
        task.title,
        remark,
        blocks(
            para(view.prose(task.data["summary"])),
            cards(view, procedures) if procedures else para(strong("No procedure of this book covers it yet.")),
            para(small("Readings: "), joined(view.links(list(readings)))) if readings else EMPTY,
        ),
    )


def _many(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def work(view: Uses, procedures: Sequence[Record]) -> Markup:
    """Procedures as tiles; where they are many, each under its first task, which opens when it is touched."""
    if len(procedures) <= MOST_OPEN:
        return cards(view, procedures)
    tasks: dict[str, list[Record]] = {task.id: [] for task in view.live("tasks")}
    for procedure in procedures:
        tasks.setdefault(next(iter(listed(procedure.data.get("tasks"))), ""), []).append(procedure)
    return folds(
        (f"task-{id or 'none'}", view.title(id) if id else "Others", str(len(those)), cards(view, those))
        for id, those in tasks.items()
    )
