"""Show the site on this machine only, and build it again when a record changes."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterable
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from bayleaf.finding import CouldNotRun
from bayleaf.site.errors import SiteError

PAUSE = 0.5  # seconds between two looks at the files: a file saved is noticed before a hand reaches the browser


class Handler(SimpleHTTPRequestHandler):
    """Plain files, never cached, so that a reload shows the newest build; nothing is printed for a request."""

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Requests are of no interest; what a rebuild says is."""


def serve(
    out: Path,
    watched: Iterable[Path],
    rebuild: Callable[[], str],
    port: int = 8000,
    say: Callable[[str], None] = partial(print, flush=True),
    stop: threading.Event | None = None,
    seen: dict[str, tuple[int, int]] | None = None,
) -> None:
    """Serve the folder `out` on 127.0.0.1 until Ctrl-C (or until `stop` is set), rebuilding as files change.

    `watched` are the files and folders looked at; `seen` is what `times` said of them before the first build, so that
    a file changed meanwhile is not missed. `rebuild` builds the site and gives the line to print, at once also where a
    file or a pipe takes it; when it raises SiteError (its text may be the findings), CouldNotRun or OSError the old
    site stays and the text is printed. Port 0 takes any free one. Raises SiteError when the port is taken.
    """
    stop = stop or threading.Event()
    watched = tuple(watched)
    try:
        server = ThreadingHTTPServer(("127.0.0.1", port), partial(Handler, directory=str(out)))
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
                say(_attempt(rebuild))
    except KeyboardInterrupt:
        say("stopped")
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def _attempt(rebuild: Callable[[], str]) -> str:
    try:
        return rebuild()
    except (SiteError, CouldNotRun, OSError) as error:
        return f"{error}\nnot rebuilt; the site before is still shown"


def times(watched: Iterable[Path]) -> dict[str, tuple[int, int]]:
    """Size and time of change of every file; a file that goes away while we look is left out."""
    found = {}
    for top in watched:
        for path in sorted(top.rglob("*")) if top.is_dir() else [top]:
            try:
                state = path.stat()
            except OSError:
                continue
            if not path.is_dir():
                found[str(path)] = (state.st_mtime_ns, state.st_size)
    return found
