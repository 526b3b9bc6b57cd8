"""The engine's definitions written out plainly, slowly and apart from the engine, for the comparison on random books.

Nothing here uses bit masks, SI or the package. A value is judged by asking which truths the instrument allows: with an
allowance w the true value lies between value − w and value + w, in exact fractions of the unit as written.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

WEIGHTS = {"common": 9, "occasional": 3, "rare": 1}


def systems_with(data: dict, fault: dict, systems: list[str]) -> list[str]:
    if "systems" in fault:
        return [s for s in systems if s in fault["systems"]]
    return [s for s in systems if any(lies_on(data, fault["part"], p) for p in data["systems"][s]["paths"])]


def lies_on(data: dict, component: str, path: dict) -> bool:
    above = data["components"][component].get("part_of")
    return component in path["through"] or (above is not None and lies_on(data, above, path))


def exists(data: dict, reading: str, systems: list[str]) -> bool:
    entry = data["readings"][reading]
    places = [entry["at"]] if "at" in entry else entry["between"]
    for component in places:
        everywhere = not any(lies_on(data, component, p) for s in data["systems"].values() for p in s["paths"])
        here = any(lies_on(data, component, p) for s in systems for p in data["systems"][s]["paths"])
        if not (everywhere or here):
            return False
    if "between" not in entry:
        return True
    # Two points are joined by one path; a point on no path at all can be reached from anywhere.
    paths = [p for s in data["systems"].values() for p in s["paths"]]
    ends = [c for c in places if any(lies_on(data, c, p) for p in paths)]
    return not ends or any(all(lies_on(data, c, p) for c in ends) for s in systems for p in data["systems"][s]["paths"])


def stage_answers(data: dict, fault: dict, stage: str, systems: list[str]) -> dict[str, set[str]]:
    """Reading → answers; readings that may give any answer are missing."""
    chain = [stage]
    while "like" in fault["stages"][chain[-1]]:
        chain.append(fault["stages"][chain[-1]]["like"])
    found: dict[str, set[str]] = {}
    for one in reversed(chain):
        layers = [fault["stages"][one]]
        layers += [fault.get("differs", {}).get(s, {}).get("all", {}) for s in fault.get("differs", {}) if s in systems]
        layers += [fault.get("differs", {}).get(s, {}).get(one, {}) for s in fault.get("differs", {}) if s in systems]
        for layer in layers:
            for reading, said in layer.items():
                if reading not in ("like", "felt"):
                    found[reading] = set(said) if isinstance(said, list) else {said}
    for reading, entry in data["readings"].items():
        if (
            reading not in found
            and entry.get("purpose", "diagnosis") == "diagnosis"
            and spared(data, fault, entry, systems)
            and not stopped(data, fault["felt_as"]) & holds_in(data, reading)
        ):
            found[reading] = set(entry.get("healthy", ["normal"]))
    gone = stopped(data, felt_by({"faults": {"": fault}}, "", stage))
    return {reading: answers for reading, answers in found.items() if not gone & holds_in(data, reading)}


def stopped(data: dict, feels: dict[str, str]) -> set[str]:
    """The states that cannot be reached while a fault is felt so."""
    return {x for s, how in feels.items() if how == "always" for x in data["symptoms"][s].get("prevents", [])}


def holds_in(data: dict, reading: str) -> set[str]:
    when = data["readings"][reading]["when"]
    return {when, *data["conditions"][when]["implies"]}


def carried(data: dict, component: str) -> set[str]:
    return set(data["components"][component].get("variables", []))


def spared(data: dict, fault: dict, entry: dict, systems: list[str]) -> bool:
    """Whether nothing that the fault disturbs moves anything that the reading observes, one influence after the other."""
    moved = set(fault.get("disturbs", [])) or carried(data, fault["part"])
    moved = moved.union(*(carried(data, c) for c in fault.get("damages", [])))
    observed = entry.get("observes", [])
    if not moved or not observed:
        return False
    for component in [fault["part"], *fault.get("damages", [])]:
        if any(o in data["components"] and (above(data, o, component) or above(data, component, o)) for o in observed):
            return False
    holds = {entry["when"], *data["conditions"][entry["when"]]["implies"]}
    while True:
        more = {
            i["to"]
            for v in moved
            for i in data["variables"][v]["influences"]
            if ("when" not in i or holds & set(i["when"]))
            and ("in" not in i or set(systems) & set(i["in"]))
            and not holds & set(i.get("unless", []))
        }
        if more <= moved:
            return not moved & set(observed)
        moved |= more


def above(data: dict, component: str, other: str | None) -> bool:
    """Whether the component is the other one or holds it."""
    return other is not None and (
        component == other or above(data, component, data["components"][other].get("part_of"))
    )


def truths(value: Fraction, w: Fraction, low: Fraction | None, high: Fraction | None, spread: bool) -> set[str]:
    """Every answer that the reading may be."""
    possible = set()
    if low is not None and value - w < low:
        possible |= {"low", "none"}
    if high is not None and value + w > high:
        possible.add("high")
    if (low is None or value + w >= low) and (high is None or value - w <= high):
        possible.add("normal")
        # What lies within the limits may be anything that no limit bounds, and inside a spread low or high for this car.
        possible |= {"low", "none"} if low is None else {"low"} if spread else set()
        possible |= {"high"} if high is None or spread else set()
    return possible


def counts(entry: dict) -> bool:
    """Whether an entry is a reading of the car with its fault, valid and plausible."""
    if entry.get("fault_was") == "absent" or "not_met" in entry:
        return False
    return "answer" in entry or 0 <= entry["value"] <= 100


def what_it_may_be(data: dict, job: dict, entry: dict) -> set[str] | None:
    """None is no information."""
    if "answer" in entry:
        return {entry["answer"]}
    bands = [job["maker_bands"][entry["reading"]]] if entry["reading"] in job.get("maker_bands", {}) else []
    general = [
        data["systems"][s]["bands"][entry["reading"]]
        for s in job["car"]["systems"]
        if entry["reading"] in data["systems"][s]["bands"]
    ]
    bands += [b for b in general if b["means"] == "limit"] + [b for b in general if b["means"] == "spread"]
    value = Fraction(entry["value"])
    if not bands:
        return None
    low, high = (Fraction(bands[0][side]) if side in bands[0] else None for side in ("min", "max"))
    return truths(
        value,
        Fraction(data["equipment"][entry["instrument"]]["error"]["value"]),
        low,
        high,
        bands[0].get("means") == "spread",
    )


def judge(data: dict, job: dict) -> dict:
    """What fits, what each fault weighs beside the others, and what may be doubted; shares are exact fractions."""
    systems = job["car"]["systems"]
    rows = [
        (id, stage, {r: a for r, a in stage_answers(data, fault, stage, systems).items() if exists(data, r, systems)})
        for id, fault in data["faults"].items()
        if systems_with(data, fault, systems)
        for stage in fault["stages"]
    ]
    entries, felt = job["readings"], job["felt"] if job["felt"] != "none" else []
    repaired = {e["repaired"]: i for i, e in enumerate(entries) if "repaired" in e}
    evidence, convicts = sorted_out(data, job, rows, repaired, felt)
    allowed = [row for row in rows if row[0] not in repaired]
    fitting = [row for row in allowed if all(allows(row[2], r, a) for r, a in evidence.items())]
    fits: dict[str, set[str]] = {}
    for f, stage, _said in fitting:
        fits.setdefault(f, set()).add(stage)
    shares, outside = posterior(data, allowed, felt, evidence, convicts)
    back, pairs = {}, {}
    if evidence and not fits:
        for doubted in evidence:
            others = {r: a for r, a in evidence.items() if r != doubted}
            found = {f for f, _s, said in allowed if all(allows(said, r, a) for r, a in others.items())}
            back |= {doubted: found} if found else {}
        for one, two in combinations(allowed, 2):
            if one[0] != two[0] and all(pair_shows(data, one[2], two[2], r, a) for r, a in evidence.items()):
                pair = frozenset((one[0], two[0]))
                pairs[pair] = pairs.get(pair, Fraction(0)) + pair_weight(data, one, two, felt, evidence)
    return {
        "fits": fits,
        "shares": {f: sum(shares[f, s] for s in stages) for f, stages in fits.items()},
        "outside": outside,
        "evidence": evidence,
        "convicts": convicts,
        "back": back,
        "pairs": pairs,
    }


def sorted_out(
    data: dict, job: dict, rows: list, repaired: dict[str, int], felt: list[str]
) -> tuple[dict[str, set[str]], list[tuple[str, set[str]]]]:
    """(what each reading may be that may clear, what may only speak for a fault because the car was well)."""
    entries = job["readings"]
    spoken = {r for _f, _s, said in rows for r in said}
    gone = stopped(data, dict.fromkeys(felt, "always"))
    evidence, convicts = {}, []
    for i, entry in enumerate(entries):
        reading = entry.get("reading")
        answers = what_it_may_be(data, job, entry) if "value" in entry or "answer" in entry else None
        if answers is None or "not_met" in entry or not ("answer" in entry or 0 <= entry["value"] <= 100):
            continue
        record = data["readings"][reading]
        if not exists(data, reading, job["car"]["systems"]) or (
            reading not in spoken and record.get("purpose") == "computation"
        ):
            continue
        healthy = set(record.get("healthy", ["normal"]))
        if not healthy & answers and any(
            i < place and any(f == fault and allows(said, reading, answers) for f, _s, said in rows)
            for fault, place in repaired.items()
        ):
            continue  # a later repair may be why
        prevented = "fault_was" not in entry and bool(gone & holds_in(data, reading))
        well = prevented or entry.get("fault_was") == "absent"
        if entry.get("fault_was") != "absent" and repeated(data, entries, i):
            continue
        if not well:
            evidence[reading] = answers
        elif not healthy & answers:
            convicts.append((reading, answers))
    return evidence, convicts


def repeated(data: dict, entries: list[dict], i: int) -> bool:
    """Whether a later entry replaces this one, or one that nothing was mended between differs too much from it."""
    for j, other in enumerate(entries):
        said = ("value" in other or "answer" in other) and counts(other)
        if j == i or not said or other["reading"] != entries[i]["reading"]:
            continue
        mended = any("repaired" in e for e in entries[min(i, j) : max(i, j)])
        if j > i or (not mended and differs(data, entries[i], other)):
            return True
    return False


def differs(data: dict, one: dict, other: dict) -> bool:
    if "answer" in one or "answer" in other:
        return one.get("answer") != other.get("answer")
    off_by = sum(Fraction(data["equipment"][e["instrument"]]["error"]["value"]) for e in (one, other))
    return abs(Fraction(one["value"]) - Fraction(other["value"])) > off_by


ALWAYS, SOMETIMES, UNSAID, MISSING = Fraction(9, 10), Fraction(35, 100), Fraction(3, 100), Fraction(3, 10)
MISLEADS, OUTSIDE = Fraction(3, 100), Fraction(8, 100)


def posterior(
    data: dict, rows: list, felt: list[str], evidence: dict[str, set[str]], convicts: list[tuple[str, set[str]]]
) -> tuple[dict[tuple[str, str], Fraction], Fraction]:
    """Bayes' rule written out: every row and the cause outside weighed, then shared so that they sum to one."""
    weights = {}
    every = sum(commonness(data, f) for f, _s, _a in rows)
    for f, stage, said in rows:
        weight = (1 - OUTSIDE) * commonness(data, f) / every * complaint(felt_by(data, f, stage), felt)
        for reading in {*evidence, *(r for r, _a in convicts)}:
            found = [likelier(data, reading, said.get(reading), evidence[reading])] if reading in evidence else []
            found += [max(Fraction(1), likelier(data, r, said.get(r), a)) for r, a in convicts if r == reading]
            weight *= max(found, key=lambda x: max(x, 1 / x))  # one thing read twice counts once, where it says most
        weights[f, stage] = weight
    outside = OUTSIDE * SOMETIMES ** len(felt)
    total = sum(weights.values()) + outside
    return {row: weight / total for row, weight in weights.items()}, outside / total


