"""One reading against the band that rules: its verdict, whether its unit is right, and what would decide it."""

from __future__ import annotations

from dataclasses import replace

from bayleaf.diagnosis.car.car import Car, usable
from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import Desk, Known
from bayleaf.diagnosis.verdicts.instrument import instrument_of
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.diagnosis.verdicts.verdict import (
    HIGH,
    IN_BAND,
    INSIDE_SPREAD,
    LOW,
    NOT_PLAUSIBLE,
    NOT_VALID,
    TOO_CLOSE,
    Verdict,
    judge_value,
)
from bayleaf.quantities import Quantity, from_si, significant, with_unit
from bayleaf.records import Record, listed


def against_band(desk: Desk, car: Car, job: Record, known: dict[str, Known], taken: Taken) -> Taken:
    """The same reading, judged by the band that rules."""
    if taken.known is None or taken.verdict.kind == NOT_VALID:
        return taken
    quantity = desk.quantity(taken.reading)
    if quantity is None:
        return taken
    band, missing = band_of(desk, car, taken.reading, job, known)
    if taken.verdict.kind == NOT_PLAUSIBLE:
        unit = _other_unit(taken, quantity, band)
        return replace(taken, verdict=taken.verdict._replace(what_to_do=unit)) if unit else taken
    instrument, allowance = taken.known.instrument, None
    if taken.computed:
        instrument, allowance = None, taken.known.allowance
    verdict = judge_value(
        taken.known.value,
        band,
        instrument,
        allowance=allowance,
        plausible=quantity.plausible,
        width=lambda w: with_unit(significant(from_si(w, taken.unit, "difference"), 2), taken.unit),
    )
    if band is None and desk.book.of("readings")[taken.reading].data.get("purpose", "diagnosis") != "diagnosis":
        verdict = verdict._replace(words="Kept for what is worked out from it.", what_to_do="")
    close = verdict.kind == TOO_CLOSE and not taken.computed
    better = _better(desk, job, taken, quantity, verdict) if close else ()
    unit = _other_unit(taken, quantity, band) if verdict.kind in (LOW, HIGH) else ""
    return replace(
        taken,
        verdict=verdict._replace(what_to_do=" ".join(w for w in (verdict.what_to_do, unit, missing) if w)),
        better=better,
    )


def _other_unit(taken: Taken, quantity: Quantity, band: Band | None) -> str:
    """Asks whether the unit is right, where the same number in another unit of the quantity would be in band.

    Only of a band with two limits: with one, a unit that is large or small enough always fits.
    """
    if taken.computed or taken.known is None or band is None or band.low is None or band.high is None:
        return ""
    number = from_si(taken.known.value, taken.unit, quantity.reference)
    for unit in dict.fromkeys(quantity.units.values()):
        if unit == taken.unit:
            continue
        value = quantity.si(number, unit)
        inside = quantity.plausible[0] <= value <= quantity.plausible[1]
        if inside and judge_value(value, band).kind in (IN_BAND, INSIDE_SPREAD):
            return f"In {unit} it would be in band: is the unit right?"
    return ""


def _better(desk: Desk, job: Record, taken: Taken, quantity: Quantity, verdict: Verdict) -> tuple[str, ...]:
    """Instruments that would decide this very value, those of the shop first."""
    shop, value = listed(job.data.get("shop")), taken.known.value if taken.known else 0.0
    able = []
    for id, record in desk.book.of("equipment").items():
        instrument = (
            instrument_of(desk.book, id, quantity) if quantity.id in listed(record.data.get("measures")) else None
        )
        if instrument is None or instrument.allowance(value) is None or not usable(record):
            continue
        if judge_value(value, verdict.band, instrument).kind not in (TOO_CLOSE, NOT_VALID):
            able.append((id not in shop, record.title))
    return tuple(title for _away, title in sorted(able))
