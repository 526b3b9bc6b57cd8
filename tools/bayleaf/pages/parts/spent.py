"""The time that a procedure takes: work and waiting apart, by itself and with what it follows."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.parts.steps import Step, walk
from bayleaf.records import Record, mapped

HOUR = 60


def spent(record: Record, steps: Iterable[Step]) -> str:
    """`6 min of work and 20 min of waiting`, and the sum with the procedures that are followed, where there are any.

    The sum is a ceiling: what one procedure has let cool is not waited for again in the next.
    """
    own = _both(record)
    followed = [_both(step.inner[0].record) for step in walk(steps) if step.inner]
    if not followed:
        return _said(own)
    work, waiting = (sum(part) for part in zip(own, *followed, strict=True))
    return f"{_said(own)}; with the procedures that it follows at most {_said((work, waiting))}"


def _both(record: Record) -> tuple[int, int]:
    minutes = mapped(record.data.get("minutes"))
    return minutes.get("hands", 0), minutes.get("waiting", 0)


def _said(both: tuple[int, int]) -> str:
    work, waiting = both
    return f"{_long(work)} of work" + (f" and {_long(waiting)} of waiting" if waiting else "")


def _long(minutes: int) -> str:
    """Minutes, from two hours on as hours and minutes."""
    hours, rest = divmod(minutes, HOUR)
    if minutes < 2 * HOUR:
        return f"{minutes} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"
