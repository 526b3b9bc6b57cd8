"""What stands on lines of its own: headings, paragraphs, lists, tables and boxes.

A heading is Markdown, so that the site engine lists it among the contents of the page. All else is a finished block of
HTML, which the engine passes on without parsing it as Markdown; only a box around headings asks for that (md_in_html).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from bayleaf.pages.building.inline import EMPTY, inline, line, link, small, span
from bayleaf.pages.building.text import Markup, text

_ANCHOR = re.compile(r"[A-Za-z][A-Za-z0-9-]*\Z")
_HEADING = re.compile("^#", re.MULTILINE)


def blocks(*parts: object) -> Markup:
    """Blocks one under another; empty ones are left out."""
    return Markup("\n".join(filter(None, (text(part) for part in parts))))


class Section(Markup):
    """A heading and what is under it, with the anchor and the title by which the top of the page leads there."""

    __slots__ = ("anchor", "heading")
    anchor: str
    heading: Markup


def heading(level: int, anchor: str, *parts: object) -> Markup:
    """A heading with an anchor of our own (an id or a name of ours)."""
    return Markup(f"\n{'#' * level} {inline(*parts)} {{ #{_anchor(anchor)} }}\n")


def _anchor(anchor: str) -> str:
    return (
        anchor if _ANCHOR.match(anchor) else "a-" + "".join(c if c.isascii() and c.isalnum() else "-" for c in anchor)
    )


def section(anchor: str, title: object, *parts: object, level: int = 2) -> Markup:
    """A heading and what is under it; nothing at all where there is nothing to put under it."""
    content = blocks(*parts)
    if not content:
        return EMPTY
    whole = Section(blocks(heading(level, anchor, title), content))
    whole.anchor, whole.heading = _anchor(anchor), text(title)
    return whole


def element(tag: str, content: str, css: str = "", label: str = "", **attributes: str) -> Markup:
    """A block of HTML; `label` names it for a screen reader. Nothing where it would be empty."""
    if not content:
        return EMPTY
    given = {"class": css, "aria-label": text(label), **attributes}
    opening = "".join(f' {name}="{value}"' for name, value in given.items() if value)
    if _HEADING.search(content):
        return Markup(f'<{tag}{opening} markdown="block">\n{content}\n</{tag}>')
    return Markup(f"<{tag}{opening}>{content}</{tag}>")


def para(*parts: object, css: str = "") -> Markup:
    """A paragraph."""
    return element("p", inline(*parts), css)


def bullets(items: Iterable[object]) -> Markup:
    """A list; empty where there are no items."""
    return element("ul", "".join(f"<li>{line(item)}</li>" for item in items))


def box(css: str, *parts: object, tag: str = "div", label: str = "") -> Markup:
    """Blocks in a frame with a class; `label` names it for a screen reader. Nothing where it would be empty."""
    return element(tag, blocks(*parts), css, label)


def fold(anchor: str, title: object, remark: object, *parts: object) -> Markup:
    """A block that opens when it is touched: its title and a remark are all that shows at first."""
    content = blocks(*parts)
    summary = f"<summary>{span('bl-tile-title', title)} {small(remark)}</summary>"
    return element("details", f"{summary}\n{content}", "bl-folded", id=anchor) if content else EMPTY


def folds(groups: Iterable[tuple[str, object, object, object]]) -> Markup:
    """Folds beside each other where there is room: (anchor, title, remark, what is inside)."""
    return box("bl-folds", *(fold(*group) for group in groups))


def numbered(items: Iterable[object], css: str = "bl-steps") -> Markup:
    """An ordered list whose items hold blocks."""
    return element("ol", "\n".join(f"<li>{text(item)}</li>" for item in items), css)


def facts(pairs: Iterable[tuple[object, object]]) -> Markup:
    """Names and their values, those with an empty value left out."""
    rows = (f"<dt>{text(name)}</dt><dd>{line(value)}</dd>" for name, value in pairs if value)
    return element("dl", "\n".join(rows), "bl-facts")


def table(head: Sequence[object], rows: Iterable[Sequence[object]], css: str = "", label: str = "") -> Markup:
    """A table; empty without rows. A cell holds what stands in a line."""
    body = "\n".join(_row("td", row) for row in rows)
    if not body:
        return EMPTY
    grid = f"<table><thead>{_row('th', head)}</thead><tbody>{body}</tbody></table>"
    return element("div", grid, f"bl-table {css}", label, role="group" if label else "")


def _row(tag: str, cells: Sequence[object]) -> str:
    return "<tr>" + "".join(f"<{tag}>{line(cell)}</{tag}>" for cell in cells) + "</tr>"


def tiles(items: Iterable[tuple[str, object, object]]) -> Markup:
    """Big targets for a finger: address, title, remark."""
    rows = (
        f"<li>{link(address, span('bl-tile-title', title), small(remark))}</li>" for address, title, remark in items
    )
    return element("ul", "\n".join(rows), "bl-tiles")


def nav(css: str, label: str, links: Iterable[object], between: str) -> Markup:
    """Links in a row, as a landmark that a screen reader can go to."""
    return element("nav", between.join(filter(None, map(text, links))), css, label)
