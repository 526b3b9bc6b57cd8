"""A judgement in words that a technician can read aloud: the answer first, the reasons where they are asked for."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.diagnosis.jobs.judgement import Judgement, Suspect
from bayleaf.diagnosis.plan.choose import Proposal
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.diagnosis.verdicts.verdict import ANSWERED, IN_BAND, NO_BAND
from bayleaf.records import Book, mapped
from bayleaf.records.prose import plain

BY_GRAPH = "* The book does not say so of this fault itself: nothing that it disturbs reaches what was read. Doubt that where it does not fit the car."
MOST = 6  # of a list that only helps when it is short; the data form holds all of it
FEW = 4  # so many suspects are told with their repair


def lines(judgement: Judgement, book: Book, why: bool = False) -> list[str]:
    """The judgement as lines of plain text; with `why`, what contradicts which fault and how each reading was judged."""
    parts = [_head(judgement, book), _answer(judgement, book), _readings(judgement, book, why)]
    if why:
        parts += [_besides(judgement, book), _contradicted(judgement, book)]
    elif judgement.contradicted or judgement.besides:
        parts.append(["With --why: how each reading was judged, and what contradicts which fault."])
    return [line for part in parts if part for line in (*part, "")][:-1]


def _name(book: Book, id: str) -> str:
    record = book.get(id)
    return record.title if record else id


def _names(book: Book, ids: Iterable[str], between: str = ", ") -> str:
    return between.join(_name(book, id) for id in ids)


def _head(judgement: Judgement, book: Book) -> list[str]:
    head = [judgement.title]
    if judgement.invented:
        head.append("INVENTED: a job of the demonstration, and so are the figures of its car.")
    head.append(f"Car: {judgement.car.title}. Systems: {_names(book, judgement.car.systems)}.")
    if judgement.felt:
        head.append(f"Complaint: {_names(book, judgement.felt)}.")
    if judgement.codes:
        head.append(f"Codes: {', '.join(_code(id, book) for id in judgement.codes)}.")
    if judgement.history:
        head.append(f"Before it: {_names(book, judgement.history)}.")
    if judgement.repaired:
        head.append(f"Repaired so far: {_names(book, judgement.repaired)}.")
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
        f"Does not agree: {_name(book, d.reading)} with {_names(book, d.others, ' and ')}, {d.apart} apart. {d.because}"
        for d in judgement.disagreements
    ]
    if not judgement.left:
        return answer + _nothing_fits(judgement, book)
    answer.append("Fits every reading, likeliest first" if len(judgement.left) > 1 else "Fits every reading")
    for item in judgement.left[:MOST]:
        answer.append(f"  {_name(book, item.fault)}{_stages(item, book)}: {_share(item.share)}{_silent(item, book)}.")
        if len(judgement.left) == 1 or (len(judgement.left) <= FEW and not judgement.one_mend):
            answer += [f"    {words}" for words in _repair(item, book)]
    more = len(judgement.left) - MOST
    answer += [f"  and {more} more"] if more > 0 else []
    if judgement.one_mend and 1 < len(judgement.left) <= FEW:
        answer.append(f"  Repair for all of them: {_name(book, judgement.one_mend)}.")
    if judgement.besides:
        named = f"; {_names(book, judgement.dangers)} can burn or gas someone" if judgement.dangers else ""
        many = "1 fault" if len(judgement.besides) == 1 else f"{len(judgement.besides)} faults"
        answer.append(f"  Fits, but is not felt like this or is rare: {many}{named}.")
    answer.append(f"  A cause outside this book: {_share(judgement.outside)}.")
    return answer + _next(judgement, book)


def _next(judgement: Judgement, book: Book) -> list[str]:
    """Repair now, or the test to do next."""
    best = judgement.repairs[0] if judgement.repairs else None
    said = []
    if best and best.enough and len(judgement.left) > 1:
        said.append(
            f"Enough to repair: {_repair_name(best.repair, book)} ({_share(best.share)} of what this book holds)."
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
    return f"{_name(book, proposal.action.procedure)}, {_minutes(proposal.minutes)}{signal}"


def _minutes(minutes: float) -> str:
    return f"{minutes:g} {'minute' if minutes == 1 else 'minutes'}"


def _repair_name(repair: str, book: Book) -> str:
    return (
        _name(book, repair)
        if repair in book.of("procedures")
        else plain(repair, lambda id: _name(book, id)).rstrip(".")
    )


def _readings(judgement: Judgement, book: Book, why: bool) -> list[str]:
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
    readings += [f"  {_name(book, reading)}: cannot be taken ({why_not})." for reading, why_not in judgement.cannot]
    return readings if len(readings) > 1 else []


def _reading(taken: Taken, book: Book) -> str:
    """The reading's title, and of which cylinder, bank or connection it was taken."""
    title = _name(book, taken.reading)
    if taken.which is None:
        return title
    return f"{title}, {book.of('readings')[taken.reading].data.get('each')} {_name(book, str(taken.which))}"


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


