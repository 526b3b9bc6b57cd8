"""Verdicts: a value, its band and its instrument, and what they prove."""

from __future__ import annotations

from bayleaf.diagnosis.verdicts.band import SOURCES, Band, best
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import CannotCompute, Desk, Known
from bayleaf.diagnosis.verdicts.instrument import SLACK, Instrument, instrument_of
from bayleaf.diagnosis.verdicts.verdict import (
    ANSWERED,
    HIGH,
    IN_BAND,
    INSIDE_SPREAD,
    KINDS,
    LOW,
    MEASURED,
    NO_BAND,
    NONE,
    NORMAL,
    NOT_PLAUSIBLE,
    NOT_VALID,
    TOO_CLOSE,
    TYPED_LOW,
    UNSTEADY,
    Verdict,
    judge_answer,
    judge_value,
    provable,
)

__all__ = [
    "ANSWERED",
    "HIGH",
    "INSIDE_SPREAD",
    "IN_BAND",
    "KINDS",
    "LOW",
    "MEASURED",
    "NONE",
    "NORMAL",
    "NOT_PLAUSIBLE",
    "NOT_VALID",
    "NO_BAND",
    "SLACK",
    "SOURCES",
    "TOO_CLOSE",
    "TYPED_LOW",
    "UNSTEADY",
    "Band",
    "CannotCompute",
    "Desk",
    "Instrument",
    "Known",
    "Verdict",
    "band_of",
    "best",
    "instrument_of",
    "judge_answer",
    "judge_value",
    "provable",
]
