"""BOOK-9: the book lacks an id that code relies on."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf import vocabulary
from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import KIND, VOCABULARY_KINDS


def find(context: Context) -> Iterator[Finding]:
    """One finding an id, in the file that should hold it."""
    for kind, id in vocabulary.needed():
        known = context.book.of(kind)
        if id not in known:
            message = f"there is no {KIND[kind].singular} {id}, which the checks know by this id"
            file = f"kb/vocabulary/{kind}.yaml" if kind in VOCABULARY_KINDS else f"kb/{kind}/{id}.yaml"
            yield Finding(RULE.code, RULE.level, message, f"{mean(id, known)} {RULE.mend}".strip(), file)


RULE = Rule(
    code="BOOK-9",
    level="error",
    scope="book",
    title="Id that the checks need is not there",
    what="Some rules know an act, a state, a quantity or a part by its id, and the book has an entry of each of these ids.",
    why="A rule that looks for a leak check by its id finds none where the id was changed, and passes what it should refuse.",
    mend="Keep the id; change the title, or change the id in the book and in the checks together.",
    example=Example("vocabulary/states.yaml", "\ntank-shut:", "\ntank-closed:"),
    find=find,
)
