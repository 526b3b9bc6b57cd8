"""The next test in words: what it costs, what each answer would mean, and what can never be told apart."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.diagnosis.plan.choose import Proposal
from bayleaf.records import Book, mapped
from bayleaf.records.prose import plain

MOST = 5


def plan_lines(judgement: Judgement, book: Book) -> list[str]:
    """The next test and those after it, as lines of plain text."""
    said = [judgement.title]
    best = judgement.repairs[0] if judgement.repairs else None
    if best and best.enough:
        percent = round(100 * best.share)
        said.append(
            f"Stop testing and repair: {_repair(best.repair, book)} ({percent} in 100 of what this book holds)."
        )
        said += _verify(judgement, book)
    elif not judgement.left:
        said.append("No single fault fits every reading: see bayleaf judge before any other test.")
    elif not judgement.next:
        said.append("No test that this shop can do tells more.")
    else:
        said += ["", *_first(judgement.next[0], book), *(f"  {words}" for words in judgement.unable)]
        if len(judgement.next) > 1:
            said += ["", "Then, if it decides nothing"]
            said += [f"  {_line(proposal, book)}" for proposal in judgement.next[1:MOST]]
    for group in judgement.alike:
        said += ["", f"None of these tests parts: {', '.join(_name(book, fault) for fault in group)}."]
    return said


def _first(proposal: Proposal, book: Book) -> list[str]:
    action = proposal.action
    said = [f"Do this next: {_line(proposal, book)}"]
    if action.signal:
        said.append(f"  {action.signal}: open the sheet first.")
    if action.setup:
        connections = ", ".join(_name(book, state).lower() for state in action.connections)
        said.append(f"  It needs {connections}: {action.setup:g} of the minutes, undoing included.")
    if action.people > 1:
        said.append(f"  {action.people} people.")
    results = mapped(mapped(book.of("procedures")[action.procedure].data.get("results")).get(proposal.reading))
    said += [f"  {_name(book, proposal.reading)}"] if results else []
    said += [
        f"    {answer.replace('-', ' ')}: {plain(str(meaning), lambda id: _name(book, id))}"
        for answer, meaning in results.items()
    ]
    return said


def _line(proposal: Proposal, book: Book) -> str:
    minutes = "1 minute" if proposal.minutes == 1 else f"{proposal.minutes:g} minutes"
    return f"{_name(book, proposal.action.procedure)} ({minutes}; {proposal.action.procedure})"


def _verify(judgement: Judgement, book: Book) -> list[str]:
    fault = judgement.repairs[0].faults[0]
    verified = book.of("faults")[fault].data.get("proved_by")
    return [f"Verify the repair with: {_name(book, verified)}."] if isinstance(verified, str) else []


def _repair(repair: str, book: Book) -> str:
    return (
        _name(book, repair)
        if repair in book.of("procedures")
        else plain(repair, lambda id: _name(book, id)).rstrip(".")
    )


def _name(book: Book, id: str) -> str:
    record = book.get(id)
    return record.title if record else id
