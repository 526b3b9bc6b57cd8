"""One record, or one entry of a vocabulary, with its place in the text."""

from __future__ import annotations

import re
from typing import Any

import yaml

from bayleaf.finding import Finding, reader_level
from bayleaf.records.fields import NO_FIELDS, Fields
from bayleaf.records.places import Path
from bayleaf.records.yaml.strict import Loaded, end_of, nodes_of, start_of


class Source:
    """One file. The node tree is dropped after a clean read and made again when a position is asked for."""

    __slots__ = ("file", "raw", "root", "typed")

    def __init__(
        self, file: str, raw: bytes = b"", typed: dict[Path, str] | None = None, root: yaml.Node | None = None
    ) -> None:
        self.file, self.raw, self.root = file, raw, root
        self.typed = {} if typed is None else typed

    def node(self, path: Path, key: bool) -> yaml.Node | None:
        """The node at a path, or the nearest one above it that exists; with `key`, the field's name."""
        if self.root is None:
            self.root = nodes_of(self.raw)
        node, name = self.root, self.root
        for step in path:
            result = _child(node, step)
            if result is None:
                break
            name, node = result
        return name if key else node

    def spot(self, name: str | int, key: bool) -> tuple[int, int, int] | None:
        """(line, column, end column) of a field of the whole file, or of its name, where one look at its line will tell."""
        sign = f"\n{name}:".encode()
        at = self.raw.find(sign)
        if self.root is not None or at < 0 or self.raw.find(sign, at + 1) > 0:
            return None
        line, end = self.raw.count(b"\n", 0, at + 1) + 1, self.raw.find(b"\n", at + 1)
        if key:
            return line, 1, len(str(name)) + 1
        match = _PLAIN_FIELD.fullmatch(self.raw[at + 1 : end].decode("utf-8", "replace"))
        if (
            end < 0 or match is None or self.raw[end + 1 : end + 2] in (b" ", b"\n", b"\r", b"\t", b"#")
        ):  # it may go on there
            return None
        return line, match.start(1) + 1, match.end(1) + 1


_PLAIN_FIELD = re.compile(r"[a-z_]+: +([A-Za-z0-9](?:[^:#\r]*[^:#\r ])?) *\r?")


def _child(node: object, step: object) -> tuple[yaml.Node, yaml.Node] | None:
    if isinstance(node, yaml.MappingNode):
        return next(((k, v) for k, v in node.value if getattr(k, "value", None) == step), None)
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        return node.value[step], node.value[step]
    return None


class Record:
    """`data` has the empty list or map where the text says none; `sound`: its shape is valid; `fields`: those of its kind."""

    __slots__ = ("data", "fields", "id", "kind", "prefix", "sound", "source")

    def __init__(
        self,
        kind: str,
        id: str,
        data: dict[str, Any],
        source: Source,
        prefix: Path = (),
        sound: bool = True,
        fields: Fields = NO_FIELDS,
    ) -> None:
        self.kind, self.id, self.data, self.source, self.prefix, self.sound = kind, id, data, source, prefix, sound
        self.fields = fields

    @property
    def file(self) -> str:
        """The file relative to the root of the book."""
        return self.source.file

    @property
    def title(self) -> str:
        """The title, or the id where there is none."""
        title = self.data.get("title")
        return title if isinstance(title, str) else self.id

    def typed(self, path: Path) -> str | None:
        """A number as it was typed, where Python would write it differently (43.50)."""
        return self.source.typed.get((*self.prefix, *path))

    def spot(self, path: Path = (), key: bool = False) -> tuple[int, int, int]:
        """(line, column, end column) of a value, or of the field's name; the nearest that exists."""
        if not self.source.raw:
            return 1, 1, 2
        if len(path) == 1 and not self.prefix and (result := self.source.spot(path[0], key)):
            return result
        node = self.source.node((*self.prefix, *path), key or (not path and bool(self.prefix)))
        if node is None:
            return 1, 1, 2
        (line, column), (_, end) = start_of(node), end_of(node)
        return line, column, max(end, column + 1)

    def finding(self, code: str, level: str, message: str, help: str, path: Path = (), key: bool = False) -> Finding:
        """A finding about this record, at the place of `path`."""
        line, column, end = self.spot(path, key)
        return Finding(code, level, message, help, self.file, line, column, end, self.id, tuple(path))


def file_findings(loaded: Loaded, file: str, record: str) -> list[Finding]:
    """What the strict reader said, as findings."""
    return [
        Finding(p.code, reader_level(p.code), p.message, p.help, file, *p.start, max(p.end[1], p.start[1] + 1), record)
        for p in loaded.problems
    ]
