"""Prose of records as plain words."""

from __future__ import annotations

import re
from collections.abc import Callable

_LINK = re.compile(r"\[\[[^\[\]|]*\|([^\[\]]*)\]\]|\[\[([^\[\]|]*)\]\]")


def plain(text: str, title: Callable[[str], str] = str) -> str:
    """A text with its links replaced by their words; a link without words by what `title` gives for its id."""
    return _LINK.sub(lambda match: match[1] or title(match[2] or ""), text) if "[[" in text else text
