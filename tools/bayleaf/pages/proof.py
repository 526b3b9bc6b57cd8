"""What an instrument can prove about a band, said before anybody connects it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from bayleaf.diagnosis import Band, Instrument, band_of, instrument_of, provable
from bayleaf.diagnosis.car import car_of_system
from bayleaf.pages.steps import Step, walk
from bayleaf.pages.text import Markup, text
from bayleaf.pages.uses import Uses
from bayleaf.pages.write import EMPTY, blocks, heading, joined, para, small, strong, table
from bayleaf.quantities import Quantity, from_si, round_inward, with_unit
from bayleaf.records import mapped

HEAD = ("Reading", "Instrument", "Surely low at or below", "Surely in band", "Surely high at or above")
ABOUT = ("The instrument's own error and what can be read off it are counted against the reading. Between these figures it is too close to call: "
         "zero and bleed the instrument, take a better one, or go on to the next test.")  # fmt: skip


def proof(view: Uses, steps: list[Step], systems: Iterable[str]) -> Markup:
    """A table of every instrument of the types that the steps name, against each band; empty where nothing can be said."""
    used = {takes["reading"]: takes["instrument"] for step in walk(steps) if "instrument" in (takes := mapped(step.data.get("takes")))}
    rows = [row for system in systems for reading, type, differs in _pairs(view, used) for row in _rows(view, system, reading, type, differs)]
    made = table(HEAD, dict.fromkeys(rows), css="bl-proof")
    return blocks(heading(3, "instruments", "What your instrument can prove"), made, para(small(ABOUT))) if made else EMPTY


def _pairs(view: Uses, used: dict[str, str]) -> Iterator[tuple[str, str, bool]]:
    """(reading, type of instrument, is it a difference of two readings taken with one)."""
    for reading, type in used.items():
        yield reading, type, False
    for record in view.live("readings"):
        inputs = mapped(mapped(record.data.get("computed")).get("difference"))
        types = {used.get(reading) for reading in inputs.values()}
        if inputs and len(types) == 1 and None not in types:
            yield record.id, types.pop(), True


def _rows(view: Uses, system: str, reading: str, type: str, differs: bool) -> Iterator[tuple]:
    quantity = view.quantity(reading)
    band, _missing = band_of(view.desk, car_of_system(view.book, system), reading)
    if quantity is None or band is None:
        return
    for record in view.kinds_of.get(type, []):
        instrument = instrument_of(view.book, record.id, quantity)
        if instrument is not None and differs:
            instrument = as_difference(instrument)
        if instrument is not None and instrument.allowance(band.low if band.low is not None else band.high) is not None:
            yield view.link(reading), view.link(record.id), *proves(view, reading, quantity, band, instrument)


def as_difference(instrument: Instrument) -> Instrument:
    """The instrument as it judges a difference: only its repeatability counts, and no end of the scale."""
    return replace(instrument, low=None, high=None, zones=(), share=None, fixed=instrument.allowance_of_difference(), readability=None)


def proves(view: Uses, reading: str, quantity: Quantity, band: Band, instrument: Instrument) -> tuple[Markup, Markup, Markup]:
    """What an instrument proves about a band: surely low, surely in band, surely high, each as words for a cell."""
    unit = view.book.of("readings")[reading].data.get("unit") or quantity.shown[0]

    def show(x: float, up: bool) -> str:
        value = float(f"{from_si(x, unit, quantity.reference):.9g}")  # 59.4999999999 is 59.5 that went through SI and back
        limit = round_inward(value, None, 3)[0] if up else round_inward(None, value, 3)[1]
        return with_unit(f"{limit:f}", unit)

    low = high = text("no limit")
    if band.low is not None:
        edge = band.low - (instrument.allowance(band.low) or 0.0)
        low = text(show(edge, up=False)) if instrument.reaches(edge) else strong("cannot: off its scale")
    if band.high is not None:
        edge = band.high + (instrument.allowance(band.high + (instrument.allowance(band.high) or 0.0)) or 0.0)
        high = text(show(edge, up=True)) if instrument.reaches(edge) else strong("cannot: off its scale")
    if band.spread:
        return low, small("the maker's figure decides"), high
    windows = [f"{show(a, up=True)} to {show(b, up=False)}" if abs(a) < 1e300 and abs(b) < 1e300 else
               f"up to {show(b, up=False)}" if abs(b) < 1e300 else f"from {show(a, up=True)}" for a, b in provable(band, instrument)]  # fmt: skip
    return low, joined(windows, " or ") if windows else strong("never: its error is too wide for this band"), high
