"""Diagnosis: verdicts on readings, the fault matrix, and the faults that a job's readings leave. Pure computing."""

from __future__ import annotations

from bayleaf.diagnosis.band import Band
from bayleaf.diagnosis.car import Car, car_of_job, car_of_system, car_of_vehicle, faults_of, readings_of, systems_of
from bayleaf.diagnosis.choose import band_of
from bayleaf.diagnosis.compute import Desk
from bayleaf.diagnosis.instrument import Instrument, instrument_of
from bayleaf.diagnosis.isolate import Figures, Isolation, isolation_of
from bayleaf.diagnosis.judge import judge
from bayleaf.diagnosis.judgement import OUTSIDE, Judgement
from bayleaf.diagnosis.layout import Layout, layout_of
from bayleaf.diagnosis.matrix import Matrix, Row, matrix_of, matrix_of_system
from bayleaf.diagnosis.replay import replay
from bayleaf.diagnosis.verdict import KINDS, Verdict, judge_answer, judge_value, provable

__all__ = [
    "KINDS", "OUTSIDE", "Band", "Car", "Desk", "Figures", "Instrument", "Isolation", "Judgement", "Layout", "Matrix",
    "Row", "Verdict", "band_of", "car_of_job", "car_of_system", "car_of_vehicle", "faults_of", "instrument_of",
    "isolation_of", "judge", "judge_answer", "judge_value", "layout_of", "matrix_of", "matrix_of_system", "provable",
    "readings_of", "replay", "systems_of",
]  # fmt: skip
