"""Show the site on this machine only, and build it again when a record changes."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Iterable
from functools import partial
from html import escape
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from bayleaf.finding import CouldNotRun
from bayleaf.site.errors import SiteError

PAUSE = 0.5  # seconds between two looks at the files: a file saved is noticed before a hand reaches the browser
_BODY = re.compile(rb"<body\b[^>]*>")
_say = partial(print, flush=True)


class Finding:
    """Why the last build failed, '' after a good one; the server and the loop that builds share it."""

    def __init__(self, text: str = "") -> None:
        self.text = text

    def banner(self) -> bytes:
        """The finding as the first thing on a page. Its look stands in the element: the site's own style may be broken."""
        style = "margin:0;padding:1rem;overflow:auto;border-bottom:4px solid #b00;background:#fff;color:#000"
        said = f"This is the last good build. The one after it failed:\n\n{self.text}"
        return f'<pre role="alert" style="{style}">{escape(said)}</pre>'.encode()


class Handler(SimpleHTTPRequestHandler):
    """Plain files, never cached, so that a reload shows the newest build; nothing is printed for a request."""

    def __init__(self, *args: object, finding: Finding | None = None, directory: str) -> None:
        self.finding = finding or Finding()
        super().__init__(*args, directory=directory)  # type: ignore[arg-type]  # the server gives them

    def do_GET(self) -> None:
        """The file that is asked for; on a page the finding comes first, where there is one."""
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not self.finding.text or path.suffix != ".html" or not path.is_file():
            super().do_GET()
            return
        page = _BODY.sub(lambda match: match[0] + self.finding.banner(), path.read_bytes(), count=1)
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(page)))
        self.end_headers()
        self.wfile.write(page)

    def end_headers(self) -> None:
        """The headers, and that nothing is kept."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Requests are of no interest; what a rebuild says is."""


def serve(
    out: Path,
    watched: Iterable[Path],
    rebuild: Callable[[], str],
    port: int = 8000,
    say: Callable[[str], None] = _say,
    stop: threading.Event | None = None,
    seen: dict[str, tuple[int, int]] | None = None,
    finding: str = "",
) -> None:
    """Serve the folder `out` on 127.0.0.1 until Ctrl-C (or until `stop` is set), rebuilding as files change.

    `watched` are the files and folders looked at; `seen` is what `times` said of them before the first build, so that
    a file changed meanwhile is not missed. `rebuild` builds the site and gives the line to print, at once also where a
    file or a pipe takes it; when it raises SiteError (its text may be the findings), CouldNotRun or OSError the old
    site stays, and the text is printed and shown on each page. `finding` is such a text of a build before. Port 0 takes
    any free one. Raises SiteError when the port is taken.
    """
    stop = stop or threading.Event()
    watched = tuple(watched)
    shown = Finding(finding)
    try:
        server = ThreadingHTTPServer(("127.0.0.1", port), partial(Handler, directory=str(out), finding=shown))
    except OSError as error:
        raise SiteError(f"could not run: port {port} on 127.0.0.1: {error.strerror}; try another --port") from None
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    seen = times(watched) if seen is None else seen
    try:
        say(f"http://127.0.0.1:{server.server_port}/ (Ctrl-C stops)")
        while not stop.wait(PAUSE):
            now = times(watched)
            if now != seen:
                seen = now
                say(_attempt(rebuild, shown))
    except KeyboardInterrupt:
        say("stopped")
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def _attempt(rebuild: Callable[[], str], shown: Finding) -> str:
    try:
        result = rebuild()
    except (SiteError, CouldNotRun, OSError) as error:
        shown.text = str(error)
        return f"{error}\nnot rebuilt; the site before is still shown"
    shown.text = ""
    return result


def times(watched: Iterable[Path]) -> dict[str, tuple[int, int]]:
    """Size and time of change of every file; a file that goes away while we look is left out."""
    states = {}
    for top in watched:
        for path in sorted(top.rglob("*")) if top.is_dir() else [top]:
            try:
                state = path.stat()
            except OSError:
                continue
            if not path.is_dir():
                states[str(path)] = (state.st_mtime_ns, state.st_size)
    return states
