"""The one error of this package."""

from __future__ import annotations

from bayleaf.formulas.language.tree import Node

FieldPath = tuple[str | int, ...]  # where in a record: field names, and places in lists


class FormulaError(ValueError):
    """What is wrong with a calculator: one line to read, one to help.

    `path` is the field in the record. Where that field is an expression, `offset` counts code points from its start
    and `length` says how many are meant; elsewhere `offset` is None.
    """

    def __init__(
        self, message: str, help: str = "", path: FieldPath = (), offset: int | None = None, length: int = 1
    ) -> None:
        super().__init__(f"{message}; {help}" if help else message)
        self.message, self.help, self.path, self.offset, self.length = message, help, path, offset, length

    def within(self, path: FieldPath) -> FormulaError:
        """The same error, said of a field of the record."""
        return FormulaError(self.message, self.help, path, self.offset, self.length)


def error(node: Node, message: str, help: str = "") -> FormulaError:
    """A FormulaError about one part of an expression."""
    return FormulaError(message, help, (), node.start, max(node.end - node.start, 1))
