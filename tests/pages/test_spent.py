"""The time on the page of a procedure; every sum is done by hand beside it."""

from __future__ import annotations

import pytest

from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.spent import spent
from bayleaf.pages.parts.steps import unfold
from tests.data import book_of

BOOK = book_of(
    {
        "procedures": {
            "look": {"title": "Look", "minutes": {"hands": 6}, "steps": [{"do": "Look."}]},
            "relieve": {"title": "Relieve", "minutes": {"hands": 6, "waiting": 45}, "steps": [{"do": "Wait."}]},
            "soak": {"title": "Soak", "minutes": {"hands": 15, "waiting": 980}, "steps": [{"do": "Wait."}]},
            "night": {"title": "Night", "minutes": {"hands": 119, "waiting": 120}, "steps": [{"do": "Wait."}]},
            "fit": {
                "title": "Fit",
                "minutes": {"hands": 12},
                "steps": [{"follow": "relieve"}, {"do": "Fit."}, {"follow": "fit-more"}, {"follow": "look"}],
            },
            "fit-more": {"title": "More", "minutes": {"hands": 40, "waiting": 30}, "steps": [{"follow": "relieve"}]},
        }
    }
)


@pytest.mark.parametrize(
    ("id", "said"),
    [
        ("look", "6 min of work"),
        ("relieve", "6 min of work and 45 min of waiting"),
        ("soak", "15 min of work and 16 h 20 min of waiting"),  # 980 = 16 * 60 + 20
        ("night", "119 min of work and 2 h of waiting"),
        # work 12 + 6 + (40 + 6) + 6 = 70; waiting 45 + (30 + 45) = 120
        (
            "fit",
            "12 min of work; with the procedures that it follows at most 70 min of work and 2 h of waiting",
        ),
    ],
)
def test_work_and_waiting_stand_apart_by_themselves_and_with_what_is_followed(id, said):
    view = Uses(BOOK)
    record = BOOK.of("procedures")[id]
    assert spent(record, unfold(view, record)) == said
