"""The band that a reading is judged by, and where it came from."""

from __future__ import annotations

from typing import NamedTuple

# Best first: what is known of this very car comes before what is known of cars in general.
SOURCES = ("typed", "vehicle", "expected", "limit", "spread")
SOURCE_WORDS = {
    "typed": "the maker's figure typed into the job",
    "vehicle": "the figure kept for this invented car",
    "expected": "worked out for this car",
    "limit": "a general limit",
    "spread": "the general spread over many cars",
}


class Band(NamedTuple):
    """The limits of one reading in SI; None on a side without a limit.

    `spread` is true for a range over many cars, inside which this car may still be low or high.
    `slack` is how far the limits themselves may be out, when they are computed from other readings.
    `text` is the band as a person wrote it, in the unit as written; `notes` says what it was computed from.
    """

    low: float | None
    high: float | None
    source: str
    text: str
    spread: bool = False
    slack: float = 0.0
    system: str = ""
    notes: str = ""

    @property
    def words(self) -> str:
        """The band and its origin, in words."""
        before = " from " if self.source == "expected" else ": "
        return f"{self.text}, {SOURCE_WORDS[self.source]}{before + self.notes if self.notes else ''}"


def best(bands: list[Band]) -> Band | None:
    """The band that rules: the first by the order of SOURCES, then in the order given."""
    return min(bands, key=lambda band: SOURCES.index(band.source), default=None)
