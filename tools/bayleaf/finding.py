"""The finding: the one type that every stage uses to say that something is wrong."""

from __future__ import annotations

from typing import NamedTuple

LEVELS = ("error", "warning", "advice")


class Finding(NamedTuple):
    """One thing found in one place.

    `line`, `column` and `end_column` count from 1 in code points; `end_column` is exclusive.
    `file` is relative to the root of the book, with forward slashes.
    `path` is the field path inside the record: keys and list indexes.
    """

    code: str
    level: str
    message: str
    help: str
    file: str
    line: int = 1
    column: int = 1
    end_column: int = 0
    record: str = ""
    path: tuple[str | int, ...] = ()

    def order(self) -> tuple[str, int, int, int, str, str]:
        """Sort key: by place first, so that a file reads from top to bottom."""
        return (self.file, self.line, self.column, LEVELS.index(self.level), self.code, self.message)


# What is found before a rule can be asked is an error, but for these; the rules that explain it take their level from here.
_READER_LEVELS = {"FILE-14": "warning", "BOOK-8": "advice"}


def reader_level(code: str) -> str:
    """The level of a rule that the reader of files, or the run of the rules, applies by itself."""
    return _READER_LEVELS.get(code, "error")


class CouldNotRun(Exception):
    """The command cannot do its work at all; the message is one line for the user (exit status 2)."""
