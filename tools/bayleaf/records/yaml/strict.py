"""Strict YAML in one pass: text to data, positions and problems, never an exception.

Every scalar is read by `scalars.read_plain`, so that one word means one thing.
"""

from __future__ import annotations

from sys import intern

import yaml

from bayleaf.records.places import Path
from bayleaf.records.yaml.decode import HIDDEN, Problem, broken, decode
from bayleaf.records.yaml.parser import TooBig, compose
from bayleaf.records.yaml.scalars import LONGEST_WORD, SIGNED, SUSPECT, Doubtful, read_plain

# plain scalars that are read again and again: numbers, words and texts that start like one
_KNOWN: dict[str, object] = {}
_MOST_KNOWN = 10_000
_LONG = 40  # shorter texts are kept once, however often they stand


class Loaded:
    """`data` is None where the text could not be read at all; `root` is the node tree, for positions."""

    __slots__ = ("data", "problems", "root", "typed")

    def __init__(self, problems: list[Problem]) -> None:
        self.data: object = None
        self.problems = problems
        self.root: yaml.Node | None = None
        self.typed: dict[Path, str] = {}  # numbers whose repr differs from what was written


def load_text(raw: bytes) -> Loaded:
    """Read one YAML document. Reports everything it can; `data` is None if the text is no document."""
    text = decode(raw)
    if isinstance(text, Problem):
        return Loaded([text])
    result = Loaded([])
    try:
        result.root = compose(text)
        if result.root is None:
            result.problems.append(Problem("FILE-5", "the file is empty", "Fill it in, or delete it."))
        else:
            result.data = _Builder(text, result).build(result.root)
    except TooBig as err:
        result.problems.append(Problem("FILE-4", f"the file {err}", "Split it into smaller records."))
    except yaml.YAMLError as err:
        result.problems.append(broken(err))
    except (RecursionError, ValueError, OverflowError) as err:
        result.problems.append(
            Problem("FILE-6", f"the YAML cannot be read: {err}", "Compare with a record that passes.")
        )
    return result


def nodes_of(raw: bytes) -> yaml.Node | None:
    """The node tree alone, for places in a text that has been read before; None where it has none."""
    text = decode(raw)
    try:
        return None if isinstance(text, Problem) else compose(text)
    except (yaml.YAMLError, RecursionError, ValueError, OverflowError):
        return None


class _Builder:
    """Data from nodes, with what is wrong on the way. `path` is one list that grows and shrinks, for speed."""

    def __init__(self, text: str, found: Loaded) -> None:
        self.text = text
        self.found = found
        self.path: list[str | int] = []
        self.marks = "&" in text or "!" in text or "*" in text

    def problem(self, node: yaml.Node, code: str, message: str, help: str) -> None:
        self.found.problems.append(Problem(code, message, help, start_of(node), end_of(node)))

    def build(self, node: yaml.Node) -> object:
        if self.marks and self.marked(node):
            return None
        if isinstance(node, yaml.ScalarNode):
            return self.scalar(node)
        if isinstance(node, yaml.MappingNode):
            return self.mapping(node)
        return self.sequence(node) if isinstance(node, yaml.SequenceNode) else None

    def sequence(self, node: yaml.SequenceNode) -> list[object]:
        items: list[object] = []
        path, marks, scalar = self.path, self.marks, yaml.ScalarNode
        path.append(0)
        for i, item in enumerate(node.value):
            text = item.value
            if marks or item.__class__ is not scalar or item.style or not text:
                path[-1] = i
                items.append(self.build(item))
            elif text[0] not in (
                SIGNED if len(text) > LONGEST_WORD else SUSPECT
            ):  # text and nothing else, like most items and fields
                items.append(intern(text) if len(text) < _LONG else text)
            elif text in _KNOWN:
                items.append(_KNOWN[text])
            else:
                path[-1] = i
                items.append(self.scalar(item))
        path.pop()
        return items

    def marked(self, node: yaml.Node) -> bool:
        """An anchor, a tag or an alias: the node's mark points at its sign."""
        mark = node.start_mark.index
        if mark < len(self.text) and self.text[mark] in "&!*":
            self.problem(
                node, "FILE-8", "an anchor, alias or tag", "Write the value out; a record is read by people first."
            )
            return True
        return False

    def mapping(self, node: yaml.MappingNode) -> dict[str, object]:
        data: dict[str, object] = {}
        path, marks, scalar = self.path, self.marks, yaml.ScalarNode
        for key_node, value_node in node.value:
            key, text = key_node.value, value_node.value
            if (
                marks
                or key_node.__class__ is not scalar
                or key_node.style
                or not key
                or (key[0] in SUSPECT and _KNOWN.get(key).__class__ is not str)
            ):
                key = self.name(key_node)
            if key in data:
                self.problem(key_node, "FILE-7", f"the field {key} stands twice", "Keep one of the two.")
            elif not key:
                continue  # already said
            elif marks or value_node.__class__ is not scalar or value_node.style or not text:
                path.append(key)
                data[intern(key)] = self.build(value_node)
                path.pop()
            elif text[0] not in (SIGNED if len(text) > LONGEST_WORD else SUSPECT):
                data[intern(key)] = intern(text) if len(text) < _LONG else text
            elif text in _KNOWN:
                data[intern(key)] = _KNOWN[text]
            else:
                path.append(key)
                data[intern(key)] = self.scalar(value_node)
                path.pop()
        return data

    def name(self, node: yaml.Node) -> str:
        """A field's name, or nothing where it has been said what is wrong with it."""
        scalar, before = node.__class__ is yaml.ScalarNode, len(self.found.problems)
        name = self.build(node) if scalar else None
        if name.__class__ is not str or not name:
            if not scalar or name is not None or len(self.found.problems) == before:
                self.problem(node, "FILE-6", "a field name that is not text", "Quote it.")
            return ""
        if name == "<<":
            self.problem(node, "FILE-8", "a merge key (<<)", "Write the fields out.")
            return ""
        return name

    def scalar(self, node: yaml.ScalarNode) -> object:
        text = node.value
        if node.style:  # quoted or block: text, whatever it looks like
            if match := HIDDEN.search(text):
                self.problem(
                    node, "FILE-2", f"hidden character U+{ord(match.group()):04X} written as an escape", "Delete it."
                )
            return text
        if text and text[0] not in SUSPECT:
            return text
        try:
            value = read_plain(text)
        except Doubtful as err:
            if not text:
                self.problem(node, "FILE-9", "a field without a value", "Fill it in, write none, or delete the field.")
            else:
                self.problem(
                    node, "FILE-10", str(err), "Quote it if it is text; else write a plain number, true or false."
                )
            return None
        if value is True or value is False or value is None or value.__class__ is str or repr(value) == text:
            if len(_KNOWN) < _MOST_KNOWN:
                _KNOWN[text] = value
        else:
            self.found.typed[tuple(self.path)] = text
        return value


def start_of(node: yaml.Node) -> tuple[int, int]:
    """(line, column) of a node, from 1."""
    return node.start_mark.line + 1, node.start_mark.column + 1


def end_of(node: yaml.Node) -> tuple[int, int]:
    """End of a node on its first line, as far as that is known (a block's end mark lies lines below)."""
    start, end = node.start_mark, node.end_mark
    return (start.line + 1, (end.column if end.line == start.line else start.column + 1) + 1)
