"""The walk: a procedure step by step, with the states that it starts from, sets, ends and meets.

A step is done in this order: its condition must hold; its act and all that the act implies are done, which ends
states and sets others; then what the step itself sets and proves stands. `follow` runs another procedure in place.
The walk judges nothing: it notes what happened, and the rules read the notes.
"""

from __future__ import annotations

from typing import Any

from bayleaf.records import Book, Record
from bayleaf.safety.machine import Machine, State
from bayleaf.safety.paths import PathFact, Paths
from bayleaf.safety.preparations import preparations
from bayleaf.safety.standing import Standing
from bayleaf.safety.steps import FieldPath, Key, Note, Walk, WalkStep
from bayleaf.safety.written import Written


def walk(record: Record, book: Book, machine: Machine, paths: Paths) -> Walk:
    """Walk a sound procedure of a book. Pure; never raises on what a record names wrongly."""
    return _Walker(record, book, machine, paths).run()


MOST = 1000  # steps of one walk: procedures that follow each other twice at every level would unfold without end
_NONE: frozenset[str] = frozenset()
_NOTHING: dict[Key, int] = {}  # shared by every step during which nothing goes on; nobody writes to it


class _Walker:
    def __init__(self, record: Record, book: Book, machine: Machine, paths: Paths) -> None:
        self.book, self.machine, self.paths, self.record = book, machine, paths, record
        before, written = preparations(book, record.data), machine.written
        states = [*(s for id in before for s in written.prepared(id).leaves), *record.data["needs"]["states"]]
        self.standing = Standing(machine, states)
        self.shown: frozenset[str] = frozenset()  # the cautions shown up to the step at hand
        inherited = _NONE.union(*(written.prepared(id).cautions for id in before))
        self.walk = Walk(record.id, inherited, dict(self.standing.states))

    def run(self) -> Walk:
        shown = set(self.walk.inherited)
        self._procedure(self.record, (), "", tuple(self.record.data["systems"]), (self.record.id,), shown)
        self.standing.end_all(self.record.data.get("ends", []))
        self.walk.end, self.walk.left = dict(self.standing.states), dict(self.standing.doing)
        self.walk.done()
        return self.walk

    def _procedure(
        self,
        record: Record,
        place: FieldPath,
        number: str,
        systems: tuple[str, ...],
        seen: tuple[str, ...],
        shown: set[str],
    ) -> None:
        for i, step in enumerate(record.data["steps"]):
            path = ("steps", i)
            here = place or path
            f = self.machine.written.step(step)
            if f.cautions:
                shown.update(f.cautions)
            name = f"{number}{i + 1}"
            followed = self.book.of("procedures").get(step["follow"]) if "follow" in step else None
            if len(self.walk.steps) >= MOST:
                self.walk.cut = True
                return
            if followed is not None and followed.sound and followed.id not in seen:
                self._follow(followed, record, step, f, path, here, name, systems, seen, shown)
            else:
                self._step(record.id, step, f, path, here, name, systems, shown)

    def _follow(
        self,
        followed: Record,
        record: Record,
        step: dict[str, Any],
        f: Written,
        path: FieldPath,
        here: FieldPath,
        name: str,
        systems: tuple[str, ...],
        seen: tuple[str, ...],
        shown: set[str],
    ) -> None:
        self._step(record.id, step, f, path, here, name, systems, shown)
        missing = [s for s in followed.data["needs"]["states"] if not any(k[0] == s for k in self.standing.states)]
        self.walk.steps[-1].notes += [Note("unmet", s) for s in missing]
        theirs = tuple(s for s in followed.data["systems"] if not systems or s in systems)
        inside = shown.union(
            *(self.machine.written.prepared(id).cautions for id in preparations(self.book, followed.data))
        )
        self._procedure(followed, here, f"{name}.", theirs or systems, (*seen, followed.id), inside)
        self.standing.end_all(followed.data.get("ends", []))
        shown |= inside

    def _step(
        self,
        source: str,
        data: dict[str, Any],
        f: Written,
        path: FieldPath,
        place: FieldPath,
        number: str,
        systems: tuple[str, ...],
        shown: set[str],
    ) -> None:
        by = f.brought
        at = (data["at"],) if "at" in data else self.standing.joints(f.each) if f.each else ()
        read_paths = self.paths.of(f.read_at, systems) if f.read_at else ()
        before, had = self.standing.now()
        if len(self.shown) != len(shown):  # what has been shown only grows
            self.shown = frozenset(shown)
        step = WalkStep(
            number,
            source,
            path,
            place,
            data,
            f.when,
            by.acts,
            by.own,
            at,
            (self._paths(at, f.each, systems) if at or f.each else ()) or read_paths,
            read_paths,
            f.cautions,
            before,
            dict(self.standing.doing) if self.standing.doing else _NOTHING,
            self.shown,
            before,
            [],
            had,
            had,
        )
        index = len(self.walk.steps)
        self.walk.steps.append(step)
        if f.idle:
            return
        if by.done or by.claims:
            self.standing.condition(step, by.done, by.claims, index)
        if by.acts:
            for key in [k for k in before if k[0] in by.forbidden_by] if not by.forbidden_by.isdisjoint(had) else ():
                self.standing.forbid(step, key, before[key], by.acts)
            if (self.standing.parted and at) or by.done or by.claims or not by.ends.isdisjoint(had):
                self.standing.end_by(step, by.ends)
            for state in by.setters:
                if not state.carries or any(p.carries in state.carries for p in step.act_paths):
                    self.standing.set(step, state.id, index)
        for id in f.makes:
            self.standing.set(step, id, index)
        if by.own:
            self.standing.undo(step, data.get("act"), index)
        step.after, step.has = self.standing.now()

    def _paths(self, at: tuple[str, ...], each: list[State], systems: tuple[str, ...]) -> tuple[PathFact, ...]:
        """The paths of the parts; where no joint is named or stands, every path on which there could be one."""
        if at or not each:
            return self.paths.of(at, systems) if at else ()
        return self.paths.carrying(_NONE.union(*(state.carries for state in each)), systems)
