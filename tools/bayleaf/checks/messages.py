"""Names and hints in complaints: fields by their natural key, and what was probably meant."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from bayleaf.checks.facts.amounts import Amount
from bayleaf.nearest import nearest
from bayleaf.quantities import from_si
from bayleaf.records import Record

SLACK = 1e-9  # a limit converted and back is equal to itself only to this share
_ENTRIES = {
    "steps": "step",
    "paths": "path",
    "checks": "check",
    "readings": "reading",
    "zones": "zone",
    "triggers": "trigger",
    "exceptions": "exception",
}


def field(record: Record, path: tuple) -> str:
    """A field by its natural key, never a bare index: `step 3 / do`, `path supply / greatest`."""
    parts: list[str] = []
    data: object = record.data
    for step in path:
        if isinstance(step, int):
            data = data[step] if isinstance(data, list) and step < len(data) else None
            name = parts.pop() if parts else "entry"
            parts.append(f"{_ENTRIES.get(name, f'{name}, entry')} {_key(data) or step + 1}")
        else:
            data = data.get(step) if isinstance(data, dict) else None
            parts.append(step)
    return " / ".join(parts) or "the record"


def _key(entry: object) -> str:
    return entry["name"] if isinstance(entry, dict) and isinstance(entry.get("name"), str) else ""


def mean(word: str, known: Iterable[str], otherwise: str = "", nearness: float = 0.6) -> str:
    """`Did you mean x?` for the nearest known word, or `otherwise`."""
    near = nearest(word, known, nearness)
    return f"Did you mean {near}?" if near else otherwise


def either(words: Iterable[str], word: str = "or") -> str:
    """`a`, `a or b`, `a, b or c`."""
    words = list(words)
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {word} {words[-1]}" if words else ""


def number(value: float) -> str:
    """A number in a message, without needless digits."""
    return f"{value:.6g}"


def sentence(text: str) -> str:
    """A help line with a capital and a full stop."""
    return text and text[0].upper() + text[1:] + ("" if text[-1] in ".?" else ".")


def implausible(amount: Amount) -> Iterator[tuple[tuple, str]]:
    """(path, complaint) for each number of a amount beyond the plausible limits of its quantity.

    A negative absolute pressure or vacuum is left to UNIT-5, which says it better.
    """
    low, high = amount.quantity.plausible
    for path, value in amount.numbers.items():
        x = amount.si(value)
        signed = x < 0 and amount.quantity.reference in ("absolute", "vacuum")
        if not signed and not low - SLACK * abs(low) <= x <= high + SLACK * abs(high):
            yield path, f"{field(amount.record, path)}: {outside(amount, value)}"


def outside(amount: Amount, value: float) -> str:
    """`650 psi is outside 0 to 160 psi, the plausible limits of fuel rail pressure`."""
    quantity = amount.quantity
    symbol = quantity.units.get(amount.unit, amount.unit)
    low, high = (number(from_si(limit, symbol, quantity.reference)) for limit in quantity.plausible)
    return f"{number(value)} {amount.unit} is outside {low} to {high} {symbol}, the plausible limits of {quantity.title.lower()}"
