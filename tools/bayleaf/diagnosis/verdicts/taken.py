"""One reading of a job as it was taken, with what it says and why it does not count."""

from __future__ import annotations

from dataclasses import dataclass

from bayleaf.diagnosis.verdicts.compute import Known
from bayleaf.diagnosis.verdicts.verdict import (
    Verdict,
)

ABSENT = "The fault was absent when this was read, so it clears nothing."
REPLACED = "A later reading replaces it."
UNLIKE = "Read twice with nothing mended between, and not alike: unsteady, or misread. Read it again."


@dataclass(frozen=True)
class Taken:
    """One reading of a job. `places` are its indexes in the job's list: one, or those of a computed reading's inputs.

    `which` is the cylinder, bank or connection, None where nobody said. `said` is the value or answer as it was given,
    `unit` the symbol of its unit. `aside` says why it does not count, "" when it counts; `outdated` says that a later
    repair is the reason. `better` names instruments that would decide a value that is too close to call. One that
    `convicts` was out of band while the car was well: it speaks for a fault and clears nothing.
    """

    reading: str
    places: tuple[int, ...]
    verdict: Verdict
    said: str
    known: Known | None = None
    unit: str = ""
    aside: str = ""
    outdated: bool = False
    computed: bool = False
    which: int | str | None = None
    better: tuple[str, ...] = ()
    convicts: bool = False

    @property
    def answers(self) -> frozenset[str]:
        """Every answer that it may be; empty where it gives no information."""
        return self.verdict.answers or frozenset()

    @property
    def counts(self) -> bool:
        """Whether it says anything about faults."""
        return not self.aside and self.verdict.answers is not None

    @property
    def clears(self) -> bool:
        """Whether it may clear faults."""
        return self.counts and not self.convicts
