"""The rules that a book must keep; a rule is one file under rules/."""

from __future__ import annotations

from bayleaf.checks.run import check, rules

__all__ = ["check", "rules"]
