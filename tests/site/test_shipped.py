"""What a built site ships: no script but those listed here, nothing of the theme that no page uses, every part with its notice.

The licenses are those in the installed packages; the parts of the theme's script are those that its own source map names.
"""

from __future__ import annotations

import json
import re
import shutil
from importlib.metadata import distribution
from importlib.util import find_spec
from pathlib import Path

import pytest

from bayleaf.pages.kinds.notices import notices
from bayleaf.site import build_site
from tests.site.sample import ENTRIES, sample

ROOT = Path(__file__).resolve().parents[2]
THEME = Path(find_spec("material").origin).parent / "templates"
# A digest in a name, which changes with every release of the theme, is written as *.
SCRIPTS = {
    "assets/bayleaf.js",  # ours: forms and folds
    "assets/search-index.js",  # ours: what the search finds
    "assets/search-iframe-worker.js",  # ours: the search
    "assets/javascripts/bundle.*.min.js",  # the theme
    "search/search_index.js",  # the engine: its own index, which is empty of records
}
RUNS = (".js", ".mjs", ".cjs", ".wasm", ".map", ".php", ".swf", ".htc")


@pytest.fixture(scope="module")
def site(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("shop")
    shutil.copy(ROOT / "mkdocs.yml", folder)
    return build_site(sample(), ENTRIES, folder / "site", folder / "mkdocs.yml").out


def named(text: str) -> str:
    return " ".join(text.split())


def parts_of(source_map: Path) -> set[str]:
    """The packages whose sources a source map names."""
    sources = json.loads(source_map.read_text(encoding="utf-8"))["sources"]
    return {re.split(r".*node_modules/", source)[1].split("/")[0] for source in sources if "node_modules/" in source}


def test_every_script_shipped_is_on_the_list(site):
    found = {p.relative_to(site).as_posix() for p in site.rglob("*") if p.suffix in RUNS}
    assert {re.sub(r"\.[0-9a-f]{8}\.", ".*.", name) for name in found} == SCRIPTS


def test_what_the_theme_brings_and_no_page_uses_is_gone(site):
    assert not [folder for folder in ("lunr", "workers") if (site / "assets" / "javascripts" / folder).exists()]
    assert not (site / "assets" / "images").exists()
    # the theme does bring them, so it is the build that takes them out
    assert (THEME / "assets/javascripts/lunr").is_dir() and list(THEME.glob("assets/javascripts/*.map"))


def test_every_part_of_the_themes_script_and_style_has_its_notice():
    maps = [*THEME.glob("assets/javascripts/*.map"), *THEME.glob("assets/stylesheets/*.map")]
    parts = set().union(*map(parts_of, maps))
    assert {"rxjs", "clipboard"} <= parts
    assert parts <= set(re.findall(r"^## (.*)$", notices(), re.MULTILINE))


def test_every_license_comment_of_a_shipped_file_is_in_the_notices(site):
    owners = set()
    for path in [*site.rglob("*.js"), *site.rglob("*.css")]:
        for comment in re.findall(r"/\*!.*?\*/|!--!.*?--", path.read_text(encoding="utf-8"), re.DOTALL):
            owners.update(re.findall(r"(?:Copyright ?\(c\) |Copyright |MIT © )([^*\n]*?)\s*(?:--|\n)", comment))
    assert any("Zeno Rocha" in owner for owner in owners) and any("Fonticons" in owner for owner in owners)
    assert [owner for owner in owners if re.sub(r"^[\d-]+ ", "", owner) not in notices()] == []


@pytest.mark.parametrize("package", ["mkdocs", "mkdocs-material"])
def test_the_license_of_an_installed_package_is_in_the_notices_word_for_word(package):
    license = next(file for file in distribution(package).files if file.name == "LICENSE" and "dist-info" in str(file))
    assert named(license.read_text(encoding="utf-8")) in named(notices())


def test_our_own_license_is_in_the_notices_and_the_project_page_shows_the_same():
    assert named((ROOT / "LICENSE").read_text(encoding="utf-8")) in named(notices())
    assert (ROOT / ".github" / "NOTICES.md").read_text(encoding="utf-8") == notices()


def test_no_license_that_asks_for_the_same_terms_is_shipped(site):
    texts = [p.read_text(encoding="utf-8") for p in [*site.rglob("*.js"), *site.rglob("*.css")]]
    assert not [t for t in texts if re.search(r"\b[AL]?GPL|Mozilla Public License|GNU ", t)]
