"""Hazards derived from a walk: at which step each trigger of the vocabulary holds, and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from bayleaf.checks.machine import Machine
from bayleaf.checks.paths import PathFact, pascals
from bayleaf.checks.walked import Walk, WalkedStep
from bayleaf.records import Book, listed, mapped


@dataclass(frozen=True, slots=True)
class Met:
    """A hazard that the step at `index` of the walk meets. `why` goes on after `because`."""

    hazard: str
    index: int
    why: str


def hazards_met(walk: Walk, book: Book, machine: Machine) -> Iterator[Met]:
    """Every hazard at every step of a walk, in the order of the steps; one trigger that holds is enough."""
    where = set(listed(book.of("procedures")[walk.procedure].data["where"]))
    known = [(id, listed(r.data["triggers"])) for id, r in book.of("hazards").items() if r.sound]
    for index, step in enumerate(walk.steps):
        for hazard, triggers in known:
            why = next((w for t in triggers if (w := _why(t, step, where, book, machine))), None)
            if why:
                yield Met(hazard, index, why)


def types_of(book: Book, equipment: str) -> list[str]:
    """A piece of equipment and every type that it is of."""
    found = [equipment]
    for id in found:
        record = book.of("equipment").get(id)
        parent = record.data.get("type") if record and record.sound else None
        found += [parent] if isinstance(parent, str) and parent not in found else []
    return found


def used_in(book: Book, data: dict) -> set[str]:
    """What one step uses, with every type that it is of."""
    names = [*listed(data.get("equipment")), mapped(data.get("takes")).get("instrument")]
    return {t for name in names if isinstance(name, str) for t in types_of(book, name)}


def quantity_of(book: Book, data: dict) -> str:
    """The quantity of the reading that a step takes; '' where it takes none or asks a question."""
    reading = book.of("readings").get(mapped(data.get("takes")).get("reading"))
    return reading.data.get("quantity", "") if reading and reading.sound else ""


def _why(trigger: dict, step: WalkedStep, where: set[str], book: Book, machine: Machine) -> str | None:
    """Why the trigger holds at the step, or None where it does not."""
    parts: list[str] = []
    acts = sorted((a for a in listed(trigger.get("acts")) if a in step.acts), key=lambda a: a != step.data.get("act"))
    quantity = quantity_of(book, step.data)
    if "acts" in trigger:
        if not acts:
            return None
        parts.append("the act is to " + machine.title(acts[0]))
    if "quantities" in trigger:
        if quantity not in trigger["quantities"]:
            return None
        parts.append(f"it measures {quantity.replace('-', ' ')}")
    if {"carries", "side", "greatest_at_least"} & set(trigger):
        path = _path(trigger, step.act_paths if acts else step.read_paths)
        if path is None:
            return None
        parts.append(_on(path, trigger))
    if "conditions" in trigger:
        if step.when not in trigger["conditions"]:
            return None
        parts.append(f"it is done at {step.when.replace('-', ' ')}")
    for state in listed(trigger.get("with")):
        if not step.stands(state):
            return None
        parts.append(f"{machine.named(state)} stands")
    for state in listed(trigger.get("without")):
        if step.stood(state):
            return None
        parts.append(f"{machine.named(state)} does not stand")
    if "equipment" in trigger:
        used = sorted(used_in(book, step.data) & set(trigger["equipment"]))
        if not used:
            return None
        parts.append(f"it uses {used[0].replace('-', ' ')}")
    if "places" in trigger:
        places = [p for p in trigger["places"] if p in where]
        if not places:
            return None
        parts.append(f"it may be done here: {places[0].replace('-', ' ')}")
    return ", and ".join(parts) or None


def _path(trigger: dict, paths: tuple[PathFact, ...]) -> PathFact | None:
    """The path with the greatest pressure that fits all that the trigger says of one path."""
    least = pascals(trigger.get("greatest_at_least"))
    fit = [
        p for p in paths
        if ("carries" not in trigger or p.carries in trigger["carries"]) and ("side" not in trigger or p.side == trigger["side"])
        and (least is None or p.greatest is not None and p.greatest >= least)
    ]  # fmt: skip
    return max(fit, key=lambda p: (p.greatest or 0, p.system, p.name), default=None)


def _on(path: PathFact, trigger: dict) -> str:
    least = mapped(trigger.get("greatest_at_least"))
    limit = f" at {least['value']:g} {least['unit']} or more" if least else ""
    side = " on the high side" if trigger.get("side") == "high" else ""
    return f"the path {path.name} of {path.system} carries {path.carries}{side}{limit}"
