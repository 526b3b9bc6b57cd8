"""Hazards derived from a walk: at which step each trigger of the vocabulary holds, and why."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from bayleaf.records import Book
from bayleaf.safety.machine import Machine
from bayleaf.safety.paths import PathFact, pascals
from bayleaf.safety.steps import Walk, WalkedStep


class Trigger(NamedTuple):
    """One trigger of one hazard, made ready. What is empty or None, it does not ask."""

    hazard: str
    data: dict
    acts: frozenset[str]
    quantities: frozenset[str]
    carries: frozenset[str]
    side: str
    least: float | None
    with_: tuple[str, ...]
    without: tuple[str, ...]
    conditions: frozenset[str]
    equipment: frozenset[str]
    places: frozenset[str]
    on_path: bool  # whether it asks anything of a path


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
            _trigger(id, data) for id, r in book.of("hazards").items() if r.sound for data in r.data["triggers"]
        ]
        self._by: dict[str, list[Trigger]] = {}
        self._types: dict[str, list[str]] = {}
        self._held: dict[tuple, list[Trigger]] = {}
        self._read: dict[int, tuple[str, frozenset[str]]] = {}
        for trigger in self.triggers:
            for key in _keys(trigger):
                self._by.setdefault(key, []).append(trigger)

    def met(self, walk: Walk) -> Iterator[Met]:
        """Every hazard at every step of a walk, in the order of the steps; one trigger that holds is enough."""
        where = frozenset(self.book.of("procedures")[walk.procedure].data["where"])
        for index, step in enumerate(walk.steps):
            # all that a trigger can ask; many steps are alike in it. The paths live as long as this book, so that their ids tell them apart.
            taken = self._read.get(id(step.data)) or self._taken(step.data)
            asked = (step.acts, step.had, step.has, step.when, taken, id(step.act_paths), id(step.read_paths), where)
            held = self._held.get(asked)
            if held is None:
                held = self._held[asked] = self._holding(step, taken, where)
            for trigger in held:
                yield Met(trigger.hazard, index, trigger)

    def _holding(self, step: WalkedStep, taken: tuple[str, frozenset[str]], where: frozenset[str]) -> list[Trigger]:
        """The first trigger of each hazard that holds in a step."""
        quantity, used = taken
        stands = step.had | step.has
        keys = ["", *sorted(step.acts), *sorted(stands), *filter(None, (quantity, step.when)), *sorted(used)]
        found: dict[str, Trigger] = {}
        for t in [t for key in keys for t in self._by.get(key, ())]:
            if t.hazard not in found and (
                (not t.acts or not t.acts.isdisjoint(step.acts))
                and (not t.quantities or quantity in t.quantities)
                and (not t.conditions or step.when in t.conditions)
                and (not t.equipment or not used.isdisjoint(t.equipment))
                and stands.issuperset(t.with_)
                and step.had.isdisjoint(t.without)
                and (not t.places or not where.isdisjoint(t.places))
                and (not t.on_path or any(_fits(t, path) for path in (step.act_paths if t.acts else step.read_paths)))
            ):
                found[t.hazard] = t
        return list(found.values())

    def _taken(self, data: dict) -> tuple[str, frozenset[str]]:
        """(the quantity that a step measures, what it uses), kept: a step is walked again wherever it is followed."""
        taken = self._read[id(data)] = (quantity_of(self.book, data), self.used_in(data))
        return taken

    def used_in(self, data: dict) -> frozenset[str]:
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
    found = [equipment]
    for id in found:
        record = book.of("equipment").get(id)
        parent = record.data.get("type") if record and record.sound else None
        found += [parent] if isinstance(parent, str) and parent not in found else []
    return found


def quantity_of(book: Book, data: dict) -> str:
    """The quantity of the reading that a step takes; '' where it takes none or asks a question."""
    if "takes" not in data:
        return ""
    reading = book.of("readings").get(data["takes"].get("reading"))
    return reading.data.get("quantity", "") if reading and reading.sound else ""


def _trigger(hazard: str, data: dict) -> Trigger:
    sets = {
        name: frozenset(data.get(name, []))
        for name in ("acts", "quantities", "carries", "conditions", "equipment", "places")
    }
    return Trigger(
        hazard=hazard,
        data=data,
        side=data.get("side", ""),
        least=pascals(data.get("greatest_at_least")),
        with_=tuple(data.get("with", [])),
        without=tuple(data.get("without", [])),
        **sets,
        on_path=bool(sets["carries"] or "side" in data or "greatest_at_least" in data),
    )


def _keys(t: Trigger) -> list[str]:
    """Under which ids a trigger is found; '' for one that asks for none."""
    return list(t.acts or t.with_[:1] or t.quantities or t.equipment or t.conditions or ("",))


def _fits(t: Trigger, path: PathFact) -> bool:
    """Whether a path is all that a trigger asks of one path."""
    return (
        (not t.carries or path.carries in t.carries)
        and (not t.side or path.side == t.side)
        and (t.least is None or (path.greatest is not None and path.greatest >= t.least))
    )


def _path(t: Trigger, step: WalkedStep) -> PathFact | None:
    """The path with the greatest pressure among those that fit."""
    fit = [path for path in (step.act_paths if t.acts else step.read_paths) if _fits(t, path)]
    return max(fit, key=lambda p: (p.greatest or 0, p.system, p.name), default=None)


def _on(path: PathFact, t: Trigger) -> str:
    least = t.data.get("greatest_at_least", {})
    limit = f" at {least['value']:g} {least['unit']} or more" if least else ""
    side = " on the high side" if t.side == "high" else ""
    return f"the path {path.name} of {path.system} carries {path.carries}{side}{limit}"
