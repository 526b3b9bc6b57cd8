"""On random small books the engine says exactly what the definitions say."""

from __future__ import annotations

import random

import pytest

from bayleaf.diagnosis.belief.evidence import evidence_of
from bayleaf.diagnosis.car.car import car_of_system
from bayleaf.diagnosis.faults.isolate import isolation_of
from bayleaf.diagnosis.faults.matrix import matrix_of
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.judgement import Judgement, Suspect
from tests.data import book_of
from tests.diagnosis import definitions

PRACTICE = {"practice": True}
VARIABLES = 8
ANSWERS = ["none", "low", "normal", "high", "unsteady"]
QUANTITY = {
    "title": "Level",
    "reference": "none",
    "units": {"V": "none"},
    "shown": {"customary": "V", "si": "V"},
    "plausible": {"min": 0, "max": 100, "unit": "V", "basis": PRACTICE},
}


def random_book(r: random.Random) -> dict:
    components = {f"c{i}": {"title": f"C{i}"} for i in range(6)}
    components |= {
        "c6": {"title": "C6", "part_of": "c0"},
        "c7": {"title": "C7", "part_of": "c6"},
        "c8": {"title": "C8"},
    }
    names = list(components)
    variables = {f"v{i}": {"title": "V", "influences": random_influences(r)} for i in range(VARIABLES)}
    for component in r.sample(names, 6):
        components[component]["variables"] = [f"v{r.randrange(VARIABLES)}"]
    readings = {f"r{i}": random_reading(r, names) for i in range(r.randint(2, 6))}
    systems = {}
    for s in ("s0", "s1"):
        paths = [
            {"name": name, "carries": "fuel", "through": r.sample(names[:6], r.randint(1, 4))}
            for name in r.sample(["p", "q", "v"], r.randint(1, 2))
        ]
        bands = {id: random_band(r) for id, reading in readings.items() if "quantity" in reading and r.random() < 0.7}
        systems[s] = {"title": s, "paths": paths, "bands": bands, "has": "none"}
    symptoms = ["x", "y", "z"]
    return {
        "quantities": {"level": QUANTITY},
        "components": components,
        "variables": variables,
        "conditions": {c: {"title": c, "implies": ["running"] if c == "k0" else []} for c in ("k0", "k1")},
        "readings": readings,
        "systems": systems,
        "equipment": {
            f"e{w}": {"title": "E", "measures": ["level"], "error": {"value": w, "unit": "V"}} for w in (1, 3, 9)
        },
        "symptoms": {s: {"title": s, **({"prevents": ["running"]} if s == "z" else {})} for s in symptoms},
        "faults": {f"f{i}": random_fault(r, names, readings, symptoms) for i in range(r.randint(2, 6))},
    }


def random_influences(r: random.Random) -> list[dict]:
    """Few enough that some readings are reached and some are not; circles come by themselves."""
    found = []
    for _ in range(r.randint(0, 2)):
        limits = {"when": ["running"], "in": ["s0"], "unless": ["k1"]}
        kept = {field: limit for field, limit in limits.items() if r.random() < 0.2}
        found.append({"to": f"v{r.randrange(VARIABLES)}", **kept})
    return found


def random_reading(r: random.Random, components: list[str]) -> dict:
    place = {"at": r.choice(components)} if r.random() < 0.7 else {"between": r.sample(components, 2)}
    place["when"] = r.choice(["k0", "k1"])
    if r.random() < 0.8:
        place["observes"] = r.choice([[f"v{r.randrange(VARIABLES)}"], [r.choice(components)]])
    if r.random() < 0.3:
        return {
            "title": "Q",
            "answers": ["dry", "wet", "off", "none"],
            "healthy": r.choice([["dry"], ["dry", "off"]]),
            **place,
        }
    return {"title": "M", "quantity": "level", "purpose": r.choice(["diagnosis", "diagnosis", "computation"]), **place}


def random_band(r: random.Random) -> dict:
    low = r.randint(10, 60)
    band = {
        "min": low,
        "max": low + r.randint(2, 30),
        "unit": "V",
        "means": r.choice(["limit", "spread"]),
        "basis": PRACTICE,
    }
    if r.random() < 0.3:
        del band[r.choice(["min", "max"])]
    return band


def random_answers(r: random.Random, reading: dict) -> object:
    pool = reading.get("answers", ANSWERS)
    if r.random() < 0.35:
        return r.sample(pool, r.randint(2, 3))
    return r.choice([*pool, *reading.get("healthy", ["normal"])])


def random_stage(r: random.Random, readings: dict) -> dict:
    return {id: random_answers(r, reading) for id, reading in readings.items() if r.random() < 0.6}


def random_fault(r: random.Random, components: list[str], readings: dict, symptoms: list[str]) -> dict:
    stages = {"one": random_stage(r, readings)}
    if r.random() < 0.5:
        stages["two"] = {"like": "one", **random_stage(r, readings)} if r.random() < 0.6 else random_stage(r, readings)
    for stage in stages.values():
        if r.random() < 0.2:
            stage["felt"] = r.choice(["none", {r.choice(symptoms): "sometimes"}])
    fault = {
        "title": "F",
        "part": r.choice(components),
        "commonness": r.choice(["common", "occasional", "rare"]),
        "stages": stages,
        "felt_as": {s: r.choice(["always", "sometimes"]) for s in r.sample(symptoms, r.randint(1, 2))},
        "mended_by": [{"words": "Mend it."}],
    }
    if r.random() < 0.3:
        fault["systems"] = r.sample(["s0", "s1"], r.randint(1, 2))
    if r.random() < 0.4:
        fault["disturbs"] = [f"v{r.randrange(VARIABLES)}"]
    if r.random() < 0.2:
        fault["damages"] = [r.choice(components)]
    if r.random() < 0.3:
        fault["differs"] = {r.choice(["s0", "s1"]): {r.choice(["all", *stages]): random_stage(r, readings)}}
    return fault


