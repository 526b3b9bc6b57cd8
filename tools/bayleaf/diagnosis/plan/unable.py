"""Before a test: whether what it is taken with, alone or twice for a difference, can ever prove its reading in band."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.diagnosis.car.car import Car, offers, usable
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.plan.actions import Action
from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.instrument import SLACK, Instrument, instrument_of
from bayleaf.diagnosis.verdicts.verdict import provable
from bayleaf.quantities import Quantity
from bayleaf.records import Record, listed, mapped


def unable(desk: Desk, car: Car, job: Record, action: Action) -> tuple[str, ...]:
    """What to tell a technician before he takes a test with an instrument that can decide nothing, and what would."""
    said = []
    for reading, tool in action.readings.items():
        band, _missing = band_of(desk, car, reading, job, {})
        quantity = desk.quantity(reading)
        held = instrument_of(desk.book, tool, quantity) if tool and quantity else None
        if band and quantity and held and _states(held) and not provable(band, held):
            able = [i.title for i in _tools(desk, job, quantity) if provable(band, i)]
            said.append(_words(held.title, desk, reading, band, able))
    return (*said, *_pairs(desk, car, job, action))


def _pairs(desk: Desk, car: Car, job: Record, action: Action) -> Iterator[str]:
    """The same for a difference of two readings that this test takes."""
    for id, record in desk.book.of("readings").items():
        of = mapped(mapped(record.data.get("computed")).get("difference"))
        tools = {action.readings.get(reading, "") for reading in of.values()}
        if not of or len(tools) != 1 or not all(tools) or not offers(desk.book, layout_of(desk.book), car, id):
            continue
        band, _missing = band_of(desk, car, id, job, {})
        quantity = desk.quantity(of["of"])
        held = instrument_of(desk.book, tools.pop(), quantity) if quantity else None
        if band and quantity and held and _states(held) and not _parts(band, held):
            able = [i.title for i in _tools(desk, job, quantity) if _parts(band, i)]
            yield _words(f"{held.title}, read twice,", desk, id, band, able)


def _parts(band: Band, tool: Instrument) -> bool:
    """Whether a difference read with one tool can lie in band by more than it may be out."""
    out_by = tool.allowance_of_difference()
    if out_by is None:
        ends = [x for x in (tool.low, tool.high) if x is not None]
        errors = [e for e in map(tool.allowance, ends) if e is not None]
        out_by = 2 * min(errors) if errors else None
    if out_by is None:
        return False
    if band.low is None or band.high is None:
        return True
    return band.high - band.low >= 2 * (out_by + band.slack) - SLACK * abs(band.high)


def _states(tool: Instrument) -> bool:
    """Whether an instrument says what it may be out by."""
    return bool(tool.zones) or tool.share is not None or tool.fixed is not None


def _tools(desk: Desk, job: Record, quantity: Quantity) -> list[Instrument]:
    """Every instrument for a quantity that states its error, those of the shop first."""
    shop = listed(job.data.get("shop"))
    result = [
        instrument_of(desk.book, id, quantity)
        for id, record in sorted(desk.book.of("equipment").items(), key=lambda item: (item[0] not in shop, item[0]))
        if usable(record) and quantity.id in listed(record.data.get("measures"))
    ]
    return [tool for tool in result if tool and _states(tool)]


def _words(tool: str, desk: Desk, reading: str, band: Band, able: list[str]) -> str:
    title = desk.book.of("readings")[reading].title
    better = f"Able to: {', '.join(able[:3])}." if able else "No instrument of this book is able to."
    return f"{tool} can never prove in band: {title} ({band.text}). {better}"
