"""What an instrument can prove about a band, said before anybody connects it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from decimal import Decimal

from bayleaf.diagnosis.car.car import car_of_system
from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import Known
from bayleaf.diagnosis.verdicts.instrument import Instrument, instrument_of
from bayleaf.diagnosis.verdicts.verdict import provable
from bayleaf.pages.building.blocks import blocks, heading, para, table
from bayleaf.pages.building.inline import EMPTY, inline, joined, small, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.steps import Step, walk
from bayleaf.pages.parts.worked import name_words
from bayleaf.quantities import Quantity, from_si, round_inward, with_unit
from bayleaf.records import mapped

LOW, IN_BAND, HIGH = "Surely low at or below", "Surely in band", "Surely high at or above"
ABOUT = (
    "The instrument's own error and what can be read off it are counted against the reading. Between these figures it is too close to call: "
    "zero and bleed the instrument, take a better one, or go on to the next test."
)
SPREAD = ", a spread over many cars: inside it only the maker's figure decides."
OFF = "cannot: off its scale"
GAUGE = "gauge-good-enough"


def proof(view: Uses, steps: list[Step], systems: list[str]) -> Markup:
    """What instruments can prove, under its heading; empty where nothing can be said."""
    tables = proof_tables(view, steps, systems)
    return (
        blocks(
            heading(3, "instruments", "What your instrument can prove"), tables, para(small(ABOUT, other_gauge(view)))
        )
        if tables
        else EMPTY
    )


def other_gauge(view: Uses) -> Markup:
    """Where any other gauge and band is worked out."""
    return (
        inline(" For another gauge or the maker's band: ", view.link(GAUGE), ".")
        if view.get(GAUGE, "calculators")
        else EMPTY
    )


def proof_tables(view: Uses, steps: list[Step], systems: list[str]) -> Markup:
    """For each band of each reading a table of every instrument of the type that the steps name."""
    used = {
        takes["reading"]: takes["instrument"]
        for step in walk(steps)
        if "instrument" in (takes := mapped(step.data.get("takes")))
    }
    tables = []
    for reading, type, inputs in _pairs(view, used):
        by_result: dict[tuple, list[str]] = {}
        for system in systems:
            band, note = _band(view, system, reading)
            rows = tuple(_rows(view, system, band, reading, type, inputs)) if band else ()
            if band and rows:
                by_result.setdefault((note, band.spread, rows), []).append(system)
        for (note, spread, rows), those in by_result.items():
            on = inline(" (", joined(view.links(those)), ")") if len(by_result) > 1 else EMPTY
            tables.append(blocks(para(strong(view.link(reading)), on, ": ", note), _table(rows, spread)))
    return blocks(*tables)


def _table(rows: tuple, spread: bool) -> Markup:
    """Those that can say something, and under them in one line those whose scale ends short of both limits."""
    useful = [row for row in rows if not row[1] == row[3] == strong(OFF)]
    others = joined(row[0] for row in rows if row not in useful)
    keep = (0, 1, 3) if spread else (0, 1, 2, 3)
    head = ("Instrument", LOW, IN_BAND, HIGH)
    limits = table([head[i] for i in keep], ([row[i] for i in keep] for row in useful), css="bl-proof")
    return blocks(limits, para(small("Of no use here, its scale does not reach: ", others, ".")) if others else EMPTY)


def _pairs(view: Uses, used: dict[str, str]) -> Iterator[tuple[str, str, list[str]]]:
    """(reading, type of instrument, the two readings that it is a difference of, taken with one instrument)."""
    for reading, type in used.items():
        yield reading, type, []
    for record in view.live("readings"):
        inputs = list(mapped(mapped(record.data.get("computed")).get("difference")).values())
        types = {used.get(reading, "") for reading in inputs}
        if len(types) == 1 and "" not in types:
            yield record.id, types.pop(), inputs


def _rows(view: Uses, system: str, band: Band, reading: str, type: str, inputs: list[str]) -> Iterator[tuple]:
    """(instrument, surely low, surely in band, surely high) for each instrument of a type."""
    quantity = view.quantity(reading)
    limit = band.high if band.low is None else band.low
    if quantity is None or limit is None:
        return
    needed = [
        edge
        for input in inputs
        if (needs := _band(view, system, input)[0])
        for edge in (needs.low, needs.high)
        if edge is not None
    ]
    for record in view.kinds_of.get(type, []):
        instrument = instrument_of(view.book, record.id, quantity)
        if instrument is None:
            continue
        reaches = all(map(instrument.reaches, needed))  # a difference needs both its readings on the scale
        if inputs:
            instrument = as_difference(instrument)
        if instrument.allowance(limit) is not None:
            cells = proves(view, reading, quantity, band, instrument) if reaches else (strong(OFF), EMPTY, strong(OFF))
            yield view.link(record.id), *cells


def _band(view: Uses, system: str, reading: str) -> tuple[Band | None, Markup]:
    """The band of a reading and what to say of it; an expectation is taken where its calculator starts."""
    car = car_of_system(view.book, system)
    expected = mapped(mapped(mapped(view.book.of("systems")[system].data.get("bands")).get(reading)).get("expected"))
    calc = view.calculators.get(expected.get("calculator", ""))
    known, said = {}, []
    inputs = calc.inputs if calc else {}
    for name, feed in mapped(expected.get("inputs")).items() if calc else ():
        one = inputs[name]
        if "reading" in feed:
            known[feed["reading"]] = Known(one.default)
        if feed.get("car") == "altitude":
            car = car._replace(altitude={"value": one.typed[0], "unit": one.symbol})
        if "value" not in feed:
            said.append(with_unit(f"{name_words(name)} {one.typed[0]:g}", one.symbol))
    band = band_of(view.desk, car, reading, known=known)[0]
    if band is None:
        return None, EMPTY
    if known or said:
        return band, inline(
            "typically ",
            band.text,
            ", at ",
            joined(said),
            " as ",
            view.link(expected["calculator"]),
            " starts with. Work it out for this car.",
        )
    return band, inline(band.text, SPREAD if band.spread else ".")


def as_difference(instrument: Instrument) -> Instrument:
    """The instrument as it judges a difference: only its repeatability counts, and no end of the scale."""
    return instrument._replace(
        low=None, high=None, zones=(), share=None, fixed=instrument.allowance_of_difference(), readability=None
    )


def proves(
    view: Uses, reading: str, quantity: Quantity, band: Band, instrument: Instrument
) -> tuple[Markup, Markup, Markup]:
    """What an instrument proves about a band: surely low, surely in band, surely high, each as words for a cell."""
    unit = view.book.of("readings")[reading].data.get("unit") or quantity.shown[0]

    def inward(x: float, up: bool) -> Decimal | None:
        value = float(f"{from_si(x, unit, quantity.reference):.9g}")  # 59.4999999999 is 59.5 that went through SI
        return None if math.isinf(x) else round_inward(value, None, 3)[0] if up else round_inward(None, value, 3)[1]

    def show(limit: Decimal | None) -> str:
        return "no limit" if limit is None else with_unit(f"{limit:f}", unit)

    def window(a: Decimal | None, b: Decimal | None) -> str:
        if a is None or b is None:
            return f"up to {show(b)}" if a is None else f"from {show(a)}"
        return f"{show(a)} to {show(b)}" if a <= b else ""

    low = high = text("no limit")
    if band.low is not None:
        edge = band.low - (instrument.allowance(band.low) or 0.0)
        low = text(show(inward(edge, up=False))) if instrument.reaches(edge) else strong(OFF)
    if band.high is not None:
        edge = band.high + (instrument.allowance(band.high + (instrument.allowance(band.high) or 0.0)) or 0.0)
        high = text(show(inward(edge, up=True))) if instrument.reaches(edge) else strong(OFF)
    if band.spread:
        return low, small("the maker's figure decides"), high
    windows = filter(None, (window(inward(a, up=True), inward(b, up=False)) for a, b in provable(band, instrument)))
    return low, text(" or ".join(windows)) or strong("never: its error is too wide for this band"), high
