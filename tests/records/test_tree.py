"""What lies under kb besides records: everything is claimed or is a finding, and nothing hangs."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from bayleaf.finding import CouldNotRun
from bayleaf.records import load, load_job
from bayleaf.report import FORMATS, Report, render
from tests.checks.small import lay_out


@pytest.fixture
def root(tmp_path):
    return lay_out(tmp_path)


def found(root: Path) -> list[tuple[str, str]]:
    return [(f.file, f.code) for f in load(root).findings]


def test_the_small_book_reads_clean(root):
    book = load(root)
    assert book.findings == [] and book.files == sum(len(names) for _, _, names in os.walk(root / "kb"))


@pytest.mark.parametrize(
    "name",
    [
        "kb/loose.yaml",
        "kb/components/notes.txt",
        "kb/components/deep/er.yaml",
        "kb/vocabulary/colours.yaml",
        "kb/.hidden",
        "kb/components/x.yml",
    ],
)
def test_a_file_that_no_schema_claims_is_a_finding(root, name):
    (root / name).parent.mkdir(exist_ok=True)
    (root / name).write_text("title: x")
    assert found(root) == [(name, "FILE-11")]


def test_a_pipe_is_not_opened(root):
    os.mkfifo(root / "kb/components/pipe.yaml")
    assert found(root) == [("kb/components/pipe.yaml", "FILE-15")]


def test_links_to_files_and_to_folders_are_findings(root, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (root / "kb/components/out.yaml").symlink_to("/etc/hostname")
    (root / "kb/more").symlink_to(elsewhere, target_is_directory=True)
    assert found(root) == [("kb/components/out.yaml", "FILE-15"), ("kb/more", "FILE-15")]


def test_a_huge_file_is_not_read_whole(root):
    with open(root / "kb/components/huge.yaml", "wb") as handle:
        handle.truncate(50 * 1024**3)  # sparse: it takes no room on the disk
    assert found(root) == [("kb/components/huge.yaml", "FILE-4")]


def test_a_file_name_that_is_no_text_is_a_finding_in_every_format(root):
    os.close(os.open(os.fsencode(root / "kb/components") + b"/\xff\x1b[2J.yaml", os.O_CREAT | os.O_WRONLY))
    findings = load(root).findings
    assert {f.code for f in findings} == {"FILE-12", "FILE-5"}
    for said in (*(render(format, Report(findings, [], "")) for format in FORMATS),):
        said.encode("utf-8")
        assert "\x1b" not in said


def test_an_empty_folder_is_no_book(tmp_path):
    (tmp_path / "kb").mkdir()
    (tmp_path / "schemas").symlink_to(lay_out(tmp_path / "other") / "schemas")
    assert found(tmp_path) == [("kb", "FILE-5")]


def test_without_a_folder_nothing_can_run(tmp_path):
    with pytest.raises(CouldNotRun, match="no kb folder"):
        load(tmp_path)


def test_a_job_file_that_is_not_there_cannot_be_run(root):
    with pytest.raises(CouldNotRun, match="No such file"):
        load_job(root / "nowhere.yaml", load(root))


def test_a_shop_lays_its_records_over_those_of_the_book(root):
    over = root / "shop" / "kb" / "components"
    over.mkdir(parents=True)
    own = (root / "kb/components/battery.yaml").read_text().replace("title: Battery", "title: Our battery")
    (over / "battery.yaml").write_text(own)
    book = load(root, [root / "shop"])
    assert (
        book.findings == []
        and book.get("battery").title == "Our battery"
        and book.get("battery").file == "shop/kb/components/battery.yaml"
    )


def test_a_shop_cannot_take_the_id_of_another_kind(root):
    over = root / "shop" / "kb" / "components"
    over.mkdir(parents=True)
    (over / "rough-idle.yaml").write_text((root / "kb/components/battery.yaml").read_text())
    assert [(f.file, f.code) for f in load(root, [root / "shop"]).findings] == [
        ("shop/kb/components/rough-idle.yaml", "FILE-13")
    ]


def test_a_folder_that_cannot_be_read_is_named_as_it_lies(root, monkeypatch):
    def refused(folder):
        raise PermissionError(13, "Permission denied", folder)

    monkeypatch.setattr(os, "scandir", refused)
    assert sorted(found(root)) == [("kb", "FILE-15"), ("kb", "FILE-5")]
