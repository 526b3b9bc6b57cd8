"""What was probably meant."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(word: object, known: Iterable[str], nearness: float = 0.6) -> str:
    """The known word that is most like a word, '' where none is as near as `nearness` (0 to 1, see difflib's ratio)."""
    from difflib import get_close_matches  # seldom needed, and the start of a check counts

    return next(iter(get_close_matches(str(word), list(known), 1, nearness)), "")


def several(word: str, known: Iterable[str], most: int, nearness: float = 0.4) -> list[str]:
    """The known words that are most like a word, the nearest first; at most so many."""
    from difflib import get_close_matches  # seldom needed, and the start of a check counts

    return get_close_matches(word, list(known), most, nearness)
