"""The readings of a job, each with its verdict: typed ones in their order, then those computed from them."""

from __future__ import annotations

import math
from dataclasses import replace

from bayleaf.diagnosis.car.car import Car, inputs_of, offers
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.verdicts.against import against_band
from bayleaf.diagnosis.verdicts.compute import CannotCompute, Desk, Known
from bayleaf.diagnosis.verdicts.instrument import instrument_of
from bayleaf.diagnosis.verdicts.repeated import repeated
from bayleaf.diagnosis.verdicts.taken import ABSENT, Taken
from bayleaf.diagnosis.verdicts.verdict import NOT_PLAUSIBLE, NOT_VALID, Verdict, judge_answer, judge_value
from bayleaf.quantities import QuantityError, from_si, round_half_away, significant, with_unit
from bayleaf.records import Record, listed, mapped


def taken_in(desk: Desk, car: Car, job: Record) -> list[Taken]:
    """Every reading of the job that has a value or an answer, with its verdict, and the computed readings they allow."""
    entries = listed(job.data.get("readings"))
    readings: list[Taken] = []
    for i, entry in enumerate(entries):
        if ("value" in entry or "answer" in entry) and entry["reading"] in desk.book.of("readings"):
            taken = replace(_read(desk, job, i, entry), which=entry.get("which"))
            readings.append(replace(taken, aside=ABSENT) if entry.get("fault_was") == "absent" else taken)
    repairs = [i for i, entry in enumerate(entries) if "repaired" in entry]
    judged = [against_band(desk, car, job, _known(readings, t.which), t) for t in readings]
    readings = repeated(desk, judged, repairs)
    judged = [against_band(desk, car, job, _known(readings, t.which), t) for t in readings]
    return judged + [
        t for which in dict.fromkeys(t.which for t in judged) for t in _computed(desk, car, job, judged, which)
    ]


def _known(readings: list[Taken], which: int | str | None) -> dict[str, Known]:
    """The values in hand for one cylinder, bank or connection: its own, and those that are of the whole car."""
    good = [t for t in readings if not t.aside and t.verdict.kind not in (NOT_VALID, NOT_PLAUSIBLE)]
    return {t.reading: t.known for t in good if t.known and t.which is None} | {
        t.reading: t.known for t in good if t.known and t.which == which
    }


def _read(desk: Desk, job: Record, i: int, entry: dict) -> Taken:
    """An entry before any band is asked for: only whether it is valid and plausible."""
    reading = desk.book.of("readings")[entry["reading"]]
    states = desk.book.of("states")
    not_met = tuple(states[s].title.lower() if s in states else s for s in listed(entry.get("not_met")))
    if "answer" in entry:
        return Taken(
            reading.id, (i,), judge_answer(entry["answer"], "answers" in reading.data, not_met), entry["answer"]
        )
    number = job.typed(("readings", i, "value")) or f"{entry['value']}"
    quantity = desk.quantity(reading.id)
    try:
        value = quantity.si(entry["value"], entry["unit"]) if quantity else None
    except QuantityError:
        value = None
    if quantity is None or value is None:  # a question, or a unit of something else: the job's own check says so
        wrong = Verdict(NOT_VALID, None, words="It is not a number in a unit of this reading.")
        return Taken(reading.id, (i,), wrong, f"{number} {entry['unit']}")
    instrument = instrument_of(desk.book, entry["instrument"], quantity)
    verdict = judge_value(value, None, instrument, plausible=quantity.plausible, not_met=not_met)
    unit = quantity.symbol(entry["unit"])
    known = Known(value, instrument.allowance(value) if instrument else None, instrument)
    return Taken(reading.id, (i,), verdict, with_unit(number, unit), known, unit)


def _computed(desk: Desk, car: Car, job: Record, typed: list[Taken], which: int | str | None) -> list[Taken]:
    """The readings that what was typed allows to compute, for one cylinder, bank or connection or for the whole car."""
    layout, known = layout_of(desk.book), _known(typed, which)
    computed_readings: list[Taken] = []
    own = {t.reading for t in typed if t.which == which}
    for id, record in desk.book.of("readings").items():
        inputs = inputs_of(desk.book, id)
        if not own & set(inputs) or not all(r in known for r in inputs) or not offers(desk.book, layout, car, id):
            continue
        computed, quantity = record.data["computed"], desk.quantity(id)
        if quantity is None:
            continue
        try:
            if "difference" in computed:
                value = desk.difference(known, computed["difference"]["of"], computed["difference"]["less"])
            else:
                value = desk.calculate(
                    known, car, computed["calculator"], mapped(computed["inputs"]), computed.get("result")
                )
        except CannotCompute:
            continue
        places = tuple(
            sorted(t.places[-1] for t in typed if t.reading in inputs and t.which in (None, which) and not t.aside)
        )
        unit = quantity.units.get(record.data.get("unit", ""), quantity.shown[0])
        allowance = from_si(value.allowance or 0.0, unit, "difference")
        said = with_unit(_no_finer(from_si(value.value, unit, quantity.reference), allowance), unit)
        taken = Taken(id, places, judge_value(value.value, None), said, value, unit, computed=True, which=which)
        computed_readings.append(against_band(desk, car, job, known, taken))
    return computed_readings


def _no_finer(x: float, allowance: float) -> str:
    """A computed number to a tenth of what it may be out by; to three digits where that is not known."""
    if allowance <= 0:
        return significant(x, 3)
    return f"{round_half_away(x, 1 - math.floor(math.log10(allowance))):f}"
