"""What a rule is: its words, its examples and one function."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from bayleaf.finding import Finding, reader_level
from bayleaf.records import Record

SCOPES = ("file", "value", "record", "book", "replay")


class Example(NamedTuple):
    """A slip in the small book of the tests: in `file`, the text `good` becomes `bad`, and the rule must speak.

    `file` is relative to kb/. `good` stands there exactly once; where it is empty, `bad` is a whole new file.
    """

    file: str
    good: str
    bad: str


class Rule(NamedTuple):
    """One rule. `code` is the word of its family and a number.

    `scope` says what `find` is asked about: value: (amount, context); record: (record, context); book, and replay, which
    runs only when jobs are replayed: (context). A rule of scope file has no `find`: the reader says it. `kinds` limits
    a rule of records or values to some kinds of record, `roles` a rule of values to amounts of some roles (see
    `Amount`). `find` yields findings made with `at`. `excusable`: a record may except itself from it, with a reason.
    """

    code: str
    level: str
    scope: str
    title: str
    what: str
    why: str
    mend: str
    example: Example
    find: Callable[..., Iterable[Finding]] | None = None
    kinds: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    excusable: bool = False

    @property
    def family(self) -> str:
        """The word before the number of its code."""
        return self.code.rsplit("-", 1)[0]

    @property
    def number(self) -> int:
        """The number of its code."""
        return int(self.code.rsplit("-", 1)[1])

    def asks(self, kind: str, role: str = "") -> bool:
        """Whether it is about records of a kind, and about numbers of a role where one is given."""
        return (not self.kinds or kind in self.kinds) and (not role or not self.roles or role in self.roles)

    def at(self, record: Record, message: str, help: str = "", path: tuple = (), key: bool = False) -> Finding:
        """A finding of this rule at a field of a record; the help is the rule's own where none is given."""
        return record.finding(self.code, self.level, message, help or self.mend, path, key)


def reader_rule(code: str, title: str, what: str, why: str, mend: str, example: Example) -> Rule:
    """A rule that the reader itself applies, before any other can be asked; the reader's own findings state its level."""
    return Rule(code, reader_level(code), "file", title, what, why, mend, example)
