"""The rules that a book must keep; a rule is one file under rules/."""

from __future__ import annotations

from bayleaf.checks.run import all_rules, check, check_record

__all__ = ["all_rules", "check", "check_record"]
