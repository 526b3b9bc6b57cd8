"""Where calculators are fed: by computed readings and by expectations in the bands of systems."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from bayleaf.records import Book, Record


class Feed(NamedTuple):
    """One use of a calculator: the path of its inputs, the inputs as written, the quantity of its result, the reading that it gives.

    `chosen` is the result that the record names, `result` its quantity's id, both empty where the record must choose and has not.
    """

    path: tuple
    calculator: Record
    inputs: dict
    chosen: str
    result: str
    reading: str


def feeds_of(record: Record, book: Book) -> Iterator[Feed]:
    """Every use of a sound calculator in a reading or a system."""
    uses: list[tuple[tuple, dict, str]]
    if record.kind == "readings":
        uses = [(("computed",), record.data.get("computed", {}), record.id)]
    else:
        bands = record.data.get("bands", {}).items()
        uses = [(("bands", id, "expected"), band.get("expected", {}), id) for id, band in bands]
    for path, use, reading in uses:
        calculator = book.of("calculators").get(use.get("calculator", ""))
        if calculator and calculator.sound:
            results = calculator.data["result"]
            chosen = use.get("result") or (next(iter(results)) if len(results) == 1 else "")
            quantity = results.get(chosen, {}).get("quantity", "")
            yield Feed((*path, "inputs"), calculator, use.get("inputs", {}), chosen, quantity, reading)
