"""SAFE-52: the same step sets a state elsewhere, and not here."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.machine import State

Key = tuple[str, str]


def _key(step: dict) -> Key | None:
    """What makes two steps the same: one act at one part, or the very same words."""
    if "act" in step and "at" in step:
        return step["act"], step["at"]
    return ("", step["do"]) if "do" in step else None


def find(context: Context) -> Iterator[Finding]:
    machine = context.procedures.machine
    same: dict[Key, list[tuple[Record, int]]] = {}
    for record in context.book.of("procedures").values():
        for i, step in enumerate(record.data["steps"]) if record.sound else ():
            if (key := _key(step)) is not None:
                same.setdefault(key, []).append((record, i))
    for steps in same.values():
        for state in {
            s for record, i in steps for s in record.data["steps"][i].get("sets", []) if _lasts(machine.states.get(s))
        }:
            telling = [(record, i) for record, i in steps if state in record.data["steps"][i].get("sets", [])]
            if 3 * len(telling) < 2 * len(steps):
                continue
            there, n = telling[0]
            for record, i in steps:
                if (record, i) in telling or _stands(context, record, i, state):
                    continue
                message = f"step {i + 1} does what step {n + 1} of {there.id} does, and does not set {machine.named(state)} as most such steps do"
                yield RULE.at(
                    record,
                    message,
                    f"Write sets: [{state}].",
                    ("steps", i, "act" if "act" in record.data["steps"][i] else "do"),
                )


def _lasts(state: State | None) -> bool:
    """A temporary state that goes with what is done, and not with what is fitted."""
    return state is not None and bool(state.forbids) and not state.connection and not state.stops


def _stands(context: Context, record: Record, i: int, state: str) -> bool:
    """Whether the state stands by another way, or the next step sets it, so that it need not be set here."""
    near = (("steps", i), ("steps", i + 1))
    return any(
        s.source == record.id and s.path in near and s.stands(state) for s in context.procedures.walk(record).steps
    )


RULE = Rule(
    code="SAFE-52",
    level="error",
    scope="book",
    title="State that is set elsewhere and not here",
    what="Where one act at one part, or the very same words, set a temporary state in two of three steps of the book, they set it in every step.",
    why="An open inlet or a bridged relay is there whether or not the step says so, and the hazard that follows from it with it.",
    mend="Set the state here too.",
    example=Example(
        "procedures/read-boost.yaml",
        "  - {do: Start the engine., act: start-engine}",
        "  - {do: Take the inlet duct off., act: disconnect, at: inlet-duct, sets: [air-inlet-open]}\n"
        "  - {do: Put the inlet duct back., act: connect, at: inlet-duct}\n"
        "  - {do: Take the inlet duct off again., act: disconnect, at: inlet-duct, sets: [air-inlet-open]}\n"
        "  - {do: Put the inlet duct back again., act: connect, at: inlet-duct}\n"
        "  - {do: Take the inlet duct off once more., act: disconnect, at: inlet-duct}\n"
        "  - {do: Put the inlet duct back once more., act: connect, at: inlet-duct}\n"
        "  - {do: Start the engine., act: start-engine}",
    ),
    find=find,
)
