"""One row says all of a kind: the folders, the schemas, the pages and the menu are those of the rows."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

import yaml

from bayleaf.pages.kinds import vocabulary
from bayleaf.records import KIND, KINDS, RECORD_KINDS, VOCABULARY_KINDS
from bayleaf.records.kinds import DEMO, MENU, MORE, linked_in

ROOT = Path(__file__).resolve().parents[2]


def test_every_kind_has_its_schema_and_its_place_under_kb():
    schemas = {path.name.removesuffix(".schema.json") for path in (ROOT / "schemas").glob("*.schema.json")}
    assert schemas == {*KINDS, "common"}
    assert {path.name for path in (ROOT / "kb").iterdir()} == {*RECORD_KINDS, "vocabulary"}
    assert {path.stem for path in (ROOT / "kb" / "vocabulary").iterdir()} == set(VOCABULARY_KINDS)


def test_the_menu_is_that_of_the_rows():
    menu = yaml.safe_load((ROOT / "mkdocs.yml").read_text(encoding="utf-8"))["nav"]
    rows = [{kind.title: f"{kind.name}/index.md"} for kind in linked_in(MENU)]
    assert menu == [{"Home": "index.md"}, *rows, {"More": "more/index.md"}]


def test_every_kind_is_linked_at_one_place_and_no_two_have_one_rank_there():
    places = {place: linked_in(place) for place in (MENU, MORE, DEMO)}
    assert sorted(kind.name for kinds in places.values() for kind in kinds) == sorted(KINDS)
    for kinds in places.values():
        assert [kind.rank for kind in kinds] == list(range(1, len(kinds) + 1))


def test_a_kind_has_a_page_a_record_where_its_row_says_so():
    modules = {kind: import_module(f"bayleaf.pages.kinds.{kind}") for kind in KINDS if kind not in vocabulary.PAGES}
    assert all(hasattr(module, "index") for module in modules.values())
    assert {kind for kind, module in modules.items() if hasattr(module, "page")} == {
        name for name, kind in KIND.items() if kind.paged
    }
