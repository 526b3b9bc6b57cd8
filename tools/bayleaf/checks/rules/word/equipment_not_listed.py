"""WORD-6: equipment used but not listed, or listed but not used."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """A named instrument answers for its type and a type for its instruments; a state may need equipment too.

    An id that does not exist is said by LINK-1; until it is mended nobody knows what was meant to be used.
    """
    listed_there = record.data["needs"]["equipment"]
    used: dict[str, tuple] = {}
    for i, step in enumerate(record.data["steps"]):
        for path, id in _uses(step):
            used.setdefault(id, ("steps", i, *path))
    unknown = [id for id in (*used, *listed_there) if context.book.get(id) is None]
    for id, path in used.items():
        if id not in unknown and not any(_same(context, id, other) for other in listed_there):
            yield RULE.at(record, f"step {path[1] + 1} uses {id}, which is not listed", mean(id, listed_there), path)
    held = {e for s in record.data["needs"]["states"] for e in _of_state(context, s)}
    for i, id in enumerate(listed_there if not unknown else ()):
        if not any(_same(context, id, other) for other in {*used, *held}) and not _protective(context, id):
            yield RULE.at(record, f"{id} is listed, and no step uses it", mean(id, used), ("needs", "equipment", i))


def _uses(step: dict) -> Iterator[tuple[tuple, str]]:
    if "instrument" in step.get("takes", {}):
        yield ("takes", "instrument"), step["takes"]["instrument"]
    yield from ((("equipment", i), id) for i, id in enumerate(step.get("equipment", [])))


def _same(context: Context, one: str, other: str) -> bool:
    return (
        one == other
        or one in context.instruments.of_type.get(other, ())
        or other in context.instruments.of_type.get(one, ())
    )


def _of_state(context: Context, state: str) -> list[str]:
    record = context.book.of("states").get(state)
    return record.data.get("needs", []) if record and record.sound else []


def _protective(context: Context, id: str) -> bool:
    record = context.book.of("equipment").get(id)
    return bool(record and record.sound and record.data["protective"])


RULE = Rule(
    code="WORD-6",
    level="error",
    scope="record",
    title="Equipment used but not listed, or listed but not used",
    what=(
        "The equipment under needs is what the steps use, the instruments too, and nothing else. What a followed "
        "procedure uses is listed there."
    ),
    why="A technician fetches what is listed: what is missing is fetched with the tank open.",
    mend="Make the list and the steps agree.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "equipment: [fuel-pressure-gauge, vacuum-gauge]",
        "equipment: [fuel-pressure-gauge]",
    ),
    find=find,
    kinds=("procedures",),
)
