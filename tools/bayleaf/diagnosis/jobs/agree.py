"""Readings that must agree: one that equals another, or the sum of others, on a sound car."""

from __future__ import annotations

from typing import NamedTuple

from bayleaf.diagnosis.verdicts.compute import Desk
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
    values = {t.reading: (t.known, t.unit) for t in taken if t.known is not None and _in_hand(t)}
    broken = []
    for reading, (one, unit) in values.items():
        for relation in listed(desk.book.of("readings")[reading].data.get("agrees_with")):
            others = [values[id][0] for id in relation["sum_of"] if id in values]
            quantity = desk.quantity(reading)
            if quantity is None or len(others) < len(relation["sum_of"]):
                continue
            try:
                within = quantity.width(relation["within"]["value"], relation["within"]["unit"])
            except QuantityError:  # the checks' to report
                continue
            apart = abs(one.value - sum(other.value for other in others))
            if apart > within + sum(known.allowance or 0.0 for known in (one, *others)):
                said = with_unit(significant(from_si(apart, unit, "difference"), 2), unit)
                broken.append(Disagreement(reading, tuple(relation["sum_of"]), said, relation["because"]))
    return tuple(broken)


def _in_hand(taken: Taken) -> bool:
    """A value of the whole car with its fault; it need not have a band to be compared."""
    valid = taken.verdict.kind not in (NOT_VALID, NOT_PLAUSIBLE)
    return taken.which is None and valid and not taken.aside and not taken.convicts
