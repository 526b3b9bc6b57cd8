"""Which fields hold ids, and of which kinds: one table for the checks of links, for what is reachable, and for pages."""

from __future__ import annotations

from functools import cache

# Field path: the kinds that its ids may be of. `*` is every entry or field, `@` is the field's own name,
# a last `basis` stands for the source or calculator that it names.
LINKS: dict[str, dict[str, str]] = {
    "systems": {
        "shows.@": "readings",
        "healthy.@": "readings",
        "paths.*.through.*": "components",
        "paths.*.greatest.basis": "",
        "has.*": "components",
        "bands.@": "readings",
        "bands.*.basis": "",
        "bands.*.expected.calculator": "calculators",
        "bands.*.expected.inputs.*.reading": "readings",
        "mistaken_for.*.system": "systems",
        "calculators.*": "calculators",
        "brings.cautions.*": "cautions",
        "brings.acts.*": "acts",
        "brings.states.*": "states",
    },
    "components": {"mistaken_for.*.component": "components", "part_of": "components", "variables.*": "variables"},
    "equipment": {"type": "equipment", "measures.*": "quantities", "basis": ""},
    "readings": {
        "quantity": "quantities",
        "computed.difference.of": "readings",
        "computed.difference.less": "readings",
        "computed.quantity": "quantities",
        "computed.calculator": "calculators",
        "computed.inputs.*.reading": "readings",
        "at": "components",
        "between.*": "components",
        "when": "conditions",
        "valid_if.*": "states",
        "agrees_with.*.sum_of.*": "readings",
        "agrees_with.*.basis": "",
        "observes.*": "variables components",
        "answers_as": "readings",
    },
    "procedures": {
        "systems.*": "systems",
        "tasks.*": "tasks",
        "inherits.*": "procedures",
        "needs.states.*": "states",
        "needs.has.*": "components",
        "needs.equipment.*": "equipment",
        "leaves.*": "states",
        "ends.*": "states",
        "spoils.*": "readings",
        "steps.*.follow": "procedures",
        "steps.*.act": "acts",
        "steps.*.at": "components",
        "steps.*.when": "conditions",
        "steps.*.takes.reading": "readings",
        "steps.*.takes.instrument": "equipment",
        "steps.*.lasts.basis": "",
        "steps.*.stop_at.basis": "",
        "steps.*.at_most.basis": "",
        "steps.*.cautions.*": "cautions",
        "steps.*.sets.*": "states",
        "steps.*.proves.*": "states",
        "steps.*.equipment.*": "equipment",
        "results.@": "readings",
        "calculators.*": "calculators",
    },
    "faults": {
        "part": "components",
        "systems.*": "systems",
        "stages.*.@": "readings",
        "stages.*.effect.*": "effects",
        "stages.*.felt.@": "symptoms",
        "disturbs.*": "variables",
        "damages.*": "components",
        "differs.@": "systems",
        "differs.*.*.@": "readings",
        "because.@": "readings",
        "felt_as.@": "symptoms",
        "mended_by.*": "procedures",
        "proved_by": "readings",
    },
    "symptoms": {"first.*": "readings", "prevents.*": "states", "holds_back.*": "conditions", "dangers.*": "hazards"},
    "codes": {
        "reports.*.reading": "readings",
        "first.*": "readings",
        "symptoms.*": "symptoms",
        "systems.*": "systems",
        "basis": "",
    },
    "calculators": {
        "inputs.*.quantity": "quantities",
        "constants.*.quantity": "quantities",
        "constants.*.basis": "",
        "result.*.quantity": "quantities",
        "basis": "",
        "checks.*.basis": "",
    },
    "vehicles": {
        "systems.*": "systems",
        "has.*": "components",
        "fuel": "fuels",
        "altitude.basis": "",
        "bands.@": "readings",
        "bands.*.basis": "",
    },
    "jobs": {
        "vehicle": "vehicles",
        "car.systems.*": "systems",
        "car.has.*": "components",
        "car.fuel": "fuels",
        "maker_bands.@": "readings",
        "shop.*": "equipment",
        "felt.*": "symptoms",
        "codes.*": "codes",
        "history.*": "histories",
        "readings.*.reading": "readings",
        "readings.*.which": "components",
        "readings.*.instrument": "equipment",
        "readings.*.not_met.*": "states",
        "readings.*.repaired": "faults",
        "true_cause.*": "faults",
        "expects.left.*": "faults",
        "expects.next": "readings",
    },
    "quantities": {"plausible.basis": ""},
    "conditions": {"implies.*": "acts states"},
    "variables": {
        "influences.*": "variables",
        "influences.*.to": "variables",
        "influences.*.when.*": "conditions states acts",
        "influences.*.in.*": "systems",
        "influences.*.unless.*": "conditions states acts",
    },
    "effects": {"shows.@": "readings"},
    "histories": {"faults.*": "faults", "parts.*": "components"},
    "states": {
        "set_by.*": "acts",
        "ended_by.*": "acts",
        "proved_by.reading": "readings",
        "requires.*": "states",
        "forbids.*": "acts",
        "needs.*": "equipment",
    },
    "acts": {"implies.*": "acts", "undone_by": "acts"},
    "hazards": {
        "triggers.*.acts.*": "acts",
        "triggers.*.greatest_at_least.basis": "",
        "triggers.*.without.*": "states",
        "triggers.*.with.*": "states",
        "triggers.*.conditions.*": "conditions",
        "triggers.*.equipment.*": "equipment",
        "triggers.*.quantities.*": "quantities",
    },
    "cautions": {"hazards.*": "hazards", "basis": ""},
    "fuels": {"ethanol.basis": "", "stoichiometric.basis": "", "density.basis": "", "cautions.*": "cautions"},
    "terms": {"basis": ""},
}