def _silent(item: Suspect, book: Book) -> str:
    """What is out and fits this fault only because the book says nothing of it."""
    return f"; the book does not say what it does to {_names(book, item.silent, ' and ')}" if item.silent else ""


def _stages(item: Suspect, book: Book) -> str:
    """The stages that fit, where others are contradicted."""
    every = mapped(book.of("faults")[item.fault].data.get("stages"))
    *most, last = (stage.replace("-", " ") for stage in item.stages)
    left = f"{', '.join(most)} or {last}" if most else last
    return f" ({left})" if len(item.stages) < len(every) else ""


def _share(share: float) -> str:
    percent = round(100 * share)
    return "under 1 in 100" if percent < 1 else f"{percent} in 100"


def _repair(item: Suspect, book: Book) -> list[str]:
    repair = ["It belongs to another trade or system than this book covers."] if item.elsewhere else []
    ways = [
        *([_names(book, item.mends, "; or: ")] if item.mends else []),
        *(plain(words, lambda id: _name(book, id)) for words in item.words),
    ]
    verified = book.of("faults")[item.fault].data.get("proved_by")
    repair += [f"{'Repair' if n == 0 else 'Or'}: {way.rstrip('.')}." for n, way in enumerate(ways)]
    return repair + ([f"Verify with: {_name(book, verified)}."] if isinstance(verified, str) else [])


def _nothing_fits(judgement: Judgement, book: Book) -> list[str]:
    answer = [
        "No single fault in this book fits every reading",
        "  Two things are wrong, or one reading is, or the cause lies outside this book.",
    ]
    for pair in judgement.pairs[:2]:
        answer.append(f"  Two faults at once that would fit: {_names(book, pair.faults, ' with ')}.")
    for readings in judgement.contradictions[:2]:
        alone = len(readings) == 1
        shown = "No fault shows this" if alone else "No fault shows these together"
        answer.append(f"  {shown}: {_names(book, readings, ' and ')}.")
    repeat = judgement.repeat
    if repeat:
        answer.append(
            f"  Quickest to read again: {_name(book, repeat.of)} ({_minutes(repeat.minutes)}). "
            f"If it is doubted, these come back: {_names(book, repeat.brings[:MOST])}."
        )
    for doubt in judgement.doubts:
        if doubt.repair:
            answer.append(f"  Or the repair did not hold: {_name(book, doubt.of)}.")
    return answer


def _besides(judgement: Judgement, book: Book) -> list[str]:
    besides = [f"  {_name(book, item.fault)}: {_share(item.share)}." for item in judgement.besides]
    return ["Fits, but is not felt like this or is rare", *besides] if besides else []


def _contradicted(judgement: Judgement, book: Book) -> list[str]:
    verdicts: dict[str, list[str]] = {}
    for taken in judgement.taken:
        if taken.clears:
            verdicts.setdefault(taken.reading, []).append(
                taken.said if taken.verdict.kind == ANSWERED else taken.verdict.kind
            )
    by: dict[str, list[str]] = {}
    for item in judgement.contradicted:
        reasons = [f"{_name(book, r)} ({' and '.join(dict.fromkeys(verdicts.get(r, ())))})" for r in item.reasons]
        sign = "*" if item.by_graph & set(item.reasons) else ""
        by.setdefault(" with ".join(reasons), []).append(f"{_name(book, item.fault)}{sign} ({_factor(item.factor)})")
    said = [f"  {reasons}: {', '.join(faults)}." for reasons, faults in by.items()]
    said += [f"  {BY_GRAPH}"] if any(item.by_graph & set(item.reasons) for item in judgement.contradicted) else []
    return (
        ["Contradicted, unless the reading misled; and how much likelier or less it leaves them", *said] if said else []
    )


def _factor(factor: float) -> str:
    return f"×{factor:.2g}"