def commonness(data: dict, fault: str) -> Fraction:
    """The prior weight of each stage of a fault."""
    return Fraction(WEIGHTS[data["faults"][fault]["commonness"]], len(data["faults"][fault]["stages"]))


def felt_by(data: dict, fault: str, stage: str) -> dict[str, str]:
    said = data["faults"][fault]["stages"][stage]
    if "felt" in said:
        return {} if said["felt"] == "none" else said["felt"]
    return felt_by(data, fault, said["like"]) if "like" in said else data["faults"][fault]["felt_as"]


def complaint(feels: dict[str, str], felt: list[str]) -> Fraction:
    """The probability of what was said and, where something was said, of what was not."""
    p = Fraction(1)
    for symptom in felt:
        p *= {"always": ALWAYS, "sometimes": SOMETIMES}.get(feels.get(symptom), UNSAID)
    for symptom, how in feels.items():
        p *= MISSING if felt and how == "always" and symptom not in felt else 1
    return p


def likelier(data: dict, reading: str, said: set[str] | None, answers: set[str]) -> Fraction:
    """How much likelier these answers are under a fault that says this than under one that is silent."""
    every = set(data["readings"][reading].get("answers", ["low", "normal", "high"]))
    if "answers" not in data["readings"][reading]:
        if answers in ({"none"}, {"unsteady"}):  # said by a person, who has all five to say
            every = {"none", "low", "normal", "high", "unsteady"}
        else:
            answers, said = ({"low" if a == "none" else a for a in x or ()} for x in (answers, said))
    if not said or answers == every:
        return Fraction(1)
    by_chance = Fraction(len(answers), len(every))
    return ((1 - MISLEADS) * Fraction(len(said & answers), len(said)) + MISLEADS * by_chance) / by_chance


