"""Findings as annotations of a hosted check run: the worst ten beside their lines, the rest in a summary."""

from __future__ import annotations

from collections import Counter

from bayleaf.finding import LEVELS, Finding
from bayleaf.report.model import Report
from bayleaf.report.text import plain, tally

MOST = 10  # more are not shown beside the lines
_COMMANDS = {"error": "error", "warning": "warning", "advice": "notice"}


def render(report: Report) -> str:
    """Workflow commands, one a line; errors come first, so that what rejects a change is always annotated."""
    worst = sorted(report.findings, key=lambda f: (LEVELS.index(f.level), *f.order()))
    lines = [_annotation(f) for f in worst[:MOST]]
    titles = {rule.code: rule.title for rule in report.rules}
    rest = Counter((f.level, f.code) for f in worst[MOST:])
    if rest:
        lines.append(f"::group::{sum(rest.values())} more findings")
        lines += [
            f"{level} {code} ({titles.get(code, code)}): {n}" for (level, code), n in sorted(rest.items(), key=_order)
        ]
        lines += [_plainly(f) for f in worst[MOST:]]
        lines.append("::endgroup::")
    lines.append(f"{report.counts}: {tally(report.findings)}")
    return "\n".join(lines)


def _order(entry: tuple[tuple[str, str], int]) -> tuple:
    (level, code), n = entry
    return LEVELS.index(level), -n, code


def _annotation(f: Finding) -> str:
    end = max(f.end_column - 1, f.column)
    place = f"file={_property(f.file)},line={f.line},col={f.column},endColumn={end},title={_property(f.code)}"
    return f"::{_COMMANDS[f.level]} {place}::{_data(f'{f.message}. {f.help}' if f.help else f.message)}"


def _plainly(f: Finding) -> str:
    """A line of the summary that cannot be taken for a command: it starts with two spaces and no colons."""
    return f"  {plain(f.file)}:{f.line}:{f.column} {f.code} {plain(f.message)}"


def _data(text: str) -> str:
    """The text of a command: per cent signs and line ends are written as escapes."""
    return plain(text).replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
