"""A real browser for the tests: a Chromium of this machine, with every way out closed and every try counted.

    def test_something(visit, sample_site):
        visitor = visit(sample_site / "index.html")
        visitor.page.get_by_text("Procedures").click()

When the test ends the visitor itself asserts that the page asked for nothing outside the site, broke no policy and
threw no error.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from bayleaf.pages import entries, pages
from bayleaf.records import Book, load
from bayleaf.search import Entry
from bayleaf.site import build_site
from tests.site.sample import ENTRIES, sample

ROOT = Path(__file__).resolve().parents[2]
NAMES = ("chromium", "chromium-browser")
# No name is ever resolved and the browser does nothing of its own accord, so that what is counted is the page's doing.
ARGUMENTS = [
    "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--disable-gpu",
]
WATCH = """window.broken = [];
document.addEventListener("securitypolicyviolation", e => window.broken.push(e.violatedDirective + " " + e.blockedURI));"""


@dataclass
class Visitor:
    """One browser tab; `foreign` holds each address asked for outside the site, `errors` what scripts threw."""

    page: Page
    home: str
    foreign: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)

    def search(self, text: str) -> list[str]:
        """Type into the search box as a person does; gives the titles found, in order, once they are there."""
        box = self.page.locator("[data-md-component=search-query]")
        box.click()
        box.press_sequentially(text)
        return self.results()

    def results(self) -> list[str]:
        """The titles in the list of results."""
        titles = self.page.locator(".md-search-result__item h1")
        titles.first.wait_for()
        return titles.all_inner_texts()

    def prove_quiet(self) -> None:
        """Nothing was asked for outside the site, no policy was broken, no script failed."""
        assert self.foreign == []
        assert self.errors == []
        assert self.page.evaluate("window.broken") == []


def executable() -> str:
    """The Chromium of this machine; a test without a browser has not been run, so it fails."""
    found = next(filter(None, map(shutil.which, NAMES)), None)
    if found is None:
        pytest.fail(f"no browser: none of {', '.join(NAMES)} is on this machine; run `bash .ci/browser`", pytrace=False)
    return found


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """One browser for the whole run."""
    arguments = ARGUMENTS + (["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else [])
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=executable(), args=arguments)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def make_site(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Path]:
    """make_site(pages, entries) builds a site with the project's settings, in a folder with a space and an accent."""

    def make(pages: Mapping[str, str | bytes], entries: Iterable[Entry] = ()) -> Path:
        folder = tmp_path_factory.mktemp("shop") / "bay é 1"
        folder.mkdir()
        shutil.copy(ROOT / "mkdocs.yml", folder)
        return build_site(pages, entries, folder / "site", folder / "mkdocs.yml").out

    return make


@pytest.fixture(scope="session")
def sample_site(make_site: Callable[..., Path]) -> Path:
    """The sample pages, built once."""
    return make_site(sample(), ENTRIES)


@pytest.fixture(scope="session")
def book() -> Book:
    """The book of this project."""
    return load(ROOT)


@pytest.fixture(scope="session")
def real_site(make_site: Callable[..., Path], book: Book) -> Path:
    """The site of this project's book, built once."""
    return make_site(pages(book), entries(book))


@pytest.fixture
def visit(chromium: Browser) -> Iterator[Callable[..., Visitor]]:
    """visit(path or address, **context options) opens a tab there; an address may only be one of this machine."""
    visitors: list[Visitor] = []

    def open_tab(where: Path | str, **options: object) -> Visitor:
        address = where.as_uri() if isinstance(where, Path) else where
        context = chromium.new_context(**options)
        context.set_default_timeout(15_000)
        context.add_init_script(WATCH)
        home = "file://" if address.startswith("file:") else "/".join(address.split("/")[:3])
        visitor = Visitor(context.new_page(), home)
        context.on(
            "request",
            lambda request: (
                visitor.foreign.append(request.url) if not request.url.startswith((home, "data:")) else None
            ),
        )
        visitor.page.on("pageerror", lambda error: visitor.errors.append(str(error)))
        visitor.page.goto(address)
        visitors.append(visitor)
        return visitor

    yield open_tab
    try:
        for visitor in visitors:
            visitor.prove_quiet()
    finally:
        for visitor in visitors:
            visitor.page.context.close()
