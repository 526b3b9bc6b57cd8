"""`bayleaf calc ID NAME=VALUE …`: one calculation. Without an ID it lists the calculators."""

from __future__ import annotations

import argparse
import json
import math
import re
from collections.abc import Iterable
from dataclasses import dataclass

from bayleaf.checks import check_record
from bayleaf.cli import book_options, root_of
from bayleaf.finding import CouldNotRun
from bayleaf.formulas import Calculator, FormulaError, Input, Result, compile_calculator, typeset
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
    warnings = _doubtful(calc, lines)
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


def _near(word: str, known: Iterable[str], otherwise: str = "") -> str:
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
    given = {name: _one(one, typed[name]) for name, one in calc.inputs.items() if name in typed}
    filled = calc.filled({name: one.x for name, one in given.items()})
    values = {name: given.get(name) or _unsaid(one, filled[name]) for name, one in calc.inputs.items()}
    _together(calc, values)
    return values


def _unsaid(one: Input, x: float) -> Given:
    """An input that nobody typed: at its default, or at 0 where an input that excludes it was typed."""
    return Given(one.typed[0] if x == one.default else 0.0, one.symbol, x, True)


def _together(calc: Calculator, values: dict[str, Given]) -> None:
    """Refuse values that exclude or contradict each other, with all of them named."""

    def named(names: Iterable[str]) -> str:
        typed = (f"{name} {with_unit(f'{values[name].value:.12g}', values[name].unit)}" for name in names)
        return " and ".join(typed)

    xs = {name: one.x for name, one in values.items()}
    if away := calc.rivals(xs):
        raise CouldNotRun(f"{named(away)} exclude each other; give one of them")
    for one in calc.contradicted(list(xs.values())):
        inputs = named(name for name in one.names if name in values)
        raise CouldNotRun(f"{inputs or one.text} cannot be: {one.because}; it needs {one.text}")


def _one(one: Input, text: str) -> Given:
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
    if not one.low <= x <= one.high:
        least, most = (f"{number:.12g}" for number in one.typed[1:])
        raise CouldNotRun(f"{one.name}: {text.strip()!r}; this holds from {least} to {with_unit(most, one.symbol)}")
    if one.whole and value != round(value):
        raise CouldNotRun(f"{one.name}: {text.strip()!r} is counted; write a whole number")
    return Given(value, unit, x, False)


def _example(calc: Calculator, name: str = "") -> str:
    one = calc.inputs[name or next(iter(calc.inputs))]
    return f'{one.name}="{f"{one.typed[0]:.12g} {one.symbol}" if one.symbol != "1" else f"{one.typed[0]:.12g}"}"'


def _doubtful(calc: Calculator, lines: dict[str, float]) -> list[str]:
    """Results that are undefined, or that no car shows."""
    matches = []
    for name, result in calc.results.items():
        low, high = result.quantity.plausible
        if math.isnan(lines[name]):
            matches.append(f"{name} is undefined for these values")
        elif not low <= lines[name] <= high:
            matches.append(f"{name} is not a plausible {result.quantity.title.lower()}")
    return matches


def _text(
    record: Record, calc: Calculator, given: dict[str, Given], lines: dict[str, float], warnings: list[str]
) -> str:
    wide = max(map(len, [*given, *calc.results]))
    said = [record.title, ""]
    for name, value in given.items():
        number = f"{value.value:.12g}"
        quantity, digits = (
            calc.inputs[name].quantity,
            min(max(len(re.sub(r"^0*|[^0-9]", "", number.split("e", maxsplit=1)[0])), 2), 4),
        )
        shown = show(value.x, quantity, digits, value.unit, number)
        unsaid = "   (default)" if value.default else ""
        said.append(f"  {name:{wide}}  {shown}{unsaid}   {quantity.title.lower()}")
    results = calc.results.items()
    said += [
        "",
        *(
            f"  {name:{wide}}  {one.shown(lines[name])}{_said(one, lines[name])}   {one.quantity.title.lower()}"
            for name, one in results
        ),
        "",
    ]
    said += ["Formula:", *(f"  {line.plain}" for line in typeset(calc)), ""]
    said += [f"warning: {warning}" for warning in warnings]
    said += [f"Holds: {_plain(record.data['holds'])}", f"Fails: {_plain(record.data['fails'])}"]
    return "\n".join(said)


def _said(result: Result, x: float) -> str:
    """What a result means in words, set off from its number."""
    return f": {words}" if (words := result.said(x)) else ""


def _json(
    record: Record, calc: Calculator, given: dict[str, Given], lines: dict[str, float], warnings: list[str]
) -> str:
    results = {}
    for name, one in calc.results.items():
        x = None if math.isnan(lines[name]) else lines[name]
        value = None if x is None else from_si(x, one.symbol, one.quantity.reference)
        results[name] = {
            "value": value,
            "unit": one.symbol,
            "shown": one.shown(lines[name]),
            "says": one.said(lines[name]),
            "si": x,
        }
    inputs = {
        name: {"value": one.value, "unit": one.unit, "si": one.x, "default": one.default} for name, one in given.items()
    }
    said = {
        "calculator": record.id,
        "title": record.title,
        "inputs": inputs,
        "results": results,
        "formula": [line.plain for line in typeset(calc)],
        "warnings": warnings,
        "holds": _plain(record.data["holds"]),
        "fails": _plain(record.data["fails"]),
    }
    return json.dumps(said, indent=2, ensure_ascii=False, allow_nan=False)


def _plain(text: str) -> str:
    """A prose field without its link brackets."""
    return _LINK.sub(lambda match: match[2] or match[1], text)
