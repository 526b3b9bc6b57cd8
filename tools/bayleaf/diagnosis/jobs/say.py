"""A judgement in words that a technician can read aloud: the answer first, the reasons where they are asked for."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judgement import Judgement, Suspect
from bayleaf.diagnosis.jobs.say_readings import reading_lines
from bayleaf.diagnosis.jobs.say_why import beside_lines, contradicted_lines
from bayleaf.diagnosis.jobs.words import in_hundred, in_minutes, name_of, names_of, repair_name
from bayleaf.diagnosis.plan.choose import Proposal
from bayleaf.records import Book, mapped
from bayleaf.records.prose import plain

MOST = 6  # of a list that only helps when it is short; the data form holds all of it
FEW = 4  # so many suspects are told with their repair


def lines(judgement: Judgement, book: Book, why: bool = False) -> list[str]:
    """The judgement as lines of plain text; with `why`, what contradicts which fault and how each reading was judged."""
    parts = [_head(judgement, book), _answer(judgement, book), reading_lines(judgement, book, why)]
    if why:
        parts += [beside_lines(judgement, book), contradicted_lines(judgement, book)]
    elif judgement.contradicted or judgement.besides:
        parts.append(["With --why: how each reading was judged, and what contradicts which fault."])
    return [line for part in parts if part for line in (*part, "")][:-1]


def _head(judgement: Judgement, book: Book) -> list[str]:
    head = [judgement.title]
    if judgement.invented:
        head.append("INVENTED: a job of the demonstration, and so are the figures of its car.")
    head.append(f"Car: {judgement.car.title}. Systems: {names_of(book, judgement.car.systems)}.")
    if judgement.felt:
        head.append(f"Complaint: {names_of(book, judgement.felt)}.")
    if judgement.codes:
        head.append(f"Codes: {', '.join(_code(id, book) for id in judgement.codes)}.")
    if judgement.history:
        head.append(f"Before it: {names_of(book, judgement.history)}.")
    if judgement.repaired:
        head.append(f"Repaired so far: {names_of(book, judgement.repaired)}.")
    if judgement.comes_and_goes:
        head.append("Intermittent: a good reading counts only where it was taken while the fault was there.")
    return head


def _code(id: str, book: Book) -> str:
    record = book.of("codes").get(id)
    return f"{record.data['code']} ({record.title})" if record else id


def _answer(judgement: Judgement, book: Book) -> list[str]:
    if not any(taken.counts for taken in judgement.taken):
        answer = ["Nothing was read that says anything yet."]
    elif judgement.healthy:
        answer = ["Nothing that was measured is out."]
    else:
        answer = []
    answer += [
        f"Does not agree: {name_of(book, d.reading)} with {names_of(book, d.others, ' and ')}, {d.apart} apart. {d.because}"
        for d in judgement.disagreements
    ]
    if not judgement.left:
        return answer + _nothing_fits(judgement, book)
    answer.append("Fits every reading, likeliest first" if len(judgement.left) > 1 else "Fits every reading")
    for item in judgement.left[:MOST]:
        answer.append(
            f"  {name_of(book, item.fault)}{_stages(item, book)}: {in_hundred(item.share)}{_silent(item, book)}."
        )
        if len(judgement.left) == 1 or (len(judgement.left) <= FEW and not judgement.one_mend):
            answer += [f"    {words}" for words in _repair(item, book)]
    more = len(judgement.left) - MOST
    answer += [f"  and {more} more"] if more > 0 else []
    if judgement.one_mend and 1 < len(judgement.left) <= FEW:
        answer.append(f"  Repair for all of them: {name_of(book, judgement.one_mend)}.")
    if judgement.besides:
        named = f"; {names_of(book, judgement.dangers)} can burn or gas someone" if judgement.dangers else ""
        many = "1 fault" if len(judgement.besides) == 1 else f"{len(judgement.besides)} faults"
        answer.append(f"  Fits, but is not felt like this or is rare: {many}{named}.")
    answer.append(f"  A cause outside this book: {in_hundred(judgement.outside)}.")
    return answer + _next(judgement, book)


def _next(judgement: Judgement, book: Book) -> list[str]:
    """Repair now, or the test to do next."""
    best = judgement.repairs[0] if judgement.repairs else None
    said = []
    if best and best.enough and len(judgement.left) > 1:
        said.append(
            f"Enough to repair: {repair_name(best.repair, book)} ({in_hundred(best.share)} of what this book holds)."
        )
    elif judgement.next and not (best and best.enough):
        said.append(f"Do this next: {_test(judgement.next[0], book)}.")
        said += [f"  {words}" for words in judgement.unable]
        others = "; ".join(_test(p, book) for p in judgement.next[1:3])
        said += [f"  Or: {others}."] if others else []
    elif not judgement.next and len(judgement.left) > 1:
        said.append("No test that this shop can do parts them.")
    return said


def _test(proposal: Proposal, book: Book) -> str:
    signal = f", {proposal.action.signal}: open the sheet first" if proposal.action.signal else ""
    return f"{name_of(book, proposal.action.procedure)}, {in_minutes(proposal.minutes)}{signal}"


def _silent(item: Suspect, book: Book) -> str:
    """What is out and fits this fault only because the book says nothing of it."""
    return f"; the book does not say what it does to {names_of(book, item.silent, ' and ')}" if item.silent else ""


def _stages(item: Suspect, book: Book) -> str:
    """The stages that fit, where others are contradicted."""
    every = mapped(book.of("faults")[item.fault].data.get("stages"))
    *most, last = (stage.replace("-", " ") for stage in item.stages)
    left = f"{', '.join(most)} or {last}" if most else last
    return f" ({left})" if len(item.stages) < len(every) else ""


def _repair(item: Suspect, book: Book) -> list[str]:
    repair = ["It belongs to another trade or system than this book covers."] if item.elsewhere else []
    ways = [
        *([names_of(book, item.mends, "; or: ")] if item.mends else []),
        *(plain(words, lambda id: name_of(book, id)) for words in item.words),
    ]
    verified = book.of("faults")[item.fault].data.get("proved_by")
    repair += [f"{'Repair' if n == 0 else 'Or'}: {way.rstrip('.')}." for n, way in enumerate(ways)]
    return repair + ([f"Verify with: {name_of(book, verified)}."] if isinstance(verified, str) else [])


def _nothing_fits(judgement: Judgement, book: Book) -> list[str]:
    answer = [
        "No single fault in this book fits every reading",
        "  Two things are wrong, or one reading is, or the cause lies outside this book.",
    ]
    answer += [
        f"  Two faults at once that would fit: {names_of(book, pair.faults, ' with ')}." for pair in judgement.pairs[:2]
    ]
    for readings in judgement.contradictions[:2]:
        alone = len(readings) == 1
        shown = "No fault shows this" if alone else "No fault shows these together"
        answer.append(f"  {shown}: {names_of(book, readings, ' and ')}.")
    repeat = judgement.repeat
    if repeat and repeat.minutes is not None:
        answer.append(
            f"  Quickest to read again: {name_of(book, repeat.of)} ({in_minutes(repeat.minutes)}). "
            f"If it is doubted, these come back: {names_of(book, repeat.brings[:MOST])}."
        )
    return answer + [f"  Or the repair did not hold: {name_of(book, d.of)}." for d in judgement.doubts if d.repair]
