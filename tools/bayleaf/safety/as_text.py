"""A walk as text: step by step what is done, what begins and ends, which hazards follow and what is shown against them."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.safety.hazards import Met
from bayleaf.safety.machine import Machine
from bayleaf.safety.steps import Key, Walk, WalkStep


def as_text(title: str, walk: Walk, met: Iterable[Met], machine: Machine) -> str:
    """The walk of one procedure, for a person to read."""
    by_step: dict[int, list[str]] = {}
    for one in met:
        by_step.setdefault(one.index, []).append(one.hazard)
    lines = [
        title,
        f"starts with {_standing(walk.start, machine)}",
        *([f"shown before: {', '.join(sorted(walk.inherited))}"] if walk.inherited else []),
    ]
    for index, step in enumerate(walk.steps):
        lines += _step(step, by_step.get(index, []), machine)
    lines.append(f"ends with {_standing(walk.end, machine)}")
    lines += [f"not undone: {act}{f' at {at}' if at else ''}" for act, at in walk.left]
    return "\n".join(lines) + "\n"


def _step(step: WalkStep, hazards: list[str], machine: Machine) -> Iterable[str]:
    yield f"{step.number:<7}{step.data.get('do') or 'Follow ' + step.data['follow'] + '.'}"
    where = f" at {', '.join(step.at)}" if step.at else ""
    done = ", ".join(sorted(step.own)) + where if step.own else ""
    brought = ", ".join(sorted(step.acts - step.own))
    began = [
        k
        for k in step.after
        if k not in step.before or any(n.kind == "set" and (n.what, n.at) == k for n in step.notes)
    ]
    rows = (
        ("act", done),
        ("when", f"{step.when}{f' ({brought})' if brought else ''}" if step.when else ""),
        ("begins", _keys(began, machine)),
        ("ends", _keys([k for k in step.before if k not in step.after], machine)),
        ("meets", ", ".join(hazards)),
        ("shown", ", ".join(step.cautions)),
        (
            "amiss",
            "; ".join(
                f"{n.kind} {n.what}{f' ({n.other})' if n.other else ''}"
                for n in step.notes
                if n.kind not in ("set", "ended")
            ),
        ),
    )
    yield from (f"       {name:<7}{text}" for name, text in rows if text)


def _standing(standing: dict[Key, int], machine: Machine) -> str:
    return _keys(standing, machine) or "nothing standing"


def _keys(keys: Iterable[Key], machine: Machine) -> str:
    return ", ".join(machine.named(state).strip("'") + (f" at {at}" if at else "") for state, at in keys)
