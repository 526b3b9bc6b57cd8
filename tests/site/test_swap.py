"""Whoever looks finds the old site or the new one, whole, also after a kill at any line of the exchange."""

from __future__ import annotations

import errno
import os
import signal
import sys
from pathlib import Path

import pytest

from bayleaf.site import SiteError, swap
from bayleaf.site.swap import MARKER, mend, staged

NAMES = ("index.html", "codes/p0171.html", "assets/a.css")


def fill(folder: Path, text: str) -> None:
    for name in NAMES:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)


def put(out: Path, text: str) -> None:
    with staged(out) as new:
        fill(new, text)


def content(out: Path) -> dict[str, str]:
    return {
        path.relative_to(out).as_posix(): path.read_text()
        for path in out.rglob("*")
        if path.is_file() and path.name != MARKER
    }


def whole(text: str) -> dict[str, str]:
    return dict.fromkeys(NAMES, text)


def put_and_be_killed(out: Path, text: str, line: int) -> bool:
    """Put the text from a child process that is killed with SIGKILL at the n-th line of swap.py; whether it was."""
    child = os.fork()
    if child == 0:
        count = 0

        def trace(frame, event, argument):
            nonlocal count
            if frame.f_code.co_filename != swap.__file__:
                return None
            count += event == "line"
            if count == line:
                os.kill(os.getpid(), signal.SIGKILL)
            return trace

        try:
            sys.settrace(trace)
            put(out, text)
        finally:
            os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == -signal.SIGKILL


def without_exchange(monkeypatch):
    def missing(new, out):
        raise OSError(errno.ENOSYS, "no renameat2 on this system")

    monkeypatch.setattr(swap, "_rename_exchange", missing)


def test_the_new_folder_takes_the_place_of_the_old(tmp_path):
    put(tmp_path / "site", "old")
    put(tmp_path / "site", "new")
    assert content(tmp_path / "site") == whole("new")
    assert sorted(path.name for path in tmp_path.iterdir()) == [".site.lock", "site"]


def test_a_kill_at_any_line_leaves_old_or_new_whole(tmp_path):
    put(tmp_path / "site", "old")
    seen = set()
    line = 1
    while put_and_be_killed(tmp_path / "site", "new", line):
        now = content(tmp_path / "site")
        assert now in (whole("old"), whole("new")), f"killed at line event {line}"
        seen.add(now["index.html"])
        put(tmp_path / "site", "old")
        line += 1
    assert seen == {"old", "new"}
    assert line > 50


def test_a_kill_between_two_renames_is_mended_at_the_next_start(tmp_path, monkeypatch):
    without_exchange(monkeypatch)
    put(tmp_path / "site", "old")
    missing = 0
    line = 1
    while put_and_be_killed(tmp_path / "site", "new", line):
        missing += not (tmp_path / "site").exists()
        mend(tmp_path / "site")
        assert content(tmp_path / "site") in (whole("old"), whole("new")), f"killed at line event {line}"
        assert {path.name for path in tmp_path.iterdir()} == {".site.lock", "site"}
        put(tmp_path / "site", "old")
        line += 1
    assert missing > 0


def test_an_error_in_the_making_leaves_the_old_site(tmp_path):
    def put_and_fail() -> None:
        with staged(tmp_path / "site") as new:
            fill(new, "new")
            raise ZeroDivisionError

    put(tmp_path / "site", "old")
    with pytest.raises(ZeroDivisionError):
        put_and_fail()
    assert content(tmp_path / "site") == whole("old")
    assert sorted(path.name for path in tmp_path.iterdir()) == [".site.lock", "site"]


def test_an_empty_folder_is_taken(tmp_path):
    (tmp_path / "site").mkdir()
    put(tmp_path / "site", "new")
    assert content(tmp_path / "site") == whole("new")


def test_a_folder_of_somebody_else_is_refused(tmp_path):
    fill(tmp_path / "site", "theirs")
    with pytest.raises(SiteError, match="holds files that bayleaf build did not write"):
        put(tmp_path / "site", "new")
    assert content(tmp_path / "site") == whole("theirs")


def test_a_link_is_refused(tmp_path):
    (tmp_path / "real").mkdir()
    (tmp_path / "site").symlink_to("real")
    with pytest.raises(SiteError, match="is a link"):
        put(tmp_path / "site", "new")


def test_a_file_is_refused(tmp_path):
    (tmp_path / "site").write_text("theirs")
    with pytest.raises(SiteError, match="is a file"):
        put(tmp_path / "site", "new")


def test_two_builds_at_once_are_one_too_many(tmp_path):
    with staged(tmp_path / "site") as new:
        fill(new, "first")
        with pytest.raises(SiteError, match="another build is at work"):
            put(tmp_path / "site", "second")
    assert content(tmp_path / "site") == whole("first")


def test_a_folder_of_another_command_is_not_replaced(tmp_path):
    put(tmp_path / "site", "old")
    with (
        pytest.raises(SiteError, match="holds files that bayleaf export did not write"),
        staged(tmp_path / "site", "export"),
    ):
        pass
    assert content(tmp_path / "site") == whole("old")
    with staged(tmp_path / "book", "export") as new:
        fill(new, "book")
    with staged(tmp_path / "book", "export") as new:
        fill(new, "next")
    assert content(tmp_path / "book") == whole("next")
