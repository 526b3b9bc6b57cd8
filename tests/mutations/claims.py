"""Slips in faults, symptoms, codes, systems, calculators and jobs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.diagnosis.faults.spared import Why
from bayleaf.diagnosis.faults.stages import STAGE_FIELDS
from bayleaf.records import Record, listed, mapped
from tests.mutations.mutant import BLIND, CAUGHT, MOSTLY, Mutant, changed, operator, without

OTHER = {"low": "high", "high": "low", "normal": "low", "none": "high", "unsteady": "normal"}
JOB = "what a fault shows is a claim about the world: only a job that goes through it, a band with one limit or a column that becomes like another can contradict it"


def _said(record: Record) -> Iterator[tuple[tuple, str, object]]:
    for stage, answers in record.data["stages"].items():
        yield from ((("stages", stage, r), r, a) for r, a in answers.items() if r not in STAGE_FIELDS)


@operator(
    "answer dropped from a fault",
    BLIND,
    "about what is reached silence only knows less, and what is not reached is healthy by the graph",
    "faults",
)
def silent(record: Record, context: Context) -> Iterator[Mutant]:
    for path, r, _answer in _said(record):
        yield without(record, path, f"silent about {r}")


@operator(
    "answer said of a reading that nothing reaches",
    CAUGHT,
    "where nothing that a fault disturbs reaches, it says nothing but healthy",
    "faults",
)
def unreached(record: Record, context: Context) -> Iterator[Mutant]:
    claims, readings = context.claims, context.book.of("readings")
    stage = next(iter(record.data["stages"]))
    for system in claims.systems(record.id)[:1]:
        for r in claims.readings(system):
            if claims.why(record.id, r, system) is Why.SPARED and r not in claims.said(record.id, system)[stage]:
                known = listed(readings[r].data.get("answers")) or list(OTHER)
                ill = [a for a in known if a not in claims.healthy(system, r)]
                yield changed(record, ("stages", stage, r), ill[0], f"{r}: {ill[0]}")


@operator("answer of a fault turned round", BLIND, JOB, "faults")
def turned(record: Record, context: Context) -> Iterator[Mutant]:
    for path, r, answer in _said(record):
        if isinstance(answer, str):
            known = context.book.of("readings").get(r)
            answers = listed(known.data.get("answers")) if known else []
            new = next((a for a in answers if a != answer), None) if answers else OTHER[answer]
            if new:
                yield changed(record, path, new, f"{r}: {answer} → {new}")


@operator("answer that the reading does not have", CAUGHT, "answers are a closed list", "faults")
def no_such_answer(record: Record, context: Context) -> Iterator[Mutant]:
    yield from (changed(record, path, "lowish", f"{r}: lowish") for path, r, _a in _said(record))


@operator(
    "every answer of a stage made normal",
    MOSTLY,
    "a stage beside others that still show the fault",
    "faults",
    least=0.4,
)
def all_normal(record: Record, context: Context) -> Iterator[Mutant]:
    for stage, answers in record.data["stages"].items():
        system = next(iter(context.claims.systems(record.id)), "")
        known = [r for r in answers if r not in STAGE_FIELDS and r in context.book.of("readings")]
        healthy = {r: sorted(context.claims.healthy(system, r)) for r in known}
        yield changed(record, ("stages", stage), healthy, f"{stage} shows nothing")


@operator("stage made like another", CAUGHT, "two stages differ", "faults")
def same_stage(record: Record, context: Context) -> Iterator[Mutant]:
    names = list(record.data["stages"])
    if len(names) > 1:
        yield changed(record, ("stages", names[1]), {"like": names[0]}, f"{names[1]} as {names[0]}")


@operator("proof exchanged", MOSTLY, "another reading that the fault changes proves it as well", "faults", least=0.5)
def other_proof(record: Record, context: Context) -> Iterator[Mutant]:
    for reading in sorted({r for _p, r, _a in _said(record)})[:6]:
        if record.data["proved_by"] != reading:
            yield changed(record, ("proved_by",), reading, f"proved by {reading}")


@operator("mend dropped", CAUGHT, "a fault has a mend", "faults")
def no_mend(record: Record, context: Context) -> Iterator[Mutant]:
    yield changed(record, ("mended_by",), "none", "no mend")


@operator(
    "symptom dropped from a fault",
    BLIND,
    "what is felt is a claim; only a symptom that is left with one cause, or a job, gives it away",
    "faults",
)
def not_felt(record: Record, context: Context) -> Iterator[Mutant]:
    for symptom in mapped(record.data["felt_as"]):
        yield without(record, ("felt_as", symptom), f"not felt as {symptom}")


@operator(
    "part of a fault exchanged", MOSTLY, "a neighbour on the same paths demands the same readings", "faults", least=0.3
)
def other_part(record: Record, context: Context) -> Iterator[Mutant]:
    parts = list(context.book.of("components"))
    new = parts[(parts.index(record.data["part"]) + len(parts) // 2) % len(parts)]
    yield changed(record, ("part",), new, f"{record.data['part']} → {new}")


@operator("first reading exchanged", MOSTLY, "another useful reading", "symptoms", "codes", least=0.2)
def other_first(record: Record, context: Context) -> Iterator[Mutant]:
    readings = list(context.book.of("readings"))
    for i, id in enumerate(record.data["first"]):
        new = readings[(readings.index(id) + len(readings) // 2) % len(readings)]
        if new not in record.data["first"]:
            yield changed(record, ("first", i), new, f"{id} → {new}")


@operator(
    "component dropped from a path",
    MOSTLY,
    "a part that neither a fault, a reading nor a step of that system hangs on",
    "systems",
    least=0.3,
)
def off_the_path(record: Record, context: Context) -> Iterator[Mutant]:
    for i, path in enumerate(listed(record.data.get("paths"))):
        for n, part in enumerate(path["through"]):
            if len(path["through"]) > 1:
                yield without(record, ("paths", i, "through", n), f"{part} off {path['name']}")


@operator(
    "greatest pressure ÷ 10",
    MOSTLY,
    "a system with one fuel path and no band on it has nothing to hold it against",
    "systems",
    least=0.75,
)
def small_greatest(record: Record, context: Context) -> Iterator[Mutant]:
    for i, path in enumerate(listed(record.data.get("paths"))):
        if "greatest" in path:
            value = path["greatest"]["value"]
            yield changed(
                record, ("paths", i, "greatest", "value"), value / 10, f"{path['name']}: {value} → {value / 10}"
            )


@operator("what the path carries changed", MOSTLY, "a path with no hazard and no fuel", "systems", least=0.7)
def other_carried(record: Record, context: Context) -> Iterator[Mutant]:
    for i, path in enumerate(listed(record.data.get("paths"))):
        new = "air" if path["carries"] == "fuel" else "fuel"
        yield changed(record, ("paths", i, "carries"), new, f"{path['name']}: {path['carries']} → {new}")


@operator("band dropped from a system", MOSTLY, "a reading of which no fault speaks", "systems", least=0.5)
def no_band(record: Record, context: Context) -> Iterator[Mutant]:
    for reading in mapped(record.data.get("bands")):
        yield without(record, ("bands", reading), f"no band for {reading}")


@operator("purpose of a reading changed", MOSTLY, "a reading that is used for both", "readings", least=0.6)
def other_purpose(record: Record, context: Context) -> Iterator[Mutant]:
    if record.data.get("purpose", "diagnosis") == "diagnosis":
        yield changed(record, ("purpose",), "safety", "diagnosis → safety")
    else:
        yield without(record, ("purpose",), f"{record.data['purpose']} → diagnosis")


@operator(
    "operator of a formula changed",
    MOSTLY,
    "a formula that no worked check tells apart at its figures",
    "calculators",
    least=0.95,
)
def formula_operator(record: Record, context: Context) -> Iterator[Mutant]:
    for line, text in record.data["formula"].items():
        for hit in re.finditer(r"(?<=\s)([-+*/])(?=\s)", str(text)):
            new = {"+": "-", "-": "+", "*": "/", "/": "*"}[hit.group()]
            yield changed(
                record,
                ("formula", line),
                f"{text[: hit.start()]}{new}{text[hit.end() :]}",
                f"{line}: {hit.group()} → {new}",
            )


@operator(
    "constant of a formula + 10 %",
    MOSTLY,
    "a constant to which the worked checks are not sensitive within their tolerance",
    "calculators",
    least=0.8,
)
def formula_constant(record: Record, context: Context) -> Iterator[Mutant]:
    for name, constant in mapped(record.data.get("constants")).items():
        new = float(f"{constant['value'] * 1.1:.9g}")
        yield changed(record, ("constants", name, "value"), new, f"{name}: {constant['value']} → {new}")


@operator(
    "worked value + 2 %",
    MOSTLY,
    "a worked check whose tolerance is wider, because its source rounds so",
    "calculators",
    least=0.8,
)
def worked_value(record: Record, context: Context) -> Iterator[Mutant]:
    for i, check in enumerate(record.data["checks"]):
        for name, gives in check["gives"].items():
            new = float(f"{gives['value'] * 1.02:.9g}")
            yield changed(record, ("checks", i, "gives", name, "value"), new, f"{name}: {gives['value']} → {new}")


@operator("input of a formula dropped", CAUGHT, "a name in a formula is an input, a constant or a line", "calculators")
def no_input(record: Record, context: Context) -> Iterator[Mutant]:
    for name in record.data["inputs"]:
        if len(record.data["inputs"]) > 1:
            yield without(record, ("inputs", name), f"no {name}")


@operator("worked check dropped to two", CAUGHT, "at least three come from outside", "calculators")
def few_checks(record: Record, context: Context) -> Iterator[Mutant]:
    yield changed(record, ("checks",), record.data["checks"][:2], "two checks")


@operator("reading of a job × 10", MOSTLY, "a reading that clears nothing more and nothing less", "jobs", least=0.7)
def job_value(record: Record, context: Context) -> Iterator[Mutant]:
    for i, entry in enumerate(listed(record.data["readings"])):
        if entry.get("value"):
            yield changed(
                record, ("readings", i, "value"), entry["value"] * 10, f"{entry['reading']}: {entry['value']} × 10"
            )


@operator("reading of a job dropped", MOSTLY, "a reading that clears what others clear too", "jobs", least=0.1)
def job_reading(record: Record, context: Context) -> Iterator[Mutant]:
    for i, entry in enumerate(listed(record.data["readings"])):
        if "reading" in entry and len(record.data["readings"]) > 1:
            yield without(record, ("readings", i), f"no {entry['reading']}")


@operator("expectation of a job changed", CAUGHT, "the replay leaves exactly what the job expects", "jobs")
def job_expects(record: Record, context: Context) -> Iterator[Mutant]:
    left, faults = record.data["expects"]["left"], list(context.book.of("faults"))
    other = next(f for f in faults if f not in listed(left))
    yield changed(record, ("expects", "left"), [other], f"{left} → {other}")
