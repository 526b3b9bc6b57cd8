"""Who made what a built site ships, and under what license: a page, and the same as a file.

The text stands in assets/notices.txt: a title, a line about it, then a part for each thing shipped under a `## ` line.
"""

from __future__ import annotations

import re
from importlib.resources import files

from bayleaf.pages.building.blocks import blocks, heading, para, section
from bayleaf.pages.building.frame import crumbs
from bayleaf.pages.building.page import NOTICES, page
from bayleaf.pages.building.text import Markup

TITLE = "Notices"
REMARK = "licenses of the records, the program and the site's theme"
FILE = "NOTICES.txt"


def notices() -> str:
    """The whole text, as it is shipped."""
    return files("bayleaf.pages").joinpath("assets", "notices.txt").read_text(encoding="utf-8")


def notice_pages() -> dict[str, str | bytes]:
    """Path to content of the page and of the file."""
    about, *parts = re.split(r"^## ", notices(), flags=re.MULTILINE)
    sections = [_part(*part.split("\n", 1)) for part in parts]
    lead = about.removeprefix("# Notices").strip()
    content = page(
        NOTICES, TITLE, crumbs(under_more=True), heading(1, "top", TITLE), para(lead, css="bl-lead"), *sections
    )
    return {NOTICES: content, FILE: notices()}


def _part(title: str, body: str) -> Markup:
    paragraphs = re.split(r"\n{2,}", body.strip())
    return section(title.lower().replace(" ", "-"), title, blocks(*map(para, paragraphs)))
