"""The whole way from pages to a site: write the pages, run the engine, trim, seal, exchange."""

from __future__ import annotations

import os
import posixpath
import re
import shutil
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

from bayleaf.search import CLIENT, INDEX, Entry, build_index, client
from bayleaf.site.engine import run_engine
from bayleaf.site.errors import SealError, SiteError
from bayleaf.site.progress import SILENT, Progress
from bayleaf.site.seal import seal
from bayleaf.site.swap import locked, staged
from bayleaf.site.trim import trim

FAVICON = "assets/favicon.svg"
PROBE = "seal-probe"
PROBE_TEXT = "---\ntitle: Probe\nsearch:\n  exclude: true\n---\n\n# Probe\n"
PATH = re.compile(r"[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*\Z")


@dataclass(frozen=True)
class BuildReport:
    """What a build did: where the site is, how many pages it has, how many entries the search knows, bytes of it all."""

    out: Path
    pages: int
    entries: int
    bytes: int


def build_site(
    pages: Mapping[str, str | bytes],
    entries: Iterable[Entry],
    out: Path,
    settings: Path,
    progress: Progress = SILENT,
) -> BuildReport:
    """Build the site into `out`, replacing what an earlier build left there, whole or not at all.

    `pages` is relative posix path to Markdown text or asset bytes; `settings` is the engine's mkdocs.yml; the pages are
    written to build/pages beside it. Equal pages and entries give equal bytes. Raises SiteError (could not run) or
    SealError (a page holds what no page may hold); the old site then stays as it was.
    """
    entries = list(entries)
    out, settings = Path(os.path.abspath(out)), Path(os.path.abspath(settings))
    work = settings.parent / "build"
    if out.is_relative_to(work / "pages"):
        raise SiteError(f"could not run: {out} is where the pages are written; give another folder with --out")
    try:
        work.mkdir(exist_ok=True)
        with locked(work / ".lock"), staged(out) as new:
            probes = write_pages(pages, entries, work / "pages")
            progress.stage("running the site engine")
            run_engine(settings, new)
            trim(new)
            progress.stage("proving links and scripts")
            count = seal(new, probes)
            _prove_entries(entries, new)
            size = sum(path.stat().st_size for path in new.rglob("*") if path.is_file())
            progress.stage("putting the site in its place")
    except OSError as error:
        raise SiteError(f"could not run: {error.filename}: {error.strerror}") from None
    return BuildReport(out, count, len(entries), size)


def write_pages(pages: Mapping[str, str | bytes], entries: Iterable[Entry], folder: Path) -> tuple[str, ...]:
    """Write the tree that the engine reads, search and probes included; gives the site paths of the probes."""
    depths = {posixpath.dirname(path).count("/") + 1 if "/" in path else 0 for path in pages if path.endswith(".md")}
    probes = tuple("probe/" * depth + PROBE for depth in sorted(depths))
    ours: dict[str, str | bytes] = {
        CLIENT: client(),
        INDEX: build_index(entries),
        FAVICON: files("bayleaf.site").joinpath("favicon.svg").read_bytes(),
    }
    ours |= {f"{probe}.md": PROBE_TEXT for probe in probes}
    for path in (*pages, *ours):
        if not PATH.match(path):
            raise SiteError(
                f"could not run: {path!r} is no path of a page; letters, digits, dots and hyphens are expected"
            )
    if folder.is_symlink():
        raise SiteError(f"could not run: {folder} is a link; remove it, it is a folder that bayleaf writes")
    shutil.rmtree(folder, ignore_errors=True)
    whole: dict[str, str | bytes] = {**pages, **ours}
    for path, content in whole.items():
        file = folder / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
    return tuple(f"{probe}.html" for probe in probes)


def _prove_entries(entries: Iterable[Entry], site: Path) -> None:
    """Every page that the search offers is there."""
    missing = sorted({entry.url for entry in entries if not (site / entry.url.partition("#")[0]).is_file()})
    if missing:
        raise SealError([f"{INDEX}: the search leads to {url}, which is not in the site" for url in missing])
