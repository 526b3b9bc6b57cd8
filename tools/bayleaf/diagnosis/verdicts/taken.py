"""The readings of a job, each with its verdict: typed ones in their order, then those computed from them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from bayleaf.diagnosis.car.car import Car, inputs_of, offers, usable
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import CannotCompute, Desk, Known
from bayleaf.diagnosis.verdicts.instrument import instrument_of
from bayleaf.diagnosis.verdicts.verdict import (
    HIGH,
    IN_BAND,
    INSIDE_SPREAD,
    LOW,
    NOT_PLAUSIBLE,
    NOT_VALID,
    TOO_CLOSE,
    Verdict,
    judge_answer,
    judge_value,
)
from bayleaf.quantities import Quantity, QuantityError, from_si, round_half_away, significant, with_unit
from bayleaf.records import Record, listed, mapped

ABSENT = "The fault was absent when this was read, so it clears nothing."
REPLACED = "A later reading replaces it."
UNLIKE = "Read twice with nothing mended between, and not alike: unsteady, or misread. Read it again."


@dataclass(frozen=True)
class Taken:
    """One reading of a job. `places` are its indexes in the job's list: one, or those of a computed reading's inputs.

    `which` is the cylinder, bank or connection, None where nobody said. `said` is the value or answer as it was given,
    `unit` the symbol of its unit. `aside` says why it does not count, "" when it counts; `outdated` says that a later
    repair is the reason. `better` names instruments that would decide a value that is too close to call. One that
    `convicts` was out of band while the car was well: it speaks for a fault and clears nothing.
    """

    reading: str
    places: tuple[int, ...]
    verdict: Verdict
    said: str
    known: Known | None = None
    unit: str = ""
    aside: str = ""
    outdated: bool = False
    computed: bool = False
    which: int | str | None = None
    better: tuple[str, ...] = ()
    convicts: bool = False

    @property
    def counts(self) -> bool:
        """Whether it says anything about faults."""
        return not self.aside and self.verdict.answers is not None

    @property
    def clears(self) -> bool:
        """Whether it may clear faults."""
        return self.counts and not self.convicts


def taken_in(desk: Desk, car: Car, job: Record) -> list[Taken]:
    """Every reading of the job that has a value or an answer, with its verdict, and the computed readings they allow."""
    entries = listed(job.data.get("readings"))
    readings: list[Taken] = []
    for i, entry in enumerate(entries):
        if ("value" in entry or "answer" in entry) and entry["reading"] in desk.book.of("readings"):
            taken = replace(_read(desk, job, i, entry), which=entry.get("which"))
            readings.append(replace(taken, aside=ABSENT) if entry.get("fault_was") == "absent" else taken)
    repairs = [i for i, entry in enumerate(entries) if "repaired" in entry]
    judged = [_against_band(desk, car, job, _known(readings, t.which), t) for t in readings]
    readings = _repeated(desk, judged, repairs)
    judged = [_against_band(desk, car, job, _known(readings, t.which), t) for t in readings]
    return judged + [
        t for which in dict.fromkeys(t.which for t in judged) for t in _computed(desk, car, job, judged, which)
    ]


def _repeated(desk: Desk, readings: list[Taken], repairs: list[int]) -> list[Taken]:
    """Of a reading that was taken again the last counts; two that differ with nothing mended between count for nothing.

    Only a reading that says something replaces an earlier one: one taken while the car was well does not.
    """
    result = list(readings)
    for i, early in enumerate(readings):
        for late in readings[i + 1 :]:
            same = (early.reading, early.which) == (late.reading, late.which) and not _beside(desk, early)
            if not same or not _says(early) or not _says(late):
                continue
            between = any(early.places[-1] < repair < late.places[0] for repair in repairs)
            if between or not _unlike(early, late):
                result[i] = replace(result[i], aside=result[i].aside or REPLACED)
            else:
                j = next(n for n, t in enumerate(readings) if t is late)
                result[i], result[j] = replace(result[i], aside=UNLIKE), replace(result[j], aside=UNLIKE)
    return result


def _says(taken: Taken) -> bool:
    return not taken.aside and taken.verdict.kind not in (NOT_VALID, NOT_PLAUSIBLE)


def _unlike(early: Taken, late: Taken) -> bool:
    """Whether two readings of one thing differ by more than their instruments may be out, or prove different answers."""
    if early.known is None or late.known is None:
        return early.said != late.said
    if early.known.allowance is not None and late.known.allowance is not None:
        return abs(early.known.value - late.known.value) > early.known.allowance + late.known.allowance
    both = early.verdict.answers, late.verdict.answers
    return None not in both and both[0].isdisjoint(both[1])


def _known(found: list[Taken], which: int | str | None) -> dict[str, Known]:
    """The values in hand for one cylinder, bank or connection: its own, and those that are of the whole car."""
    good = [t for t in found if t.known and not t.aside and t.verdict.kind not in (NOT_VALID, NOT_PLAUSIBLE)]
    return {t.reading: t.known for t in good if t.which is None} | {
        t.reading: t.known for t in good if t.which == which
    }


def _beside(desk: Desk, taken: Taken) -> bool:
    """Whether entries stand side by side: one of every cylinder, bank or connection, and nobody said of which."""
    return taken.which is None and desk.book.of("readings")[taken.reading].data.get("each", "none") != "none"


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
        value = quantity.si(entry["value"], entry["unit"])
    except (AttributeError, QuantityError):  # a question, or a unit of something else: the job's own check says so
        wrong = Verdict(NOT_VALID, None, words="It is not a number in a unit of this reading.")
        return Taken(reading.id, (i,), wrong, f"{number} {entry['unit']}")
    instrument = instrument_of(desk.book, entry["instrument"], quantity)
    verdict = judge_value(value, None, instrument, plausible=quantity.plausible, not_met=not_met)
    unit = quantity.symbol(entry["unit"])
    known = Known(value, instrument.allowance(value) if instrument else None, instrument)
    return Taken(reading.id, (i,), verdict, with_unit(number, unit), known, unit)


def _against_band(desk: Desk, car: Car, job: Record, known: dict[str, Known], taken: Taken) -> Taken:
    """The same reading, judged by the band that rules."""
    if taken.known is None or taken.verdict.kind == NOT_VALID:
        return taken
    quantity = desk.quantity(taken.reading)
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
    shop = listed(job.data.get("shop"))
    able = []
    for id, record in desk.book.of("equipment").items():
        instrument = (
            instrument_of(desk.book, id, quantity) if quantity.id in listed(record.data.get("measures")) else None
        )
        if instrument is None or instrument.allowance(taken.known.value) is None or not usable(record):
            continue
        if judge_value(taken.known.value, verdict.band, instrument).kind not in (TOO_CLOSE, NOT_VALID):
            able.append((id not in shop, record.title))
    return tuple(title for _away, title in sorted(able))


def _computed(desk: Desk, car: Car, job: Record, typed: list[Taken], which: int | str | None) -> list[Taken]:
    """The readings that what was typed allows to compute, for one cylinder, bank or connection or for the whole car."""
    layout, known, found = layout_of(desk.book), _known(typed, which), []
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
        unit = quantity.units.get(record.data.get("unit"), quantity.shown[0])
        allowance = from_si(value.allowance or 0.0, unit, "difference")
        said = with_unit(_no_finer(from_si(value.value, unit, quantity.reference), allowance), unit)
        taken = Taken(id, places, judge_value(value.value, None), said, value, unit, computed=True, which=which)
        found.append(_against_band(desk, car, job, known, taken))
    return found


def _no_finer(x: float, allowance: float) -> str:
    """A computed number to a tenth of what it may be out by; to three digits where that is not known."""
    if allowance <= 0:
        return significant(x, 3)
    return f"{round_half_away(x, 1 - math.floor(math.log10(allowance))):f}"
