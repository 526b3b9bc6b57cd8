"""Run the site engine as a child process.

The engine is a guest: it is given a settings file and a folder of Markdown, and it leaves a folder of HTML. It runs in
an environment fixed by us, so that neither the day, the time zone nor the language of the machine gets into a page.
"""

from __future__ import annotations

import os
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

from bayleaf.site.errors import SiteError

# 315532800 is 1980-01-01, the earliest day that a zip archive can hold.
FIXED = {
    "SOURCE_DATE_EPOCH": "315532800",
    "TZ": "UTC",
    "LC_ALL": "C.UTF-8",
    "PYTHONHASHSEED": "0",
    "PYTHONIOENCODING": "utf-8",
    "NO_MKDOCS_2_WARNING": "1",
    "NO_COLOR": "1",
}
# Only what a process needs to start; nothing that could change a page. SYSTEMROOT is for Windows.
PASSED_ON = ("PATH", "SYSTEMROOT", "VIRTUAL_ENV", "PYTHONPATH", "TMPDIR", "TEMP")


def run_engine(settings: Path, out: Path) -> None:
    """Build the pages that `settings` (an mkdocs.yml) names into `out`. Raises SiteError, one line, when that fails."""
    arguments = ["build", "--strict", "--config-file", str(settings), "--site-dir", str(out)]
    _run("mkdocs", arguments, settings, needs=("mkdocs", "material"))


def run_second_engine(settings: Path) -> Path:
    """Build the same pages with the second engine, which takes the output folder from the settings; gives that folder.

    The first engine's maintainers have announced its end; this is the proof that the pages do not depend on it.
    """
    _run("zensical", ["build", "--config-file", str(settings)], settings, needs=("zensical",))
    return settings.parent / "site"


def _run(module: str, arguments: list[str], settings: Path, needs: tuple[str, ...]) -> None:
    for name in needs:
        if find_spec(name) is None:
            raise SiteError(f"could not run: the site engine's package {name!r} is not installed; run `bash .ci/setup`")
    if not settings.is_file():
        raise SiteError(f"could not run: {settings} is missing; the site engine needs its settings file")
    environment = FIXED | {name: os.environ[name] for name in PASSED_ON if name in os.environ}
    done = subprocess.run(  # noqa: S603 - this interpreter, and arguments that are all ours
        [sys.executable, "-m", module, *arguments],
        cwd=settings.parent,
        env=environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
        errors="replace",
        check=False,
    )
    if done.returncode != 0:
        raise SiteError(
            f"could not run: the site engine {module} failed: {_first_complaint(done.stdout, done.returncode)}"
        )


def _first_complaint(output: str, status: int) -> str:
    """The line of the engine's output that says most: the first warning or error, else the last line."""
    lines = [line.strip() for line in output.splitlines() if line.strip()]
    complaints = [line for line in lines if line.lower().startswith(("warning", "error", "config value"))]
    return next(iter([*complaints, *lines[-1:]]), f"exit status {status}, nothing said")
