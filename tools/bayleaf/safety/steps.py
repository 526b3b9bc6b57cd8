"""What a walk hands to the rules: its steps, what stood in each, and notes of what happened."""

from __future__ import annotations

from typing import Any

from bayleaf.safety.paths import PathFact

FieldPath = tuple[str | int, ...]  # where in a record: field names, and places in lists
Key = tuple[str, str]  # a state or an act, and the part that it belongs to ('' for the whole car)


class Note:
    """Something that happened in a step.

    `kind`: set, ended, lacks (`what` was set while `other` did not stand), forbidden (the act `other` was done while
    `what` stood), under-way (`what` was set while the act `other` still went on), claimed (the condition speaks of
    `what`, which nothing made so), contradicted (the condition implies the act `other`, which would undo `what`),
    unmet (the procedure followed here needs `what`). `since` is the index of the step that set or began `what`.
    """

    __slots__ = ("at", "kind", "other", "since", "what")

    def __init__(self, kind: str, what: str, at: str = "", other: str = "", since: int = -1) -> None:
        self.kind, self.what, self.at, self.other, self.since = kind, what, at, other, since


class WalkStep:
    """One step. `before` and `after` map what stands to the index of the step that set it (-1: from the start).

    `place` is the field path in the procedure that is walked; `source` and `path` say where the step is written, which is
    another procedure inside a `follow`. `when` is its condition, which is that of its reading where it names none.
    `acts` are done in the step, `own` of them by its act and not by its condition. `had` and `has` are the states of
    `before` and `after`.
    """

    __slots__ = (
        "act_paths",
        "acts",
        "after",
        "at",
        "before",
        "cautions",
        "data",
        "doing",
        "had",
        "has",
        "notes",
        "number",
        "own",
        "path",
        "place",
        "read_paths",
        "shown",
        "source",
        "when",
    )

    def __init__(
        self,
        number: str,
        source: str,
        path: FieldPath,
        place: FieldPath,
        data: dict[str, Any],
        when: str,
        acts: frozenset[str],
        own: frozenset[str],
        at: tuple[str, ...],
        act_paths: tuple[PathFact, ...],
        read_paths: tuple[PathFact, ...],
        cautions: tuple[str, ...],
        before: dict[Key, int],
        doing: dict[Key, int],
        shown: frozenset[str],
        after: dict[Key, int],
        notes: list[Note],
        had: frozenset[str],
        has: frozenset[str] = frozenset(),
    ) -> None:
        self.number, self.source, self.path, self.place, self.data = number, source, path, place, data
        self.when, self.acts, self.own, self.at = when, acts, own, at
        self.act_paths, self.read_paths, self.cautions = act_paths, read_paths, cautions
        self.before, self.doing, self.shown, self.after = before, doing, shown, after
        self.notes, self.had, self.has = notes, had, has

    def stood(self, state: str) -> bool:
        """Whether a state stood when the step began."""
        return state in self.had

    def stands(self, state: str) -> bool:
        """Whether a state stands while the step is done: before it or after it."""
        return state in self.had or state in self.has


class Walk:
    """`start` and `end` map what stands to the step that set it; `left` are the acts that nothing undid.

    `own` are the steps that the procedure has itself, `taking` those of them that take a reading, `acts` all that one of
    them does by its act, and `noted` the kinds of all notes.
    """

    __slots__ = ("acts", "cut", "end", "inherited", "left", "noted", "own", "procedure", "start", "steps", "taking")

    def __init__(self, procedure: str, inherited: frozenset[str], start: dict[Key, int]) -> None:
        self.procedure, self.inherited, self.start = procedure, inherited, start
        self.steps: list[WalkStep] = []
        self.end: dict[Key, int] = {}
        self.left: dict[Key, int] = {}
        self.own: list[WalkStep] = []
        self.taking: list[WalkStep] = []
        self.acts: frozenset[str] = frozenset()
        self.cut = False  # whether it was too long to be walked to its end
        self.noted: frozenset[str] = frozenset()

    def done(self) -> None:
        """Index the steps once all are walked."""
        self.own = [step for step in self.steps if step.source == self.procedure]
        self.taking = [step for step in self.own if "takes" in step.data]
        self.acts = frozenset().union(*{step.own for step in self.own})
        self.noted = frozenset(note.kind for step in self.steps if step.notes for note in step.notes)

    def doing(self, *acts: str) -> list[WalkStep]:
        """The procedure's own steps that do one of these by their act, in order."""
        return [] if self.acts.isdisjoint(acts) else [step for step in self.own if not step.own.isdisjoint(acts)]

    def last(self, kind: str, what: str, before: int) -> int | None:
        """The index of the last step before this one that has a note of this kind about `what`."""
        return next(
            (
                i
                for i in range(before - 1, -1, -1)
                if any(n.kind == kind and n.what == what for n in self.steps[i].notes)
            ),
            None,
        )
