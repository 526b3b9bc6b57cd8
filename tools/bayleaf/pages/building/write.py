"""The builder: headings, paragraphs, lists, tables and boxes as plain Markdown with HTML blocks (md_in_html).

Every function takes strings, which it encodes, or Markup, which it leaves, and gives Markup. Addresses are written
from the root of the tree as `@/kind/id.md`; `page` makes them relative.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence

from bayleaf.pages.building.text import Markup, text

EMPTY = Markup("")
FEW = 6  # links that may stand open in a cell: what a phone shows under one answer
_ADDRESS = re.compile(r'(?<=\]\()@/|(?<==")@/')
_ANCHOR = re.compile(r"[A-Za-z][A-Za-z0-9-]*\Z")


def words(*parts: object) -> Markup:
    """Parts one after another."""
    return Markup("".join(text(part) for part in parts))


def joined(parts: Iterable[object], between: str = ", ") -> Markup:
    """Parts with our own sign between them; empty ones are left out."""
    return Markup(between.join(filter(None, (text(part) for part in parts))))


def strong(*parts: object) -> Markup:
    """Bold words."""
    return words(Markup("<strong>"), *parts, Markup("</strong>"))


def span(css: str, *parts: object) -> Markup:
    """Words with a class of our style sheet; nothing where there are none."""
    inner = words(*parts)
    return Markup(f'<span class="{css}">{inner}</span>') if inner else EMPTY


def small(*parts: object) -> Markup:
    """A remark in smaller type."""
    return span("bl-small", *parts)


def to(address: str, *parts: object) -> Markup:
    """A link to a page of ours: `kind/id.md` or `kind/index.md#id` from the root of the tree."""
    return Markup(f"[{words(*parts)}](@/{address})")


def blocks(*parts: object) -> Markup:
    """Blocks one under another; empty ones are left out."""
    return Markup("\n\n".join(filter(None, (text(part) for part in parts))))


class Section(Markup):
    """A heading and what is under it, with the anchor and the name by which the top of the page leads there."""

    __slots__ = ("anchor", "named")


def heading(level: int, anchor: str, *parts: object) -> Markup:
    """A heading with an anchor of our own (an id or one of our words)."""
    return Markup(f"{'#' * level} {words(*parts)} {{ #{_anchor(anchor)} }}")


def _anchor(anchor: str) -> str:
    return (
        anchor if _ANCHOR.match(anchor) else "a-" + "".join(c if c.isascii() and c.isalnum() else "-" for c in anchor)
    )


def section(anchor: str, title: object, *parts: object, level: int = 2) -> Markup:
    """A heading and what is under it; nothing at all where there is nothing to put under it."""
    inner = blocks(*parts)
    if not inner:
        return EMPTY
    made = Section(blocks(heading(level, anchor, title), inner))
    made.anchor, made.named = _anchor(anchor), text(title)
    return made


def para(*parts: object, css: str = "") -> Markup:
    """A paragraph."""
    inner = words(*parts)
    if css and inner:
        return Markup(f'<p class="{css}" markdown="span">{inner}</p>')
    return inner


def bullets(items: Iterable[object]) -> Markup:
    """A list; empty where there are no items."""
    return Markup("\n".join(f"- {_line(item)}" for item in items))


def _line(part: object) -> Markup:
    """A line of a list or of a table; one that begins with a link is a target for a finger."""
    made = text(part)
    return span("bl-row", made) if made.startswith("[") else made


def box(css: str, *parts: object, tag: str = "div", label: str = "") -> Markup:
    """An HTML block with a class, blocks inside; `label` names it for a screen reader. Nothing where it would be empty."""
    inner = blocks(*parts)
    named = f' aria-label="{text(label)}"' if label else ""
    return Markup(f'<{tag} class="{css}"{named} markdown="block">\n\n{inner}\n\n</{tag}>') if inner else EMPTY


def fold(anchor: str, title: object, remark: object, *parts: object) -> Markup:
    """A block that opens when it is touched: its title and a remark are all that shows at first."""
    inner = blocks(*parts)
    top = f'<summary markdown="span">{span("bl-tile-title", title)} {small(remark)}</summary>'
    return (
        Markup(f'<details class="bl-folded" id="{anchor}" markdown="block">\n{top}\n\n{inner}\n\n</details>')
        if inner
        else EMPTY
    )


def more(count: int, title: str, what: str, inner: object) -> Markup:
    """Part of a cell that opens when it is touched, "not ruled out 12 faults"; what is short enough stands open behind its title."""
    if count <= FEW:
        return words(small(title, ": "), inner)
    return Markup(
        f'<details class="bl-more"><summary>{small(title, f" {count} {what}")}</summary><span>{text(inner)}</span></details>'
    )


def few(parts: Sequence[object]) -> Markup:
    """The first few one under another; the rest opens when it is touched, and stands behind them on paper."""
    if len(parts) <= FEW + 2:
        return stacked(parts)
    rest = f'<details class="bl-more bl-rest"><summary>{len(parts) - FEW} more</summary><span>{stacked(parts[FEW:])}</span></details>'
    return words(stacked(parts[:FEW]), Markup(rest))


def folds(groups: Iterable[tuple[str, object, object, object]]) -> Markup:
    """Folds beside each other where there is room: (anchor, title, remark, what is inside)."""
    return box("bl-folds", *(fold(*group) for group in groups))


def numbered(items: Iterable[object], css: str = "bl-steps") -> Markup:
    """An ordered list whose items hold blocks."""
    made = [Markup(f'<li markdown="block">\n\n{text(item)}\n\n</li>') for item in items]
    return Markup(f'<ol class="{css}" markdown="block">\n\n' + "\n\n".join(made) + "\n\n</ol>") if made else EMPTY


def facts(pairs: Iterable[tuple[object, object]]) -> Markup:
    """Names and their values, those with an empty value left out."""
    rows = "\n".join(
        f'<dt markdown="span">{text(name)}</dt>\n<dd markdown="span">{_line(value)}</dd>'
        for name, value in pairs
        if value
    )
    return Markup(f'<dl class="bl-facts" markdown="block">\n{rows}\n</dl>') if rows else EMPTY


def table(head: Sequence[object], rows: Iterable[Sequence[object]], css: str = "", label: str = "") -> Markup:
    """A table; empty without rows. Cells are single lines; a list in a cell is joined with line breaks by the caller."""
    lines = [_row(row) for row in rows]
    if not lines:
        return EMPTY
    grid = Markup("\n".join([_row(head), "|" + "---|" * len(head), *lines]))
    named = f' role="group" aria-label="{text(label)}"' if label else ""
    return Markup(f'<div class="bl-table {css}"{named} markdown="block">\n\n{grid}\n\n</div>')


def _row(cells: Sequence[object]) -> str:
    return "| " + " | ".join(_line(cell) for cell in cells) + " |"


def lines(parts: Iterable[object]) -> Markup:
    """Several lines in one cell."""
    return joined((span("bl-row", part) for part in parts if text(part)), " ")


def stacked(parts: Iterable[object]) -> Markup:
    """One under another where a finger has to hit them, one behind another on paper."""
    return joined((span("bl-item", part) for part in parts if text(part)), " ")


def tiles(items: Iterable[tuple[str, object, object]]) -> Markup:
    """Big targets for a finger: address, title, remark."""
    made = [
        f'<li markdown="span">{to(address, span("bl-tile-title", title), small(remark) if remark else EMPTY)}</li>'
        for address, title, remark in items
    ]
    return Markup('<ul class="bl-tiles" markdown="block">\n' + "\n".join(made) + "\n</ul>") if made else EMPTY


def page(path: str, title: str, *parts: object, hide: Sequence[str] = ()) -> str:
    """The whole Markdown text of the page at `path`; the search has an index of its own, so the engine leaves it out."""
    front = [f"title: {json.dumps(text(title), ensure_ascii=False)}"]
    if hide:
        front.append(f"hide: [{', '.join(hide)}]")
    front.append("search: {exclude: true}")
    up = "../" * path.count("/")
    body = _ADDRESS.sub(up, blocks(*parts))
    return "---\n" + "\n".join(front) + f"\n---\n\n{body}\n"
