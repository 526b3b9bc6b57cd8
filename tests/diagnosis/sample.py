"""A book of one system for the tests of diagnosis: few readings, few faults, every number invented for the test."""

from __future__ import annotations

from copy import deepcopy

from bayleaf.records import Book, Record
from tests.data import book_of

PRACTICE = {"practice": True}


def _pressure(title: str, reference: str, low: float = 0) -> dict:
    return {
        "title": title,
        "reference": reference,
        "units": {"psi": "none", "kPa": "none"},
        "shown": {"customary": "psi", "si": "kPa"},
        "plausible": {"min": low, "max": 160, "unit": "psi", "basis": PRACTICE},
    }


def measured(title: str, quantity: str, **more: object) -> dict:
    return {
        "title": title,
        "summary": title,
        "status": "draft",
        "quantity": quantity,
        "when": "idle",
        "each": "none",
        "valid_if": "none",
        **more,
    }


def asked(title: str, answers: list[str], normal: str, **more: object) -> dict:
    return {
        "title": title,
        "summary": title,
        "status": "draft",
        "answers": answers,
        "healthy": [normal],
        "when": "idle",
        "each": "none",
        "valid_if": "none",
        **more,
    }


def fault(title: str, part: str, stages: dict, felt: dict, **more: object) -> dict:
    return {
        "title": title,
        "summary": title,
        "status": "draft",
        "part": part,
        "commonness": "common",
        "stages": stages,
        "felt_as": felt,
        "mended_by": ["renew-it"],
        "proved_by": "primed",
        **more,
    }


