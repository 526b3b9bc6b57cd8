"""The notices: a page with every part of them, a file with the same words, and a link at the foot of every page."""

from __future__ import annotations

import posixpath
import re

from bayleaf.pages.kinds.notices import FILE, notices
from tests.pages.shown import parsed, seen

PAGE = "more/notices.md"


def test_the_file_and_the_page_say_the_same(made):
    shown = " ".join(seen(made[PAGE]).split())
    assert made[FILE] == notices()
    paragraphs = [p for p in re.split(r"\n\s*\n", notices()) if not p.startswith("#")]
    assert len(paragraphs) > 30
    assert [p for p in paragraphs if " ".join(p.split()) not in shown] == []


def test_every_page_leads_to_the_notices_at_its_foot(made):
    pages = [path for path in made if path.endswith(".md")]
    aims = {path: parsed(made[path]).css("a")[-1].attributes["href"] for path in pages}
    wrong = {
        p: a
        for p, a in aims.items()
        if posixpath.normpath(posixpath.join(posixpath.dirname(p), a)) != "more/notices.html"
    }
    assert len(pages) > 400 and wrong == {}


def test_the_page_of_the_rest_leads_to_them_in_its_list(made):
    tiles = [a.attributes["href"] for a in parsed(made["more/index.md"]).css(".bl-tiles a")]
    assert "notices.html" in tiles
