"""Findings as text, JSON, SARIF and annotations; one finding type, many renderings."""

from __future__ import annotations
