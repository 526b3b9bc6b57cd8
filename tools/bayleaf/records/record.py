"""One record, or one entry of a vocabulary, with its place in the text."""

from __future__ import annotations

from dataclasses import dataclass, field

import yaml

from bayleaf.finding import Finding
from bayleaf.records.strict import Loaded, end_of, nodes_of, start_of


@dataclass(slots=True)
class Source:
    """One file. The node tree is dropped after a clean read and made again when a position is asked for."""

    file: str
    raw: bytes = b""
    typed: dict[tuple, str] = field(default_factory=dict)
    root: object = None

    def node(self, path: tuple, key: bool) -> object:
        """The node at a path, or the nearest one above it that exists; with `key`, the field's name."""
        if self.root is None:
            self.root = nodes_of(self.raw)
        node, name = self.root, self.root
        for step in path:
            found = _child(node, step)
            if found is None:
                break
            name, node = found
        return name if key else node


def _child(node: object, step: object) -> tuple | None:
    if isinstance(node, yaml.MappingNode):
        return next(((k, v) for k, v in node.value if getattr(k, "value", None) == step), None)
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        return node.value[step], node.value[step]
    return None


@dataclass(slots=True)
class Record:
    """`data` as written (`none` stays the word none); `sound` says that its shape is valid."""

    kind: str
    id: str
    data: dict
    source: Source
    prefix: tuple = ()
    sound: bool = True

    @property
    def file(self) -> str:
        """The file relative to the root of the book."""
        return self.source.file

    @property
    def title(self) -> str:
        """The title, or the id where there is none."""
        title = self.data.get("title")
        return title if isinstance(title, str) else self.id

    def typed(self, path: tuple) -> str | None:
        """A number as it was typed, where Python would write it differently (43.50)."""
        return self.source.typed.get((*self.prefix, *path))

    def spot(self, path: tuple = (), key: bool = False) -> tuple[int, int, int]:
        """(line, column, end column) of a value, or of the field's name; the nearest that exists."""
        if not self.source.raw:
            return 1, 1, 2
        node = self.source.node((*self.prefix, *path), key or not path and bool(self.prefix))
        if node is None:
            return 1, 1, 2
        (line, column), (_, end) = start_of(node), end_of(node)
        return line, column, max(end, column + 1)

    def finding(self, code: str, level: str, message: str, help: str, path: tuple = (), key: bool = False) -> Finding:
        """A finding about this record, at the place of `path`."""
        line, column, end = self.spot(path, key)
        return Finding(code, level, message, help, self.file, line, column, end, self.id, tuple(path))


def file_findings(loaded: Loaded, file: str, record: str) -> list[Finding]:
    """What the strict reader said, as findings."""
    return [
        Finding(p.code, "error", p.message, p.help, file, *p.start, max(p.end[1], p.start[1] + 1), record)
        for p in loaded.problems
    ]
