"""A car: its systems, where its parts lie, which readings and faults it can have."""

from __future__ import annotations

from bayleaf.diagnosis.car.car import (
    Car,
    car_of_job,
    car_of_system,
    car_of_vehicle,
    faults_of,
    inputs_of,
    offers,
    places_of,
    present,
    readings_of,
    systems_of,
    usable,
    within,
)
from bayleaf.diagnosis.car.layout import Layout, Places, Wants, layout_of

__all__ = [
    "Car",
    "Layout",
    "Places",
    "Wants",
    "car_of_job",
    "car_of_system",
    "car_of_vehicle",
    "faults_of",
    "inputs_of",
    "layout_of",
    "offers",
    "places_of",
    "present",
    "readings_of",
    "systems_of",
    "usable",
    "within",
]
