"""Prose of records as plain words."""

from __future__ import annotations

import re

_LINK = re.compile(r"\[\[[^\[\]|]*\|([^\[\]]*)\]\]|\[\[([^\[\]|]*)\]\]")


def plain(text: str) -> str:
    """A text with its links replaced by the words that a page shows."""
    return _LINK.sub(lambda match: match[1] or match[2] or "", text) if "[[" in text else text
