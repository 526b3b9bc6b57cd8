"""The server shows the newest good build and keeps the old one when a build fails."""

from __future__ import annotations

import queue
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.client import HTTPConnection
from pathlib import Path

import pytest

from bayleaf.site import SiteError, serve

WAIT = 20       # seconds; only a broken server makes a test wait so long


@contextmanager
def serving(site: Path, watched: Path, rebuild) -> Iterator[tuple[int, queue.Queue]]:
    """A server in a thread; gives its port and the queue of what it says."""
    said: queue.Queue = queue.Queue()
    stop = threading.Event()
    thread = threading.Thread(target=serve, args=(site, [watched], rebuild, 0, said.put, stop))
    thread.start()
    try:
        yield int(re.search(r"127\.0\.0\.1:(\d+)/", said.get(timeout=WAIT))[1]), said
    finally:
        stop.set()
        thread.join(WAIT)
        assert not thread.is_alive()


def fetch(port: int, path: str) -> tuple[int, str, str | None]:
    connection = HTTPConnection("127.0.0.1", port, timeout=WAIT)
    connection.request("GET", path)
    answer = connection.getresponse()
    return answer.status, answer.read().decode(), answer.getheader("Cache-Control")


@pytest.fixture
def folders(tmp_path):
    (tmp_path / "site").mkdir()
    (tmp_path / "kb").mkdir()
    (tmp_path / "site" / "index.html").write_text("old")
    return tmp_path / "site", tmp_path / "kb"


def test_a_page_is_served_and_never_cached(folders):
    site, kb = folders
    with serving(site, kb, lambda: "built") as (port, _):
        assert fetch(port, "/index.html") == (200, "old", "no-store")


def test_a_changed_record_builds_again(folders):
    site, kb = folders

    def rebuild() -> str:
        (site / "index.html").write_text("new")
        return "built"

    with serving(site, kb, rebuild) as (port, said):
        (kb / "a.yaml").write_text("title: A\n")
        assert said.get(timeout=WAIT) == "built"
        assert fetch(port, "/")[1] == "new"


def test_a_failed_build_keeps_the_old_site_and_says_why(folders):
    site, kb = folders

    def rebuild() -> str:
        raise SiteError("kb/a.yaml:1:1: no title")

    with serving(site, kb, rebuild) as (port, said):
        (kb / "a.yaml").write_text("x: 1\n")
        assert said.get(timeout=WAIT).splitlines() == ["kb/a.yaml:1:1: no title", "not rebuilt; the site before is still shown"]
        assert fetch(port, "/")[1] == "old"


def test_a_removed_record_builds_again(folders):
    site, kb = folders
    (kb / "a.yaml").write_text("title: A\n")
    with serving(site, kb, lambda: "built") as (_, said):
        (kb / "a.yaml").unlink()
        assert said.get(timeout=WAIT) == "built"


def test_a_port_that_is_taken_is_one_line(folders):
    site, kb = folders
    with serving(site, kb, lambda: "built") as (port, _), pytest.raises(SiteError, match=f"port {port} .*try another --port"):
        serve(site, [kb], lambda: "built", port)


def test_ctrl_c_stops_without_a_traceback(folders):
    site, kb = folders
    said = []

    class Interrupted(threading.Event):
        def wait(self, timeout=None):
            raise KeyboardInterrupt

    serve(site, [kb], lambda: "built", 0, said.append, Interrupted())
    assert said[-1] == "stopped"
