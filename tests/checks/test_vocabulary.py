"""What code knows of the book by an id: each id stands in one module, and a book that lacks one is refused."""

from __future__ import annotations

import ast
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from bayleaf.checks import check
from bayleaf.records import load
from bayleaf.vocabulary import needed
from tests.checks.small import HERE

ROOT = HERE.parent
ROOMS = ("checks", "safety", "diagnosis", "report", "cli", "export")


@pytest.fixture(scope="module")
def copy(tmp_path_factory) -> Path:
    root = tmp_path_factory.mktemp("renamed")
    shutil.copytree(ROOT / "kb", root / "kb")
    (root / "schemas").symlink_to(ROOT / "schemas")
    return root


@pytest.mark.parametrize("id", ["fuel-pressure-relieved", "joint-unproved", "tank-shut"])
def test_an_id_that_is_renamed_in_the_whole_book_is_missed(copy, id):
    word, renamed = re.compile(rf"(?<![\w-]){id}(?![\w-])"), {}
    for path in copy.glob("kb/*/*.yaml"):
        text = path.read_text(encoding="utf-8")
        if word.search(text):
            renamed[path] = text
            path.write_text(word.sub(f"{id}-now", text), encoding="utf-8")
    try:
        errors = [f for f in check(load(copy)) if f.level != "advice"]
    finally:
        for path, text in renamed.items():
            path.write_text(text, encoding="utf-8")
    missing = [f for f in errors if f.code == "BOOK-9"]
    assert [f.message for f in missing] == [f"there is no state {id}, which the checks know by this id"]
    assert f"{id}-now" in missing[0].help


def literals(path: Path) -> Iterator[str]:
    """Every text of a module but for the words and the example of a rule."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    rules = [
        n for n in ast.walk(tree) if isinstance(n, ast.Call) and getattr(n.func, "id", "") in ("Rule", "reader_rule")
    ]
    told = {id(inner) for rule in rules for inner in ast.walk(rule)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told:
            yield node.value


def test_an_id_of_the_book_is_typed_in_one_module():
    book = load(ROOT)
    ids = {id for id in book.every if "-" in id}  # a plain word may be a verb or a field
    paths = [path for room in ROOMS for path in (ROOT / "tools" / "bayleaf" / room).rglob("*.py")]
    typed = {f"{path.name}: {text}" for path in paths for text in literals(path) if text in ids}
    # A place where work is done and a figure of the car's fuel are spelled like an instrument and a quantity.
    assert typed == {"load_on_a_lift.py: rolling-road", "compute.py: fuel-density"}


def test_the_book_holds_every_id_that_code_knows():
    book = load(ROOT)
    assert [(kind, id) for kind, id in needed() if id not in book.of(kind)] == []
