"""`bayleaf check`: which files findings name, with a shop's own records laid over the book, and what a path leaves out."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from bayleaf.cli import main
from tests.checks.small import lay_out

READING = "kb/readings/fuel-in-regulator-hose.yaml"


@pytest.fixture
def root(tmp_path) -> Path:
    return lay_out(tmp_path / "book é")


@pytest.fixture
def check(root, capsys):
    """check(*words) runs the command; gives exit status, standard output and error output."""

    def run(*words: object) -> tuple[int, str, str]:
        status = main(["check", "--root", str(root), *map(str, words)])
        out, err = capsys.readouterr()
        return status, out, err

    return run


def shop_with(folder: Path, slip: tuple[str, str], root: Path) -> Path:
    """A shop's folder with one reading of the book, changed."""
    path = folder / READING
    path.parent.mkdir(parents=True)
    text = (root / READING).read_text(encoding="utf-8")
    assert slip[0] in text
    path.write_text(text.replace(*slip), encoding="utf-8")
    return folder


def broken(folder: Path, root: Path) -> Path:
    return shop_with(folder, ("status: ", "stand: "), root)


@pytest.mark.parametrize("place", ["shop", "book é/private/shop", "elsewhere/a shop"])
def test_a_finding_in_a_shops_record_names_a_file_that_opens_from_the_root(check, root, tmp_path, place):
    shop = broken(tmp_path / place, root)
    status, out, _ = check("--overlay", shop, "--format", "json")
    files = {f["file"] for f in json.loads(out)["findings"] if f["code"].startswith("SHAPE")}
    assert status == 1
    assert [(root / file).resolve() for file in files] == [shop / READING]


def test_two_shops_of_one_folder_name_are_told_apart(check, root, tmp_path):
    first, second = (
        broken(tmp_path / "a" / "shop", root),
        shop_with(tmp_path / "b" / "shop", ("status: ", "# own\nstand: "), root),
    )
    _, out, _ = check("--overlay", first, "--overlay", second)
    assert "../a/shop/kb/" in out and "../b/shop/kb/" in out
    lines = out.splitlines()
    assert [lines[i + 1].strip()[:8] for i, line in enumerate(lines) if "unknown field stand" in line] == [
        "| stand:"
    ] * 2


def test_the_overlay_that_one_stands_in_is_named_too(check, root, tmp_path, monkeypatch):
    monkeypatch.chdir(broken(tmp_path / "shop", root))
    _, out, _ = check("--overlay", ".")
    assert f"../shop/{READING}:" in out


@pytest.mark.parametrize("place", ["shop", "book é/private/shop"])
def test_a_path_in_an_overlay_keeps_what_was_found_there(check, root, tmp_path, place):
    shop = broken(tmp_path / place, root)
    assert check("--overlay", shop, shop / READING)[0] == 1
    assert check("--overlay", shop, shop)[0] == 1
    assert check("--overlay", shop, root / "kb" / "faults")[0] == 0


def test_a_path_is_found_in_a_kb_folder_behind_a_link(check, root, tmp_path):
    path = root / READING
    path.write_text(path.read_text(encoding="utf-8").replace("status: ", "stand: "), encoding="utf-8")
    (root / "kb").rename(tmp_path / "records")
    (root / "kb").symlink_to(tmp_path / "records", target_is_directory=True)
    assert check(root / READING)[0] == 1 and check(tmp_path / "records" / "readings")[0] == 1
    assert check(root / "kb" / "faults")[0] == 0


def test_a_path_without_records_is_no_clean_check(check, root):
    (root / "README.md").write_text("# A book\n", encoding="utf-8")
    status, out, err = check(root / "README.md")
    assert (status, out) == (2, "") and "holds no record of the book" in err


def test_rules_that_did_not_run_are_said_whatever_path_is_given(check, root):
    path = root / READING
    path.write_text(path.read_text(encoding="utf-8").replace("status: ", "stand: "), encoding="utf-8")
    _, out, _ = check(root / "kb" / "faults")
    assert "BOOK-8" in out


