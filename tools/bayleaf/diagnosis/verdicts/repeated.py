"""A reading that was taken more than once."""

from __future__ import annotations

from dataclasses import replace

from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.taken import REPLACED, UNLIKE, Taken
from bayleaf.diagnosis.verdicts.verdict import NOT_PLAUSIBLE, NOT_VALID


def repeated(desk: Desk, readings: list[Taken], repairs: list[int]) -> list[Taken]:
    """Of a reading that was taken again the last counts; two that differ with nothing mended between count for nothing.

    Only a reading that says something replaces an earlier one: one taken while the car was well does not.
    """
    result = list(readings)
    for i, early in enumerate(readings):
        for late in readings[i + 1 :]:
            same = (early.reading, early.which) == (late.reading, late.which) and not beside(desk, early)
            if not same or not _says(early) or not _says(late):
                continue
            between = any(early.places[-1] < repair < late.places[0] for repair in repairs)
            if between or not _unlike(early, late):
                result[i] = replace(result[i], aside=result[i].aside or REPLACED)
            else:
                j = next(n for n, t in enumerate(readings) if t is late)
                result[i], result[j] = replace(result[i], aside=UNLIKE), replace(result[j], aside=UNLIKE)
    return result


def _says(taken: Taken) -> bool:
    return not taken.aside and taken.verdict.kind not in (NOT_VALID, NOT_PLAUSIBLE)


def _unlike(early: Taken, late: Taken) -> bool:
    """Whether two readings of one thing differ by more than their instruments may be out, or prove different answers."""
    if early.known is None or late.known is None:
        return early.said != late.said
    if early.known.allowance is not None and late.known.allowance is not None:
        return abs(early.known.value - late.known.value) > early.known.allowance + late.known.allowance
    return bool(early.answers and late.answers) and early.answers.isdisjoint(late.answers)


def beside(desk: Desk, taken: Taken) -> bool:
    """Whether entries stand side by side: one of every cylinder, bank or connection, and nobody said of which."""
    return taken.which is None and desk.book.of("readings")[taken.reading].data.get("each", "none") != "none"