class Leaf:
    """One row of the table for a kind: its first and its last field, and the kinds that its ids may be of (none: any)."""

    __slots__ = ("kinds", "last", "top")

    def __init__(self, top: str, last: str, kinds: tuple[str, ...]) -> None:
        self.top, self.last, self.kinds = top, last, kinds


class Plan:
    """A node of the table, ready for walking. `keys`, `items`: the row of the ids that are its field names, its entries."""

    __slots__ = ("each", "fields", "inner", "items", "keys")

    def __init__(
        self,
        keys: Leaf | None,
        items: Leaf | None,
        fields: tuple[tuple[str, Leaf], ...],
        inner: tuple[tuple[str, Plan], ...],
        each: Plan | None,
    ) -> None:
        self.keys, self.items, self.fields, self.inner, self.each = keys, items, fields, inner, each


@cache
def leaves_of(kind: str) -> dict[str, Leaf]:
    """Every row of the table for a kind, and last the one of the ids in text, which has no field."""
    rows: dict[str, str] = {}
    for row, kinds in {"replaced_by": kind, **LINKS.get(kind, {})}.items():
        rows |= (
            {f"{row}.source": "sources", f"{row}.calculator": "calculators"}
            if row.split(".")[-1] == "basis"
            else {row: kinds}
        )
    return {
        row: Leaf(row.split(".")[0], row.split(".")[-1], tuple(kinds.split()))
        for row, kinds in (*rows.items(), ("", ""))
    }


@cache
def plan_of(kind: str) -> Plan:
    """The table of one kind as a tree by field; the last field of a row holds its leaf."""
    tree: dict = {}
    for row, leaf in leaves_of(kind).items():
        *above, last = row.split(".")
        node = tree if row else {}  # the ids in text have no field
        for step in above:
            node = node.setdefault(step, {})
        node.setdefault("=", {})[last] = leaf
    return _planned(tree)


def _planned(node: dict) -> Plan:
    leaves = dict(node.get("=", ()))
    inner = {step: _planned(below) for step, below in node.items() if step != "="}
    each = inner.pop("*", None)
    return Plan(leaves.pop("@", None), leaves.pop("*", None), tuple(leaves.items()), tuple(inner.items()), each)
