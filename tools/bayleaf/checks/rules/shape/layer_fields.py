"""SHAPE-11: fields of a layer on another system, or a layer without them."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Both directions."""
    layer = record.data["family"] == "layer"
    for name in ("adds_to", "brings"):
        if layer != (name in record.data):
            message = f"a layer has no {name}" if layer else f"{name} belongs to layers only"
            yield RULE.at(record, message, path=("family",) if layer else (name,), key=not layer)
    if not layer and not record.data["paths"]:
        yield RULE.at(record, "only a layer may have no paths", path=("paths",))


RULE = Rule(
    code="SHAPE-11",
    level="error",
    scope="record",
    title="Fields of a layer on another system, or a layer without them",
    what="A system of the family layer says adds_to and brings; no other does, and a system of another family has paths.",
    why=(
        "A layer that brings nothing changes nothing, and a plain system with layer fields would be laid over "
        "cars that have it already."
    ),
    mend="Set family to layer, or delete adds_to and brings.",
    example=Example("systems/direct-injection.yaml", "family: fuel", "family: fuel\nadds_to: [induction]"),
    find=find,
    kinds=("systems",),
)
