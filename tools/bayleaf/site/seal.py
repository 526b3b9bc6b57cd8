"""Prove that the built pages fetch nothing, run nothing unknown and lead nowhere wrong, and bind them to it.

The generator already writes every text as text. The seal trusts neither it nor the engine: it reads each finished page
with a parser that follows the HTML standard, as browsers do, and refuses what a page of ours never holds. What may run
is taken from the probes: pages without a word from any record, one for each depth of folder.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from pathlib import Path

from bayleaf.site.errors import SealError
from bayleaf.site.links import broken_links
from bayleaf.site.markup import Page, css_problems, hash_of, page_problems, read_page

CHARSET = '<meta charset="utf-8">'
POLICY = (
    "default-src 'none'; script-src 'self' file: {hashes}; style-src 'self' file: 'unsafe-inline'; "
    "img-src 'self' file: data:; font-src 'self' file:; connect-src 'self' file:; worker-src 'self' file:; "
    "object-src 'none'; base-uri 'none'; form-action 'none'; frame-src 'none'"
)


def seal(site: Path, probes: Sequence[str]) -> int:
    """Seal the built folder in place and give the number of pages; raises SealError with one line for each problem.

    `probes` are site paths of pages that hold no record text; their inline scripts and script files are the allowed
    ones. They are removed afterwards, and so are the sitemaps, which name the day of the build, and the page for
    "not found", whose links start at the root of a server.
    """
    hashes, scripts = _allowed(site, probes)
    for name in (*probes, "404.html", "sitemap.xml", "sitemap.xml.gz"):
        (site / name).unlink(missing_ok=True)
    for probe in sorted(probes, key=len, reverse=True):
        if not any((site / probe).parent.iterdir()):
            (site / probe).parent.rmdir()
    policy = POLICY.format(hashes=" ".join(f"'{h}'" for h in sorted(hashes)))
    problems: list[str] = []
    pages: dict[str, Page] = {}
    files = sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if not path.is_dir())
    for name in files:
        if name.endswith(".css"):
            problems += css_problems(name, (site / name).read_text(encoding="utf-8"))
        if name.endswith(".svg"):
            problems += page_problems(read_page(name, (site / name).read_text(encoding="utf-8")), hashes, scripts, None)
        if name.endswith(".html"):
            pages[name] = _bind(site / name, name, policy)
            problems += page_problems(pages[name], hashes, scripts, policy)
            pages[name].nodes.clear()  # only ids and links are asked for again; a large book has millions of nodes
    problems += broken_links(pages, frozenset(files))
    if problems:
        raise SealError(problems)
    return len(pages)


def _allowed(site: Path, probes: Sequence[str]) -> tuple[frozenset[str], frozenset[str]]:
    """Hashes of the inline scripts and site paths of the script files that the probes use."""
    hashes: set[str] = set()
    scripts: set[str] = set()
    for name in probes:
        page = read_page(name, (site / name).read_text(encoding="utf-8"))
        hashes.update(hash_of(text) for text in page.inline_scripts)
        scripts.update(page.script_files)
    return frozenset(hashes), frozenset(scripts)


def _bind(path: Path, name: str, policy: str) -> Page:
    """Write the policy into the head of a page, before anything that it rules, and read the page as it now is."""
    meta = f'{CHARSET}<meta http-equiv="Content-Security-Policy" content="{escape(policy, quote=True)}">'
    text = path.read_text(encoding="utf-8").replace(CHARSET, meta, 1)
    path.write_text(text, encoding="utf-8", newline="\n")
    return read_page(name, text)
