"""What a code's report leaves: its causes by how common they are, and the readings that part them."""

from __future__ import annotations

from dataclasses import dataclass, field

from bayleaf.diagnosis.faults.reported import Fit, fits_of, reports_of, silent_of, splits_of
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.pages.building.blocks import blocks, bullets, folds, para, table
from bayleaf.pages.building.frame import shown
from bayleaf.pages.building.index import MOST_OPEN
from bayleaf.pages.building.inline import EMPTY, inline, joined, small, stacked, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.symptoms import OUTSIDE, commonness, first_line
from bayleaf.pages.parts.shown_by import SOME, answers_of
from bayleaf.records import Record, listed

PERHAPS = "“Perhaps”: it may show this and need not. How common a fault is, is a judgement. "


@dataclass
class Cause:
    """A fault that fits a report: on which systems, and whether some stage of it is sure to show it."""

    fault: Record
    surely: bool = False
    systems: dict[str, None] = field(default_factory=dict)


def fits(view: Uses, record: Record) -> list[Fit]:
    """The stages that may show what a code reports, on the systems that it is for and on pairs with one of them."""
    on = view.systems_of(record)
    pairs = (matrix for pair, matrix in view.pairs.items() if not set(on).isdisjoint(pair))
    return fits_of((view.matrices[s] for s in on), pairs, reports_of(record))


def causes_of(view: Uses, fitting: list[Fit]) -> list[Cause]:
    """The faults among these stages, those that are sure to show it first and then by their title."""
    found: dict[str, Cause] = {}
    for row, systems, surely in fitting:
        cause = found.setdefault(row.fault, Cause(view.book.of("faults")[row.fault]))
        cause.systems |= dict.fromkeys(s for s in systems if row.fault in view.faults_on[s])
        cause.surely = cause.surely or surely == 1
    return sorted(found.values(), key=lambda c: (not c.surely, c.fault.title))


def cause_list(view: Uses, record: Record, fitting: list[Fit]) -> Markup:
    """The causes by how common they are; only the common ones stand open where they are many."""
    causes = {cause.fault.id: cause for cause in causes_of(view, fitting)}
    usual = _usual(view, fitting)
    by = commonness([cause.fault for cause in causes.values()])
    lists = {how: bullets(_cause(view, causes[f.id], usual) for f in those) for how, those in by.items()}
    opened = list(by) if len(causes) <= MOST_OPEN else ["common"]
    silent = silent_of((view.matrices[s] for s in view.systems_of(record)), reports_of(record)) - causes.keys()
    return blocks(
        *(blocks(para(strong(how.capitalize(), ":")), lists[how]) for how in opened if by[how]),
        folds((f"faults-{how}", how.capitalize(), str(len(by[how])), lists[how]) for how in by if how not in opened),
        _silent(len(silent)),
        para(small(PERHAPS, OUTSIDE)),
    )


def _usual(view: Uses, fitting: list[Fit]) -> set[str]:
    """The fuel systems that show the report on their own, or where there is none the others: what is on all of them needs no remark."""
    alone = {fit.systems[0] for fit in fitting if len(fit.systems) == 1}
    return {s for s in alone if view.book.of("systems")[s].data["family"] == "fuel"} or alone


def _cause(view: Uses, cause: Cause, usual: set[str]) -> Markup:
    limits: list[object] = [] if cause.surely else ["perhaps"]
    if not usual <= cause.systems.keys():
        few = len(cause.systems) <= SOME
        limits.append(joined(view.links(list(cause.systems))) if few else f"{len(cause.systems)} systems")
    return inline(view.link(cause.fault.id), small(" (", joined(limits, "; "), ")") if limits else EMPTY)


def _silent(count: int) -> Markup:
    """One line for the faults that the report neither names nor rules out."""
    faults = f"{count} other fault{'s' if count > 1 else ''} of these systems"
    words = f"Not ruled out: {faults}, of which the book does not say what this shows."
    return para(small(words)) if count else EMPTY


def split_table(view: Uses, record: Record, fitting: list[Fit]) -> Markup:
    """The readings that are expected to tell most about which cause it is, how they are taken, and what parts what."""
    if not fitting:
        return EMPTY
    on = view.systems_of(record)
    reported = {reading for reading, _shows in reports_of(record)}
    known = reported if len(reported) == 1 else set()  # of several, the code does not say which
    readings = [r for r in view.live("readings") if is_diagnosis(r) and r.id not in known and _tests(view, r.id)]
    questions = {r.id: tuple(listed(r.data["answers"])) for r in readings if "answers" in r.data}
    chosen = splits_of(view.matrices, fitting, [r.id for r in readings], questions)
    rows = [(first_line(view, reading, on), stacked(_parted(view, fitting, reading))) for reading in chosen]
    return table(("Reading", "What the causes may show"), rows, css="bl-results")


def _tests(view: Uses, reading: str) -> bool:
    """Whether something else than a repair takes it."""
    return any(p.id not in view.repairs for p in view.takers.get(reading, []))


def _parted(view: Uses, fitting: list[Fit], reading: str) -> list[Markup]:
    """Each answer with the number of the causes that may show it."""
    faults: dict[str, set[str]] = {}
    for fit in fitting:
        for answer in fit.row.answers.get(reading, ()):
            faults.setdefault(answer, set()).add(fit.row.fault)
    return [
        inline(strong(shown(answer)), f": {len(faults[answer])} cause{'s' if len(faults[answer]) > 1 else ''}")
        for answer in answers_of(view, reading)
        if answer in faults
    ]
