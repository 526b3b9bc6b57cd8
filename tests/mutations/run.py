"""Run operators over the book, all of it or a seeded sample."""

from __future__ import annotations

import random
from collections.abc import Iterable
from pathlib import Path

from bayleaf.records import Book, load
from tests.mutations import cautions, claims, fields, looks, steps, values  # noqa: F401 - each adds its operators
from tests.mutations.detect import Detector
from tests.mutations.mutant import OPERATORS, Mutant, Operator
from tests.mutations.table import Row

ROOT = Path(__file__).resolve().parents[2]


def detector(root: Path = ROOT) -> Detector:
    """A detector over the book under a root."""
    return Detector(load(root))


def mutants(operator: Operator, held: Detector, order: random.Random | None = None) -> Iterable[Mutant]:
    """The mutants of one operator, in the book's order or in a seeded one. A change that changes nothing is left out."""
    records = [
        r
        for r in _records(held.book)
        if r.sound and (not operator.kinds or r.kind in operator.kinds) and r.data.get("status") != "retired"
    ]
    if order:
        order.shuffle(records)
        first = list({record.kind: record for record in records}.values())  # a sample reaches every kind
        records = first + [record for record in records if record not in first]
    for record in records:
        made = list(operator.make(record, held.context))
        if order:
            order.shuffle(made)
            made = made[:1]  # one a record, so that a sample reaches far
        yield from (m for m in made if m.text is not None or m.data != record.data)


def _records(book: Book) -> list:
    return list(book.records())


def run(held: Detector, each: int | None = None, seed: int | None = None, names: Iterable[str] = ()) -> list[Row]:
    """A row for every operator; at most `each` mutants an operator, drawn by `seed`, but one of every kind that it can break."""
    rows = []
    for operator in OPERATORS:
        if names and not any(name in operator.name for name in names):
            continue
        order = random.Random(f"{seed} {operator.name}") if seed is not None else None
        drawn: list[Mutant] = []
        for mutant in mutants(operator, held, order):
            if each is not None and len(drawn) >= each and any(other.kind == mutant.kind for other in drawn):
                break
            drawn.append(mutant)
        rows.append(Row(operator, [(mutant, held.see(mutant)) for mutant in drawn]))
    return rows
