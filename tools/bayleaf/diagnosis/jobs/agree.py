"""Readings that must agree: one that equals another, or the sum of others, on a sound car."""

from __future__ import annotations

from typing import NamedTuple

from bayleaf.diagnosis.verdicts.compute import Desk, Known
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.diagnosis.verdicts.verdict import NOT_PLAUSIBLE, NOT_VALID
from bayleaf.quantities import QuantityError, from_si, significant, with_unit
from bayleaf.records import listed


class Disagreement(NamedTuple):
    """The reading, those that it should equal in sum, how far they are apart in words, and why they should agree."""

    reading: str
    others: tuple[str, ...]
    apart: str
    because: str


def disagreements_in(desk: Desk, taken: list[Taken]) -> tuple[Disagreement, ...]:
    """The relations of the book that the values in hand break by more than the relation and the instruments allow.

    Values taken while the fault was there and while it was not are not of one car, and are not compared.
    """
    values = {t.reading: t for t in taken if _in_hand(t)}
    found = []
    for reading, one in values.items():
        for relation in listed(desk.book.of("readings")[reading].data.get("agrees_with")):
            others = [values.get(id) for id in relation["sum_of"]]
            quantity = desk.quantity(reading)
            if quantity is None or not all(others):
                continue
            try:
                within = quantity.width(relation["within"]["value"], relation["within"]["unit"])
            except QuantityError:  # the checks' to report
                continue
            apart = abs(one.known.value - sum(other.known.value for other in others))
            if apart > within + sum(_allowance(t.known) for t in (one, *others)):
                unit = one.unit
                said = with_unit(significant(from_si(apart, unit, "difference"), 2), unit)
                found.append(Disagreement(reading, tuple(relation["sum_of"]), said, relation["because"]))
    return tuple(found)


def _in_hand(taken: Taken) -> bool:
    """A value of the whole car with its fault; it need not have a band to be compared."""
    valid = taken.verdict.kind not in (NOT_VALID, NOT_PLAUSIBLE)
    return taken.known is not None and taken.which is None and valid and not taken.aside and not taken.convicts


def _allowance(known: Known) -> float:
    return known.allowance or 0.0
