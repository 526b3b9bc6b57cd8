"""The steps of a procedure: each caution before its step, followed procedures unfolded where they are run."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from bayleaf.pages.building.amounts import sourced
from bayleaf.pages.building.blocks import blocks, box, numbered, para
from bayleaf.pages.building.inline import EMPTY, inline, joined, small, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.cautions import again, by_severity, short
from bayleaf.records import Record, listed, mapped

AMOUNTS = {"lasts": "for", "stop_at": "stop at", "at_most": "at most"}


@dataclass(frozen=True)
class Step:
    """One step: its fields, the record and the path they stand at, and the steps of the procedure it follows."""

    data: dict
    record: Record
    path: tuple
    inner: list[Step] = field(default_factory=list)


def unfold(view: Uses, record: Record, seen: tuple[str, ...] = ()) -> list[Step]:
    """The steps of a procedure, with those of each procedure it follows inside; a circle is cut."""
    steps = []
    for i, data in enumerate(listed(record.data.get("steps"))):
        other = view.get(data.get("follow"), "procedures")
        inner = unfold(view, other, (*seen, record.id)) if other and other.id not in (*seen, record.id) else []
        steps.append(Step(data, record, ("steps", i), inner))
    return steps


def walk(steps: Iterable[Step]) -> Iterator[Step]:
    """Every step in the order it is done."""
    for step in steps:
        yield step
        yield from walk(step.inner)


def cautions_of(steps: Iterable[Step]) -> list[str]:
    """The ids of every caution that the steps name, each once."""
    return list(dict.fromkeys(id for step in walk(steps) for id in listed(step.data.get("cautions"))))


def step_list(view: Uses, steps: list[Step], seen: set[str] | None = None) -> Markup:
    """The steps as an ordered list; inside each item the cautions come first, in the page and on paper.

    A caution that stood before an earlier step of the sheet (`seen`) is said again in fewer lines, never left out.
    """
    seen = set() if seen is None else seen
    return numbered([_item(view, step, seen) for step in steps])


def _item(view: Uses, step: Step, seen: set[str]) -> Markup:
    data = step.data
    warned = []
    for caution in by_severity(view, listed(data.get("cautions"))):
        warned.append(again(view, caution) if caution.id in seen else short(view, caution))
        seen.add(caution.id)
    if "follow" in data:
        said = para(strong("Do all of ", view.link(data["follow"]), "."), " Its steps:", css="bl-do")
        return blocks(*warned, said, step_list(view, step.inner, seen))
    takes = mapped(data.get("takes"))
    return blocks(
        *warned, para(view.prose(data.get("do")), css="bl-do"), _details(view, step), _blank(view, takes.get("reading"))
    )


def _details(view: Uses, step: Step) -> Markup:
    data = step.data
    takes = mapped(data.get("takes"))
    reading = view.quantity(takes.get("reading", ""))
    said = [inline("when: ", view.link(data["when"])) if "when" in data else EMPTY]
    if takes:
        with_what = inline(" with ", view.link(takes["instrument"])) if "instrument" in takes else EMPTY
        said.append(inline("reading: ", view.link(takes["reading"]), with_what))
    said += [inline("use: ", joined(view.links(data.get("equipment"))))] if listed(data.get("equipment")) else []
    for name, label in AMOUNTS.items():
        unit = mapped(data.get(name)).get("unit")
        quantity = reading if reading and unit in reading.units else None
        said.append(
            inline(f"{label} ", sourced(view, step.record, (*step.path, name), quantity)) if name in data else EMPTY
        )
    for name, label in (("proves", "proves: "), ("sets", "from here on: ")):
        said.append(inline(label, joined(view.links(data.get(name)))) if listed(data.get(name)) else EMPTY)
    return para(joined(said, " · "), css="bl-details")


def _blank(view: Uses, reading: object) -> Markup:
    """A line to write the reading on; seen on paper only."""
    if not isinstance(reading, str):
        return EMPTY
    quantity = view.quantity(reading)
    record = view.get(reading, "readings")
    answers = listed(record.data.get("answers")) if record else []
    what = (
        text(" / ".join(answers).replace("-", " "))
        if answers
        else inline(Markup('<span class="bl-line"></span> '), _unit(view, reading) if quantity else "")
    )
    return box("bl-blank bl-print", para(strong("Read: "), what, small("  (", view.title(reading), ")")))


def _unit(view: Uses, reading: str) -> Markup:
    record, quantity = view.get(reading, "readings"), view.quantity(reading)
    return text((record.data.get("unit") if record else "") or (quantity.shown[0] if quantity else ""))