def last_line(out: str) -> str:
    return out.rstrip("\n").rsplit("\n", 1)[-1]


def slip(root: Path, file: str, good: str, bad: str) -> Path:
    path = root / "kb" / file
    text = path.read_text(encoding="utf-8")
    assert text.count(good) == 1
    path.write_text(text.replace(good, bad), encoding="utf-8")
    return path


def test_a_path_says_what_was_looked_at_and_what_was_not(check, root):
    slip(root, "components/battery.yaml", "status: draft", "status: finished")
    named = root / "kb/faults/fuel-filter-restricted.yaml"
    status, out, _ = check(named)
    files = len(list(root.glob("kb/*/*.yaml")))
    looked_at, others = map(
        int, re.match(r"(\d+) files? looked at, (\d+) not \(1 error there\), ", last_line(out)).groups()
    )
    assert status == 0 and looked_at + others == files and 0 < looked_at < files
    assert check()[0] == 1


def test_a_path_shows_what_its_records_break_in_others(check, root):
    """The relief is taken out of one procedure; the ones that follow it are not made safe any more."""
    named = slip(
        root, "procedures/relieve-fuel-pressure.yaml", "sets: [fuel-pressure-relieved]", "sets: [fuel-above-quarter]"
    )
    _, out, _ = check("--format", "json")
    elsewhere = {f["file"] for f in json.loads(out)["findings"] if f["level"] == "error"} - {
        "kb/procedures/" + named.name
    }
    assert elsewhere
    status, out, _ = check("--format", "json", named)
    assert status == 1
    assert elsewhere <= {f["file"] for f in json.loads(out)["findings"]}


def test_a_path_shows_a_finding_elsewhere_that_speaks_of_its_record(check, root):
    """The new reading takes the title of another: the finding stands at the other, and names the new one."""
    text = (root / "kb/readings/rail-pressure-idle.yaml").read_text(encoding="utf-8")
    named = root / "kb/readings/rail-pressure-early.yaml"
    named.write_text(text, encoding="utf-8")
    _, out, _ = check("--format", "json", named)
    twins = [f for f in json.loads(out)["findings"] if f["code"] == "BOOK-5"]
    assert [f["file"] for f in twins] == ["kb/readings/rail-pressure-idle.yaml"]
    assert "rail-pressure-early" in twins[0]["message"]


def test_a_source_line_is_shown_only_of_an_ordinary_file(root):
    """In another process: a pipe that is opened would stop this one for good. A file of 50 GB would fill it."""
    os.mkfifo(root / "kb/components/pipe.yaml")
    os.mkfifo(root / "kb/notes.txt")
    (root / "kb/loop").symlink_to("loop")
    (root / "kb/more").symlink_to("..", target_is_directory=True)
    (root / "kb/components/out.yaml").symlink_to("/dev/zero")
    with open(root / "kb/huge.txt", "wb") as handle:
        handle.truncate(50 * 1024**3)
    done = subprocess.run(
        [sys.executable, "-m", "bayleaf", "check", "--root", root],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert (done.returncode, done.stderr) == (1, "")
    for name in ("components/pipe.yaml", "notes.txt", "loop", "more", "components/out.yaml", "huge.txt"):
        assert f"kb/{name}:1:1: error" in done.stdout


def test_a_deep_tree_of_folders_is_read_to_its_end(root):
    here = os.getcwd()
    try:
        os.chdir(root / "kb")
        for _ in range(1500):
            os.mkdir("a")
            os.chdir("a")
        Path("x.yaml").touch()
    finally:
        os.chdir(here)
    done = subprocess.run(
        [sys.executable, "-m", "bayleaf", "check", "--root", root],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert (done.returncode, done.stderr) == (1, "")
    assert "a/a/x.yaml:1:1: error FILE-11" in done.stdout
    subprocess.run(["rm", "-rf", root / "kb/a"], check=True)  # deeper than Python takes folders away
