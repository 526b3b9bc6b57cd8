"""The server shows the newest good build and keeps the old one when a build fails."""

from __future__ import annotations

import os
import queue
import re
import selectors
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.client import HTTPConnection
from pathlib import Path

import pytest
from selectolax.lexbor import LexborHTMLParser

from bayleaf.finding import CouldNotRun
from bayleaf.site import SiteError, Source, serve
from bayleaf.site.serve import times

WAIT = 20  # seconds; only a broken server makes a test wait so long


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


@pytest.mark.parametrize("kind", [SiteError, CouldNotRun, OSError])
def test_a_failed_build_keeps_the_old_site_and_says_why(folders, kind):
    site, kb = folders

    def rebuild() -> str:
        raise kind("kb/a.yaml:1:1: no title")

    with serving(site, kb, rebuild) as (port, said):
        (kb / "a.yaml").write_text("x: 1\n")
        assert said.get(timeout=WAIT).splitlines() == [
            "kb/a.yaml:1:1: no title",
            "not rebuilt; the site before is still shown",
        ]
        assert fetch(port, "/")[1] == "old"


PAGE = "<html><body class='x'><p>the page</p></body></html>"
BROKEN = "kb/a.yaml:1:1: <title> is missing"


def test_a_broken_record_is_shown_on_the_last_good_page_until_it_is_mended(folders):
    site, kb = folders
    (site / "index.html").write_text(PAGE)
    (site / "a.css").write_text("p{}")

    def rebuild() -> str:
        if "title" in (kb / "a.yaml").read_text():
            return "built"
        raise SiteError(BROKEN)

    with serving(site, kb, rebuild) as (port, said):
        assert fetch(port, "/") == (200, PAGE, "no-store")
        (kb / "a.yaml").write_text("x: 1\n")
        said.get(timeout=WAIT)
        for path in ("/", "/index.html", "/index.html?q=1"):
            status, page, kept = fetch(port, path)
            tree = LexborHTMLParser(page)
            alert = tree.css_first("body > [role=alert]")
            assert (status, kept) == (200, "no-store") and BROKEN in alert.text() and alert.next.text() == "the page"
            assert not tree.css("body title")
        assert fetch(port, "/a.css")[1] == "p{}" and fetch(port, "/gone.html")[0] == 404
        (kb / "a.yaml").write_text("title: A\n")
        assert said.get(timeout=WAIT) == "built"
        assert fetch(port, "/")[1] == PAGE


def test_a_removed_record_builds_again(folders):
    site, kb = folders
    (kb / "a.yaml").write_text("title: A\n")
    with serving(site, kb, lambda: "built") as (_, said):
        (kb / "a.yaml").unlink()
        assert said.get(timeout=WAIT) == "built"


def test_a_port_that_is_taken_is_one_line(folders):
    site, kb = folders
    with (
        serving(site, kb, lambda: "built") as (port, _),
        pytest.raises(SiteError, match=f"port {port} .*try another --port"),
    ):
        serve(site, [kb], lambda: "built", port)


def test_ctrl_c_stops_without_a_traceback(folders):
    site, kb = folders
    said = []

    class Interrupted(threading.Event):
        def wait(self, timeout=None):
            raise KeyboardInterrupt

    serve(site, [kb], lambda: "built", 0, said.append, Interrupted())
    assert said[-1] == "stopped"


def test_a_record_changed_during_the_first_build_is_not_missed(folders):
    site, kb = folders
    seen = times([kb])
    (kb / "a.yaml").write_text("title: A\n")
    said: queue.Queue = queue.Queue()
    stop = threading.Event()
    thread = threading.Thread(target=serve, args=(site, [kb], lambda: "built", 0, said.put, stop, seen))
    thread.start()
    try:
        assert said.get(timeout=WAIT).startswith("http://127.0.0.1:")
        assert said.get(timeout=WAIT) == "built"
    finally:
        stop.set()
        thread.join(WAIT)


def test_what_it_says_reaches_a_pipe_at_once(folders):
    site, _kb = folders
    code = f"from bayleaf.site import serve; serve({str(site)!r}, [], lambda: 'built', 0)"
    env = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"}
    env["PYTHONPATH"] = os.pathsep.join(sys.path)
    child = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, text=True, env=env)
    try:
        with selectors.DefaultSelector() as waiting:
            waiting.register(child.stdout, selectors.EVENT_READ)
            assert waiting.select(WAIT), "nothing was said"
        assert child.stdout.readline().startswith("http://127.0.0.1:")
    finally:
        child.kill()
        child.communicate()


def test_a_site_inside_an_overlay_is_not_watched(tmp_path):
    source = Source(tmp_path / "book", [tmp_path / "shop"])
    (tmp_path / "shop" / "kb").mkdir(parents=True)
    (tmp_path / "shop" / "site").mkdir()
    before = times(source.watched)
    (tmp_path / "shop" / "site" / "index.html").write_text("new")
    assert times(source.watched) == before
    (tmp_path / "shop" / "kb" / "a.yaml").write_text("title: A")
    assert times(source.watched) != before
