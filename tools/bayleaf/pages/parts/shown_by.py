"""Which faults show which answer: the tables that are derived from the stages of the faults and written nowhere."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from bayleaf.diagnosis.faults.matrix import WEIGHTS
from bayleaf.diagnosis.verdicts.verdict import MEASURED
from bayleaf.pages.building.frame import shown
from bayleaf.pages.building.inline import EMPTY, few, inline, joined, more, small, stacked, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.records import Record, listed

SOME = 3  # systems that are worth naming; the page of a fault names all of its own


@dataclass
class Showing:
    """A fault that gives an answer: in which stages, on which systems, and whether it may give another one too."""

    fault: Record
    stages: dict[str, None] = field(default_factory=dict)
    systems: dict[str, None] = field(default_factory=dict)
    surely: bool = False


def answers_of(view: Uses, reading: str) -> list[str]:
    """The answers that a reading can have, in the order of the question or from none to unsteady."""
    record = view.get(reading, "readings")
    return listed(record.data.get("answers")) or list(MEASURED) if record else []


def showing(view: Uses, reading: str, systems: Iterable[str]) -> dict[str, list[Showing]]:
    """Answer to the faults that give it on any of these systems, the commonest first."""
    by_answer: dict[str, dict[str, Showing]] = {}
    for system in systems:
        for row in view.matrices[system].rows:
            answers = row.answers.get(reading, frozenset())
            for answer in answers:
                one = by_answer.setdefault(answer, {}).setdefault(row.fault, Showing(view.book.of("faults")[row.fault]))
                one.stages[row.stage] = one.systems[system] = None
                one.surely = one.surely or len(answers) == 1
    return {answer: sorted(faults.values(), key=_order) for answer, faults in by_answer.items()}


def _order(one: Showing) -> tuple:
    return -WEIGHTS.get(one.fault.data.get("commonness", ""), 0), one.fault.title


def fault_words(view: Uses, some: list[Showing], among: int = 1) -> list[Markup]:
    """Faults for one cell: the stages where not all of them show it, and the systems where not all of `among` have it."""
    names = []
    for one in some:
        limits: list[object] = [] if one.surely else ["perhaps"]
        if len(one.stages) < len(one.fault.data.get("stages", {})):
            limits.append(joined(shown(stage) for stage in one.stages))
        if len(one.systems) < among:
            limits.append(
                joined(view.links(list(one.systems)))
                if len(one.systems) <= SOME
                else f"{len(one.systems)} of {among} systems"
            )
        names.append(inline(view.link(one.fault.id), small(" (", joined(limits, "; "), ")") if limits else EMPTY))
    return names


def fault_cell(view: Uses, some: list[Showing], among: int, healthy: bool) -> Markup:
    """The faults that show an answer, the commonest first; of a healthy answer only how many it does not rule out, until it is touched."""
    names = fault_words(view, some, among)
    return more(len(names), "does not rule out", "faults", stacked(names)) if healthy else few(names)


def answer_words(answers: Iterable[str] | None, healthy: frozenset[str]) -> Markup:
    """What a stage shows, for a cell: the odd ones stand out by weight, not by colour alone; None is anything."""
    if answers is None:
        return small("any")
    order = [a for a in MEASURED if a in answers] + sorted(a for a in answers if a not in MEASURED)
    said = joined((shown(a) for a in order), " or ")
    return said if healthy.issuperset(order) else strong(said)
