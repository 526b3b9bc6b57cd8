"""The links at the top of a long page, made of the sections that it holds; the same for every kind of page."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from bayleaf.pages.building.blocks import Section, nav
from bayleaf.pages.building.inline import EMPTY, link
from bayleaf.pages.building.text import Markup

# How much stands open on four screens of a phone (390 by 844), and the characters for which a line of room counts: both
# fitted to the measured height of every page of the book, and held by tests/browser/test_phone.py.
LONG, LINE = 2712, 28
# What begins a block, a cell or a line of links, and how many lines of room it takes.
_ROOM = (
    (re.compile(r'^#|<p[ >]|<ul|<dl|<figure|<div class="bl-(?:calculator|formula)"', re.MULTILINE), 1),
    (re.compile(r'<summary><span class="bl-tile-title"|</t[dh]><t[dh]>|"bl-(?:row|item)"'), 1),
    (re.compile(r'<(?:div|aside) class="bl-(?!table|calculator|formula|field|outcome)|<ol|<li><(?:p|aside|div)'), 2),
    (re.compile("<table>"), 3),
)
# What nobody is led past on the way to the work: a caution, and the steps with theirs.
_GUARDED = re.compile(r'"bl-signal|"bl-steps"')
_FOLD = re.compile(r"<details[^>]*>((?:(?!<details).)*?</summary>)(?:(?!<details).)*?</details>", re.DOTALL)
_TAG = re.compile(r"<[^>]*>")
_REFERENCE = re.compile(r"&#\d+;")


def contents(path: str, parts: Sequence[Markup]) -> Markup:
    """Links to the sections among the parts of the page at `path`; none where the page is short.

    Whoever works comes by the cautions; whoever has a reading may go straight to what it means. So the links lead only
    to what stands behind the last caution and the last step.
    """
    if sum(map(open_length, parts)) < LONG:
        return EMPTY
    last = max((i for i, part in enumerate(parts) if _GUARDED.search(part)), default=-1)
    return bar(path, [(part.anchor, part.heading) for part in parts[last + 1 :] if isinstance(part, Section)])


def bar(path: str, places: Iterable[tuple[str, object]]) -> Markup:
    """Links to (anchor, title) on the page at `path`, each a target for a finger; on the screen only."""
    return nav("bl-jump bl-screen", "On this page", (link(f"{path}#{anchor}", title) for anchor, title in places), " ")


def open_length(part: str) -> int:
    """How many characters of a part stand open, its lines counted too: no tags and nothing that is folded."""
    count = 1
    while count:
        part, count = _FOLD.subn(r"\1", part)
    lines = sum(lines * len(start.findall(part)) for start, lines in _ROOM) - bool(part)
    return len(_REFERENCE.sub(" ", _TAG.sub("", part))) + LINE * lines
