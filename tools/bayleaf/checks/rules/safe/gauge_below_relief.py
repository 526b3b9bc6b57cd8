"""SAFE-18: a pump is dead-headed into an instrument or a hose that its relief setting can burst."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.paths import PathFact, pascals
from bayleaf.vocabulary import Acts, States

PUMPS = frozenset({Acts.ENERGISE_PUMP, Acts.START_ENGINE, Acts.CRANK, Acts.CRANK_DISABLED})


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for step in walk.own if any(step.doing or Acts.CLAMP in step.own for step in walk.own) else ():
        shut = next(
            (
                (at, since)
                for (act, at), since in step.doing.items()
                if act == Acts.CLAMP and _fuel(context, record, at)
            ),
            None,
        )
        if shut is None and Acts.CLAMP in step.own and _most(step.act_paths):
            shut = (step.data.get("at", ""), walk.steps.index(step))
        if shut is None or not (PUMPS & step.acts or step.stands(States.RUNNING)):
            continue
        path = _most([*step.read_paths, *step.act_paths]) or _fuel(context, record, shut[0])
        names = [*step.data.get("equipment", []), step.data.get("takes", {}).get("instrument")]
        for name in dict.fromkeys(n for n in names if isinstance(n, str)):
            top = _top(context, name)
            if path and path.greatest is not None and top is not None and top[0] <= path.greatest:
                message = (
                    f"{step_name(walk, step)} pumps against a line that {called(walk, shut[1])} shut at {shut[0]}, "
                    f"and {name} ends at {top[1]}, at or under the relief setting on the path {path.name}"
                )
                yield RULE.at(record, message, path=spot(record, step, "takes", "equipment"))


def _fuel(context: Context, record: Record, at: str) -> PathFact | None:
    return _most(context.procedures.paths.of([at], record.data["systems"]))


def _most(paths: Iterable[PathFact]) -> PathFact | None:
    fuel = [p for p in paths if p.carries == "fuel" and p.greatest is not None]
    return max(fuel, key=lambda p: p.greatest or 0.0, default=None)


def _top(context: Context, equipment: str) -> tuple[float, str] | None:
    """The lowest of the top of its range and its rated pressure, in Pa and as written; None where it states no pressure."""
    record = context.book.of("equipment").get(equipment)
    if record is None or not record.sound:
        return None
    limits = []
    rated, reach = record.data.get("rated", {}), record.data.get("range", {})
    for value, unit in ((rated.get("value"), rated.get("unit")), (reach.get("max"), reach.get("unit"))):
        top = pascals({"value": value, "unit": unit}) if value is not None else None
        limits += [(top, f"{value:g} {unit}")] if top is not None else []
    return min(limits, default=None)


RULE = Rule(
    code="SAFE-18",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Gauge below the relief setting",
    what=(
        "Where a line is shut and the pump runs, the pressure goes to the relief setting at once. Range and rated pressure of every "
        "instrument, hose and vessel of that step lie above it."
    ),
    why="A gauge that is driven past its stop bursts, or reads wrong for ever after; a hose that bursts sprays fuel at a running pump.",
    mend="Name an instrument whose range and rating end above the greatest credible pressure of the path.",
    example=Example(
        "procedures/dead-head-pump.yaml",
        "instrument: gauge-0-160",
        "instrument: gauge-0-100",
    ),
    find=find,
)
