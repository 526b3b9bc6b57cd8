"""The links at the top of a long page, made of the sections that it holds; the same for every kind of page."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.write import EMPTY, Section, joined, to

# How much stands open on four screens of a phone (390 by 844), and the signs for which a block, a cell or a line of links
# counts: both fitted to the measured height of every page of the book, and held by tests/browser/test_phone.py.
LONG, LINE = 2700, 25
# What nobody is led past on the way to the work: a caution, and the steps with theirs.
_GUARDED = re.compile(r'"bl-signal|"bl-steps"')
_FOLD = re.compile(r"<details[^>]*>((?:(?!<details).)*?</summary>)(?:(?!<details).)*?</details>", re.DOTALL)
_MARKS = re.compile(r"\]\(@/[^)]*\)|<[^>]*>")
_SIGN = re.compile(r"&#\d+;")
_LINE = re.compile(r'\n\n| \| |"bl-(?:row|item)"')


def jumps(path: str, parts: Sequence[Markup]) -> Markup:
    """Links to the sections among the parts of the page at `path`; none where the page is short.

    Whoever works comes by the cautions; whoever has a reading may go straight to what it means. So the links lead only
    to what stands behind the last caution and the last step.
    """
    if sum(map(_open, parts)) < LONG:
        return EMPTY
    last = max((i for i, part in enumerate(parts) if _GUARDED.search(part)), default=-1)
    return bar(path, [(part.anchor, part.named) for part in parts[last + 1 :] if isinstance(part, Section)])


def bar(path: str, places: Iterable[tuple[str, object]]) -> Markup:
    """Links to (anchor, title) on the page at `path`, each a target for a finger; on the screen only."""
    links = joined((to(f"{path}#{anchor}", title) for anchor, title in places), " ")
    return (
        Markup(f'<nav class="bl-jump bl-screen" aria-label="On this page" markdown="span">{links}</nav>')
        if links
        else EMPTY
    )


def _open(part: str) -> int:
    """How many signs of a part stand open, its lines counted too: no tags, no addresses, nothing that is folded."""
    count = 1
    while count:
        part, count = _FOLD.subn(r"\1", part)
    return len(_SIGN.sub(" ", _MARKS.sub("", part))) + LINE * len(_LINE.findall(part))
