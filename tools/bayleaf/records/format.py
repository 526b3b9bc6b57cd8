"""One layout for every record: order of fields, indentation, spaces. Values keep their bytes, comments their lines.

What is laid out is what the parser saw: nodes say where each field begins, and scalars are copied as they stand. Text
that fits none of the simple cases (a list in a list, a text over several lines) is only moved to its indentation.
"""

from __future__ import annotations

import re

import yaml

from bayleaf.records.places import Schema
from bayleaf.records.yaml.strict import Loaded, load_text

_COMMENT = re.compile(r"(?:^|(?<=\s))#.*$", re.MULTILINE)


class CannotLayOut(Exception):
    """Why a file is left alone, in one line."""


def laid_out(raw: bytes, kind: str, schema: Schema) -> bytes:
    """The same record in the book's layout. Raises CannotLayOut where the file cannot be read or would change its meaning.

    `schema`: of the kind, with its definitions inside; vocabulary files are a map of entries in the order as written.
    """
    before = load_text(raw)
    if before.problems or not isinstance(before.root, yaml.MappingNode):
        raise CannotLayOut("it has errors; mend them first")
    text = raw.decode("utf-8").replace("\r\n", "\n")
    result = _Layout(text, schema).document(before.root, kind).encode("utf-8")
    after = load_text(result)
    if after.problems or not _same(before, after) or _comments(text) != _comments(result.decode("utf-8")):
        raise CannotLayOut("its layout cannot be changed without changing what it says")
    return result


def _same(one: Loaded, other: Loaded) -> bool:
    return one.data == other.data and one.typed == other.typed


def _comments(text: str) -> list[str]:
    """Comments, and what merely looks like one, in no order."""
    return sorted(m.strip() for m in _COMMENT.findall(text) if "yaml-language-server" not in m)


