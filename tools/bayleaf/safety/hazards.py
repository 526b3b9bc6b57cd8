"""Hazards derived from a walk: at which step each trigger of the vocabulary holds, and why."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from bayleaf.records import Book
from bayleaf.safety.machine import Machine
from bayleaf.safety.paths import PathFact
from bayleaf.safety.steps import Walk, WalkStep
from bayleaf.safety.triggers import Trigger, trigger


class Met:
    """A hazard that the step at `index` of the walk meets, and the trigger that holds there."""

    __slots__ = ("hazard", "index", "trigger")

    def __init__(self, hazard: str, index: int, trigger: Trigger) -> None:
        self.hazard, self.index, self.trigger = hazard, index, trigger


class Hazards:
    """The triggers of a book. Each is found by one thing that it asks for: an act, else a state, a quantity, equipment."""

    def __init__(self, book: Book, machine: Machine) -> None:
        self.book, self.machine = book, machine
        self.triggers = [
            trigger(id, data) for id, r in book.of("hazards").items() if r.sound for data in r.data["triggers"]
        ]
        self._by: dict[str, list[Trigger]] = {}
        self._types: dict[str, list[str]] = {}
        self._held: dict[tuple[object, ...], list[Trigger]] = {}
        self._read: dict[int, tuple[str, frozenset[str]]] = {}
        for one in self.triggers:
            for key in one.index_ids():
                self._by.setdefault(key, []).append(one)

    def met(self, walk: Walk) -> Iterator[Met]:
        """Every hazard at every step of a walk, in the order of the steps; one trigger that holds is enough."""
        where = frozenset(self.book.of("procedures")[walk.procedure].data["where"])
        for index, step in enumerate(walk.steps):
            # all that a trigger can ask; many steps are alike in it. The paths live as long as this book, so that their ids tell them apart.
            measured = self._read.get(id(step.data)) or self._measured(step.data)
            asked = (step.acts, step.had, step.has, step.when, measured, id(step.act_paths), id(step.read_paths), where)
            held = self._held.get(asked)
            if held is None:
                held = self._held[asked] = self._holding(step, measured, where)
            for one in held:
                yield Met(one.hazard, index, one)

    def _holding(self, step: WalkStep, measured: tuple[str, frozenset[str]], where: frozenset[str]) -> list[Trigger]:
        """The first trigger of each hazard that holds in a step."""
        quantity, used = measured
        stands = step.had | step.has
        keys = ["", *sorted(step.acts), *sorted(stands), *filter(None, (quantity, step.when)), *sorted(used)]
        held: dict[str, Trigger] = {}
        for t in [t for key in keys for t in self._by.get(key, ())]:
            if t.hazard not in held and (
                (not t.acts or not t.acts.isdisjoint(step.acts))
                and (not t.quantities or quantity in t.quantities)
                and (not t.conditions or step.when in t.conditions)
                and (not t.equipment or not used.isdisjoint(t.equipment))
                and stands.issuperset(t.with_)
                and step.had.isdisjoint(t.without)
                and (not t.places or not where.isdisjoint(t.places))
                and (not t.on_path or any(t.fits(path) for path in (step.act_paths if t.acts else step.read_paths)))
            ):
                held[t.hazard] = t
        return list(held.values())

    def _measured(self, data: dict[str, Any]) -> tuple[str, frozenset[str]]:
        """(the quantity that a step measures, what it uses), kept: a step is met again wherever it is followed."""
        measured = self._read[id(data)] = (quantity_of(self.book, data), self.used_in(data))
        return measured

    def used_in(self, data: dict[str, Any]) -> frozenset[str]:
        """What one step uses, with every type that it is of."""
        if "equipment" not in data and "takes" not in data:
            return _NONE
        names = [*data.get("equipment", []), data.get("takes", {}).get("instrument")]
        return frozenset(t for name in names if isinstance(name, str) for t in self.types(name))

    def types(self, equipment: str) -> list[str]:
        """A piece of equipment and every type that it is of."""
        if equipment not in self._types:
            self._types[equipment] = types_of(self.book, equipment)
        return self._types[equipment]

    def why(self, walk: Walk, met: Met) -> str:
        """Why the hazard follows at its step, in words that go on after `because`."""
        step, t, machine = walk.steps[met.index], met.trigger, self.machine
        acts = sorted(t.acts & step.acts, key=lambda a: (a != step.data.get("act"), a))
        parts = ["the act is to " + machine.title(acts[0])] if acts else []
        parts += [f"it measures {quantity_of(self.book, step.data).replace('-', ' ')}"] if t.quantities else []
        path = _path(t, step) if t.on_path else None
        parts += [_on(path, t)] if path else []
        parts += [f"it is done at {step.when.replace('-', ' ')}"] if t.conditions else []
        parts += [f"{machine.named(state)} stands" for state in t.with_]
        parts += [f"{machine.named(state)} does not stand" for state in t.without]
        parts += [f"it uses {min(self.used_in(step.data) & t.equipment).replace('-', ' ')}"] if t.equipment else []
        parts += [f"it may be done on the {min(t.places).replace('-', ' ')}"] if t.places else []
        return ", and ".join(parts)


_NONE: frozenset[str] = frozenset()


def types_of(book: Book, equipment: str) -> list[str]:
    """A piece of equipment and every type that it is of."""
    types = [equipment]
    for id in types:
        record = book.of("equipment").get(id)
        parent = record.data.get("type") if record and record.sound else None
        types += [parent] if isinstance(parent, str) and parent not in types else []
    return types


def quantity_of(book: Book, data: dict[str, Any]) -> str:
    """The quantity of the reading that a step takes; '' where it takes none or asks a question."""
    if "takes" not in data:
        return ""
    reading = book.of("readings").get(data["takes"].get("reading", ""))
    return str(reading.data.get("quantity", "")) if reading and reading.sound else ""


def _path(t: Trigger, step: WalkStep) -> PathFact | None:
    """The path with the greatest pressure among those that fit."""
    fit = [path for path in (step.act_paths if t.acts else step.read_paths) if t.fits(path)]
    return max(fit, key=lambda p: (p.greatest or 0, p.system, p.name), default=None)


def _on(path: PathFact, t: Trigger) -> str:
    least = t.data.get("greatest_at_least", {})
    limit = f" at {least['value']:g} {least['unit']} or more" if least else ""
    side = " on the high side" if t.side == "high" else ""
    return f"the path {path.name} of {path.system} carries {path.carries}{side}{limit}"
