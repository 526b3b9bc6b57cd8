"""What stands and what is under way while a procedure is walked, and how a step changes it."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.safety.machine import Machine, State
from bayleaf.safety.steps import Key, Note, WalkStep


class Standing:
    """The states that stand, each with the index of the step that set it (-1: from the start), and the acts under way."""

    def __init__(self, machine: Machine, states: Iterable[str]) -> None:
        self.machine = machine
        self.states: dict[Key, int] = {(s, ""): -1 for s in states if s in machine.states}
        self.doing: dict[Key, int] = {}
        self.parted = False  # whether anything was ever set on a part
        self._by: dict[Key, str] = {}  # the act with which a state was set on a part
        self._kept: tuple[dict[Key, int], frozenset[str]] | None = None  # the snapshot, until something begins or ends

    def now(self) -> tuple[dict[Key, int], frozenset[str]]:
        """What stands, and the names of it: the same objects as long as nothing changes."""
        if self._kept is None:
            self._kept = (dict(self.states), frozenset([s for s, _at in self.states]))
        return self._kept

    def end_all(self, states: list[str]) -> None:
        """End these states, wherever they stand, without a note: the procedure itself says that they end with it."""
        for key in [k for k in self.states if k[0] in states] if states else ():
            del self.states[key]
            self._kept = None

    def joints(self, each: list[State]) -> tuple[str, ...]:
        """A look or a closing that names no part is of every joint that stands open or unproved."""
        ids = {e.id for e in each}
        return tuple(sorted({at for s, at in self.states if at and s in ids})) if ids else ()

    def condition(self, step: WalkStep, done: frozenset[str], claims: tuple[str, ...], index: int) -> None:
        """What the step's condition speaks of. A sentence does not make an engine cool, but it may make it hot."""
        states = self.machine.states
        for state in (s for s in claims if not step.stood(s) and not states[s].set_by & step.own):
            step.notes.append(Note("claimed", state))
            if state in self.machine.guards:
                continue
            by = states[state].set_by
            for key in [k for k in self.states if by and by <= states[k[0]].ended_by]:
                self.end(step, key)
            self.states[state, ""] = index
            self._kept = None
        for (act, at), since in self.doing.items():
            if act in self.machine.going and self.machine.undo[act] in done:
                step.notes.append(Note("contradicted", act, at, self.machine.undo[act], since))

    def forbid(self, step: WalkStep, key: Key, since: int, acts: frozenset[str]) -> None:
        """Note which of these acts is forbidden by a state that stands."""
        forbidden = sorted(acts & self.machine.states[key[0]].forbids)
        step.notes += [Note("forbidden", *key, act, since) for act in forbidden]

    def end_by(self, step: WalkStep, ends: frozenset[str]) -> None:
        """End what the acts of a step end; `ends`: the states that one of its acts ends anywhere."""
        at = frozenset(step.at)
        for key in [k for k in self.states if (k[0] in ends or k[1] in at) and self.ends(k, step)]:
            self.end(step, key)

    def end(self, step: WalkStep, key: Key) -> None:
        """End one state, with a note in the step."""
        del self.states[key]
        self._kept = None
        step.notes.append(Note("ended", *key))

    def ends(self, key: Key, step: WalkStep) -> bool:
        """Whether a step ends what stands: by one of its acts, or by undoing the act that it was set with."""
        state, part, undo = self.machine.states[key[0]], key[1], self.machine.undo
        if not part and state.ended_by.isdisjoint(step.acts):
            return False
        here = not part or not step.at or part in step.at
        if any(here or not (state.each or act in self.machine.local) for act in state.ended_by & step.acts):
            return True
        by = self._by.get(key, "")
        return (
            bool(part)
            and part in step.at
            and not state.each
            and any(undo.get(by) == a or undo.get(a) == by for a in step.own)
        )

    def set(self, step: WalkStep, id: str, index: int) -> None:
        """Set a state in a step, on the parts of the step where it is kept part by part, and note what it lacks and forbids."""
        state, act = self.machine.states[id], step.data.get("act", "")
        step.notes += [
            Note("lacks", id, "", need) for need in state.requires if not any(s == need for s, _ in self.states)
        ]
        new = not step.stood(id)
        for part in (step.at if state.each or act in self.machine.local else ()) or ("",):
            self._by[id, part] = act
            self.states[id, part] = index
            self.parted = self.parted or bool(part)
            self._kept = None
            step.notes.append(Note("set", id, part, since=index))
            if new:
                self.forbid(step, (id, part), index, step.acts - state.set_by)
        for (doing, at), since in self.doing.items() if new else ():
            if doing in self.machine.going & state.forbids:
                step.notes.append(Note("under-way", id, at, doing, since))

    def undo(self, step: WalkStep, act: str | None, index: int) -> None:
        """Acts that this step undoes are no longer under way; those that it does are, until something undoes them."""
        undo = self.machine.undo
        for key in [k for k in self.doing if undo[k[0]] in step.own and (not k[1] or not step.at or k[1] in step.at)]:
            del self.doing[key]
        for done in step.own & self.machine.undoable:
            for part in (step.at if done == act else ()) or ("",):
                self.doing.setdefault((done, part), index)
