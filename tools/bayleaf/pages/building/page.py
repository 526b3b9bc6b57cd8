"""The whole text of a page: front matter, and addresses that are relative to it."""

from __future__ import annotations

import json
import posixpath
import re
from collections.abc import Sequence
from functools import cache

from bayleaf.pages.building.blocks import blocks, para
from bayleaf.pages.building.inline import link
from bayleaf.pages.building.text import text

# No text of a record holds a bare quote, and JSON escapes it, so this is always a link of ours.
_ADDRESS = re.compile(r'href="@/([^"#]*)')


NOTICES = "more/notices.md"
_FOOT = para(link(NOTICES, "Notices and licenses"), css="bl-foot")


def page(path: str, title: str, *parts: object, hide: Sequence[str] = ()) -> str:
    """The Markdown text of the page at `path`; the search has an index of its own, so the engine leaves it out.

    Whatever engine lays the page out, its foot leads to the notices.
    """
    front = [f"title: {json.dumps(text(title), ensure_ascii=False)}"]
    if hide:
        front.append(f"hide: [{', '.join(hide)}]")
    front.append("search: {exclude: true}")
    folder = posixpath.dirname(path)
    body = _ADDRESS.sub(lambda match: f'href="{_relative(match[1], folder)}', blocks(*parts, _FOOT).strip("\n"))
    return "---\n" + "\n".join(front) + f"\n---\n\n{body}\n"


@cache
def _relative(target: str, folder: str) -> str:
    return posixpath.relpath(target, folder or ".")
