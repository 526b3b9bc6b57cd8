"""`bayleaf format` writes what it lays out, and with --check writes nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.cli import main
from tests.checks.small import lay_out


@pytest.fixture
def root(tmp_path):
    lay_out(tmp_path)
    assert main(["format", "--root", str(tmp_path)]) == 0
    return tmp_path


def test_a_book_that_is_laid_out_passes_and_is_not_touched(root, capsys):
    stamps = {path: path.stat().st_mtime_ns for path in root.glob("kb/*/*.yaml")}
    assert main(["format", "--check", "--root", str(root)]) == 0
    assert main(["format", "--root", str(root)]) == 0
    assert {path: path.stat().st_mtime_ns for path in root.glob("kb/*/*.yaml")} == stamps
    assert "0 laid out, 0 left alone" in capsys.readouterr().out


def test_check_names_the_file_and_changes_nothing(root, capsys):
    file = root / "kb/components/battery.yaml"
    file.write_text(file.read_text().replace("status: draft\n", "") + "status: draft\n")
    before = file.read_bytes()
    assert main(["format", "--check", "--root", str(root)]) == 1
    assert file.read_bytes() == before and f"{file}: has another layout" in capsys.readouterr().out
    assert main(["format", "--root", str(root)]) == 0 and file.read_bytes() != before


def test_a_broken_file_is_left_alone_and_said(root, capsys):
    file = root / "kb/components/battery.yaml"
    file.write_text("title: [\n")
    assert main(["format", "--root", str(root), str(file)]) == 1
    assert file.read_text() == "title: [\n" and "left alone: it has errors" in capsys.readouterr().out


def test_a_path_without_a_record_cannot_be_laid_out(root, capsys):
    assert main(["format", "--root", str(root), str(root / "schemas")]) == 2
    assert "no record in" in capsys.readouterr().err


def test_a_link_is_not_followed(root, tmp_path_factory, capsys):
    outside = tmp_path_factory.mktemp("outside") / "battery.yaml"
    outside.write_text(
        (root / "kb/components/battery.yaml").read_text().replace("status: draft\n", "") + "status: draft\n"
    )
    before = outside.read_bytes()
    (root / "kb/components/linked.yaml").symlink_to(outside)
    assert main(["format", "--root", str(root)]) == 0
    assert outside.read_bytes() == before and (root / "kb/components/linked.yaml").is_symlink()


def test_a_folder_that_cannot_be_read_is_no_folder_in_order(root, monkeypatch, capsys):
    def listed(folder):
        raise PermissionError(13, "Permission denied", str(folder))

    monkeypatch.setattr(Path, "iterdir", listed)
    assert main(["format", "--check", "--root", str(root)]) == 2
    assert capsys.readouterr().err == f"bayleaf: {root / 'kb/systems'}: Permission denied\n"
