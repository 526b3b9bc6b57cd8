"""What stands in a line: text, links, emphasis, and several things in one cell.

Every function takes strings, which it encodes, or Markup, which it leaves as it is, and gives Markup. Addresses are
written from the root of the tree as `@/kind/id.md`; `page` makes them relative.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bayleaf.pages.building.text import Markup, text

EMPTY = Markup("")
FEW = 6  # links that may stand open in a cell: what a phone shows under one answer


def inline(*parts: object) -> Markup:
    """Parts one after another."""
    return Markup("".join(text(part) for part in parts))


def joined(parts: Iterable[object], between: str = ", ") -> Markup:
    """Parts with our own sign between them; empty ones are left out."""
    return Markup(between.join(filter(None, (text(part) for part in parts))))


def strong(*parts: object) -> Markup:
    """Bold."""
    return Markup(f"<strong>{inline(*parts)}</strong>")


def span(css: str, *parts: object) -> Markup:
    """Text with a class of our style sheet; nothing where there is none."""
    content = inline(*parts)
    return Markup(f'<span class="{css}">{content}</span>') if content else EMPTY


def small(*parts: object) -> Markup:
    """A remark in smaller type."""
    return span("bl-small", *parts)


def link(address: str, *parts: object) -> Markup:
    """A link to a page of ours: `kind/id.md` or `kind/index.md#id` from the root of the tree."""
    return Markup(f"{opening(address)}{inline(*parts)}</a>")


def opening(address: str) -> str:
    """The opening tag of a link to a page of ours."""
    return f'<a href="@/{address.replace(".md", ".html", 1)}">'


def line(part: object) -> Markup:
    """A line of a list or of a table; one that begins with a link is a target for a finger."""
    content = text(part)
    return span("bl-row", content) if content.startswith("<a ") else content


def lines(parts: Iterable[object]) -> Markup:
    """Several lines in one cell."""
    return joined((span("bl-row", part) for part in parts if text(part)), " ")


def stacked(parts: Iterable[object]) -> Markup:
    """One under another where a finger has to hit them, one behind another on paper."""
    return joined((span("bl-item", part) for part in parts if text(part)), " ")


def more(count: int, title: str, what: str, content: object) -> Markup:
    """Part of a cell that opens when it is touched, "not ruled out 12 faults"; what is short enough stands open behind its title."""
    if count <= FEW:
        return inline(small(title, ": "), content)
    return _opens("bl-more", small(title, f" {count} {what}"), content)


def few(parts: Sequence[object]) -> Markup:
    """The first few one under another; the rest opens when it is touched, and stands behind them on paper."""
    if len(parts) <= FEW + 2:
        return stacked(parts)
    rest = _opens("bl-more bl-rest", f"{len(parts) - FEW} more", stacked(parts[FEW:]))
    return inline(stacked(parts[:FEW]), rest)


def _opens(css: str, title: object, content: object) -> Markup:
    return Markup(f'<details class="{css}"><summary>{text(title)}</summary><span>{text(content)}</span></details>')
