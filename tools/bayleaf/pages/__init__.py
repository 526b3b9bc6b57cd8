"""From a Book to the texts of the site: Markdown, a style sheet and a script. No site engine is known here.

`pages(book, rules, schemas)` gives every file of the tree that the engine reads; `entries(book, rules)` what the search
box of the site can find. Same book, same bytes.
"""

from __future__ import annotations

from bayleaf.pages.building.entries import entries
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.tree import pages

__all__ = ["Markup", "entries", "pages", "text"]
