"""What the pages call their parts: the trade's words (common practice, no source), in American English, and never two names for one."""

from __future__ import annotations

import pytest

from bayleaf.checks.prose.texts import plain_of
from bayleaf.checks.prose.trade import KEYS, refused
from tests.pages.shown import parsed, real_book, spoken

# what no label is called, and what a shop calls it
CALLED = {
    "Mended by": "Repair",
    "Proved by": "Verify with",
    "Felt as": "Complaint",
    "Cars of the demonstration": "Example vehicles (invented)",
    "Also spoken of in": "Related",
    "How to recognise it": "How to recognize it",
    "In the workshop": "In the shop",
    "Comes and goes": "Intermittent",
}
KINDS = ("faults", "symptoms", "systems", "components", "procedures", "readings", "codes", "jobs", "states", "more")


@pytest.fixture(scope="module")
def labels(made) -> set[str]:
    """Every heading, name of a fact and head of a column that is ours and no record's title."""
    found = set()
    for path in made:
        if path.endswith(".md") and path.startswith(KINDS):
            nodes = parsed(made[path]).css("h2, h3, dt, th")
            found.update(spoken(node.text()) for node in nodes if not node.css("a"))
    return found - {record.title for record in real_book().records()}


@pytest.mark.parametrize(("wrong", "right"), CALLED.items())
def test_a_part_of_a_page_is_called_what_a_shop_calls_it(labels, wrong, right):
    assert right in labels
    assert wrong not in labels


def test_no_label_holds_a_phrase_for_which_the_trade_has_a_word(labels):
    assert len(labels) > 60
    said = {label: [line.phrase for line in refused(label.lower(), KEYS)] for label in labels if plain_of(label)}
    assert {label: phrases for label, phrases in said.items() if phrases} == {}
