"""The vocabulary as a machine: what each act brings with it, which states it sets, ends and is forbidden by."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from bayleaf.records import Book, Record
from bayleaf.safety.written import WrittenSteps


class State:
    """One state of the vocabulary. `carries` empty: its acts set it on any part."""

    __slots__ = (
        "carries",
        "connection",
        "each",
        "ended_by",
        "forbids",
        "id",
        "needs",
        "proof",
        "requires",
        "set_by",
        "stops",
        "title",
    )

    def __init__(
        self,
        id: str,
        title: str,
        set_by: frozenset[str],
        ended_by: frozenset[str],
        requires: tuple[str, ...],
        forbids: frozenset[str],
        needs: tuple[str, ...],
        carries: frozenset[str],
        each: bool,
        connection: bool,
        stops: bool,
        proof: dict[str, Any],
    ) -> None:
        self.id, self.title, self.set_by, self.ended_by, self.requires = id, title, set_by, ended_by, requires
        self.forbids, self.needs, self.carries = forbids, needs, carries
        self.each, self.connection, self.stops, self.proof = each, connection, stops, proof


class Brought:
    """What an act brings with it in a condition: `acts` is all that is done, `own` by the act and `done` by the condition.

    `claims` are the states that the condition speaks of, `setters` and `each` those that the act sets and those, kept
    joint by joint, that it ends; `forbidden_by` and `ends` those that forbid one of the acts and those that one of them ends.
    """

    __slots__ = ("acts", "claims", "done", "each", "ends", "forbidden_by", "own", "setters")

    def __init__(
        self,
        own: frozenset[str],
        acts: frozenset[str],
        done: frozenset[str],
        claims: tuple[str, ...],
        setters: list[State],
        each: list[State],
        forbidden_by: frozenset[str],
        ends: frozenset[str],
    ) -> None:
        self.own, self.acts, self.done, self.claims = own, acts, done, claims
        self.setters, self.each, self.forbidden_by, self.ends = setters, each, forbidden_by, ends


class Machine:
    """Acts, conditions and states, made ready for walking.

    `closure`: an act → itself and all that it implies. `undo`: an act → the act that puts it back. `going`: acts that
    go on until they are undone, which are those that a condition or another act can imply. `local`: acts that are undone
    part by part. `whole`: acts of the whole car, which bring others with them. `setters`: an act → the states that it sets. `looks`: an
    act → the states, kept joint by joint, that it ends. `guards`: states that make something safe, because a state requires them or a hazard follows where they do not stand.
    """

    def __init__(self, book: Book) -> None:
        self.written = WrittenSteps(book, self)
        self._brought: dict[tuple[str | None, str], Brought] = {}
        acts = {id: record.data for id, record in _sound(book, "acts")}
        self.titles = {id: data["title"] for id, data in acts.items()}
        self.undo = {id: data["undone_by"] for id, data in acts.items() if "undone_by" in data}
        self.undoable = frozenset(self.undo)
        self.closure = {id: frozenset(_closure(acts, id)) for id in acts}
        self.states = {id: _state(id, record.data) for id, record in _sound(book, "states")}
        self.conditions: dict[str, tuple[frozenset[str], tuple[str, ...]]] = {}
        for id, record in _sound(book, "conditions"):
            implied = record.data["implies"]
            done = frozenset(a for i in implied for a in self.acts_of(i) if i not in self.states)
            self.conditions[id] = (done, tuple(i for i in implied if i in self.states))
        self.setters = {act: [s for s in self.states.values() if act in s.set_by] for act in acts}
        self.looks = {act: [s for s in self.states.values() if s.each and act in s.ended_by] for act in acts}
        implied_acts = {a for id, done in self.closure.items() for a in done if a != id}
        implied_acts |= {a for done, _states in self.conditions.values() for a in done}
        self.going = frozenset(a for a in implied_acts if a in self.undo)
        self.whole = {a for a, done in self.closure.items() if len(done) > 1}
        self.local = (
            (set(self.undo) | set(self.undo.values())) - self.going - {self.undo[a] for a in self.going} - self.whole
        )
        triggers = [t for _id, record in _sound(book, "hazards") for t in record.data["triggers"]]
        self.guards = {s for state in self.states.values() for s in state.requires}
        self.guards |= {s for t in triggers for s in t.get("without", [])}
        self.of_paths = frozenset(a for t in triggers if "carries" in t for a in t.get("acts", [])) - self.going

    def acts_of(self, act: str | None) -> frozenset[str]:
        """An act and all that it implies; one that the vocabulary does not know stands for itself."""
        return self.closure.get(act, frozenset({act})) if act else frozenset()

    def brought(self, act: str | None, when: str) -> Brought:
        """What an act, or none, brings with it in a condition, or in none."""
        kept = self._brought.get((act, when))
        if kept is None:
            own, (done, claims) = self.acts_of(act), self.conditions.get(when, (frozenset(), ()))
            setters, each = (
                list(dict.fromkeys(s for a in sorted(own) for s in by.get(a, ()))) for by in (self.setters, self.looks)
            )
            acts, states = own | done, self.states.values()
            forbidden_by = frozenset(s.id for s in states if not s.forbids.isdisjoint(acts))
            ends = frozenset(s.id for s in states if not s.ended_by.isdisjoint(acts))
            kept = self._brought[act, when] = Brought(own, acts, done, claims, setters, each, forbidden_by, ends)
        return kept

    def title(self, act: str) -> str:
        """An act in words that go on in a sentence: `switch the key on`."""
        title = str(self.titles.get(act, act))
        return title[:1].lower() + title[1:]

    def named(self, state: str) -> str:
        """A state in words, set off from the sentence: `'engine cool'`."""
        title = self.states[state].title if state in self.states else state
        return f"'{title[:1].lower()}{title[1:]}'"


def _sound(book: Book, kind: str) -> Iterable[tuple[str, Record]]:
    return [(id, record) for id, record in book.of(kind).items() if record.sound]


def _closure(acts: dict[str, dict[str, Any]], start: str) -> list[str]:
    implied = [start]
    for act in implied:
        implied += [a for a in acts.get(act, {}).get("implies", []) if a not in implied]
    return implied


def _state(id: str, data: dict[str, Any]) -> State:
    sets = {name: frozenset(data.get(name, [])) for name in ("set_by", "ended_by", "forbids", "carries")}
    return State(
        id=id,
        title=data["title"],
        requires=tuple(data.get("requires", [])),
        needs=tuple(data.get("needs", [])),
        each=data.get("each") == "joint",
        connection=data.get("connection") is True,
        stops=data.get("stop_at") == "required",
        proof=data.get("proved_by", {}),
        **sets,
    )
