"""Patterns that are compiled when they first look for something.

Compiling took a thirtieth of a whole check, and most patterns stand behind a first look that a clean book never passes.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator


class Late:
    """A regular expression as the standard library reads it, compiled at its first use; raises re.error then."""

    search: Callable[..., re.Match | None]
    match: Callable[..., re.Match | None]
    fullmatch: Callable[..., re.Match | None]
    finditer: Callable[..., Iterator[re.Match]]
    findall: Callable[..., list]

    def __init__(self, pattern: str, flags: int = 0):
        self.pattern = pattern
        self.flags = flags

    def __getattr__(self, name: str) -> object:
        """Asked only for what is not yet there: once for each method."""
        found = getattr(re.compile(self.pattern, self.flags), name)
        setattr(self, name, found)
        return found
