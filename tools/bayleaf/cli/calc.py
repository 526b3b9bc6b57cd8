"""`bayleaf calc ID NAME=VALUE …`: one calculation. Without an ID it lists the calculators."""

from __future__ import annotations

import argparse
import json
import math
import re
from dataclasses import dataclass

from bayleaf.checks import check_record
from bayleaf.cli import book_options, root_of
from bayleaf.finding import CouldNotRun
from bayleaf.formulas import Calculator, FormulaError, Input, compile_calculator
from bayleaf.nearest import nearest
from bayleaf.quantities import QuantityError, from_si, quantities_of, read_value, show, to_si, with_unit
from bayleaf.records import Book, Record, load
from bayleaf.report import text

_LINK = re.compile(r"\[\[([^\[\]|]+)(?:\|([^\[\]|]+))?\]\]")


@dataclass(frozen=True)
class Given:
    """One input as it stands: the number as typed, its unit, the SI value, and whether nobody typed it."""

    value: float
    unit: str
    x: float
    default: bool


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("id", nargs="?", metavar="ID", help="the calculator; left out, they are listed")
    parser.add_argument("values", nargs="*", metavar="NAME=VALUE", help='an input with its unit, as boost="10 psi"')
    parser.add_argument("--format", choices=("text", "json"), default="text")


def run(args: argparse.Namespace) -> int:
    """Calculate and print; 0, or 2 with one line when it cannot be done."""
    book = load(root_of(args), args.overlay)
    if args.id is None:
        print(_list(book, args.format))
        return 0
    record = _record(book, args.id)
    try:
        calc = compile_calculator(record.data, quantities_of(book))
    except FormulaError as err:
        raise CouldNotRun(f"{record.file}: the calculator cannot be used: {err}") from None
    wrong = next((f for f in check_record(book, record) if f.level == "error" and f.code.startswith("CALC-")), None)
    if wrong:  # a calculator that fails its own worked checks gives no figure
        raise CouldNotRun(
            f"{wrong.file}:{wrong.line}:{wrong.column}: {text.plain(wrong.message)}; mend it first, bayleaf check says how"
        )
    given = _given(calc, args.values)
    lines = calc.evaluate({name: one.x for name, one in given.items()})
    if all(math.isnan(lines[name]) for name in calc.results):
        raise CouldNotRun(f"{record.id} has no result for these values; change one of {', '.join(calc.inputs)}")
    warnings = [*_outside(calc, given), *_doubtful(calc, lines)]
    print((_text if args.format == "text" else _json)(record, calc, given, lines, warnings))
    return 0


def _list(book: Book, form: str) -> str:
    titles = {id: record.title for id, record in sorted(book.of("calculators").items())}
    if form == "json":
        return json.dumps(titles, indent=2, ensure_ascii=False)
    wide = max(map(len, titles), default=0)
    return "\n".join(f"{id:{wide}}  {title}" for id, title in titles.items()) or "no calculators"


def _record(book: Book, id: str) -> Record:
    known = book.of("calculators")
    if id not in known:
        raise CouldNotRun(f"there is no calculator {id!r}; {_near(id, known, 'run bayleaf calc for the list')}")
    if not known[id].sound:
        raise CouldNotRun(f"{known[id].file} is not sound; run bayleaf check {known[id].file}")
    if known[id].data.get("replaced_by"):
        raise CouldNotRun(f"{id} is retired; use {known[id].data['replaced_by']}")
    return known[id]


def _near(word: str, known, otherwise: str = "") -> str:
    near = next((one for one in known if word and one.startswith(word)), "") or nearest(word, known)
    return f"did you mean {near}?" if near else otherwise or f"there are {', '.join(known)}"


def _given(calc: Calculator, words: list[str]) -> dict[str, Given]:
    typed: dict[str, str] = {}
    for word in words:
        name, equals, value = word.partition("=")
        name = name.strip()
        if not equals:
            raise CouldNotRun(f"{word!r} is no input; write NAME=VALUE, as {_example(calc)}")
        if name not in calc.inputs:
            raise CouldNotRun(f"there is no input {name!r}; {_near(name, calc.inputs)}")
        if name in typed:
            raise CouldNotRun(f"{name} is given twice; keep one")
        if not value.strip():
            raise CouldNotRun(f"{name} has no value; write it as {_example(calc, name)}")
        typed[name] = value
    return {name: _one(one, typed.get(name)) for name, one in calc.inputs.items()}


