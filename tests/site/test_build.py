"""From pages to a site: equal input gives equal bytes, and a bad page leaves the old site."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from bayleaf.search import Entry
from bayleaf.site import SealError, SiteError, build_site
from tests.site.sample import ENTRIES, page, sample

ROOT = Path(__file__).resolve().parents[2]


def shop(folder: Path) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    shutil.copy(ROOT / "mkdocs.yml", folder)
    return folder


def build(folder: Path, extra: dict[str, str | bytes] | None = None, entries=ENTRIES):
    return build_site(sample(extra), entries, folder / "site", folder / "mkdocs.yml")


def contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_a_build_tells_what_it_made(tmp_path):
    report = build(shop(tmp_path))
    assert (report.pages, report.entries, report.out) == (
        len([p for p in sample() if p.endswith(".md")]),
        3,
        tmp_path / "site",
    )
    assert report.bytes == sum(
        len(data) for name, data in contents(tmp_path / "site").items() if name != ".bayleaf-site"
    )


def test_two_builds_in_other_folders_and_time_zones_are_the_same_bytes(tmp_path, monkeypatch):
    build(shop(tmp_path / "one"))
    monkeypatch.setenv("TZ", "Pacific/Auckland")
    monkeypatch.setenv("PYTHONHASHSEED", "7")
    monkeypatch.setenv("LC_ALL", "C")
    build(shop(tmp_path / "two with é"))
    assert contents(tmp_path / "one" / "site") == contents(tmp_path / "two with é" / "site")


def test_the_address_of_a_page_is_its_kind_and_its_id(tmp_path):
    build(shop(tmp_path))
    assert (tmp_path / "site" / "procedures" / "measure-primed-rail-pressure.html").is_file()
    assert not list((tmp_path / "site").rglob("seal-probe*")) and not (tmp_path / "site" / "probe").exists()


def test_every_page_carries_the_policy(tmp_path):
    build(shop(tmp_path))
    pages = list((tmp_path / "site").rglob("*.html"))
    assert pages and all("Content-Security-Policy" in path.read_text(encoding="utf-8") for path in pages)


def test_the_engines_own_index_does_not_hold_the_records(tmp_path):
    build(shop(tmp_path))
    assert b"Measure primed" not in (tmp_path / "site" / "search" / "search_index.json").read_bytes()


def test_a_page_that_would_fetch_leaves_the_old_site(tmp_path):
    build(shop(tmp_path))
    before = contents(tmp_path / "site")
    with pytest.raises(
        SealError, match=r"terms/lambda.html: src='https://example.org/x.png' on <img> leads out of the site"
    ):
        build(tmp_path, {"terms/lambda.md": page("Lambda", '<img src="https://example.org/x.png">')})
    assert contents(tmp_path / "site") == before


def test_a_link_to_no_page_is_named(tmp_path):
    with pytest.raises(
        SealError, match=r"terms/lambda.html: link 'mixture.html' leads to terms/mixture.html, which is not in"
    ):
        build(shop(tmp_path), {"terms/lambda.md": page("Lambda", "[Mixture](mixture.html)")})


def test_an_entry_that_leads_to_no_page_is_named(tmp_path):
    with pytest.raises(SealError, match=r"the search leads to faults/gone.html, which is not in the site"):
        build(shop(tmp_path), entries=[Entry("Gone", "faults/gone.html", "Fault")])


def test_a_page_that_the_records_no_longer_give_is_gone(tmp_path):
    build(shop(tmp_path), {"terms/lambda.md": page("Lambda", "Air over the air it needs.")})
    build(tmp_path)
    assert not (tmp_path / "site" / "terms" / "lambda.html").exists()


@pytest.mark.parametrize("path", ["../x.md", "/x.md", "a//b.md", "a/../b.md", ".hidden.md", "a b.md", "a\\b.md", ""])
def test_a_page_outside_the_folder_is_refused(tmp_path, path):
    with pytest.raises(SiteError, match="is no path of a page"):
        build(shop(tmp_path), {path: "x"})


def test_the_pages_folder_is_no_place_for_the_site(tmp_path):
    with pytest.raises(SiteError, match="is where the pages are written"):
        build_site(sample(), ENTRIES, shop(tmp_path) / "build" / "pages" / "site", tmp_path / "mkdocs.yml")


def test_a_folder_that_cannot_be_made_is_one_line(tmp_path):
    (shop(tmp_path) / "build").write_text("a file")
    with pytest.raises(SiteError, match=r"^could not run: .*build: File exists$"):
        build(tmp_path)
