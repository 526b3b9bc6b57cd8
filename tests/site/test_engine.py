"""The engines: both build the same tree, and each failure is one line."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from bayleaf.search import Entry
from bayleaf.site import SiteError, engine
from bayleaf.site.build import write_pages
from bayleaf.site.engine import run_engine, run_second_engine
from bayleaf.site.seal import seal
from tests.site.sample import sample

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture
def shop(tmp_path):
    """A folder with the project's settings and the sample pages written for the engine."""
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    write_pages(sample(), [Entry("Home", "index.html", "Page")], tmp_path / "build" / "pages")
    return tmp_path


def headings(site: Path) -> dict[str, list[str]]:
    """Page to the headings in its content, links to the place itself left out."""
    found = {}
    for path in sorted(site.rglob("*.html")):
        article = re.search(r"<article.*?</article>", path.read_text(encoding="utf-8"), re.DOTALL)
        if path.name != "404.html" and article:
            texts = re.findall(r"<h[1-3][^>]*>(.*?)</h[1-3]>", article[0], re.DOTALL)
            found[path.relative_to(site).as_posix()] = [
                re.sub(r"<a .*?</a>|<[^>]+>|\s+", " ", t).strip() for t in texts
            ]
    return found


def test_the_second_engine_builds_the_very_same_tree(shop):
    run_engine(shop / "mkdocs.yml", shop / "first")
    second = run_second_engine(shop / "mkdocs.yml")
    assert headings(second) == headings(shop / "first")
    assert len(headings(second)) > 15


def test_the_second_engines_pages_take_the_seal_too(shop):
    site = run_second_engine(shop / "mkdocs.yml")
    assert seal(site, [path.relative_to(site).as_posix() for path in site.rglob("seal-probe.html")]) > 15


def test_a_page_of_the_navigation_that_is_not_there_is_one_line(shop):
    (shop / "build" / "pages" / "terms" / "index.md").unlink()
    with pytest.raises(SiteError, match=r"^could not run: the site engine mkdocs failed: .*terms/index.md.*") as raised:
        run_engine(shop / "mkdocs.yml", shop / "site")
    assert "\n" not in str(raised.value)


def test_settings_that_are_not_there_are_one_line(tmp_path):
    with pytest.raises(SiteError, match=r"mkdocs.yml is missing"):
        run_engine(tmp_path / "mkdocs.yml", tmp_path / "site")


def test_an_engine_that_is_not_installed_is_one_line(shop, monkeypatch):
    monkeypatch.setattr(engine, "find_spec", lambda name: None)
    with pytest.raises(SiteError, match=r"'mkdocs' is not installed; run `bash .ci/setup`"):
        run_engine(shop / "mkdocs.yml", shop / "site")


def test_the_engine_does_not_see_the_machines_environment(shop, monkeypatch):
    seen = {}
    real = engine.subprocess.run
    monkeypatch.setenv("ENABLED_GIT_SOMETHING", "1")
    monkeypatch.setattr(engine.subprocess, "run", lambda *a, **k: seen.update(k["env"]) or real(*a, **k))
    run_engine(shop / "mkdocs.yml", shop / "site")
    assert "ENABLED_GIT_SOMETHING" not in seen
    assert seen["SOURCE_DATE_EPOCH"] == "315532800" and seen["TZ"] == "UTC"
