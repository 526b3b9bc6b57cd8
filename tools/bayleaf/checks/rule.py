"""What a rule is: its words, its examples and one function."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

from bayleaf.finding import Finding
from bayleaf.records import Record

if TYPE_CHECKING:
    pass

SCOPES = ("file", "value", "record", "book", "replay")


class Example(NamedTuple):
    """A slip in the small book of the tests: in `file`, the text `good` becomes `bad`, and the rule must speak.

    `file` is relative to kb/. `good` stands there exactly once; where it is empty, `bad` is a whole new file.
    """

    file: str
    good: str
    bad: str


class Rule(NamedTuple):
    """One rule. `code` is its family's word and a number; `kinds` limits a rule of records or values to some kinds of
    record, `roles` a rule of values to numbers of some roles (see `Amount`).

    `check` by scope: file: None (the reader itself says it); value: (amount, context); record: (record, context);
    book, and replay, which runs only when jobs are replayed: (context). It yields findings made with `rule.at(...)`. `excusable`: a record may except itself
    from it with a reason.
    """

    code: str
    level: str
    scope: str
    title: str
    what: str
    why: str
    mend: str
    example: Example
    check: Callable | None = None
    kinds: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    excusable: bool = False

    def asks(self, kind: str, role: str = "") -> bool:
        """Whether it is about records of a kind, and about numbers of a role where one is given."""
        return (not self.kinds or kind in self.kinds) and (not role or not self.roles or role in self.roles)

    def at(self, record: Record, message: str, help: str = "", path: tuple = (), key: bool = False) -> Finding:
        """A finding of this rule at a field of a record; the help is the rule's own where none is given."""
        return record.finding(self.code, self.level, message, help or self.mend, path, key)
