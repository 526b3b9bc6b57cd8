"""The policy in each page, proved in a browser: the engine's own scripts run, and nothing that slipped in would.

The directives are those of Content Security Policy Level 3 (recalled, its text was not open).
"""

from __future__ import annotations

import shutil
import threading
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest

from tests.site.sample import page, sample

HOSTILE = """</title><script>window.ran = 1</script><img src=x onerror=alert(1)> *a* [b](c) {{ d }} & "e" 'f'"""
PROCEDURE = "procedures/measure-primed-rail-pressure.html"


@pytest.fixture
def listener():
    """A server of somebody else on this machine; gives its address and the list of what was asked of it."""
    asked: list[str] = []

    class Listener(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            asked.append(self.path)
            self.send_response(204)
            self.end_headers()

        do_POST = do_GET  # noqa: N815 - the library's own name

        def log_message(self, format: str, *args: object) -> None:
            """What was asked is in the list."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Listener)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}", asked
    server.shutdown()
    server.server_close()


@pytest.mark.parametrize("name", ["index.html", PROCEDURE, "codes/index.html"])
def test_a_page_opens_whole_and_asks_for_nothing_outside(visit, sample_site, name):
    visitor = visit(sample_site / name)
    assert "default-src 'none'" in visitor.page.locator("meta[http-equiv=Content-Security-Policy]").get_attribute(
        "content"
    )
    assert visitor.page.evaluate("document.documentElement.dataset.bayleaf") == "ready"  # our own script ran
    assert visitor.page.evaluate("typeof __md_get") == "function"  # so did the engine's inline ones
    visitor.prove_quiet()


def test_a_hostile_title_is_shown_as_it_was_written(visit, make_site):
    site = make_site(sample({"terms/hostile.md": page(HOSTILE, "Body.")}))
    visitor = visit(site / "terms" / "hostile.html")
    assert visitor.page.locator("h1").inner_text() == HOSTILE
    assert visitor.page.title() == f"{HOSTILE} - Bayleaf"
    assert visitor.page.evaluate("window.ran") is None


def test_the_dark_page_stays_dark_on_the_next_page(visit, sample_site):
    visitor = visit(sample_site / "index.html", color_scheme="light")
    visitor.page.get_by_title("Use the dark page").click()
    visitor.page.goto((sample_site / PROCEDURE).as_uri())
    assert visitor.page.locator("body").get_attribute("data-md-color-scheme") == "slate"


def test_the_search_opens_on_a_small_screen(visit, sample_site):
    visitor = visit(sample_site / PROCEDURE, viewport={"width": 390, "height": 800})
    visitor.page.locator("label.md-header__button[for=__search]").click()
    visitor.page.keyboard.type("static")
    assert visitor.results() == ["Rail pressure, primed"]


def test_what_is_slipped_into_a_sealed_page_neither_runs_nor_fetches(chromium, sample_site, tmp_path, listener):
    address, asked = listener
    shutil.copytree(sample_site, tmp_path / "site")
    page_file = tmp_path / "site" / PROCEDURE
    slipped = f"""
        <script>fetch("{address}/inline"); window.ran = 1</script>
        <img src="{address}/img"><img src="data:x" onerror="window.ran = 1">
        <link rel="stylesheet" href="{address}/css"><script src="{address}/js"></script>
        <style>article {{ background: url({address}/style) }}</style>
        <iframe src="{address}/frame"></iframe><object data="{address}/object"></object><embed src="{address}/embed">
        <form id="f" action="{address}/form"><input name="a"></form><base href="{address}/">"""
    text = page_file.read_text(encoding="utf-8")
    page_file.write_text(text.replace("</article>", slipped + "</article>"), encoding="utf-8")
    page = chromium.new_page()
    page.goto(page_file.as_uri())
    page.evaluate("document.getElementById('f').submit()")
    page.wait_for_timeout(300)
    assert asked == []
    assert page.evaluate("window.ran") is None
    page.close()


def test_the_listener_would_have_counted_a_page_without_a_policy(chromium, tmp_path, listener):
    address, asked = listener
    (tmp_path / "a.html").write_text(f'<img src="{address}/img">')
    page = chromium.new_page()
    page.goto((tmp_path / "a.html").as_uri())
    page.close()
    assert asked == ["/img"]
