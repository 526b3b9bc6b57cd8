"""What a reader sees of a page: its Markdown rendered with the site's extensions, and parsed as a browser would."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import markdown
import yaml
from selectolax.lexbor import LexborHTMLParser

from bayleaf.records import Book, load

ROOT = Path(__file__).resolve().parents[2]
HEAD = re.compile(r"---\n(.*?)\n---\n\n(.*)\Z", re.DOTALL)


def extensions() -> list[str]:
    """The Markdown extensions that the site's settings name."""
    return yaml.safe_load((ROOT / "mkdocs.yml").read_text(encoding="utf-8"))["markdown_extensions"]


def front(page: str) -> dict:
    """The front matter of a page."""
    return yaml.safe_load(HEAD.match(page)[1])


def html(page: str) -> str:
    """The body of a page as HTML."""
    return markdown.markdown(HEAD.match(page)[2], extensions=extensions())


def parsed(page: str) -> LexborHTMLParser:
    """The body of a page as a tree."""
    return LexborHTMLParser(html(page))


def spoken(text: str) -> str:
    """A text as it is shown: runs of white space are one space."""
    return " ".join(text.split())


def seen(page: str) -> str:
    """The words of a page as they are shown."""
    return spoken(parsed(page).body.text(separator=""))


def block(markup: str) -> str:
    """The words of one block or of a part of a line, as they are shown."""
    return seen(f"---\ntitle: x\n---\n\n{markup}\n")


@cache
def real_book() -> Book:
    """The book of this project."""
    return load(ROOT)
