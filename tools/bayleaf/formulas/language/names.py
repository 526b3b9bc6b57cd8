"""The names of a calculator: each one thing, none unknown, none idle, no circles."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.tokens import RESERVED
from bayleaf.formulas.language.tree import Node, nodes
from bayleaf.nearest import nearest

if TYPE_CHECKING:  # a calculator is compiled with these checks, so they need only the types of its parts
    from bayleaf.formulas.calculator.model import Line


def names_apart(inputs: Mapping[str, object], constants: Mapping[str, object], trees: Mapping[str, object]) -> None:
    """Raise FormulaError for a name that is a word of the language or stands for two things."""
    seen: dict[str, str] = {}
    for field, names in (("inputs", inputs), ("constants", constants), ("formula", trees)):
        for name in names:
            if name in RESERVED:
                raise FormulaError(f"{name} is a word of the formula language", "choose another name", (field, name))
            if name in seen:
                raise FormulaError(f"{name} is already a name in {seen[name]}", "choose another name", (field, name))
            seen[name] = field


def ordered(trees: Mapping[str, Node], known: Mapping[str, object]) -> list[str]:
    """The lines in the order they need each other, otherwise as written. `known`: the inputs and constants."""
    done: list[str] = []

    def visit(name: str, above: tuple[str, ...]) -> None:
        if name in above:
            circle = " needs ".join([*above[above.index(name) :], name])
            raise FormulaError(
                f"a circle of lines: {circle}", "a line may only use lines that do not need it", ("formula", name)
            )
        for part in nodes(trees[name]):
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


def all_used(
    inputs: Mapping[str, object],
    constants: Mapping[str, object],
    lines: Mapping[str, Line],
    results: Iterable[str],
) -> None:
    """Raise FormulaError for an input, a constant or a line that nothing needs."""
    used = {part.text for line in lines.values() for part in nodes(line.tree) if part.kind == "name"} | set(results)
    for field, names in (("inputs", inputs), ("constants", constants), ("formula", lines)):
        for name in names:
            if name not in used:
                raise FormulaError(f"{name} is used nowhere", "use it or take it out", (field, name))


def near(word: str, known: Iterable[str]) -> str:
    """Help for an unknown name: the name that is nearest to it, or the first eight that there are."""
    meant = nearest(word, known)
    return f"did you mean {meant}?" if meant else f"there are {', '.join(list(known)[:8])}"
