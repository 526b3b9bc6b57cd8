"""A procedure: the sheet a technician works from, on the screen and on paper."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.building.amounts import sourced
from bayleaf.pages.building.blocks import blocks, box, bullets, facts, para, section
from bayleaf.pages.building.frame import record_page, shown
from bayleaf.pages.building.index import grouped, index_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small, stacked, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.cautions import by_severity, full, line
from bayleaf.pages.parts.bands import band_table, maker_table
from bayleaf.pages.parts.embed import embedded
from bayleaf.pages.parts.proof import proof
from bayleaf.pages.parts.results import results
from bayleaf.pages.parts.sheet import sheet_head
from bayleaf.pages.parts.spent import spent
from bayleaf.pages.parts.steps import Step, cautions_of, step_list, unfold, walk
from bayleaf.quantities import to_si
from bayleaf.records import Record, listed, mapped

FEW = 3  # as many figures as a hand on the car reads in one look


def page(view: Uses, record: Record) -> str:
    """The page of one procedure, in the order in which it is worked through."""
    data = record.data
    steps = unfold(view, record)
    systems, taken = view.systems_of(record), readings_of(steps)
    readings = list(dict.fromkeys([*taken, *mapped(data.get("results"))]))
    return record_page(
        view,
        record,
        [
            _cautions(view, record, steps),
            section("need", "What you need", _needs(view, record, steps)),
            section("steps", "Steps", step_list(view, steps), _after(view, record)),
            section(
                "bands",
                "What it should be",
                band_table(view, readings, systems),
                proof(view, steps, systems),
                embedded(view, record, readings, systems),
            ),
            box(
                "bl-screen",
                section("demonstration", "Example vehicles (invented)", maker_table(view, readings, systems)),
            ),
            section("results", "What it means", results(view, record, taken, systems)),
            section("misleads", "What misleads", bullets(view.prose(item) for item in listed(data.get("misleads")))),
            section("next", "What next", para(view.prose(data.get("next")))),
            section("customer", "Words for the customer", para(view.prose(data.get("explain")), css="bl-quote")),
        ],
        top=sheet_head(view, record),
    )


def readings_of(steps: Iterable[Step]) -> list[str]:
    """The readings that the steps take, in order, each once."""
    readings = (mapped(step.data.get("takes")).get("reading") for step in walk(steps))
    return [reading for reading in dict.fromkeys(readings) if reading]


def _inherited(view: Uses, record: Record) -> list[str]:
    """Caution ids that the preparations bring."""
    ids: list[str] = []
    for id in listed(record.data.get("inherits")):
        other = view.get(id, "procedures")
        if other is not None and other.id != record.id:
            ids += cautions_of(unfold(view, other))
    return ids


def _cautions(view: Uses, record: Record, steps: list[Step]) -> Markup:
    own = cautions_of(steps)
    brought = [id for id in dict.fromkeys(_inherited(view, record)) if id not in own]
    layers = [
        inline("On a car with ", view.link(layer.id), ": ", line(view, caution))
        for layer, ids in _layers(view, steps)
        for caution in by_severity(view, ids)
        if caution.id not in own and caution.id not in brought
    ]
    inner = blocks(*(full(view, caution) for caution in by_severity(view, own)))
    compact = bullets([*(line(view, caution) for caution in by_severity(view, brought)), *layers])
    more = (
        box("bl-inherited", para(strong("From the preparations, and just as binding:")), compact) if compact else EMPTY
    )
    return section("cautions", "Cautions first", inner, more)


def _layers(view: Uses, steps: list[Step]) -> list[tuple[Record, list[str]]]:
    """Layers that bring cautions to an act of these steps."""
    acts = {
        id
        for step in walk(steps)
        for id in _implied(view, step.data.get("act")) | _implied(view, step.data.get("when"))
    }
    layers = []
    for layer in view.live("systems"):
        brings = mapped(layer.data.get("brings"))
        if set(listed(brings.get("acts"))) & acts:
            layers.append((layer, listed(brings.get("cautions"))))
    return layers


def _implied(view: Uses, id: object) -> set[str]:
    record = view.get(id)
    return {record.id, *listed(record.data.get("implies"))} if record else set()


def _needs(view: Uses, record: Record, steps: list[Step]) -> Markup:
    data, needs = record.data, mapped(record.data.get("needs"))
    people = needs.get("people", 1)
    states = [inline(view.link(state), _reached(view, state, record)) for state in listed(needs.get("states"))]
    return facts(
        [
            ("For", stacked(view.links(data.get("systems"))) or "every system"),
            ("Do first", stacked(view.links(data.get("inherits")))),
            ("Must hold before you start", lines(states)),
            ("Made so by", stacked(view.links(needs.get("made_by")))),
            ("The car has", stacked(view.links(needs.get("has")))),
            ("Equipment", stacked(view.links(needs.get("equipment")))),
            ("Used up", joined(view.prose(item) for item in listed(needs.get("consumables")))),
            ("Greatest pressure here", _greatest(view, record, steps)),
            ("Place", joined((shown(place) for place in listed(data.get("where"))), " or ")),
            ("People", str(people)),
            (
                "Time",
                inline(
                    spent(record, steps),
                    small(" for a practiced person, a judgment; preparations not counted"),
                ),
            ),
            (
                "Spoils",
                inline(joined(view.links(data.get("spoils"))), small(" : take it before"))
                if listed(data.get("spoils"))
                else EMPTY,
            ),
        ]
    )


def _greatest(view: Uses, record: Record, steps: list[Step]) -> Markup:
    """The greatest credible pressure on the fuel paths that the steps touch, with its reason and basis; of many the greatest."""
    touched = {step.data.get("at") for step in walk(steps)} | {
        place for reading in readings_of(steps) for place in view.places(reading)
    }
    on = set().union(*(view.layout.paths(component) for component in touched if component))
    pressures: dict[Markup, tuple[float, str]] = {}  # each figure to its pressure in Pa and a system that has it
    for system in view.systems_of(record):
        owner = view.book.of("systems")[system]
        for i, path in enumerate(listed(owner.data.get("paths"))):
            if (system, path["name"]) in on and "greatest" in path:
                pressure = to_si(path["greatest"]["value"], path["greatest"]["unit"], "gauge")
                pressures.setdefault(sourced(view, owner, ("paths", i, "greatest")), (pressure, system))
    if len(pressures) <= FEW:
        return lines(pressures)
    most = max(pressures, key=lambda figure: pressures[figure][0])
    return lines(
        [
            inline(most, small(" on "), view.link(pressures[most][1])),
            small("Other systems hold this or less; the page of each says how much."),
        ]
    )


def _reached(view: Uses, state: str, record: Record) -> Markup:
    ways = [p for p in view.leavers.get(state, []) if p.id != record.id]
    return inline(small(" by "), joined((view.link(p.id) for p in ways), " or ")) if ways else EMPTY


def _after(view: Uses, record: Record) -> Markup:
    left = listed(record.data.get("leaves"))
    said = []
    for state in left:
        ways = [view.link(p.id) for p in view.enders.get(state, [])]
        said.append(
            inline(
                "This leaves: ",
                view.link(state),
                inline("; it is ended by ", joined(ways, " or ")) if ways else "",
                ".",
            )
        )
    ended = joined(view.links(record.data.get("ends")))
    return box("bl-after", bullets([*said, *([inline("This ends: ", ended, ".")] if ended else [])]))


def index(view: Uses) -> str:
    """Procedures by task, each under its first one; preparations and those without a task at the end."""
    groups: list[tuple[str, str, list[Record]]] = []
    seen: set[str] = set()
    for task in view.live("tasks"):
        these = [p for p in view.of_task.get(task.id, []) if p.id not in seen and not p.data.get("standing")]
        seen.update(p.id for p in these)
        groups.append((task.id, task.title, these))
    standing = [p for p in view.live("procedures") if p.data.get("standing")]
    groups += [
        ("preparations", "Preparations", standing),
        ("others", "Others", [p for p in view.live("procedures") if p.id not in seen and p not in standing]),
    ]
    return index_page(
        "procedures", "Work in steps, with its cautions first. Each page prints as a job sheet.", grouped(view, groups)
    )
