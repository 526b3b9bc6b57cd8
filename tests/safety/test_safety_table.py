"""The vocabulary of the book against the table of hazards that it was made from.

Source: the trade's usual table of hazards of fuel work; common practice, no source. Each row is a piece of work that
a workshop does and the hazard that must follow from it, so that a trigger or a state that is lost in the vocabulary is
missed here, where no rule could miss it.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from bayleaf.checks.context import Context
from bayleaf.records import load
from tests.data import book_of

VOCABULARY = Path(__file__).resolve().parents[2] / "kb" / "vocabulary"
WORDS = {
    kind: yaml.load((VOCABULARY / f"{kind}.yaml").read_bytes(), yaml.CSafeLoader)
    for kind in ("acts", "states", "conditions", "hazards", "cautions")
}
PSI_130, PSI_5000 = ({"value": value, "unit": "psi"} for value in (130, 5000))
PATHS = {
    "port": [
        {
            "name": "supply",
            "carries": "fuel",
            "side": "low",
            "through": ["tank", "pump", "rail", "injector"],
            "greatest": PSI_130,
        },
        {"name": "circuit", "carries": "current", "through": ["post", "socket", "pump"]},
        {"name": "reference", "carries": "vacuum", "through": ["duct", "hose"]},
    ],
    "direct": [
        {
            "name": "high",
            "carries": "fuel",
            "side": "high",
            "through": ["high-rail", "high-injector"],
            "greatest": PSI_5000,
        }
    ],
    "air": [{"name": "air", "carries": "air", "through": ["duct"]}],
    "vapour": [{"name": "vapour", "carries": "vapour", "through": ["canister"]}],
    "gas": [{"name": "gas", "carries": "exhaust", "through": ["converter"]}],
    "water": [{"name": "water", "carries": "coolant", "through": ["radiator"]}],
}
READINGS = {
    "pressure": {"quantity": "rail-pressure", "at": "rail"},
    "volts": {"quantity": "voltage", "at": "pump"},
    "driver": {"quantity": "voltage", "at": "high-injector"},
}


def walk(*steps: dict, where: str = "bay", needs: tuple[str, ...] = ()):
    parts = {p for paths in PATHS.values() for path in paths for p in path["through"]}
    procedure = {
        "title": "P",
        "systems": "none",
        "inherits": "none",
        "needs": {"states": list(needs), "equipment": "none", "people": 1},
        "leaves": "none",
        "where": [where],
        "steps": [{"do": "x", **s} for s in steps],
    }
    book = book_of(
        {
            **WORDS,
            "systems": {id: {"title": id, "family": "fuel", "paths": paths} for id, paths in PATHS.items()},
            "components": {p: {"title": p} for p in parts},
            "readings": {
                id: {
                    "title": id,
                    "when": "engine-off" if id != "pressure" else "pump-priming",
                    "valid_if": "none",
                    **data,
                }
                for id, data in READINGS.items()
            },
            "procedures": {"p": procedure},
        }
    )
    context = Context(book)
    return context, book.get("p")


def hazards(*steps: dict, **more) -> set[str]:
    context, record = walk(*steps, **more)
    return {met.hazard for met in context.procedures.met(record)}


POUR = {"act": "pour"}
OPEN, CLOSE = {"act": "open-joint", "at": "rail"}, {"act": "close-joint", "at": "rail"}
TABLE = [
    ("a joint opened on a path that can see 100 psi", "fluid-under-skin", [OPEN], {}),
    (
        "the pressure measured there",
        "fluid-under-skin",
        [{"takes": {"reading": "pressure", "instrument": "gauge"}}],
        {},
    ),
    ("a leak looked for there", "fluid-under-skin", [{"act": "leak-check", "at": "rail"}], {}),
    ("a fuel line shut", "gauge-burst", [{"act": "clamp", "at": "rail"}], {}),
    ("a joint opened hot", "fuel-on-hot-parts", [OPEN], {"needs": ("engine-hot",)}),
    ("a joint opened with only the engine cool", "fuel-on-hot-parts", [OPEN], {"needs": ("engine-cool",)}),
    ("a joint opened with only the exhaust cool", "fuel-on-hot-parts", [OPEN], {"needs": ("exhaust-cool",)}),
    ("fuel bled into a container", "caught-fuel", [{"act": "bleed", "at": "rail"}], {}),
    ("the volume test", "pumped-into-container", [{"act": "energise-pump"}], {"needs": ("joint-into-container",)}),
    ("the volume test", "caught-fuel", [{"act": "energise-pump"}], {"needs": ("joint-into-container",)}),
    ("a pump run dry", "dry-pump", [{"act": "energise-pump"}], {"needs": ("tank-drained",)}),
    ("a pump run on the bench", "dry-pump", [{"act": "energise-pump"}], {"where": "bench"}),
    (
        "an electrical reading at the tank",
        "spark-at-the-tank",
        [{"takes": {"reading": "volts", "instrument": "multimeter"}}],
        {},
    ),
    ("a connector moved at the pump", "spark-at-the-tank", [{"act": "disconnect-electrical", "at": "pump"}], {}),
    ("a joint opened with no zero seen", "joint-without-zero", [OPEN], {}),
    ("the high side opened", "direct-injection-high-side", [{"act": "open-joint", "at": "high-rail"}], {}),
    ("the high side looked at", "direct-injection-high-side", [{"act": "leak-check", "at": "high-rail"}], {}),
    ("a jumper at a relay socket", "relay-bypassed", [{"equipment": ["fused-switched-jumper"]}], {}),
    ("full load on a rolling road", "car-leaves-the-rollers", [{"equipment": ["rolling-road"]}], {}),
    (
        "the key on in a car that can start itself",
        "unasked-start",
        [{"act": "key-on"}],
        {"needs": ("can-start-itself",)},
    ),
    (
        "a start of a car that can start itself",
        "unasked-start",
        [{"act": "start-engine"}],
        {"needs": ("can-start-itself",)},
    ),
    ("anything at a hot engine", "hot-engine-bay", [{}], {"needs": ("engine-hot",)}),
    ("an engine that runs", "exhaust-gas", [{"act": "start-engine"}], {}),
    ("an engine that runs", "moving-parts", [{"act": "start-engine"}], {}),
    ("an engine that is cranked", "moving-parts", [{"act": "crank"}], {}),
    ("an engine cranked that may fire", "exhaust-gas", [{"act": "crank"}], {}),
    (
        "a vacuum hose pulled off a running engine",
        "fuel-from-the-nipple",
        [{"act": "start-engine"}, {"act": "disconnect", "at": "hose"}],
        {},
    ),
    ("a vapour line taken off", "pressurised-tank", [{"act": "disconnect", "at": "canister"}], {}),
    ("a blow gun", "blown-dirt", [{"equipment": ["blow-gun"]}], {}),
    ("an engine turned that may fire", "firing-when-turned", [{"act": "crank-disabled"}], {}),
    ("an engine that runs on a lift", "running-on-a-lift", [{"act": "start-engine"}, {}], {"where": "lift"}),
    ("full load", "driven-at-full-load", [{"when": "full-load"}], {"where": "road"}),
    ("a tank lowered on a lift", "balance-on-the-lift", [{"sets": ["tank-lowered"]}, {}], {"where": "lift"}),
    ("the air cleaner off and the engine turned", "backfire", [{"act": "crank"}], {"needs": ("air-inlet-open",)}),
    (
        "a leak search with the engine hot",
        "flammable-leak-search",
        [{"act": "leak-check", "at": "duct"}],
        {"needs": ("engine-hot",)},
    ),
    (
        "a leak search with the engine running",
        "flammable-leak-search",
        [{"act": "start-engine"}, {"act": "leak-check", "at": "hose"}],
        {},
    ),
    ("smoke into the evaporative system", "gas-into-vapour-space", [{"act": "pressurise", "at": "canister"}], {}),
    ("any pressurising", "over-pressure", [{"act": "pressurise", "at": "duct"}], {}),
    (
        "an injector pulsed on the bench",
        "injector-on-the-bench",
        [{"act": "pressurise", "at": "injector"}],
        {"where": "bench"},
    ),
    (
        "cranking with leaking injectors",
        "liquid-in-the-cylinder",
        [{"act": "crank"}],
        {"needs": ("injectors-disabled",)},
    ),
    ("cranking with the plugs out", "liquid-in-the-cylinder", [{"act": "crank"}], {"needs": ("plugs-out",)}),
    (
        "cranking with the plugs out and the ignition off",
        "liquid-in-the-cylinder",
        [{"act": "crank-disabled"}],
        {"needs": ("plugs-out",)},
    ),
    ("a spark test", "spark-in-the-open", [{"equipment": ["spark-tester"]}], {}),
    (
        "the driver of a direct injector measured",
        "high-voltage-driver",
        [{"takes": {"reading": "driver", "instrument": "multimeter"}}],
        {},
    ),
    ("the exhaust opened with the engine on", "open-exhaust", [{"act": "start-engine"}], {"needs": ("exhaust-open",)}),
    ("work at the converter", "hot-exhaust-parts", [{"act": "open-joint", "at": "converter"}], {}),
    ("coolant opened hot", "scalding-coolant", [{"act": "open-joint", "at": "radiator"}], {}),
    ("the booster hose off", "no-brake-assistance", [{"act": "start-engine"}], {"needs": ("booster-hose-off",)}),
    (
        "the battery connected again",
        "battery-gas",
        [{"act": "connect-electrical", "at": "post"}],
        {"needs": ("battery-isolated",)},
    ),
    ("a battery support", "battery-gas", [{"equipment": ["battery-support"]}], {}),
    ("the pump run at all", "leak-seen", [{"act": "energise-pump"}], {}),
    ("a joint opened near a flame", "flame-near-fuel", [OPEN], {}),
    ("fuel on the skin", "fuel-on-the-body", [OPEN], {}),
    ("fuel left over", "waste-fuel-left", [{"act": "bleed", "at": "rail"}], {}),
    ("fuel poured in the bay", "caught-fuel", [{"act": "pour"}], {}),
    ("fuel poured near a flame", "flame-near-fuel", [{"act": "pour"}], {"where": "bench"}),
    ("fuel poured over hands", "fuel-on-the-body", [{"act": "pour"}], {}),
    ("what was poured left over", "waste-fuel-left", [{"act": "pour"}], {}),
    ("the filler cap opened", "pressurised-tank", [{"act": "open-cap", "at": "neck"}], {}),
    ("the filler cap opened", "flame-near-fuel", [{"act": "open-cap", "at": "neck"}], {}),
    ("the filler cap opened by a charged hand", "static-on-the-body", [{"act": "open-cap", "at": "neck"}], {}),
    ("a vapour line pulled off by a charged hand", "static-on-the-body", [{"act": "disconnect", "at": "canister"}], {}),
    (
        "a vapour line off near a flame",
        "flame-near-fuel",
        [{"act": "cool-down"}, {"act": "disconnect", "at": "canister"}],
        {},
    ),
    ("a tank that was drained", "static-on-the-body", [{}], {"needs": ("tank-drained",)}),
    ("a tank that was drained", "alone-at-the-tank", [{}], {"needs": ("tank-drained",)}),
    ("a seat lifted off the tank", "restraint-under-the-seat", [{"act": "lift-seat", "at": "tank"}], {}),
    ("a charger at an open joint", "charger-at-an-open-joint", [OPEN], {}),
    ("a phone at an open joint", "phone-at-the-tank", [OPEN], {}),
]


@pytest.mark.parametrize(("work", "hazard", "steps", "more"), TABLE, ids=[f"{row[1]}: {row[0]}" for row in TABLE])
def test_this_work_meets_its_hazard(work, hazard, steps, more):
    assert hazard in hazards(*steps, **more)


@pytest.mark.parametrize(
    ("hazard", "steps", "more"),
    [
        ("fluid-under-skin", [{"act": "open-joint", "at": "radiator"}], {}),
        ("fuel-on-hot-parts", [{"act": "cool-down"}, OPEN], {}),
        ("joint-without-zero", [OPEN], {"needs": ("zero-seen",)}),
        ("spark-at-the-tank", [{"act": "disconnect-electrical", "at": "socket"}], {}),
        ("running-on-a-lift", [{"act": "key-on"}], {"where": "lift"}),
        ("exhaust-gas", [{"act": "crank"}], {"needs": ("pump-disabled",)}),
        ("fuel-from-the-nipple", [{"act": "disconnect", "at": "hose"}], {}),
        ("scalding-coolant", [{"act": "cool-down"}, {"act": "open-joint", "at": "radiator"}], {}),
        ("direct-injection-high-side", [OPEN], {}),
        ("high-voltage-driver", [{"takes": {"reading": "volts", "instrument": "multimeter"}}], {}),
        ("caught-fuel", [{"act": "pour"}], {"where": "bench"}),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_this_work_does_not_meet_that_hazard(hazard, steps, more):
    assert hazard not in hazards(*steps, **more)


def test_every_hazard_that_can_be_derived_is_in_the_table_or_met_by_a_procedure_of_the_book():
    book = load(VOCABULARY.parents[1])
    context = Context(book)
    met = {
        one.hazard
        for record in book.of("procedures").values()
        if record.sound
        for one in context.procedures.met(record)
    }
    derived = {id for id, hazard in WORDS["hazards"].items() if hazard["triggers"] != "none"}
    assert derived - met - {row[1] for row in TABLE} == set()


STATES = [
    (
        "fuel-pressure-relieved",
        "ended_by",
        {"key-on", "door-open", "crank", "energise-pump", "start-engine", "cool-down"},
    ),
    ("zero-seen", "ended_by", {"key-on", "door-open", "crank", "energise-pump", "start-engine"}),
    ("high-side-safe", "ended_by", {"key-on", "crank", "energise-pump", "start-engine", "cool-down"}),
    ("engine-cool", "ended_by", {"start-engine", "drive"}),
    ("exhaust-cool", "ended_by", {"start-engine", "drive"}),
    ("joint-open", "requires", {"fuel-pressure-relieved", "engine-cool", "exhaust-cool"}),
    (
        "joint-open",
        "forbids",
        {
            "key-on",
            "door-open",
            "crank",
            "energise-pump",
            "start-engine",
            "connect-electrical",
            "disconnect-electrical",
            "drive",
        },
    ),
    ("joint-unproved", "forbids", {"crank", "start-engine", "drive", "hand-over"}),
    ("joint-unproved", "ended_by", {"leak-check"}),
    (
        "joint-into-container",
        "forbids",
        {"crank", "start-engine", "connect-electrical", "disconnect-electrical", "drive"},
    ),
    ("joint-into-container", "requires", {"container-bonded"}),
    (
        "filler-open",
        "forbids",
        {
            "key-on",
            "crank",
            "start-engine",
            "energise-pump",
            "connect-electrical",
            "disconnect-electrical",
            "drive",
            "hand-over",
        },
    ),
    (
        "vapour-line-open",
        "forbids",
        {"crank", "start-engine", "connect-electrical", "disconnect-electrical", "drive", "hand-over"},
    ),
    ("vapour-line-open", "requires", {"exhaust-cool"}),
    ("container-bonded", "ended_by", {"unbond"}),
    ("running", "forbids", {"open-joint", "pour"}),
    ("carburettor-line-into-container", "requires", {"container-bonded"}),
    ("gauge-on-rail", "forbids", {"drive", "hand-over"}),
    ("sender-on-rail", "forbids", {"hand-over"}),
    *(
        (state, "forbids", {"hand-over"})
        for state in (
            "gauge-before-filter",
            "shut-offs-fitted",
            "pump-disabled",
            "jumper-at-relay",
            "battery-isolated",
            "air-inlet-open",
            "plugs-out",
            "injectors-disabled",
            "exhaust-open",
            "booster-hose-off",
            "tank-lowered",
            "tank-drained",
        )
    ),
]


@pytest.mark.parametrize(("state", "field", "acts"), STATES, ids=[f"{s} {f}" for s, f, _a in STATES])
def test_a_state_says_at_least_what_the_table_says(state, field, acts):
    said = WORDS["states"][state][field]
    assert acts <= set(said if isinstance(said, list) else [])


def test_no_connection_but_the_sender_may_be_driven():
    connections = {
        id for id, state in WORDS["states"].items() if state.get("connection") and "drive" not in state["forbids"]
    }
    assert connections == {"sender-on-rail"}


@pytest.mark.parametrize(
    "id", ["fuel-pressure-relieved", "zero-seen", "high-side-safe", "tank-shut", "air-inlet-open", "joint-unproved"]
)
def test_the_states_that_rules_name_are_in_the_vocabulary(id):
    assert id in WORDS["states"]