DATA = {
    "quantities": {
        "rail-pressure": _pressure("Rail pressure", "gauge"),
        "pressure-change": _pressure("Change of pressure", "difference", -160),
        "voltage-drop": {
            "title": "Voltage drop",
            "reference": "none",
            "units": {"V": "none", "mV": "none"},
            "shown": {"customary": "V", "si": "V"},
            "plausible": {"min": 0, "max": 32, "unit": "V", "basis": PRACTICE},
        },
    },
    "fuels": {"gasoline": {"title": "Gasoline"}},
    "variables": {
        "flow": {"title": "Flow", "summary": "…", "influences": ["pressure"]},
        "pressure": {"title": "Pressure", "summary": "…", "influences": "none"},
        "ground-loss": {"title": "Loss in the ground", "summary": "…", "influences": "none"},
    },
    "states": {"tank-quarter-full": {"title": "Tank a quarter full", "summary": "…"}},
    "components": {
        "pump": {"title": "Pump"},
        "check-valve": {"title": "Check valve", "part_of": "pump"},
        "filter": {"title": "Filter"},
        "rail": {"title": "Rail"},
        "test-port": {"title": "Test port", "part_of": "rail"},
        "regulator": {"title": "Regulator"},
        "hose": {"title": "Vacuum hose"},
        "manifold": {"title": "Manifold"},
        "battery": {"title": "Battery"},
        "ground": {"title": "Ground"},
        "spark-plug": {"title": "Spark plug"},
        "carburettor": {"title": "Carburettor"},
    },
    "equipment": {
        "gauge": {"title": "Gauge", "measures": ["rail-pressure"], "repeatability": {"value": 0.5, "unit": "psi"}},
        "gauge-0-100": {
            "title": "Gauge, 0 to 100 psi",
            "type": "gauge",
            "measures": ["rail-pressure"],
            "range": {"min": 0, "max": 100, "unit": "psi"},
            "error": {
                "zones": [
                    {"min": 0, "max": 25, "unit": "psi", "percent_of_span": 3},
                    {"min": 25, "max": 75, "unit": "psi", "percent_of_span": 2},
                    {"min": 75, "max": 100, "unit": "psi", "percent_of_span": 3},
                ]
            },
            "readability": {"value": 1, "unit": "psi"},
        },
        "fine-sender": {
            "title": "Fine sender",
            "measures": ["rail-pressure"],
            "range": {"min": 0, "max": 150, "unit": "psi"},
            "error": {"value": 0.4, "unit": "psi"},
        },
        "meter": {
            "title": "Meter",
            "measures": ["voltage-drop"],
            "range": {"min": 0, "max": 20, "unit": "V"},
            "error": {"percent_of_reading": 1, "counts": 3},
            "resolution": {"value": 0.01, "unit": "V"},
        },
    },
    "systems": {
        "port": {
            "title": "Port injection",
            "family": "fuel",
            "has": ["test-port"],
            "paths": [
                {"name": "supply", "carries": "fuel", "through": ["pump", "filter", "rail"]},
                {"name": "reference", "carries": "vacuum", "through": ["manifold", "hose", "regulator"]},
                {"name": "pump circuit", "carries": "current", "through": ["battery", "pump", "ground"]},
            ],
            "bands": {
                "primed": {"min": 36, "max": 65, "unit": "psi", "means": "spread", "basis": PRACTICE},
                "hose-rise": {"min": 6, "max": 10, "unit": "psi", "means": "limit", "basis": PRACTICE},
                "ground-drop": {"max": 0.3, "unit": "V", "means": "limit", "basis": PRACTICE},
            },
        },
        "feed": {
            "title": "Carburettor feed",
            "family": "fuel",
            "has": "none",
            "bands": "none",
            "paths": [{"name": "supply", "carries": "fuel", "through": ["carburettor"]}],
        },
    },
    "readings": {
        "primed": measured("Primed pressure", "rail-pressure", at="test-port", valid_if=["tank-quarter-full"]),
        "idle": measured("Idle pressure", "rail-pressure", at="rail"),
        "hose-off": measured("Pressure with the hose off", "rail-pressure", at="rail", purpose="computation"),
        "hose-rise": {
            "title": "Rise with the hose off",
            "summary": "…",
            "status": "draft",
            "when": "idle",
            "each": "none",
            "valid_if": "none",
            "at": "regulator",
            "computed": {"difference": {"of": "hose-off", "less": "idle"}, "quantity": "pressure-change"},
        },
        "hose-look": asked("The regulator's hose", ["dry", "wet", "off"], "dry", at="hose", observes=["hose"]),
        "ground-drop": measured("Ground drop", "voltage-drop", between=["pump", "battery"], observes=["ground-loss"]),
        "spark-seen": asked("Spark seen", ["strong", "weak", "none"], "strong", at="spark-plug"),
    },
    "symptoms": {
        "no-power": {"title": "No power on hills"},
        "rough-idle": {"title": "Rough idle"},
        "long-crank": {"title": "Long crank"},
    },
    "procedures": {"renew-it": {"title": "Renew the part"}},
    "faults": {
        "filter-blocked": fault(
            "Filter blocked",
            "filter",
            {
                "partly": {"primed": "normal", "idle": "normal", "hose-rise": "normal"},
                "nearly": {"like": "partly", "primed": "low", "idle": ["low", "normal"]},
            },
            {"no-power": "always"},
            disturbs=["flow"],
        ),
        "hose-is-off": fault(
            "Vacuum hose off",
            "hose",
            {
                "off": {
                    "primed": "normal",
                    "idle": "high",
                    "hose-rise": "low",
                    "hose-look": "off",
                    "ground-drop": "normal",
                }
            },
            {"rough-idle": "always"},
            commonness="occasional",
        ),
        "diaphragm-leaks": fault(
            "Diaphragm leaks",
            "regulator",
            {"leaking": {"primed": "normal", "idle": ["normal", "high"], "hose-look": "wet"}},
            {"rough-idle": "sometimes", "long-crank": "always"},
            commonness="rare",
            mended_by=[{"words": "Fit a new regulator."}],
        ),
        "pump-dead": fault(
            "Pump dead",
            "pump",
            {"dead": {"primed": "none", "idle": "none", "ground-drop": "none"}},
            {"no-power": "always"},
        ),
        "ground-poor": fault(
            "Pump ground poor",
            "ground",
            {"poor": {"ground-drop": "high", "primed": ["normal", "low"]}},
            {"no-power": "sometimes"},
        ),
        "spark-weak": fault(
            "Weak spark",
            "spark-plug",
            {"weak": {"spark-seen": "weak", "primed": "normal"}},
            {"no-power": "always", "rough-idle": "always"},
            systems=["port"],
        ),
    },
}


def book(**changes: dict) -> Book:
    """The sample with entries replaced: book(faults={"x": {...}}) adds or replaces the fault x, None takes it out."""
    data = deepcopy(DATA)
    for kind, entries in changes.items():
        data.setdefault(kind, {}).update(entries)
        data[kind] = {id: entry for id, entry in data[kind].items() if entry is not None}
    return book_of(data)


CAR = {"systems": ["port"], "has": ["test-port"], "fuel": "gasoline", "altitude": {"value": 0, "unit": "m"}}


def job(*readings: dict, felt: object = "none", **more: object) -> Record:
    """A job on a car with the sample's system."""
    data = {
        "title": "A job",
        "summary": "…",
        "status": "draft",
        "car": CAR,
        "shop": "none",
        "felt": felt,
        "readings": list(readings) or "none",
        **more,
    }
    return book_of({"jobs": {"a-job": data}}).of("jobs")["a-job"]


def value(reading: str, number: float, unit: str = "psi", instrument: str = "gauge-0-100", **more: object) -> dict:
    return {"reading": reading, "value": number, "unit": unit, "instrument": instrument, **more}


def answer(reading: str, said: str, **more: object) -> dict:
    return {"reading": reading, "answer": said, **more}
