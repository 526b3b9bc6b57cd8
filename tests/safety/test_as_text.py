"""The walk of a procedure as a person reads it: one whole walk of the small book, kept word for word."""

from __future__ import annotations

from pathlib import Path

from bayleaf.checks.context import Context
from bayleaf.safety.as_text import as_text
from tests.checks.small import load_small

WALK = Path(__file__).with_name("walks") / "fit-gauge.txt"


def test_the_walk_of_fitting_the_gauge_reads_as_it_did():
    book = load_small()
    context, record = Context(book), book.get("fit-gauge")
    assert as_text(
        record.title, context.procedures.walk(record), context.procedures.met(record), context.procedures.machine
    ) == WALK.read_text(encoding="utf-8")
