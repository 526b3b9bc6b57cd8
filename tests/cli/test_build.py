"""`bayleaf build`, `pages` and `serve`: a book with errors stops them, and what stands there stays as it was."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from bayleaf.checks.rule import Example
from bayleaf.cli import main
from tests.checks.small import lay_out, make

ROOT = Path(__file__).resolve().parents[2]
SLIP = Example("readings/rail-pressure-primed.yaml", "quantity: rail-pressure", "quantity: rail-presure")


@pytest.fixture
def root(tmp_path) -> Path:
    """A clean book with the project's schemas and settings."""
    made = lay_out(tmp_path)
    shutil.copy(ROOT / "mkdocs.yml", made)
    return made


def files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()
    }


def test_a_clean_book_becomes_a_site_and_errors_later_leave_it_as_it_was(root, capsys):
    assert main(["build", "--root", str(root)]) == 0
    said = capsys.readouterr()
    assert said.err == "" and len(said.out.splitlines()) == 1 and f"open {root / 'site' / 'index.html'}" in said.out
    before = files(root / "site")
    assert b"What does the car do" in before["index.html"]

    make(root, SLIP)
    assert main(["build", "--root", str(root)]) == 1
    said = capsys.readouterr().out
    assert "kb/readings/rail-pressure-primed.yaml:" in said and "not built" in said and "Traceback" not in said
    assert files(root / "site") == before


def test_the_pages_alone_are_written_whole_or_not_at_all(root, tmp_path, capsys):
    out = tmp_path / "tree"
    assert main(["pages", str(out), "--root", str(root)]) == 0
    before = files(out)
    assert {
        "index.md",
        "procedures/measure-primed-pressure.md",
        "rules/UNIT-1.md",
        "fields/readings.md",
        "assets/bayleaf.css",
    } <= set(before)
    assert main(["pages", str(out), "--root", str(root)]) == 0
    assert files(out) == before

    make(root, SLIP)
    assert main(["pages", str(out), "--root", str(root)]) == 1
    assert "not written" in capsys.readouterr().out
    assert files(out) == before


def test_the_license_of_the_book_travels_with_its_pages(root, tmp_path):
    (root / "LICENSE").write_text("Terms of this book.\n")
    assert main(["pages", str(tmp_path / "tree"), "--root", str(root)]) == 0
    assert (tmp_path / "tree" / "LICENSE").read_text() == "Terms of this book.\n"


def test_a_folder_with_somebodys_files_is_refused_in_one_line(root, capsys):
    for command in (["pages", str(root / "kb")], ["build", "--out", str(root / "kb")]):
        assert main([*command, "--root", str(root)]) == 2
        said = capsys.readouterr()
        assert len(said.err.splitlines()) == 1 and f"holds files that bayleaf {command[0]} did not write" in said.err


def test_an_impossible_port_is_refused_in_one_line(root, capsys):
    assert main(["serve", "--port", "70000", "--root", str(root)]) == 2
    assert capsys.readouterr().err == "bayleaf: there is no port 70000; give one from 1024 to 65535\n"


def test_serving_starts_with_a_build_that_errors_stop(root, capsys):
    make(root, SLIP)
    assert main(["serve", "--root", str(root)]) == 1
    assert "rail-pressure-primed.yaml" in capsys.readouterr().out
    assert not (root / "site").exists()