def _one(one: Input, text: str | None) -> Given:
    if text is None:
        return Given(one.typed[0], one.symbol, one.default, True)
    try:
        value, unit = read_value(text, one.quantity)
    except QuantityError as err:
        raise CouldNotRun(f"{one.name}: {err}") from None
    x = to_si(value, unit, one.quantity.reference) if math.isfinite(value) else math.inf
    low, high = one.quantity.plausible
    if not low <= x <= high:
        limits = " to ".join(f"{from_si(side, unit, one.quantity.reference):.6g}" for side in (low, high))
        raise CouldNotRun(
            f"{one.name}: {text.strip()!r} cannot be; {one.quantity.title.lower()} lies within {with_unit(limits, unit)}"
        )
    return Given(value, unit, x, False)


def _example(calc: Calculator, name: str = "") -> str:
    one = calc.inputs[name or next(iter(calc.inputs))]
    return f'{one.name}="{f"{one.typed[0]:.12g} {one.symbol}" if one.symbol != "1" else f"{one.typed[0]:.12g}"}"'


def _outside(calc: Calculator, given: dict[str, Given]) -> list[str]:
    """Inputs beyond the limits within which the calculator holds."""
    found = []
    for name, one in calc.inputs.items():
        if not one.low <= given[name].x <= one.high:
            low, high = (f"{number:.12g}" for number in one.typed[1:])
            found.append(
                f"{name} is outside the limits within which this holds, {low} to {with_unit(high, one.symbol)}"
            )
    return found


def _doubtful(calc: Calculator, lines: dict[str, float]) -> list[str]:
    """Results that are undefined, or that no car shows."""
    found = []
    for name, result in calc.results.items():
        low, high = result.quantity.plausible
        if math.isnan(lines[name]):
            found.append(f"{name} is undefined for these values")
        elif not low <= lines[name] <= high:
            found.append(f"{name} is not a plausible {result.quantity.title.lower()}")
    return found


def _text(
    record: Record, calc: Calculator, given: dict[str, Given], lines: dict[str, float], warnings: list[str]
) -> str:
    wide = max(map(len, [*given, *calc.results]))
    said = [record.title, ""]
    for name, value in given.items():
        number = f"{value.value:.12g}"
        shown = show(value.x, calc.inputs[name].quantity, 4, value.unit, number)
        said.append(f"  {name:{wide}}  {shown}{'   (default)' if value.default else ''}")
    said += ["", *(f"  {name:{wide}}  {one.shown(lines[name])}" for name, one in calc.results.items()), ""]
    said += [f"warning: {warning}" for warning in warnings]
    said += [f"Holds: {_plain(record.data['holds'])}", f"Fails: {_plain(record.data['fails'])}"]
    return "\n".join(said)


def _json(
    record: Record, calc: Calculator, given: dict[str, Given], lines: dict[str, float], warnings: list[str]
) -> str:
    results = {}
    for name, one in calc.results.items():
        x = None if math.isnan(lines[name]) else lines[name]
        value = None if x is None else from_si(x, one.symbol, one.quantity.reference)
        results[name] = {"value": value, "unit": one.symbol, "shown": one.shown(lines[name]), "si": x}
    inputs = {
        name: {"value": one.value, "unit": one.unit, "si": one.x, "default": one.default} for name, one in given.items()
    }
    said = {
        "calculator": record.id,
        "title": record.title,
        "inputs": inputs,
        "results": results,
        "warnings": warnings,
        "holds": _plain(record.data["holds"]),
        "fails": _plain(record.data["fails"]),
    }
    return json.dumps(said, indent=2, ensure_ascii=False, allow_nan=False)


def _plain(text: str) -> str:
    """A prose field without its link brackets."""
    return _LINK.sub(lambda match: match[2] or match[1], text)
