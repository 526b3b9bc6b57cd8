"""What every renderer is given."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from bayleaf.checks.rule import Rule
from bayleaf.finding import Finding


def no_source(_file: str, _line: int) -> str:
    """The source line of a finding where no file is at hand."""
    return ""


class Report(NamedTuple):
    """Findings in order, every rule, and what was looked at in words.

    `line_of(file, line)` gives a source line, or an empty string; `colour` is for a terminal that shows it.
    """

    findings: Sequence[Finding]
    rules: Sequence[Rule]
    counts: str
    line_of: Callable[[str, int], str] = no_source
    colour: bool = False