def random_job(r: random.Random, data: dict) -> dict:
    entries = []
    for _ in range(r.randint(0, 5)):
        id = r.choice(list(data["readings"]))
        reading, draw = data["readings"][id], r.random()
        if draw < 0.12:
            entries.append({"repaired": r.choice(list(data["faults"]))})
        elif draw < 0.2:
            entries.append({"reading": id, "cannot": "no tool"})
        elif "answers" in reading or draw < 0.3:
            entries.append({"reading": id, "answer": r.choice(reading.get("answers", ["none", "unsteady"]))})
        else:
            entries.append(
                {
                    "reading": id,
                    "value": r.choice([r.randint(0, 105), r.randint(5, 95)]),
                    "unit": "V",
                    "instrument": r.choice(list(data["equipment"])),
                }
            )
        if "reading" in entries[-1] and "cannot" not in entries[-1] and r.random() < 0.1:
            entries[-1] |= r.choice([{"fault_was": "absent"}, {"not_met": ["warm"]}, {"fault_was": "present"}])
    maker = {
        id: {"min": 20, "max": 40, "unit": "V", "looked_up": "…"}
        for id, x in data["readings"].items()
        if "quantity" in x and r.random() < 0.3
    }
    return {
        "title": "J",
        "car": {"systems": r.choice([["s0"], ["s1"], ["s0", "s1"], ["s1", "s0"]]), "has": "none"},
        "shop": "none",
        "felt": r.choice(["none", ["x"], ["x", "y"], ["y", "z"]]),
        "readings": entries or "none",
        "maker_bands": maker or "none",
    }


def plain(job: dict) -> dict:
    """The job with `none` as an empty list or map, for the definitions."""
    return {
        **job,
        "readings": [] if job["readings"] == "none" else job["readings"],
        "maker_bands": {} if job["maker_bands"] == "none" else job["maker_bands"],
    }


@pytest.mark.parametrize("block", range(20))
def test_a_judgement_is_what_the_definitions_say(block):
    for seed in range(block * 150, block * 150 + 150):
        r = random.Random(seed)
        data = random_book(r)
        job = random_job(r, data)
        wanted = definitions.judge(data, plain(job))
        book = book_of({**data, "jobs": {"j": job}})
        judgement = judge(book, book.of("jobs")["j"])
        evidence = evidence_of(matrix_of(book, judgement.car), list(judgement.taken))
        assert {k: set(v) for k, v in evidence.items()} == wanted["evidence"], f"seed {seed}"
        suspects = [*judgement.left, *judgement.besides]
        assert {item.fault: set(item.stages) for item in suspects} == wanted["fits"], f"seed {seed}"
        assert {item.fault: item.share for item in suspects} == pytest.approx(
            {fault: float(share) for fault, share in wanted["shares"].items()}
        ), f"seed {seed}"
        assert judgement.outside == pytest.approx(float(wanted["outside"])), f"seed {seed}"
        assert_left(judgement, suspects)
        assert {d.of: set(d.brings) for d in judgement.doubts if not d.repair} == wanted["back"], f"seed {seed}"
        assert {frozenset(pair.faults): pair.weight for pair in judgement.pairs} == pytest.approx(
            {pair: float(weight) for pair, weight in wanted["pairs"].items()}
        ), f"seed {seed}"
        assert [p.weight for p in judgement.pairs] == sorted((p.weight for p in judgement.pairs), reverse=True)


def assert_left(judgement: Judgement, suspects: list[Suspect]) -> None:
    """*Left* is the shortest list, likeliest first, that holds 95 % of the belief in all that fits."""
    shares = [item.share for item in suspects]
    assert shares == pytest.approx(sorted(shares, reverse=True))
    wanted, many = 0.95 * sum(shares), len(judgement.left)
    assert sum(shares[:many]) >= wanted * (1 - 1e-9)
    assert not many or sum(shares[: many - 1]) < wanted * (1 + 1e-9)


@pytest.mark.parametrize("block", range(10))
def test_groups_are_what_the_definitions_say(block):
    for seed in range(block * 30, block * 30 + 30):
        data = random_book(random.Random(seed))
        remaining = definitions.may_remain(data, ["s0"])
        wanted: dict[str, set[str]] = {}
        for (fault, _stage), faults in remaining.items():
            wanted.setdefault(fault, set()).update(faults - {fault})
        groups = {frozenset(faults) for faults in remaining.values() if len(faults) > 1}
        book = book_of(data)
        found = isolation_of(book, car_of_system(book, "s0")).whole
        assert {f: set(others) for f, others in found.alike.items()} == wanted, f"seed {seed}"
        assert {frozenset(g) for g in found.groups} == {g for g in groups if not any(g < other for other in groups)}, (
            f"seed {seed}"
        )


def test_the_random_books_reach_every_corner():
    """The comparison is worth something only if its books do reach what is to be compared."""
    reached = {"left": 0, "nothing left": 0, "pairs": 0, "doubts": 0, "well": 0, "several left": 0}
    for seed in range(3000):
        r = random.Random(seed)
        data = random_book(r)
        wanted = definitions.judge(data, plain(random_job(r, data)))
        reached["left"] += bool(wanted["fits"])
        reached["several left"] += len(wanted["fits"]) > 1
        reached["nothing left"] += not wanted["fits"]
        reached["pairs"] += bool(wanted["pairs"])
        reached["doubts"] += bool(wanted["back"])
        reached["well"] += bool(wanted["convicts"])
    assert min(reached.values()) >= 30, reached
