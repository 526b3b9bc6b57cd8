"""What is wrong with a job's entries, whoever wrote the job: the one set of checks for kb/jobs and for a technician's file.

Shape (fields, types) is the schema's to report; here the job is held against the book.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches

from bayleaf.diagnosis.car import car_of_job, offers, usable
from bayleaf.diagnosis.compute import Desk
from bayleaf.diagnosis.instrument import types_of
from bayleaf.diagnosis.layout import layout_of
from bayleaf.diagnosis.matrix import is_measured
from bayleaf.diagnosis.verdict import SAID
from bayleaf.finding import Finding
from bayleaf.quantities import Quantity, QuantityError
from bayleaf.records import SINGULAR, Book, Record, listed, mapped



@dataclass(frozen=True)
class Code:
    """A complaint about a job: its level, what it says, why it matters and how to mend it."""

    level: str
    title: str
    why: str
    mend: str


CODES = {
    "JOB-1": Code(
        "error", "A job names something that is not in the book",
        "Nothing can be judged by a name that nobody wrote down.", "Write an id of the book.",
    ),
    "JOB-2": Code(
        "error", "A value in a unit of something else",
        "A number is nothing without its unit, and a wrong one turns the verdict round.", "Write a unit of the reading's quantity.",
    ),
    "JOB-3": Code(
        "error", "An answer that the reading does not have",
        "A question has a closed list; of a number a person says only none or unsteady, and the verdict says the rest.",
        "Write one of the reading's answers, or the value with its unit.",
    ),
    "JOB-4": Code(
        "error", "A computed reading was typed",
        "It follows from other readings and from what they may be out by.", "Type the readings that it is computed from.",
    ),
    "JOB-5": Code(
        "error", "A reading that this car does not have",
        "Its place is on no path of the car's systems, or on a feature that the car was not said to have.",
        "Leave it out, or complete the car's systems and features.",
    ),
    "JOB-6": Code(
        "error", "An instrument that does not measure this",
        "Its error says nothing about this quantity.", "Name the instrument that was used.",
    ),
    "JOB-7": Code(
        "warning", "A value that no car can show",
        "It is judged not plausible and clears nothing.", "Look at the unit and the decimal point, and read again.",
    ),
    "JOB-8": Code(
        "error", "A fault that comes and goes, and a reading that does not say whether it was there",
        "A reading taken while the car is well proves that the car was well.", "Say fault_was: present or fault_was: absent.",
    ),
    "JOB-9": Code(
        "error", "A state that the reading does not depend on",
        "not_met speaks of what the reading itself is valid with.", "Name states of the reading's valid_if.",
    ),
    "JOB-10": Code(
        "error", "A maker's figure that cannot be",
        "Its limits are crossed, or it belongs to a question.", "Copy the figure again.",
    ),
    "JOB-11": Code(
        "error", "A replay that does not leave what the job expects",
        "Either a fault says something untrue or the job does.", "Look at what cleared the missing fault, or mend the job.",
    ),
    "JOB-12": Code(
        "error", "Two systems of one family in one car",
        "A car has one fuel, induction, mixture and exhaust system; only layers lie over them.", "Keep the one that the car has.",
    ),
}  # fmt: skip


def job_problems(book: Book, job: Record, desk: Desk | None = None) -> list[Finding]:
    """Every problem of a sound job record, in the order of its fields. Pass a desk to share it between jobs."""
    desk = desk or Desk(book)
    found = [*_names(book, job), *_families(book, job), *_maker_bands(desk, job)]
    car, layout = car_of_job(book, job.data), layout_of(book)
    for i, entry in enumerate(listed(job.data.get("readings"))):
        id = entry.get("reading")
        if not usable(book.of("readings").get(id)):
            continue
        path = ("readings", i)
        if not offers(book, layout, car, id) and all(s in book.of("systems") for s in car.systems):
            found.append(_at(job, "JOB-5", f"this car has no reading {id}", (*path, "reading")))
        if "value" in entry or "answer" in entry:
            found += _entry(desk, job, path, entry)
    return found


def _at(job: Record, code: str, message: str, path: tuple, help: str = "", key: bool = False) -> Finding:
    return job.finding(code, CODES[code].level, message, help or CODES[code].mend, path, key)


def _names(book: Book, job: Record) -> Iterator[Finding]:
    data = job.data
    car = mapped(data.get("car"))
    named = [("vehicles", ("vehicle",), data["vehicle"])] if "vehicle" in data else []
    named += [("systems", ("car", "systems", i), s) for i, s in enumerate(listed(car.get("systems")))]
    named += [("components", ("car", "has", i), c) for i, c in enumerate(listed(car.get("has")))]
    named += [("fuels", ("car", "fuel"), car["fuel"])] if "fuel" in car else []
    named += [("readings", ("maker_bands", r), r) for r in mapped(data.get("maker_bands"))]
    named += [("equipment", ("shop", i), e) for i, e in enumerate(listed(data.get("shop")))]
    named += [("symptoms", ("felt", i), s) for i, s in enumerate(listed(data.get("felt")))]
    for i, entry in enumerate(listed(data.get("readings"))):
        for kind, field in (("readings", "reading"), ("faults", "repaired"), ("equipment", "instrument")):
            if field in entry:
                named.append((kind, ("readings", i, field), entry[field]))
    named += [("faults", ("true_cause", i), f) for i, f in enumerate(listed(data.get("true_cause")))]
    for kind, path, id in named:
        record = book.of(kind).get(id)
        if record is None or record.data.get("status") == "retired":
            yield _at(job, "JOB-1", *_unknown(book, kind, id, record, path), key=path[0] == "maker_bands")


def _unknown(book: Book, kind: str, id: str, record: Record | None, path: tuple) -> tuple[str, tuple, str]:
    """Message, place and help for a name that leads nowhere."""
    one, other = SINGULAR[kind], book.get(id)
    if record is not None:
        message, instead = f"the {one} {id} is retired", record.data.get("replaced_by")
    elif other is not None:
        message, instead = f"{id} is a {SINGULAR[other.kind]}, not a {one}", None
    else:
        message, instead = f"there is no {one} {id}", next(iter(get_close_matches(id, book.of(kind), 1)), None)
    return message, path, f"Did you mean {instead}?" if instead else ""


def _families(book: Book, job: Record) -> Iterator[Finding]:
    held: dict[str, str] = {}
    for i, id in enumerate(listed(mapped(job.data.get("car")).get("systems"))):
        family = book.of("systems")[id].data.get("family", "layer") if id in book.of("systems") else "layer"
        if family != "layer" and held.setdefault(family, id) != id:
            yield _at(job, "JOB-12", f"{held[family]} and {id} are both {family} systems", ("car", "systems", i))


def _maker_bands(desk: Desk, job: Record) -> Iterator[Finding]:
    for id, band in mapped(job.data.get("maker_bands")).items():
        if not usable(desk.book.of("readings").get(id)):
            continue
        path, quantity = ("maker_bands", id), desk.quantity(id)
        if quantity is None:
            yield _at(job, "JOB-10", f"{id} is a question and has no limits", path, key=True)
        elif band["unit"] not in quantity.units:
            yield _at(job, "JOB-2", f"{band['unit']!r} is not a unit of {quantity.title.lower()}", (*path, "unit"), _units(quantity))
        elif "min" in band and "max" in band and band["min"] >= band["max"]:
            yield _at(job, "JOB-10", f"the lower limit {band['min']} is not below the upper limit {band['max']}", (*path, "min"))


def _units(quantity: Quantity) -> str:
    return f"Write {' or '.join(quantity.symbols())}."


def _entry(desk: Desk, job: Record, path: tuple, entry: dict) -> Iterator[Finding]:
    reading = desk.book.of("readings")[entry["reading"]]
    if job.data.get("comes_and_goes") is True and "fault_was" not in entry:
        yield _at(job, "JOB-8", f"{reading.id} does not say whether the fault was there", path)
    for i, state in enumerate(listed(entry.get("not_met"))):
        if state not in listed(reading.data.get("valid_if")):
            yield _at(job, "JOB-9", f"{reading.id} does not depend on {state}", (*path, "not_met", i))
    if "computed" in reading.data:
        yield _at(job, "JOB-4", f"{reading.id} is computed", (*path, "reading"))
    elif "answer" in entry:
        allowed = listed(reading.data.get("answers")) or list(SAID)
        if entry["answer"] not in allowed:
            told = " or ".join(allowed) + ("; for the rest give the value." if is_measured(desk.book, reading.id) else ".")
            yield _at(job, "JOB-3", f"{reading.id} has no answer {entry['answer']!r}", (*path, "answer"), f"Write {told}")
    else:
        yield from _value(desk, job, path, entry, reading)


def _value(desk: Desk, job: Record, path: tuple, entry: dict, reading: Record) -> Iterator[Finding]:
    quantity = desk.quantity(reading.id)
    if "answers" in reading.data:
        help = f"Write answer: {' or '.join(reading.data['answers'])}."
        yield _at(job, "JOB-3", f"{reading.id} is a question and takes no number", (*path, "value"), help)
        return
    if quantity is None:
        return  # the reading's own quantity is unknown, which its own check reports
    try:
        value = quantity.si(entry["value"], entry["unit"])
    except QuantityError as err:
        yield _at(job, "JOB-2", err.message, (*path, "unit"), err.help[:1].upper() + err.help[1:])
        return
    if not quantity.plausible[0] <= value <= quantity.plausible[1]:
        yield _at(job, "JOB-7", f"{entry['value']} {entry['unit']} is not plausible for {quantity.title.lower()}", (*path, "value"))
    equipment = desk.book.of("equipment").get(entry["instrument"])
    if usable(equipment) and quantity.id not in measures(desk.book, equipment.id):
        yield _at(job, "JOB-6", f"{equipment.id} does not measure {quantity.title.lower()}", (*path, "instrument"))


def measures(book: Book, equipment: str) -> set[str]:
    """The quantities that an instrument measures, its types' included."""
    return {q for one in types_of(book, equipment) for q in listed(book.of("equipment")[one].data.get("measures"))}
