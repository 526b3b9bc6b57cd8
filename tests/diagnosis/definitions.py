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
                if reading != "like":
                    found[reading] = set(said) if isinstance(said, list) else {said}
    for reading, entry in data["readings"].items():
        if (
            reading not in found
            and entry.get("purpose", "diagnosis") == "diagnosis"
            and spared(data, fault, entry, systems)
        ):
            found[reading] = set(entry.get("healthy", ["normal"]))
    return found


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
    systems = job["car"]["systems"]
    rows = []
    for id, fault in data["faults"].items():
        if systems_with(data, fault, systems):
            for stage in fault["stages"]:
                said = stage_answers(data, fault, stage, systems)
                rows.append((id, stage, {r: a for r, a in said.items() if exists(data, r, systems)}))
    entries = job["readings"]
    repaired = {e["repaired"]: i for i, e in enumerate(entries) if "repaired" in e}
    latest = {e["reading"]: (i, e) for i, e in enumerate(entries) if ("value" in e or "answer" in e) and counts(e)}
    spoken = {r for _f, _s, said in rows for r in said}
    evidence = {}
    for reading, (i, entry) in latest.items():
        answers = what_it_may_be(data, job, entry)
        if (
            answers is None
            or not exists(data, reading, systems)
            or (reading not in spoken and data["readings"][reading].get("purpose") == "computation")
        ):
            continue
        healthy = set(data["readings"][reading].get("healthy", ["normal"]))
        old = any(
            i < place
            and not healthy & answers
            and any(f == fault and allows(said, reading, answers) for f, _s, said in rows)
            for fault, place in repaired.items()
        )
        if not old:
            evidence[reading] = answers
    felt = set(job["felt"]) if job["felt"] != "none" else set()
    explaining = {f for f, _s, _a in rows if felt <= set(data["faults"][f]["felt_as"])}
    mode = "all" if felt else "no complaint"
    if felt and not explaining:
        explaining = {f for f, _s, _a in rows if felt & set(data["faults"][f]["felt_as"])}
        mode = "any" if explaining else "nothing"
    explaining -= set(repaired)
    left: dict[str, set[str]] = {}
    weight: dict[str, Fraction] = {}
    for f, stage, said in rows:
        if f in explaining and all(allows(said, r, a) for r, a in evidence.items()):
            left.setdefault(f, set()).add(stage)
            share = Fraction(WEIGHTS[data["faults"][f]["commonness"]], len(data["faults"][f]["stages"]))
            for r, a in evidence.items():
                if r in said:
                    share *= Fraction(len(said[r] & a), len(said[r]))
            weight[f] = weight.get(f, Fraction(0)) + share
    back = {}
    for doubted in evidence:
        found = {
            f
            for f, _s, said in rows
            if f in explaining and all(allows(said, r, a) for r, a in evidence.items() if r != doubted)
        }
        if found and not left:
            back[doubted] = found
    pairs = set()
    mended = {s for f in repaired for s in data["faults"][f]["felt_as"]}
    explained = any(felt <= set(data["faults"][f]["felt_as"]) | mended for f in left)
    if evidence and (not left or (mode == "any" and not explained)):
        for (f, _s, one), (g, _t, two) in combinations(rows, 2):
            felt_by = [set(data["faults"][x]["felt_as"]) for x in (f, g)]
            if (
                f == g
                or {f, g} & set(repaired)
                or not felt <= felt_by[0] | felt_by[1]
                or (felt and not all(felt & s for s in felt_by))
            ):
                continue
            if all(pair_shows(data, one, two, r, a) for r, a in evidence.items()):
                pairs.add(frozenset((f, g)))
    return {"left": left, "weight": weight, "mode": mode, "evidence": evidence, "back": back, "pairs": pairs}


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
