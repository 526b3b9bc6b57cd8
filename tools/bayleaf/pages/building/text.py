"""The only way from a record to a page: `text()`, and `prose()` where a field may hold links.

What comes out of here is `Markup`; the functions that lay out a page encode every other string that they are given, so that a
text that was forgotten is still only text. The encoding is the same in Markdown, in HTML and in a quoted attribute.
"""

from __future__ import annotations

import re
from collections.abc import Callable

LINK = re.compile(r"\[\[([a-z0-9]+(?:-[a-z0-9]+)*)(?:\|([^\[\]|]+))?\]\]")

_NEWLINE = re.compile(r"\r\n|[\n\r\v\f\x1c-\x1e\x85\u2028\u2029]")
# Everything but A-Z a-z 0-9, single spaces, the punctuation below, and what lies from U+00A1 on and is no kind of space.
# That punctuation has no meaning in HTML, in a quoted attribute and inside a line of Markdown: no bracket, quote, colon,
# at sign or stroke is among it, and the period of www., of which some engines make a link, is not either.
_SPECIAL = re.compile(
    r"[^A-Za-z0-9 ,.;()'%\xa1-\U0010ffff-]|(?<=[Ww])\.|[\u1680\u2000-\u200a\u202f\u205f\u3000]|(?<= ) "
)
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff]")


class Markup(str):
    """Text that is already what a page holds: encoded record text, or a piece of our own markup."""

    __slots__ = ()

    def __add__(self, other: object) -> Markup:
        return Markup(str.__add__(self, text(other)))


def text(value: object) -> Markup:
    """Encode a value so that a page shows exactly it: one line, no markup, no addresses, no entities of its own.

    Newlines become spaces, control characters the replacement character, and every character that could mean anything
    to Markdown or HTML a number reference. Markup passes as it is.
    """
    if isinstance(value, Markup):
        return value
    line = _CONTROL.sub("\ufffd", _NEWLINE.sub(" ", str(value)))
    return Markup(_SPECIAL.sub(lambda match: f"&#{ord(match[0])};", line))


def prose(value: str, link: Callable[[str, str], Markup]) -> Markup:
    """A text whose [[id]] and [[id|words]] become links; all else is text. `link` takes the id and the words or ''."""
    parts, end = [], 0
    for match in LINK.finditer(value):
        parts += [text(value[end : match.start()]), link(match[1], match[2] or "")]
        end = match.end()
    parts.append(text(value[end:]))
    return Markup("".join(parts))


def plain(value: str, title: Callable[[str], str]) -> str:
    """A text with its links replaced by their words, for the search index; not encoded."""
    return LINK.sub(lambda match: match[2] or title(match[1]), value)
