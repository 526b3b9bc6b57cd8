"""The names of a calculator: each one thing, none unknown, none idle, no circles."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.grammar import RESERVED
from bayleaf.formulas.language.tree import Node, walk
from bayleaf.nearest import nearest


def names_apart(inputs: Mapping, constants: Mapping, trees: Mapping) -> None:
    seen: dict[str, str] = {}
    for field, names in (("inputs", inputs), ("constants", constants), ("formula", trees)):
        for name in names:
            if name in RESERVED:
                raise FormulaError(f"{name} is a word of the formula language", "choose another name", (field, name))
            if name in seen:
                raise FormulaError(f"{name} is already a name in {seen[name]}", "choose another name", (field, name))
            seen[name] = field


def ordered(trees: Mapping[str, Node], known: Mapping) -> list[str]:
    """The lines in the order they need each other, otherwise as written. `known`: the inputs and constants."""
    done: list[str] = []

    def visit(name: str, above: tuple[str, ...]) -> None:
        if name in above:
            circle = " needs ".join([*above[above.index(name) :], name])
            raise FormulaError(
                f"a circle of lines: {circle}", "a line may only use lines that do not need it", ("formula", name)
            )
        for part in walk(trees[name]):
            if part.kind != "name" or part.text == "pi" or part.text in known:
                continue
            if part.text not in trees:
                raise FormulaError(
                    f"nothing is called {part.text}",
                    near(part.text, [*known, *trees]),
                    ("formula", name),
                    part.start,
                    part.end - part.start,
                )
            if part.text not in done:
                visit(part.text, (*above, name))
        done.append(name)

    for name in trees:
        if name not in done:
            visit(name, ())
    return done


def all_used(inputs: Mapping, constants: Mapping, lines: Mapping[str, Line], results: Mapping) -> None:
    used = {part.text for line in lines.values() for part in walk(line.tree) if part.kind == "name"} | set(results)
    for field, names in (("inputs", inputs), ("constants", constants), ("formula", lines)):
        for name in names:
            if name not in used:
                raise FormulaError(f"{name} is used nowhere", "use it or take it out", (field, name))


def near(word: str, known: Iterable[str]) -> str:
    near = nearest(word, known)
    return f"did you mean {near}?" if near else f"there are {', '.join(list(known)[:8])}"
