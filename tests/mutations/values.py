"""Slips in numbers, units, quantities and bases."""

from __future__ import annotations

import copy
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.quantities import units
from bayleaf.records import Record
from tests.mutations.mutant import BLIND, CAUGHT, MOSTLY, Mutant, at, changed, operator, without

POINT = "a number that stays plausible and has no neighbour of the same reading is believed: only its basis can tell"
PROBES = ("kg", "degC", "A", "rpm", "m", "V", "psi", "s")


JUDGED = ("systems", "vehicles", "jobs", "procedures", "hazards", "fuels")
TIMES = "; how long a step lasts, and how much is bled, are judged against little else"
BOUNDS = "the limits of the vocabulary, of an instrument and of a calculator are what other numbers are held against; few stand above them"


def _numbers(record: Record, context: Context, judged: bool) -> Iterator[tuple[tuple, float]]:
    if (record.kind in JUDGED) == judged:
        for amount in context.amounts.of(record):
            yield from ((path, value) for path, value in amount.numbers.items() if value)


def _scaled(record: Record, path: tuple, value: float, factor: float) -> Mutant:
    new = float(f"{value * factor:.9g}")
    new = int(new) if isinstance(value, int) and new == int(new) else new
    return changed(record, path, new, f"{'.'.join(map(str, path))}: {value} → {new}")


@operator("figure of the car × 10", MOSTLY, POINT + TIMES, *JUDGED, least=0.3)
def ten_times(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (_scaled(record, path, value, 10) for path, value in _numbers(record, context, True))


@operator("figure of the car ÷ 10", MOSTLY, POINT + TIMES, *JUDGED, least=0.15)
def a_tenth(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (_scaled(record, path, value, 0.1) for path, value in _numbers(record, context, True))


@operator("limit or property × 10", BLIND, BOUNDS)
def ten_times_a_limit(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (_scaled(record, path, value, 10) for path, value in _numbers(record, context, False))


@operator("limit or property ÷ 10", BLIND, BOUNDS)
def a_tenth_of_a_limit(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (_scaled(record, path, value, 0.1) for path, value in _numbers(record, context, False))


@operator(
    "number + 5 %",
    BLIND,
    "a figure that is a little off is a claim about the world; where a formula or a conversion stands beside it, that tells",
)
def a_little(record: Record, context: Context) -> Iterator[Mutant]:
    for judged in (True, False):
        yield from (_scaled(record, path, value, 1.05) for path, value in _numbers(record, context, judged))


@operator("unit of another dimension", CAUGHT, "a unit is looked up in the quantity's own list")
def other_dimension(record: Record, context: Context) -> Iterator[Mutant]:
    for amount in context.amounts.of(record):
        if amount.meant and amount.unit in units():
            mine = {units()[u].dimension for q in amount.choices for u in q.symbols()}
            unit = next((u for u in PROBES if u in units() and units()[u].dimension not in mine), None)
            if unit:
                yield changed(record, amount.unit_path, unit, f"{amount.unit} → {unit}")


@operator(
    "other unit of the same quantity",
    MOSTLY,
    POINT + ", and near units (kPa and psi differ by seven) stay inside it",
    least=0.25,
)
def other_unit(record: Record, context: Context) -> Iterator[Mutant]:
    for amount in context.amounts.of(record):
        if amount.meant and amount.numbers:
            unit = next(
                (
                    u
                    for u in amount.quantity.symbols()
                    if u != amount.unit and units()[u].factor != units().get(amount.unit, units()[u]).factor
                ),
                None,
            )
            if unit:
                yield changed(record, amount.unit_path, unit, f"{amount.unit} → {unit}")


@operator(
    "gauge for absolute",
    MOSTLY,
    "where neither a band, an instrument nor a formula holds the reading, the wrong reference is a claim like any other",
    "readings",
    "calculators",
    least=0.8,
)
def other_reference(record: Record, context: Context) -> Iterator[Mutant]:
    amounts = [("quantity",)] if "quantity" in record.data else []
    amounts += (
        [("inputs", name, "quantity") for name in record.data.get("inputs", {})] if record.kind == "calculators" else []
    )
    for path in amounts:
        mine = context.desk.quantities.get(at(record.data, path))
        for id, other in context.desk.quantities.items():
            pair = {mine.reference, other.reference} if mine else set()
            if (
                mine
                and other.dimension == mine.dimension
                and pair in ({"gauge", "absolute"}, {"vacuum", "absolute"}, {"vacuum", "gauge"})
            ):
                yield changed(record, path, id, f"{mine.id} ({mine.reference}) → {id} ({other.reference})")
                break


@operator("vacuum signed", CAUGHT, "a vacuum is a positive number")
def signed(record: Record, context: Context) -> Iterator[Mutant]:
    for amount in context.amounts.of(record):
        if amount.meant and amount.quantity.reference == "vacuum" and amount.role != "width":
            yield from (
                changed(record, path, -value, f"{value} → {-value}")
                for path, value in amount.numbers.items()
                if value > 0
            )


@operator("min and max exchanged", CAUGHT, "a band whose min is above its max holds nothing")
def exchanged(record: Record, context: Context) -> Iterator[Mutant]:
    for amount in context.amounts.of(record):
        ends = {path[-1]: path for path in amount.numbers}
        if {"min", "max"} <= set(ends):
            data = copy.deepcopy(record.data)
            held = at(data, amount.path)
            held["min"], held["max"] = held["max"], held["min"]
            yield Mutant(record.kind, record.id, amount.path, f"{held['max']} … {held['min']}", data)


def _bases(data: object, path: tuple = ()) -> Iterator[tuple]:
    if isinstance(data, dict):
        for key, value in data.items():
            if key == "basis" and isinstance(value, dict):
                yield (*path, key)
            else:
                yield from _bases(value, (*path, key))
    elif isinstance(data, list):
        for i, value in enumerate(data):
            yield from _bases(value, (*path, i))


@operator("basis removed", CAUGHT, "every number has a basis")
def no_basis(record: Record, context: Context) -> Iterator[Mutant]:
    for path in _bases(record.data):
        if "working" not in at(record.data, path[:-1]):  # a check that is worked in words stands on its words
            yield without(record, path, ".".join(map(str, path)) + " removed")


@operator("basis said to be invented", CAUGHT, "invented numbers live in vehicles and jobs only")
def invented(record: Record, context: Context) -> Iterator[Mutant]:
    if record.kind not in ("vehicles", "jobs"):
        yield from (changed(record, path, {"invented": True}, "invented") for path in _bases(record.data))


@operator("source without its place", CAUGHT, "a published figure says where in the source it stands")
def no_place(record: Record, context: Context) -> Iterator[Mutant]:
    for path in _bases(record.data):
        if "source" in at(record.data, path):
            yield changed(record, path, {"source": at(record.data, path)["source"]}, "no place")


@operator(
    "published basis for common practice",
    BLIND,
    "whether the figure stands in that source only a reader of the source can say",
)
def false_source(record: Record, context: Context) -> Iterator[Mutant]:
    source = next(iter(context.book.of("sources")), None)
    for path in _bases(record.data):
        if source and "practice" in at(record.data, path):
            yield changed(record, path, {"source": source, "place": "table 7"}, f"practice → {source}")
