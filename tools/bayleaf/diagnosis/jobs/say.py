"""A judgement in words that a technician can read aloud, and as data."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.diagnosis.jobs.judgement import Judgement, Left
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.diagnosis.verdicts.verdict import ANSWERED, NO_BAND
from bayleaf.records import Book, mapped

MOST = 6  # of a list that only helps when it is short; the data form holds all of it


def lines(judgement: Judgement, book: Book) -> list[str]:
    """The judgement as lines of plain text."""
    parts = [_head(judgement, book), _readings(judgement, book)]
    parts.append(_left(judgement, book) if judgement.left else _nothing_fits(judgement, book))
    if judgement.pairs:
        parts.append(_pairs(judgement, book))
    parts.append(_cleared(judgement, book))
    return [line for part in parts if part for line in (*part, "")][:-1]


def _name(book: Book, id: str) -> str:
    record = book.get(id)
    return record.title if record else id


def _names(book: Book, ids: Iterable[str], between: str = ", ") -> str:
    return between.join(_name(book, id) for id in ids)


def _head(judgement: Judgement, book: Book) -> list[str]:
    said = [judgement.title]
    if judgement.invented:
        said.append("INVENTED: a job of the demonstration, and so are the figures of its car.")
    said.append(f"Car: {judgement.car.title}. Systems: {_names(book, judgement.car.systems)}.")
    if judgement.felt:
        said.append(f"Complaint: {_names(book, judgement.felt)}.")
    said += {
        "any": [
            "No single fault in this book explains the whole complaint, so faults that explain a part of it are kept."
        ],
        "nothing": ["No fault in this book explains the complaint."],
        "no complaint": ["No complaint was given, so every fault that this car can have is a candidate."],
    }.get(judgement.explains, [])
    if judgement.repaired:
        said.append(f"Mended so far: {_names(book, judgement.repaired)}.")
    if judgement.comes_and_goes:
        said.append("The fault comes and goes, so only readings taken while it was there clear anything.")
    return said


def _readings(judgement: Judgement, book: Book) -> list[str]:
    said = ["What was read"]
    for taken in judgement.taken:
        worked_out = ", worked out" if taken.computed else ""
        said.append(f"  {_reading(taken, book)}: {taken.said}{worked_out}.{_verdict_words(taken)}")
        said += [f"    {words}" for words in (taken.verdict.words, taken.aside) if words]
        advice = f"    {taken.verdict.what_to_do}"
        said += (
            [advice] if advice.strip() and advice not in said else []
        )  # once is enough, however many readings need it
        said += [f"    Able to decide it: {', '.join(taken.better)}."] if taken.better else []
    said += [f"  {_name(book, reading)}: cannot be taken ({why})." for reading, why in judgement.cannot]
    return said if len(said) > 1 else ["No readings yet."]


def _reading(taken: Taken, book: Book) -> str:
    """The reading's title, and of which cylinder, bank or connection it was taken."""
    title = _name(book, taken.reading)
    if taken.which is None:
        return title
    return f"{title}, {book.of('readings')[taken.reading].data.get('each')} {_name(book, str(taken.which))}"


def _verdict_words(taken: Taken) -> str:
    """The verdict as a sentence; nothing where the answer, or what is said below it, says it."""
    kind = taken.verdict.kind
    return "" if kind in (ANSWERED, NO_BAND, taken.said) else f" {kind[0].upper()}{kind[1:]}."


def _left(judgement: Judgement, book: Book) -> list[str]:
    many = len(judgement.left) > 1
    said = ["What is left, if only one thing is wrong"]
    for item in judgement.left:
        share = f": {_share(item.share)}" if many else ""
        said.append(f"  {_name(book, item.fault)}{_stages(item, book)}{share}.")
        said += [f"    {words}" for words in _mend(item, book)]
    if many:
        said.append("  The shares follow how common each fault is, which is a judgement.")
    if many and judgement.one_mend:
        said.append(f"  All that is left is mended in one way: {_name(book, judgement.one_mend)}.")
    said.append("  A cause outside this book is always possible.")
    return said


def _stages(item: Left, book: Book) -> str:
    """The stages that are left, where others were cleared."""
    every = mapped(book.of("faults")[item.fault].data.get("stages"))
    *most, last = (stage.replace("-", " ") for stage in item.stages)
    left = f"{', '.join(most)} or {last}" if most else last
    return f" ({left})" if len(item.stages) < len(every) else ""


def _share(share: float) -> str:
    percent = round(100 * share)
    return "under 1 in 100" if percent < 1 else f"{percent} in 100"