def pair_weight(data: dict, one: tuple, two: tuple, felt: list[str], evidence: dict[str, set[str]]) -> Fraction:
    """The product of both priors, of the complaint under both together, and of how surely the surer one shows a reading."""
    first, second = felt_by(data, one[0], one[1]), felt_by(data, two[0], two[1])
    feels = {s: "always" if "always" in (first.get(s), second.get(s)) else "sometimes" for s in {*first, *second}}
    weight = commonness(data, one[0]) * commonness(data, two[0]) * complaint(feels, felt)
    for reading, answers in evidence.items():
        sure = [
            Fraction(len(x[2][reading] & answers), len(x[2][reading])) if reading in x[2] else Fraction(1, 2)
            for x in (one, two)
        ]
        weight *= max(sure)
    return weight


def allows(said: dict[str, set[str]], reading: str, answers: set[str]) -> bool:
    return reading not in said or bool(said[reading] & answers)


def pair_shows(data: dict, one: dict, two: dict, reading: str, answers: set[str]) -> bool:
    """Some answer among these that the two faults give together: an abnormal one by either, healthy ones only by both."""
    healthy = set(data["readings"][reading].get("healthy", ["normal"])) & answers
    if answers - healthy and any(allows(said, reading, answers - healthy) for said in (one, two)):
        return True
    return bool(healthy) and all(allows(said, reading, healthy) for said in (one, two))


def may_remain(data: dict, systems: list[str]) -> dict[tuple[str, str], set[str]]:
    """For each stage the faults that some outcome of every single reading leaves possible beside it."""
    rows = [
        (f, s, stage_answers(data, d, s, systems))
        for f, d in data["faults"].items()
        if systems_with(data, d, systems)
        for s in d["stages"]
    ]
    seen = [
        (f, s, {r: shown(data, r, a, systems) for r, a in said.items() if exists(data, r, systems)})
        for f, s, said in rows
    ]
    return {
        (f, s): {g for g, _t, theirs in seen if not any(r in theirs and not mine[r] & theirs[r] for r in mine)}
        for f, s, mine in seen
    }


def shown(data: dict, reading: str, answers: set[str], systems: list[str]) -> set[str]:
    """What can be seen: a number that is none may be typed and read low; beyond a side without a limit it reads normal."""
    if "answers" in data["readings"][reading]:
        return answers
    answers = answers | {"low"} if "none" in answers else set(answers)
    for s in systems:
        band = data["systems"][s]["bands"].get(reading, {"min": 0, "max": 0})
        for side, answer in (("min", "low"), ("max", "high")):
            if side not in band and answer in answers:
                answers = answers - {answer} | {"normal"}
    return answers
