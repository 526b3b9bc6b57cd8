"""Every page of the tree, by its path."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from importlib.resources import files

from bayleaf.formulas.output.javascript import script
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.building.view import address_of
from bayleaf.pages.kinds import (
    calculators,
    cautions,
    codes,
    components,
    equipment,
    faults,
    fields,
    home,
    jobs,
    overviews,
    procedures,
    readings,
    symptoms,
    systems,
    tasks,
    vehicles,
    vocabulary,
)
from bayleaf.pages.kinds import (
    rules as rule_module,
)
from bayleaf.pages.kinds.rules import RuleData
from bayleaf.records import KINDS, Book, Record

RECORD_PAGES: dict[str, Callable[[Uses, Record], str]] = {
    "systems": systems.system_page,
    "components": components.component_page,
    "equipment": equipment.equipment_page,
    "readings": readings.reading_page,
    "procedures": procedures.procedure_page,
    "faults": faults.fault_page,
    "symptoms": symptoms.symptom_page,
    "codes": codes.code_page,
    "calculators": calculators.calculator_page,
    "vehicles": vehicles.vehicle_page,
    "jobs": jobs.job_page,
    "cautions": cautions.caution_page,
}
INDEXES: dict[str, Callable[[Uses], str]] = {
    "systems": systems.index,
    "components": components.index,
    "equipment": equipment.index,
    "readings": readings.index,
    "procedures": procedures.index,
    "faults": faults.index,
    "symptoms": symptoms.index,
    "codes": codes.index,
    "calculators": calculators.index,
    "vehicles": vehicles.index,
    "jobs": jobs.index,
    "cautions": cautions.index,
    "tasks": tasks.index,
    **vocabulary.PAGES,
}


def pages(
    book: Book, rules: Sequence[RuleData] = (), schemas: Mapping[str, Mapping] | None = None
) -> dict[str, str | bytes]:
    """Path to content of every file of the tree.

    `rules` are the checker's rules as plain data, `schemas` is kind to schema with `common` among them. Records that
    are not sound have no page; a build does not get here while there are errors.
    """
    view = Uses(book)
    schemas = schemas or {}
    counts = {kind: len(view.live(kind)) for kind in KINDS}
    made: dict[str, str | bytes] = {"index.md": home.home(view, counts)}
    made["more/index.md"] = home.more(view, counts, len(rules), sum(kind in schemas for kind in KINDS))
    made |= {overviews.CLASS: overviews.for_class(view), overviews.INSTRUMENTS: overviews.instruments(view)}
    made |= {f"{kind}/index.md": index(view) for kind, index in INDEXES.items()}
    for kind, page in RECORD_PAGES.items():
        made |= {address_of(record): page(view, record) for record in view.all(kind)}
    made |= rule_module.rule_pages(rules)
    made |= fields.field_pages(schemas)
    folder = files("bayleaf.pages").joinpath("assets")
    made["assets/bayleaf.css"] = folder.joinpath("bayleaf.css").read_text(encoding="utf-8")
    made["assets/bayleaf.js"] = script(view.calculators) + folder.joinpath("bayleaf.js").read_text(encoding="utf-8")
    return made
