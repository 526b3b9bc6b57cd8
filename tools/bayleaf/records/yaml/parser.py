"""PyYAML's C parser, made strict and safe: text to nodes.

Its resolver is switched off: every scalar arrives as text. Nesting is counted while the C code composes, because it
recurses and a deep text would otherwise end the process.
"""

from __future__ import annotations

import yaml
from yaml._yaml import CParser

MOST_DEPTH = 40
MOST_NODES = 5000


class TooBig(yaml.YAMLError):
    """A text that is deeper or larger than a record may be."""


class _Counting(CParser):
    depth = 0
    nodes = 0

    def resolve(self, _kind: object, _value: object, _implicit: object) -> str:
        return ""

    def descend_resolver(self, _node: object, _index: object) -> None:
        self.depth += 1
        self.nodes += 1
        if self.depth > MOST_DEPTH:
            raise TooBig(f"is nested more than {MOST_DEPTH} levels deep")
        if self.nodes > MOST_NODES:
            raise TooBig(f"holds more than {MOST_NODES} values")

    def ascend_resolver(self) -> None:
        self.depth -= 1


def compose(text: str) -> yaml.Node | None:
    """The root node of the one document of a text, None where it is empty. Raises yaml.YAMLError, TooBig among them."""
    parser = None
    try:
        parser = _Counting(text)
        root: yaml.Node | None = parser.get_single_node()
        return root
    finally:
        if parser is not None:
            parser.dispose()