def _mend(item: Left, book: Book) -> list[str]:
    said = ["It lies outside the systems of this book and belongs to somebody else."] if item.elsewhere else []
    if item.mends:
        said.append(f"Mended by: {_names(book, item.mends, '; or: ')}.")
    return said + [f"{'Or' if item.mends else 'To mend it'}: {words}" for words in item.words]


def _nothing_fits(judgement: Judgement, book: Book) -> list[str]:
    said = [
        "No single fault in this book fits all the readings",
        "  Two things are wrong, or one of the readings is, or the cause lies outside this book.",
    ]
    for readings in judgement.contradictions[:MOST]:
        if len(readings) == 1:
            said.append(f"  No candidate shows this: {_name(book, readings[0])}.")
        else:
            said.append(f"  No candidate shows these together: {_names(book, readings, ' and ')}.")
    for doubt in judgement.doubts[:MOST]:
        repair = "the repair of " if doubt.repair else ""
        said.append(f"  Doubt {repair}{_name(book, doubt.of)}, and these come back: {_names(book, doubt.brings)}.")
    if not judgement.doubts:
        said.append("  Doubting one reading brings no fault back.")
    return said


def _pairs(judgement: Judgement, book: Book) -> list[str]:
    more = len(judgement.pairs) - MOST
    said = ["Two faults at once that would fit (two that hide each other are not looked for)"]
    said += [f"  {_names(book, pair.faults, ' with ')}" for pair in judgement.pairs[:MOST]]
    return said + ([f"  and {more} more pairs"] if more > 0 else [])


def _cleared(judgement: Judgement, book: Book) -> list[str]:
    found: dict[str, list[str]] = {}
    for taken in judgement.taken:
        if taken.counts:
            found.setdefault(taken.reading, []).append(
                taken.said if taken.verdict.kind == ANSWERED else taken.verdict.kind
            )
    by: dict[str, list[str]] = {}
    for item in judgement.cleared:
        reasons = [f"{_name(book, r)} ({' and '.join(dict.fromkeys(found.get(r, ())))})" for r in item.reasons]
        by.setdefault(" with ".join(reasons), []).append(item.fault)
    said = [f"  {reasons}: {_names(book, faults)}." for reasons, faults in by.items()]
    return ["Which reading clears which faults", *said] if said else []


def to_json(judgement: Judgement, book: Book) -> dict:
    """The judgement as plain data: ids, numbers in SI, and the words of every verdict."""
    return {
        "title": judgement.title,
        "invented": judgement.invented,
        "car": {"title": judgement.car.title, "vehicle": judgement.car.vehicle, "systems": list(judgement.car.systems)},
        "felt": list(judgement.felt),
        "explains": judgement.explains,
        "comes_and_goes": judgement.comes_and_goes,
        "readings": [_taken_data(taken) for taken in judgement.taken],
        "cannot": [{"reading": reading, "because": why} for reading, why in judgement.cannot],
        "left": list(judgement.left_ids),
        "faults": [
            {
                "fault": item.fault,
                "title": _name(book, item.fault),
                "weight": item.weight,
                "share": item.share,
                "stages": list(item.stages),
                "mended_by": list(item.mends),
                "words": list(item.words),
                "elsewhere": item.elsewhere,
            }
            for item in judgement.left
        ],
        "cleared": [
            {"fault": item.fault, "by": {stage: list(by) for stage, by in item.by.items()}}
            for item in judgement.cleared
        ],
        "repaired": list(judgement.repaired),
        "doubts": [{"of": d.of, "repair": d.repair, "brings": list(d.brings)} for d in judgement.doubts],
        "pairs": [{"faults": list(pair.faults), "weight": pair.weight} for pair in judgement.pairs],
        "contradictions": [list(readings) for readings in judgement.contradictions],
    }


def _taken_data(taken: Taken) -> dict:
    verdict, band = taken.verdict, taken.verdict.band
    return {
        "reading": taken.reading,
        "which": taken.which,
        "said": taken.said,
        "computed": taken.computed,
        "verdict": verdict.kind,
        "answers": None if verdict.answers is None else sorted(verdict.answers),
        "value": taken.known.value if taken.known else None,
        "allowance": verdict.allowance,
        "band": band
        and {"low": band.low, "high": band.high, "source": band.source, "text": band.text, "system": band.system},
        "counts": taken.counts,
        "aside": taken.aside,
        "words": verdict.words,
        "what_to_do": verdict.what_to_do,
        "better": list(taken.better),
    }
