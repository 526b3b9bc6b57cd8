"""Findings as text, JSON, SARIF and annotations: one report, many renderings."""

from __future__ import annotations

from importlib import import_module

from bayleaf.report.model import Report

# Each format and the module that renders it; only the one in use is imported.
FORMATS = {"text": "text", "json": "document", "sarif": "sarif", "github": "annotations"}


def render(format: str, report: Report) -> str:
    """A report in one of the formats, without a line end after the last line."""
    renderer = import_module(f"bayleaf.report.{FORMATS[format]}")
    text: str = renderer.render(report)
    return text


__all__ = ["FORMATS", "Report", "render"]
