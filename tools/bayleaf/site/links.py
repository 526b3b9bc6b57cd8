"""Prove that every link of the site arrives: the file is there, and so is the place in it."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from bayleaf.site.markup import RELATIVE, Page, resolve


def broken_links(pages: Mapping[str, Page], files: Collection[str]) -> list[str]:
    """One line for each link that leads to no file of the site or to no place in its page; letter case counts."""
    problems = []
    known: dict[tuple[str, str], str] = {}
    for name, page in pages.items():
        folder = name.rpartition("/")[0]
        for link in sorted(page.links):
            if not RELATIVE.match(link):
                continue  # refused already as an address that leads out of the site
            # The links of header and navigation are the same on every page of a folder: look each up once.
            key = (name, link) if link[:1] in ("#", "?", "") else (folder, link)
            if key not in known:
                known[key] = _fault(name, link, pages, files)
            if known[key]:
                problems.append(f"{name}: link {link!r} {known[key]}")
    return problems


def _fault(name: str, link: str, pages: Mapping[str, Page], files: Collection[str]) -> str:
    target, fragment = resolve(name, link)
    if target not in files:
        return f"leads to {target}, which is not in the site"
    if fragment and target in pages and fragment not in pages[target].ids:
        return f"leads to a place {fragment!r} that {target} does not have"
    return ""
