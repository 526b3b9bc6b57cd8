"""Findings as SARIF 2.1.0, the OASIS format for results of static analysis (errata 01)."""

from __future__ import annotations

import hashlib
import json
from collections import Counter
from typing import Any
from urllib.parse import quote

from bayleaf.checks.rule import Rule
from bayleaf.finding import Finding
from bayleaf.report.model import Report
from bayleaf.report.text import plain

_LEVELS = {"error": "error", "warning": "warning", "advice": "note"}


def render(report: Report) -> str:
    """One run with every rule, its help, and a fingerprint for each result that outlives moved lines."""
    index = {rule.code: i for i, rule in enumerate(report.rules)}
    seen: Counter[str] = Counter()
    run = {
        "tool": {"driver": {"name": "bayleaf", "rules": [_rule(rule) for rule in report.rules]}},
        "columnKind": "unicodeCodePoints",
        "properties": {"counts": report.counts},
        "results": [_result(f, index, seen) for f in report.findings],
    }
    return json.dumps({"version": "2.1.0", "runs": [run]}, ensure_ascii=True, indent=2)


def _rule(rule: Rule) -> dict[str, Any]:
    return {
        "id": rule.code,
        "name": rule.title,
        "shortDescription": {"text": rule.title},
        "fullDescription": {"text": rule.what},
        "help": {"text": f"{rule.what} {rule.why} {rule.mend}"},
        "defaultConfiguration": {"level": _LEVELS[rule.level]},
    }


def _result(f: Finding, index: dict[str, int], seen: Counter[str]) -> dict[str, Any]:
    region = {"startLine": f.line, "startColumn": f.column}
    if f.end_column > f.column:
        region |= {"endLine": f.line, "endColumn": f.end_column}
    location: dict[str, Any] = {
        "physicalLocation": {
            "artifactLocation": {"uri": quote(f.file.encode("utf-8", "surrogateescape"))},
            "region": region,
        }
    }
    if f.record:
        path = "/".join([f.record, *map(str, f.path)])
        location["logicalLocations"] = [{"name": f.record, "fullyQualifiedName": path}]
    result = {
        "ruleId": f.code,
        "level": _LEVELS[f.level],
        "message": {"text": plain(f"{f.message}. {f.help}" if f.help else f.message)},
        "locations": [location],
        "partialFingerprints": {"bayleaf/v1": _fingerprint(f, seen)},
    }
    return result | ({"ruleIndex": index[f.code]} if f.code in index else {})


def _fingerprint(f: Finding, seen: Counter[str]) -> str:
    """By rule, record and field; line and wording may change. The second of its kind in one place gets a number."""
    place = "\0".join([f.code, f.file, f.record, *map(str, f.path)])
    seen[place] += 1
    return hashlib.sha256(f"{place}\0{seen[place]}".encode("utf-8", "surrogatepass")).hexdigest()[:32]
