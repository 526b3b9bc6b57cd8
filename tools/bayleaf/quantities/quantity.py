"""Quantities: what a number measures, against which reference, and how it may be spelled."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any, NamedTuple

from bayleaf.nearest import nearest
from bayleaf.quantities.table import to_si, units

if TYPE_CHECKING:  # the records are read with these quantities, so this room needs only their type
    from bayleaf.records import Book

REFERENCES = ("absolute", "gauge", "vacuum", "difference", "none")

PRESSURE, TEMPERATURE = (-1, 1, -2, 0, 0), (0, 0, 0, 1, 0)

# What people and unit libraries write, and what this book writes instead.
TRAPS = {
    "psig": "psi",
    "psia": "psi",
    "psid": "psi",
    "barg": "bar",
    "F": "degF",
    "C": "degC",
    "lambda": "1",
    "Nm": "N.m",
    "ft*lb": "lbf.ft",
    "ft-lb": "lbf.ft",
    "ft.lb": "lbf.ft",
    "ftlb": "lbf.ft",
    "lbft": "lbf.ft",
}


class QuantityError(ValueError):
    """What is wrong with a value, a unit or a quantity: one line to read, one to help, and the field if there is one.

    Whoever only tries a unit never reads the help; where it has to be looked for, it is a function.
    """

    def __init__(self, message: str, help: str | Callable[[], str] = "", path: tuple[str | int, ...] = ()) -> None:
        super().__init__(message)
        self.message, self._help, self.path = message, help, path

    @property
    def help(self) -> str:
        """What to write instead; worked out when it is asked for."""
        return self._help() if callable(self._help) else self._help

    def __str__(self) -> str:
        return f"{self.message}; {self.help}" if self.help else self.message


class Quantity(NamedTuple):
    """A quantity of the vocabulary.

    `dimension`: powers of m, kg, s, K, A. `units`: every accepted spelling and its symbol, symbols included.
    `shown`: the customary and the SI symbol of a page. `plausible`: the limits in SI.
    """

    id: str
    title: str
    reference: str
    dimension: tuple[int, int, int, int, int]
    units: dict[str, str]
    shown: tuple[str, str]
    plausible: tuple[float, float]

    def symbols(self) -> list[str]:
        """The accepted unit symbols, in the order of the vocabulary."""
        return list(dict.fromkeys(self.units.values()))

    def symbol(self, spelling: str) -> str:
        """The symbol of a unit as written; raises QuantityError for any other spelling."""
        if not isinstance(spelling, str):
            raise QuantityError(f"{spelling!r} is not a text", "quote the unit")
        if spelling in self.units:
            return self.units[spelling]
        raise QuantityError(f"{spelling!r} is not a unit of {self.title.lower()}", lambda: _try(spelling, self))

    def si(self, value: float, spelling: str) -> float:
        """The SI value of a number in one of this quantity's units."""
        return to_si(value, self.symbol(spelling), self.reference)

    def width(self, value: float, spelling: str) -> float:
        """The SI size of a difference of two such values: a tolerance, an error, a resolution.

        For an absolute temperature it is written in delta_degC, delta_degF or K.
        """
        difference = str(spelling).startswith("delta_") and spelling in units()
        symbol = spelling if difference else self.symbol(spelling)
        if units()[symbol].dimension != self.dimension:
            raise QuantityError(f"{spelling!r} is not a unit of {self.title.lower()}", lambda: _try(spelling, self))
        if units()[symbol].exact_offset:
            raise QuantityError(f"{spelling!r} is a temperature, not a difference", f"write delta_{symbol}")
        return to_si(value, symbol, "difference")


def quantity(id: str, data: dict[str, Any]) -> Quantity:
    """A Quantity from an entry of the vocabulary; raises QuantityError with the field that is wrong."""
    spellings: dict[str, str] = {}
    for symbol, others in data["units"].items():
        if symbol not in units():
            raise QuantityError(f"there is no unit {symbol!r}", _near(symbol, units()), ("units", symbol))
        for spelling in [symbol, *others]:
            if spellings.setdefault(spelling, symbol) != symbol:
                raise QuantityError(f"{spelling!r} is spelled for two units", "keep one of them", ("units", symbol))
            if spelling in TRAPS:
                raise QuantityError(f"{spelling!r} is never a unit here", f"write {TRAPS[spelling]}", ("units", symbol))
    dimension = units()[next(iter(data["units"]))].dimension
    for symbol in data["units"]:
        if units()[symbol].dimension != dimension:
            raise QuantityError(f"{symbol} measures something else", "keep units of one dimension", ("units", symbol))
    shown = (data["shown"]["customary"], data["shown"]["si"])
    reference, plausible = data["reference"], data["plausible"]
    for side, symbol in (("customary", shown[0]), ("si", shown[1]), ("unit", plausible["unit"])):
        if symbol not in data["units"]:
            field = ("plausible", "unit") if side == "unit" else ("shown", side)
            raise QuantityError(f"{symbol!r} is not among the units", _near(symbol, data["units"]), field)
    if reference not in REFERENCES:
        raise QuantityError(f"{reference!r} is no reference", _near(reference, REFERENCES), ("reference",))
    if (reference == "none") == (dimension in (PRESSURE, TEMPERATURE)):
        raise QuantityError(
            f"the reference {reference} does not fit",
            "pressures and temperatures have one, nothing else has",
            ("reference",),
        )
    low, high = (to_si(plausible[side], plausible["unit"], reference) for side in ("min", "max"))
    if low >= high:
        raise QuantityError("the lower plausible limit is not below the upper", "exchange them", ("plausible", "min"))
    if reference == "absolute" and low < 0:
        raise QuantityError("an absolute value below zero", "raise the limit", ("plausible", "min"))
    return Quantity(id, data["title"], reference, dimension, spellings, shown, (low, high))


def quantities_of(book: Book) -> dict[str, Quantity]:
    """The sound quantities of a book by id; those that are not sound are reported by the checks."""
    sound = {}
    for id, record in book.of("quantities").items():
        if not getattr(record, "sound", True):
            continue
        try:
            sound[id] = quantity(id, record.data)
        except QuantityError:
            continue
    return sound


def _try(spelling: str, quantity: Quantity) -> str:
    meant = TRAPS.get(spelling)
    if spelling[:-1] in ("psi", "bar") and meant in quantity.units:
        return f"write {meant}; gauge or absolute is a field of the quantity, and this one is {quantity.reference}"
    if meant in quantity.units:
        return f"write {meant}"
    meant = next((known for known in quantity.units if _plain(known) == _plain(spelling)), "")
    if spelling in units() or not meant:  # a unit of something else, or of another size, is never offered as a slip
        return f"write {or_list(quantity.symbols())}"
    return f"did you mean {meant}?"


def _plain(spelling: str) -> str:
    """A spelling without what people vary: capitals, spaces, points and doubled letters."""
    return re.sub(r"(.)\1", r"\1", re.sub(r"[\s._·-]", "", spelling.casefold()))


def _near(word: str, known: Iterable[str]) -> str:
    near = nearest(word, known)
    return f"did you mean {near}?" if near else f"write one of {', '.join(list(known)[:8])}"


def or_list(choices: list[str]) -> str:
    """Choices as a sentence lists them: "psi, kPa or bar"."""
    return choices[0] if len(choices) == 1 else f"{', '.join(choices[:-1])} or {choices[-1]}"
