"""Findings for a person at a terminal: the place, the line, a caret, and what to do."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from bayleaf.finding import LEVELS, Finding
from bayleaf.records.yaml.decode import HIDDEN
from bayleaf.report.model import Report

_COLOURS = {"error": "31;1", "warning": "33;1", "advice": "36;1"}
_WIDEST = 100


def render(report: Report) -> str:
    """All findings, and a last line that says what was looked at and how many there are."""
    last = f"{report.counts}: {tally(report.findings)}"
    return f"{listing(report.findings, report.line_of, report.colour)}\n{last}" if report.findings else last


def listing(findings: Iterable[Finding], line_of: Callable[[str, int], str], colour: bool = False) -> str:
    """All findings as text. `line_of(file, line)` gives a source line, or an empty string.

    Advice comes first, by rule, and only the first of each in full: what must be mended stands at the end, by file.
    """
    advice: dict[str, list[Finding]] = {}
    blocks: list[str] = []
    for f in findings:
        if f.level == "advice":
            advice.setdefault(f.code, []).append(f)
        else:
            blocks.append(_one(f, line_of, colour))
    return "\n".join([_alike(same, line_of, colour) for same in advice.values()] + blocks)


def _alike(findings: list[Finding], line_of: Callable[[str, int], str], colour: bool) -> str:
    """Pieces of advice of one rule: the first in full, the others in a line, with their help where it is another."""
    more = [
        _head(f, colour) + (f"\n   help: {plain(f.help)}" if f.help not in ("", findings[0].help) else "")
        for f in findings[1:]
    ]
    return _one(findings[0], line_of, colour) + "".join(f"{line}\n" for line in more)


def _head(f: Finding, colour: bool) -> str:
    head = f"{f.level} {f.code}"
    if colour:
        head = f"\033[{_COLOURS[f.level]}m{head}\033[0m"
    return f"{plain(f.file)}:{f.line}:{f.column}: {head}: {plain(f.message)}"


def _one(f: Finding, line_of: Callable[[str, int], str], colour: bool) -> str:
    lines = [_head(f, colour)]
    source = plain(line_of(f.file, f.line))
    if source.strip():
        start = max(0, f.column - 1 - _WIDEST // 2) if len(source) > _WIDEST else 0
        shown = source[start : start + _WIDEST]
        width = max(1, min(f.end_column - f.column, len(shown) - (f.column - 1 - start)))
        lines += [f"   | {shown}", f"   | {' ' * (f.column - 1 - start)}{'^' * width}"]
    if f.help:
        lines.append(f"   help: {plain(f.help)}")
    return "\n".join(lines) + "\n"


def plain(text: str) -> str:
    """Text that cannot move the cursor, recolour the terminal or hide in it: what no record may hold becomes a dot."""
    return HIDDEN.sub("·", text).replace("\n", "·").replace("\r", "·").replace("\t", "·")


def tally(findings: Iterable[Finding]) -> str:
    """`2 errors, 1 warning, 3 pieces of advice`."""
    counts = dict.fromkeys(LEVELS, 0)
    for f in findings:
        counts[f.level] += 1
    names = {
        "error": ("error", "errors"),
        "warning": ("warning", "warnings"),
        "advice": ("piece of advice", "pieces of advice"),
    }
    return ", ".join(f"{n} {names[level][n != 1]}" for level, n in counts.items())
