"""Findings for programs: one JSON document."""

from __future__ import annotations

import json

from bayleaf.finding import LEVELS, Finding
from bayleaf.report.model import Report
from bayleaf.report.text import plain


def render(report: Report) -> str:
    """{format, counts, totals, findings: [...]}; `page` is the rule's page on the site, `path` the field path."""
    findings, known = report.findings, {rule.code for rule in report.rules}
    document = {
        "format": "bayleaf-findings-1",
        "counts": report.counts,
        "totals": {level: sum(f.level == level for f in findings) for level in LEVELS},
        "findings": [_one(f, known) for f in findings],
    }
    return json.dumps(document, ensure_ascii=True, indent=2)


def _one(f: Finding, known: set[str]) -> dict:
    return {
        "code": f.code,
        "level": f.level,
        "message": plain(f.message),
        "help": plain(f.help),
        "file": f.file,
        "line": f.line,
        "column": f.column,
        "end_column": f.end_column,
        "record": f.record,
        "path": list(f.path),
        "page": page(f.code) if f.code in known else "",
    }


def page(code: str) -> str:
    """The address of a rule's page inside the site."""
    return f"rules/{code}.html"
