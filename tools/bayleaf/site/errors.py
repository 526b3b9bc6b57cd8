"""What the site stage raises: always something that one line can say."""

from __future__ import annotations

from collections.abc import Sequence


class SiteError(Exception):
    """The site could not be built; the message is one line that says what and what to try."""


class SealError(SiteError):
    """The built pages hold something that no page may hold; `problems` has one line for each."""

    def __init__(self, problems: Sequence[str]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(self.problems))
