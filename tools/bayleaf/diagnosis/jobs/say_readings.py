"""The readings of a judgement in words, a line each; with reasons where they are asked for."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.diagnosis.jobs.words import name_of
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.diagnosis.verdicts.verdict import ANSWERED, IN_BAND, NO_BAND
from bayleaf.records import Book


def reading_lines(judgement: Judgement, book: Book, why: bool) -> list[str]:
    """Every reading with its verdict, and what to do about it, once."""
    readings, given = ["What was read"], set()  # advice that several readings need is given once
    for taken in judgement.taken:
        worked_out = ", worked out" if taken.computed else ""
        reading = f"  {_reading(taken, book)}: {taken.said}{worked_out}{_verdict(taken)}."
        readings.append(f"{reading} {taken.aside}" if taken.aside else reading)
        more = [taken.verdict.words] if why else []
        more += [taken.verdict.what_to_do] if taken.verdict.kind != IN_BAND else []
        more += [f"Able to decide it: {', '.join(taken.better)}."] if taken.better else []
        more = [words for words in more if words and words not in given]
        given.update(more)
        readings += [f"    {' '.join(more)}"] if more else []
    readings += [f"  {name_of(book, reading)}: cannot be taken ({why_not})." for reading, why_not in judgement.cannot]
    return readings if len(readings) > 1 else []


def _reading(taken: Taken, book: Book) -> str:
    """The reading's title, and of which cylinder, bank or connection it was taken."""
    title = name_of(book, taken.reading)
    if taken.which is None:
        return title
    return f"{title}, {book.of('readings')[taken.reading].data.get('each')} {name_of(book, str(taken.which))}"


def _verdict(taken: Taken) -> str:
    """The verdict behind a reading; nothing where the answer itself says it."""
    kind = taken.verdict.kind
    if kind in (ANSWERED, NO_BAND, taken.said):
        return ""
    return f", {kind}{_odds(taken.verdict.conformance)}"


def _odds(conformance: float | None) -> str:
    """The conformance probability as odds: `, about 4 to 1 in band`."""
    if conformance is None:
        return ""
    sure = max(conformance, 1 - conformance)
    side = "in band" if conformance >= 0.5 else "out of band"
    return f", about {sure / (1 - sure):.0f} to 1 {side}" if sure < 0.99 else f", almost surely {side}"
