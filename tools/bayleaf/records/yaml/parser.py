"""PyYAML's C parser, made strict and safe: text to nodes.

Its resolver is switched off: every scalar arrives as text. Nesting is counted while the C code composes, because it
recurses and a deep text would otherwise end the process; a text with too few signs to be deep is spared the count.
"""

from __future__ import annotations

import yaml
from yaml._yaml import CParser

MOST_DEPTH = 40
MOST_NODES = 5000
SIGNS = ",:-?[{"  # each value but the first, and each level, needs one; a field and its value share theirs
FEW_SIGNS = MOST_NODES // 2 - 1


class TooBig(yaml.YAMLError):
    pass


class _Counting(CParser):
    depth = 0
    nodes = 0

    def resolve(self, kind, value, implicit):
        return ""

    def descend_resolver(self, node, index):
        self.depth += 1
        self.nodes += 1
        if self.depth > MOST_DEPTH:
            raise TooBig(f"is nested more than {MOST_DEPTH} levels deep")
        if self.nodes > MOST_NODES:
            raise TooBig(f"holds more than {MOST_NODES} values")

    def ascend_resolver(self) -> None:
        self.depth -= 1


class _Unguarded(CParser):
    """For a text with few signs. The C code asks for a tag and tells of its depth at every node; here C answers too."""

    resolve = descend_resolver = ascend_resolver = "".format  # takes what it is given and returns ''


def few_signs(text: str) -> bool:
    """Whether a text cannot be deep or large enough to need counting."""
    return len(text) < FEW_SIGNS or sum(map(text.count, SIGNS)) < FEW_SIGNS


def compose(text: str, counted: bool) -> object:
    """The root node of the one document of a text, None where it is empty. Raises yaml.YAMLError, TooBig among them."""
    parser = None
    try:
        parser = (_Counting if counted else _Unguarded)(text)
        return parser.get_single_node()
    finally:
        if parser is not None:
            parser.dispose()
