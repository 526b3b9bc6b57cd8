"""Slips in fields and ids."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.records import KINDS, RECORD_KINDS, VOCABULARY_KINDS, Record
from tests.mutations.mutant import BLIND, CAUGHT, MOSTLY, Mutant, changed, operator, renamed, without

WORDS = {
    "also_called",
    "misleads",
    "next",
    "explain",
    "calculators",
    "because",
    "changed",
    "consumables",
    "mistaken_for",
    "setup",
    "ask",
}
OPTIONAL = "what may be left out is not missed by its absence: the field is one that only a reader would look for"


def _required(record: Record, context: Context) -> set[str]:
    from bayleaf.records.shape import Shapes

    schema = Shapes(context.book.root / "schemas").schema(record.kind)
    return set(schema["required"] if "required" in schema else schema["$defs"]["entry"]["required"])


@operator("required field dropped", CAUGHT, "the schema asks for it")
def dropped(record: Record, context: Context) -> Iterator[Mutant]:
    wanted = _required(record, context)
    yield from (without(record, (name,), f"no {name}") for name in record.data if name in wanted)


@operator("optional field dropped", BLIND, OPTIONAL)
def optional(record: Record, context: Context) -> Iterator[Mutant]:
    wanted = _required(record, context)
    yield from (
        without(record, (name,), f"no {name}") for name in record.data if name not in wanted and name != "exceptions"
    )


@operator("field misspelled", CAUGHT, "no record has a field that its schema does not know")
def misspelled(record: Record, context: Context) -> Iterator[Mutant]:
    for name in record.data:
        wrong = name[:-1] if len(name) > 3 else name + name[-1]
        yield renamed(record, (name,), wrong, f"{name} → {wrong}")


@operator("unknown field added", CAUGHT, "additionalProperties is false everywhere")
def unknown(record: Record, context: Context) -> Iterator[Mutant]:
    yield Mutant(record.kind, record.id, (), "torque_feel added", {**record.data, "torque_feel": "good"})


def _ids(record: Record, context: Context) -> Iterator:
    known = {link.path: link for link in context.references.links(record) if not link.prose}
    yield from known.values()


def _put(record: Record, link, new: str, what: str) -> Mutant:
    return renamed(record, link.path, new, what) if link.key else changed(record, link.path, new, what)


@operator("id mistyped", CAUGHT, "every id is looked up")
def mistyped(record: Record, context: Context) -> Iterator[Mutant]:
    for link in _ids(record, context):
        wrong = (
            link.id[:-2] + link.id[-1] + link.id[-2]
            if len(link.id) > 3 and link.id[-1] != link.id[-2]
            else link.id + "x"
        )
        yield _put(record, link, wrong, f"{link.id} → {wrong}")


@operator("id of another kind", CAUGHT, "a field says which kinds it names")
def other_kind(record: Record, context: Context) -> Iterator[Mutant]:
    for link in _ids(record, context):
        kind = next((k for k in KINDS if link.kinds and k not in link.kinds and context.book.of(k)), None)
        if kind:
            other = next(iter(context.book.of(kind)))
            yield _put(record, link, other, f"{link.id} → {other} ({kind})")


WRONG = "another id of the right kind is a possible claim; only what follows from it (paths, states, systems, units) can contradict it"


@operator("id of the same kind exchanged", MOSTLY, WRONG, *RECORD_KINDS, least=0.3)
def same_kind(record: Record, context: Context) -> Iterator[Mutant]:
    yield from _exchanged(record, context)


@operator("id exchanged in the vocabulary", BLIND, "the vocabulary is what the checker believes", *VOCABULARY_KINDS)
def same_kind_in_vocabulary(record: Record, context: Context) -> Iterator[Mutant]:
    yield from _exchanged(record, context)


def _exchanged(record: Record, context: Context) -> Iterator[Mutant]:
    for link in _ids(record, context):
        ids = list(context.book.of(link.kinds[0])) if len(link.kinds) == 1 else []
        if len(ids) > 1 and link.id in ids:
            other = ids[(ids.index(link.id) + len(ids) // 2) % len(ids)]
            if other != link.id:
                yield _put(record, link, other, f"{link.id} → {other}")


@operator(
    "title exchanged with another record's",
    MOSTLY,
    "two records of one name are told by nothing but their ids",
    least=0.9,
)
def title(record: Record, context: Context) -> Iterator[Mutant]:
    others = [r for r in context.book.of(record.kind).values() if r.id != record.id]
    if others:
        yield changed(record, ("title",), others[0].title, f"{record.title} → {others[0].title}")


@operator("word of prose changed", BLIND, "prose says what the records cannot; its truth is for readers")
def prose(record: Record, context: Context) -> Iterator[Mutant]:
    for name in ("summary", "does", "found", "danger", "consequence"):
        text = record.data.get(name)
        if isinstance(text, str) and " the " in text:
            yield changed(record, (name,), text.replace(" the ", " no ", 1), f"{name}: the → no")


@operator("field written twice", CAUGHT, "the reader refuses a second value for the same field")
def twice(record: Record, context: Context) -> Iterator[Mutant]:
    if record.source.raw and not record.prefix:
        line = next(x for x in record.source.raw.split(b"\n") if x.startswith(b"title:"))
        yield Mutant(
            record.kind,
            record.id,
            ("title",),
            "title twice",
            {},
            record.source.raw.rstrip(b"\n") + b"\n" + line + b"\n",
        )


@operator("tab for spaces", CAUGHT, "the reader refuses tabs")
def tab(record: Record, context: Context) -> Iterator[Mutant]:
    if record.source.raw and b"\n  " in record.source.raw and not record.prefix:
        yield Mutant(record.kind, record.id, (), "tab", {}, record.source.raw.replace(b"\n  ", b"\n\t", 1))


@operator(
    "unquoted word that is read as true or false", CAUGHT, "what two versions of YAML read differently is refused"
)
def norway(record: Record, context: Context) -> Iterator[Mutant]:
    if record.source.raw and not record.prefix:
        yield Mutant(
            record.kind,
            record.id,
            ("title",),
            "title: no",
            {},
            b"\n".join(b"title: no" if x.startswith(b"title:") else x for x in record.source.raw.split(b"\n")),
        )