class _Layout:
    def __init__(self, text: str, schema: Schema) -> None:
        self.text = text
        self.lines = text.rstrip().split("\n")
        self.schema = schema

    def document(self, root: yaml.MappingNode, kind: str) -> str:
        first = root.value[0][0].start_mark.line if root.value else 0
        head = [
            line.rstrip() for line in self.lines[:first] if "yaml-language-server" not in line and line.strip() != "---"
        ]
        body = self.block(root, self.schema, first, len(self.lines), root.start_mark.column, 0)
        lines = [f"# yaml-language-server: $schema=../../schemas/{kind}.schema.json", *head, *body]
        return re.sub(r"\n{3,}", "\n\n", "\n".join(lines).strip("\n")) + "\n"

    def block(self, node: yaml.Node, schema: Schema, first: int, last: int, column: int, indent: int) -> list[str]:
        """The lines from `first` to before `last`, which hold this node at `column`, laid out at `indent`."""
        if isinstance(node, yaml.MappingNode) and not node.flow_style:
            return self.mapping(node, schema, first, last, column, indent)
        if isinstance(node, yaml.SequenceNode) and not node.flow_style:
            return self.sequence(node, schema, first, last, column, indent)
        if node.start_mark.line == first and self.one_line(node):
            rest = self.moved(first + 1, last, column, indent)
            return [" " * indent + self.flow(node) + self.remark(node, first), *rest]
        return self.moved(first, last, column, indent)

    def mapping(
        self, node: yaml.MappingNode, schema: Schema, first: int, last: int, column: int, indent: int
    ) -> list[str]:
        keys = [key.value for key, _ in node.value]
        known, inner = _fields(schema, keys, self.schema)
        cuts = self.cuts([key for key, _ in node.value], first, last, column)
        entries = []
        for (key, value), (start, at, end) in zip(node.value, cuts, strict=True):
            sub = known.get(key.value, inner)
            entries.append(
                (self.moved(start, at, column, indent), self.field(key, value, sub, at, end, column, indent))
            )
        order = {name: i for i, name in enumerate(known)}
        ranked = sorted(range(len(keys)), key=lambda i: order.get(keys[i], len(order)))
        if (
            ranked and entries[ranked[0]][0] and ranked[0] != 0
        ):  # a remark would come before the first field, where a hyphen may stand
            ranked = list(range(len(keys)))
        return [line for i in ranked for part in entries[i] for line in part]

    def field(
        self, key: yaml.Node, value: yaml.Node, schema: Schema, at: int, end: int, column: int, indent: int
    ) -> list[str]:
        name = " " * indent + self.flow(key) + ":"
        if value.start_mark.line == at and self.one_line(value):
            return [f"{name} {self.flow(value)}{self.remark(value, at)}", *self.moved(at + 1, end, column, indent)]
        if value.start_mark.line > at and isinstance(value, yaml.CollectionNode) and not value.flow_style:
            after = self.lines[at][key.end_mark.column :].lstrip(" ")[1:].strip()
            first = at + 1
            return [
                name + (f"  {after}" if after else ""),
                *self.block(value, schema, first, end, value.start_mark.column, indent + 2),
            ]
        return self.moved(at, end, column, indent)

    def sequence(
        self, node: yaml.SequenceNode, schema: Schema, first: int, last: int, column: int, indent: int
    ) -> list[str]:
        inner = _items(schema, self.schema)
        result: list[str] = []
        for item, (start, at, end) in zip(node.value, self.cuts(node.value, first, last, column), strict=True):
            prefix = self.lines[at][: item.start_mark.column]
            result += self.moved(start, at, column, indent)
            if not re.fullmatch(r" *- +", prefix):
                result += self.moved(at, end, column, indent)
                continue
            held, self.lines[at] = self.lines[at], " " * len(prefix) + self.lines[at][len(prefix) :]
            lines = self.block(item, inner, at, end, len(prefix), indent + 2)
            self.lines[at] = held
            result += [" " * indent + "- " + lines[0][indent + 2 :], *lines[1:]]
        return result

    def cuts(self, nodes: list[yaml.Node], first: int, last: int, column: int) -> list[tuple[int, int, int]]:
        """(first line with the remarks above, line of the node, line after its end) for each of some nodes that follow each other."""
        at = [node.start_mark.line for node in nodes]
        starts = []
        for i, line in enumerate(at):
            start = line
            while i and start - 1 > at[i - 1] and self.above(start - 1, column):
                start -= 1
            starts.append(start if i else first)
        return [(start, line, end) for start, line, end in zip(starts, at, [*starts[1:], last], strict=True)]

    def above(self, line: int, column: int) -> bool:
        """Whether a line is blank or a remark at this column, and so belongs to what comes below."""
        text = self.lines[line]
        return not text.strip() or (text.lstrip().startswith("#") and len(text) - len(text.lstrip()) == column)

    def moved(self, first: int, last: int, column: int, indent: int) -> list[str]:
        """Lines as they are, at another indentation; no spaces at their ends."""
        result = []
        for line in self.lines[first:last]:
            left = len(line) - len(line.lstrip(" "))
            result.append((" " * (left - column + indent if left >= column else left) + line.lstrip(" ")).rstrip())
        return result

    def one_line(self, node: yaml.Node) -> bool:
        return node.start_mark.line == node.end_mark.line and getattr(node, "style", None) not in ("|", ">")

    def flow(self, node: yaml.Node) -> str:
        """A node that stands on one line; scalars with their own bytes."""
        if isinstance(node, yaml.MappingNode):
            return "{" + ", ".join(f"{self.flow(key)}: {self.flow(value)}" for key, value in node.value) + "}"
        if isinstance(node, yaml.SequenceNode):
            return "[" + ", ".join(map(self.flow, node.value)) + "]"
        return self.text[node.start_mark.index : node.end_mark.index].rstrip()

    def remark(self, node: yaml.Node, line: int) -> str:
        """What stands behind a value on its line."""
        rest = self.lines[line][node.end_mark.column :].strip()
        return f"  {rest}" if rest else ""


def _fields(schema: Schema, keys: list[str], root: Schema) -> tuple[Schema, Schema]:
    """(fields in the schema's order with their schemas, the schema of every other field) for the shape that fits best."""
    best: tuple[Schema, Schema] = {}, {}
    for shape in _shapes(schema, root):
        known, other = shape.get("properties", {}), shape.get("additionalProperties", {})
        if not known and isinstance(other, dict) and other and not best[0]:
            best = {}, other
        elif sum(key in known for key in keys) > sum(key in best[0] for key in keys):
            best = known, other if isinstance(other, dict) else {}
    return best


def _items(schema: Schema, root: Schema) -> Schema:
    return next((shape["items"] for shape in _shapes(schema, root) if "items" in shape), {})


def _shapes(schema: Schema, root: Schema) -> list[Schema]:
    """A schema and every alternative inside it, references followed."""
    result: list[Schema] = []
    todo = [schema]
    while todo and len(result) < 50:
        shape = todo.pop(0)
        if "$ref" in shape:
            shape = {
                **root["$defs"][shape["$ref"].rsplit("/", 1)[-1]],
                **{k: v for k, v in shape.items() if k != "$ref"},
            }
        result.append(shape)
        todo += [inner for way in ("anyOf", "oneOf", "allOf") for inner in shape.get(way, [])]
    return result
