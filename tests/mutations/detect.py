"""Whether the checker sees a mutant: the record alone, then what depends on it, then the jobs."""

from __future__ import annotations

import copy
from collections import defaultdict
from dataclasses import dataclass

from bayleaf.checks import all_rules
from bayleaf.checks.context import Context
from bayleaf.diagnosis.jobs.replay import replay
from bayleaf.finding import Finding
from bayleaf.records import Book, Record
from bayleaf.records.record import Source
from bayleaf.records.shape import Shapes
from bayleaf.records.yaml.strict import load_text
from tests.mutations.mutant import Mutant

# Kinds whose meaning reaches further than the records that name them, and the families of rules that it reaches.
_WALKED, _CLAIMED = ("procedures",), ("procedures", "faults", "symptoms", "codes")
FAR = {
    **dict.fromkeys(("states", "acts", "conditions", "hazards", "cautions"), _WALKED),
    **dict.fromkeys(("systems", "components", "readings", "equipment", "quantities"), _CLAIMED),
}
REPLAYED = {
    "faults",
    "readings",
    "systems",
    "jobs",
    "equipment",
    "calculators",
    "vehicles",
    "symptoms",
    "components",
    "quantities",
}


@dataclass(frozen=True)
class Seen:
    """What saw the mutant: the level of the finding (error, warning, crash) and its code; two empty texts when nothing did."""

    level: str = ""
    code: str = ""


Key = tuple[str, str, str, str]  # level, code, record, message


def as_written(data: object) -> object:
    """A record's data as its text has it: no list and no map is empty there, the word none stands instead."""
    if isinstance(data, dict):
        return {key: as_written(value) for key, value in data.items()} or "none"
    return ([as_written(item) for item in data] or "none") if isinstance(data, list) else data


class Detector:
    """Holds a book and what its rules say of it, and tells what they say more about a mutant."""

    def __init__(self, book: Book):
        self.book = book
        self.shapes = Shapes(book.root / "schemas")
        self.rules = {
            scope: [r for r in all_rules() if r.scope == scope and r.find] for scope in ("record", "value", "book")
        }
        self.context = Context(book)
        self.jobs = self._replayed(book)
        self.over_book = set(map(self._key, self._book_rules(self.context)))
        self._of: dict[str, set[Key]] = {}
        self.named_by: dict[str, set[str]] = defaultdict(set)
        for record in book.records():
            for link in self.context.references.links(record):
                self.named_by[link.id].add(record.id)

    def see(self, mutant: Mutant) -> Seen:
        """The most severe new finding about a mutant, or `crash` where a rule broke down on it."""
        try:
            return self._see(mutant)
        except Exception as err:  # noqa: BLE001 - whatever a rule breaks down with is what is looked for
            return Seen("crash", f"{type(err).__name__}:{err}")

    def _see(self, mutant: Mutant) -> Seen:
        if mutant.text is not None:
            problems = load_text(mutant.text).problems
            return Seen("error", problems[0].code) if problems else Seen()
        record = self.book.of(mutant.kind)[mutant.id]
        written = as_written(mutant.data)
        data = written if record.prefix == () else {mutant.id: written}
        if self.shapes.findings(Record(record.kind, record.id, data, Source(record.file))):
            return Seen("error", "SHAPE")
        book = self._with(record, mutant)
        context = Context(book)
        for kept, own in (
            (context.references._links, self.context.references._links),
            (context.references._ids, self.context.references._ids),
        ):
            kept.update({id: named for id, named in own.items() if id != mutant.id})  # what a record names is its own
        near = self._record_rules(book.get(record.id), context) - self._before(record.id)
        if _worst(near).level == "error":
            return _worst(near)
        near |= set(map(self._key, self._book_rules(context))) - self.over_book
        if _worst(near).level == "error":
            return _worst(near)
        for id in self._dependents(mutant.id):
            near |= self._record_rules(book.get(id), context) - self._before(id)
        for kind in FAR.get(mutant.kind, ()):
            for id, other in book.of(kind).items():
                near |= self._record_rules(other, context, ("SAFE", "DIAG")) - self._before(id)
        if _worst(near).level != "error" and mutant.kind in REPLAYED:
            near |= self._replayed(book) - self.jobs
        return _worst(near)

    def _with(self, record: Record, mutant: Mutant) -> Book:
        typed = {
            path: text for path, text in record.source.typed.items() if path[: len(record.prefix)] == record.prefix
        }
        typed = {path: text for path, text in typed.items() if path[len(record.prefix) :] != mutant.path}
        source = Source(record.file, typed={path[len(record.prefix) :]: text for path, text in typed.items()})
        data = copy.deepcopy(mutant.data)
        record.fields.empty(data)
        new = Record(record.kind, record.id, data, source, (), record.sound, record.fields)
        book = Book(
            self.book.root,
            {kind: dict(held) for kind, held in self.book.kinds.items()},
            [],
            self.book.files,
            dict(self.book._all),
        )
        book.kinds[record.kind][record.id] = book._all[record.id] = new
        return book

    def _dependents(self, id: str) -> set[str]:
        """What names the record, and what follows or inherits that; every vocabulary entry is near enough."""
        near = set(self.named_by[id])
        return near | {other for one in near if one in self.book.of("procedures") for other in self.named_by[one]}

    def _before(self, id: str) -> set[Key]:
        if id not in self._of:
            self._of[id] = self._record_rules(self.book.get(id), self.context)
        return self._of[id]

    def _record_rules(self, record: Record, context: Context, families: tuple[str, ...] = ("",)) -> set[Key]:
        rules = [r for r in self.rules["record"] if r.asks(record.kind) and r.code.startswith(families)]
        found = [f for rule in rules for f in rule.find(record, context)]
        if families == ("",):
            found += [
                f
                for amount in context.amounts.of(record)
                for rule in self.rules["value"]
                if rule.asks(record.kind, amount.role)
                for f in rule.find(amount, context)
            ]
        excepted = {e["rule"] for e in record.data.get("exceptions", []) if isinstance(e, dict)}
        return {self._key(f) for f in found if f.code not in excepted}

    def _book_rules(self, context: Context) -> list[Finding]:
        return [f for rule in self.rules["book"] for f in rule.find(context)]

    @staticmethod
    def _replayed(book: Book) -> set[Key]:
        return {("error", "JOB-10", job.id, said) for job, said in replay(book)}

    @staticmethod
    def _key(f: Finding) -> Key:
        return f.level, f.code, f.record, f.message


def _worst(found: set[Key]) -> Seen:
    for level in ("error", "warning"):
        codes = sorted(code for lvl, code, _record, _message in found if lvl == level)
        if codes:
            return Seen(level, codes[0])
    return Seen()
