"""The walk: a procedure step by step, with the states that it starts from, sets, ends and meets.

A step is done in this order: its condition must hold; its act and all that the act implies are done, which ends
states and sets others; then what the step itself sets and proves stands. `follow` runs another procedure in place.
The walk judges nothing: it notes what happened, and the rules read the notes.
"""

from __future__ import annotations

from bayleaf.records import Book, Record
from bayleaf.safety.machine import Machine, State
from bayleaf.safety.paths import PathFact, Paths
from bayleaf.safety.preparations import cautions_of, preparations
from bayleaf.safety.steps import Key, Note, Walk, WalkedStep, Written


def walk(record: Record, book: Book, machine: Machine, paths: Paths) -> Walk:
    """Walk a sound procedure of a book. Pure; never raises on what a record names wrongly."""
    return _Walker(record, book, machine, paths).run()


_NONE: frozenset[str] = frozenset()
_NOTHING: dict[Key, int] = {}  # shared by every step during which nothing goes on; nobody writes to it


class _Walker:
    def __init__(self, record: Record, book: Book, machine: Machine, paths: Paths) -> None:
        self.book, self.machine, self.paths, self.record = book, machine, paths, record
        before = preparations(book, record.data)
        states = [*(s for id in before for s in self._prepared(id)[0]), *record.data["needs"]["states"]]
        self.standing: dict[Key, int] = {(s, ""): -1 for s in states if s in machine.states}
        self.parted = False  # whether anything was ever set on a part
        self.by: dict[Key, str] = {}  # the act with which a state was set on a part
        self.doing: dict[Key, int] = {}
        self.shown: frozenset[str] = frozenset()  # the cautions shown up to the step at hand
        self._kept: tuple[dict[Key, int], frozenset[str]] | None = None  # the snapshot, until something begins or ends
        self.walk = Walk(record.id, _NONE.union(*(self._prepared(id)[1] for id in before)), dict(self.standing))

    def run(self) -> Walk:
        shown = set(self.walk.inherited)
        self._procedure(self.record, (), "", tuple(self.record.data["systems"]), (self.record.id,), shown)
        self._end_all(self.record.data.get("ends", []))
        self.walk.end, self.walk.left = dict(self.standing), dict(self.doing)
        self.walk.done()
        return self.walk

    def _prepared(self, id: str) -> tuple[list[str], set[str]]:
        """(the states that a preparation leaves, the cautions that it shows)."""
        kept = self.machine.kept.get(("prepared", id))
        if kept is None:
            record = self.book.of("procedures").get(id)
            data = record.data if record and record.sound else {"leaves": [], "steps": []}
            left = [*data["leaves"], *(s for step in data["steps"] for s in step.get("sets", []))]
            kept = self.machine.kept["prepared", id] = (list(dict.fromkeys(left)), cautions_of(self.book, [id]))
        return kept

    def _procedure(
        self, record: Record, place: tuple, number: str, systems: tuple[str, ...], seen: tuple, shown: set[str]
    ) -> None:
        for i, step in enumerate(record.data["steps"]):
            path = ("steps", i)
            here = place or path
            f = self.machine.kept.get(id(step)) or self._written(step)
            if f.cautions:
                shown.update(f.cautions)
            name = f"{number}{i + 1}"
            followed = self.book.of("procedures").get(step["follow"]) if "follow" in step else None
            if followed is not None and followed.sound and followed.id not in seen:
                self._follow(followed, record, step, f, path, here, name, systems, seen, shown)
            else:
                self._step(record.id, step, f, path, here, name, systems, shown)

    def _follow(
        self,
        followed: Record,
        record: Record,
        step: dict,
        f: Written,
        path: tuple,
        here: tuple,
        name: str,
        systems: tuple[str, ...],
        seen: tuple,
        shown: set[str],
    ) -> None:
        self._step(record.id, step, f, path, here, name, systems, shown)
        missing = [s for s in followed.data["needs"]["states"] if not any(k[0] == s for k in self.standing)]
        self.walk.steps[-1].notes += [Note("unmet", s) for s in missing]
        theirs = tuple(s for s in followed.data["systems"] if not systems or s in systems)
        inside = shown.union(*(self._prepared(id)[1] for id in preparations(self.book, followed.data)))
        self._procedure(followed, here, f"{name}.", theirs or systems, (*seen, followed.id), inside)
        self._end_all(followed.data.get("ends", []))
        shown |= inside

    def _end_all(self, states: list[str]) -> None:
        for key in [k for k in self.standing if k[0] in states] if states else ():
            del self.standing[key]
            self._kept = None

    def _step(
        self,
        source: str,
        step: dict,
        f: Written,
        path: tuple,
        place: tuple,
        number: str,
        systems: tuple[str, ...],
        shown: set[str],
    ) -> None:
        by = f.brought
        at = (step["at"],) if "at" in step else self._joints(f.each) if f.each else ()
        read_paths = self.paths.of(f.read_at, systems) if f.read_at else ()
        before, had = self._kept or self._snapshot()
        if len(self.shown) != len(shown):  # what has been shown only grows
            self.shown = frozenset(shown)
        walked = WalkedStep(
            number,
            source,
            path,
            place,
            step,
            f.when,
            by.acts,
            by.own,
            at,
            (self._paths(at, f.each, systems) if at or f.each else ()) or read_paths,
            read_paths,
            f.cautions,
            before,
            dict(self.doing) if self.doing else _NOTHING,
            self.shown,
            before,
            [],
            had,
            had,
        )
        index = len(self.walk.steps)
        self.walk.steps.append(walked)
        if f.idle:
            return
        if by.done or by.claims:
            self._condition(walked, by.done, by.claims, index)
        if by.acts:
            for key in [k for k in before if k[0] in by.forbidden_by] if not by.forbidden_by.isdisjoint(had) else ():
                self._forbid(walked, key, before[key], by.acts)
            may_end = (self.parted and at) or by.done or by.claims or not by.ends.isdisjoint(had)
            for key in (
                [k for k in self.standing if (k[0] in by.ends or k[1] in at) and self._ends(k, walked)]
                if may_end
                else ()
            ):
                self._end(walked, key)
            for state in by.setters:
                if not state.carries or any(p.carries in state.carries for p in walked.act_paths):
                    self._set(walked, state.id, index)
        for state in f.makes:
            self._set(walked, state, index)
        if by.own:
            self._undo(walked, step.get("act"), index)
        walked.after, walked.has = self._kept or self._snapshot()

    def _written(self, step: dict) -> Written:
        """What is written in a step, kept: a procedure is walked again wherever it is followed."""
        condition, read_at = self._reading(step["takes"].get("reading")) if "takes" in step else ("", ())
        when = step.get("when") or condition
        brought = self.machine.brought(step.get("act"), when)
        makes = [s for field in ("sets", "proves") if field in step for s in step[field] if s in self.machine.states]
        each = [] if "at" in step else brought.each
        cautions = tuple(step["cautions"]) if "cautions" in step else ()
        written = self.machine.kept[id(step)] = Written(brought, when, each, makes, cautions, read_at)
        return written

    def _reading(self, reading: str) -> tuple[str, tuple[str, ...]]:
        """(the condition of a reading, the parts where it is taken)."""
        kept = self.machine.kept.get(("reading", reading))
        if kept is None:
            record = self.book.of("readings").get(reading)
            data = record.data if record else {}
            places = (data.get("at"), *data.get("between", []))
            kept = self.machine.kept["reading", reading] = (
                data.get("when", ""),
                tuple(c for c in places if isinstance(c, str)),
            )
        return kept

    def _snapshot(self) -> tuple[dict[Key, int], frozenset[str]]:
        """What stands now, and the names of it, kept: the same objects as long as nothing changes."""
        self._kept = (dict(self.standing), frozenset([s for s, _at in self.standing]))
        return self._kept

    def _joints(self, each: list[State]) -> tuple[str, ...]:
        """A look or a closing that names no part is of every joint that stands open or unproved."""
        ids = {e.id for e in each}
        return tuple(sorted({at for s, at in self.standing if at and s in ids})) if ids else ()

    def _paths(self, at: tuple[str, ...], each: list[State], systems: tuple[str, ...]) -> tuple[PathFact, ...]:
        """The paths of the parts; where no joint is named or stands, every path on which there could be one."""
        if at or not each:
            return self.paths.of(at, systems) if at else ()
        return self.paths.carrying(_NONE.union(*(state.carries for state in each)), systems)

    def _condition(self, walked: WalkedStep, done: frozenset[str], claims: tuple[str, ...], index: int) -> None:
        """What the step's condition speaks of. A sentence does not make an engine cool, but it may make it hot."""
        states = self.machine.states
        for state in (s for s in claims if not walked.stood(s) and not states[s].set_by & walked.own):
            walked.notes.append(Note("claimed", state))
            if state in self.machine.guards:
                continue
            by = states[state].set_by
            for key in [k for k in self.standing if by and by <= states[k[0]].ended_by]:
                self._end(walked, key)
            self.standing[state, ""] = index
            self._kept = None
        for (act, at), since in self.doing.items():
            if act in self.machine.going and self.machine.undo[act] in done:
                walked.notes.append(Note("contradicted", act, at, self.machine.undo[act], since))

    def _forbid(self, walked: WalkedStep, key: Key, since: int, acts: frozenset[str]) -> None:
        forbidden = sorted(acts & self.machine.states[key[0]].forbids)
        walked.notes += [Note("forbidden", *key, act, since) for act in forbidden]

    def _end(self, walked: WalkedStep, key: Key) -> None:
        del self.standing[key]
        self._kept = None
        walked.notes.append(Note("ended", *key))

    def _ends(self, key: Key, walked: WalkedStep) -> bool:
        """Whether a step ends what stands: by one of its acts, or by undoing the act that it was set with."""
        state, part, undo = self.machine.states[key[0]], key[1], self.machine.undo
        if not part and state.ended_by.isdisjoint(walked.acts):
            return False
        here = not part or not walked.at or part in walked.at
        if any(here or not (state.each or act in self.machine.local) for act in state.ended_by & walked.acts):
            return True
        by = self.by.get(key, "")
        return (
            bool(part)
            and part in walked.at
            and not state.each
            and any(undo.get(by) == a or undo.get(a) == by for a in walked.own)
        )

    def _set(self, walked: WalkedStep, id: str, index: int) -> None:
        state, act = self.machine.states[id], walked.data.get("act", "")
        walked.notes += [
            Note("lacks", id, "", need) for need in state.requires if not any(s == need for s, _ in self.standing)
        ]
        new = not walked.stood(id)
        for part in (walked.at if state.each or act in self.machine.local else ()) or ("",):
            self.by[id, part] = act
            self.standing[id, part] = index
            self.parted = self.parted or bool(part)
            self._kept = None
            walked.notes.append(Note("set", id, part, since=index))
            if new:
                self._forbid(walked, (id, part), index, walked.acts - state.set_by)
        for (doing, at), since in self.doing.items() if new else ():
            if doing in self.machine.going & state.forbids:
                walked.notes.append(Note("under-way", id, at, doing, since))

    def _undo(self, walked: WalkedStep, act: str | None, index: int) -> None:
        """Acts that this step undoes are no longer under way; those that it does are, until something undoes them."""
        undo = self.machine.undo
        for key in [
            k for k in self.doing if undo[k[0]] in walked.own and (not k[1] or not walked.at or k[1] in walked.at)
        ]:
            del self.doing[key]
        for done in walked.own & self.machine.undoable:
            for part in (walked.at if done == act else ()) or ("",):
                self.doing.setdefault((done, part), index)
