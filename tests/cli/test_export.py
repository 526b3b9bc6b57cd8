"""`bayleaf export`: everything, in forms that other programs read, and nothing that a spreadsheet would run."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from bayleaf.cli import main
from bayleaf.export.files import csv_text, exported
from bayleaf.records import KINDS, load
from tests.checks.small import lay_out


@pytest.fixture(scope="module")
def root(tmp_path_factory) -> Path:
    return lay_out(tmp_path_factory.mktemp("book"))


def rows(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text)))


def test_every_sound_record_is_in_the_json_as_it_was_written(root):
    book = load(root)
    data = json.loads(exported(book)["book.json"])
    assert {kind: set(data[kind]) for kind in data} == {
        kind: {id for id, r in book.of(kind).items() if r.sound} for kind in KINDS
    }
    assert data["readings"]["rail-pressure-primed"] == book.of("readings")["rail-pressure-primed"].data


def test_each_kind_is_a_table_with_a_line_for_each_record(root):
    book = load(root)
    head, *body = rows(exported(book)["faults.csv"])
    assert head[0] == "id"
    assert [row[0] for row in body] == list(book.of("faults"))
    assert all(len(row) == len(head) for row in body)


def test_each_system_has_its_matrix(root):
    files = exported(load(root))
    head, *body = rows(files["matrix/port-injection-return.csv"])
    line = next(row for row in body if row[0] == "regulator-hose-off")
    assert line[head.index("rail-pressure-idle")] == "high"
    data = json.loads(files["matrix/port-injection-return.json"])
    assert {row["fault"] for row in data["faults"]} == {row[0] for row in body}
    assert 0 <= data["whole"]["detected"] <= 1
    assert set(data["symptoms"]) == {"loss-of-power", "rough-idle"}


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1"])
def test_no_cell_is_a_formula(cell):
    assert rows(csv_text([[cell, "plain", 'with "quotes", commas']])) == [
        ["'" + cell, "plain", 'with "quotes", commas']
    ]


def test_the_files_are_written_and_written_again(root, tmp_path, capsys):
    folder = tmp_path / "out of the book"
    assert main(["export", str(folder), "--root", str(root)]) == 0
    first = {path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    assert main(["export", str(folder), "--root", str(root)]) == 0
    assert {path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()} == first
    assert f"files in {folder}" in capsys.readouterr().out


def test_the_license_of_the_book_travels_with_it_and_a_book_without_one_gets_none(root, tmp_path):
    assert "LICENSE" not in exported(load(root))
    own = lay_out(tmp_path / "book")
    (own / "LICENSE").write_text("Terms of this book.\n")
    assert main(["export", str(tmp_path / "out"), "--root", str(own)]) == 0
    assert (tmp_path / "out" / "LICENSE").read_text() == "Terms of this book.\n"


def test_a_folder_with_other_things_in_it_is_left_alone(root, tmp_path, capsys):
    (tmp_path / "letter.txt").write_text("keep me")
    assert main(["export", str(tmp_path), "--root", str(root)]) == 2
    assert (tmp_path / "letter.txt").read_text() == "keep me"
    assert len(capsys.readouterr().err.splitlines()) == 1
