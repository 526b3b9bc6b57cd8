"""How far a build has come, as a bar on a terminal; silent everywhere else."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TextIO

# The stages of a build and the share of its time, in hundredths, that each takes: measured on the whole book.
STAGES = {
    "reading the records": 1,
    "checking them": 3,
    "writing the pages": 17,
    "running the site engine": 64,
    "proving links and scripts": 13,
    "putting the site in its place": 2,
}
WIDTH = 24
CLEAR = "\r\x1b[K"  # ECMA-48: back to the first column, and erase to the end of the line


class Progress:
    """Draws one line on `stream`, again and again, where that is a terminal; it is gone when the build has ended."""

    def __init__(self, stream: TextIO) -> None:
        self.stream = stream
        self.on = stream.isatty()

    def stage(self, name: str) -> None:
        """A stage begins: the bar holds the share of all before it."""
        if not self.on:
            return
        names = list(STAGES)
        done = sum(STAGES[before] for before in names[: names.index(name)])
        filled = round(WIDTH * done / sum(STAGES.values()))
        bar = "#" * filled + "." * (WIDTH - filled)
        self.stream.write(f"{CLEAR}[{bar}] {names.index(name) + 1}/{len(names)} {name}")
        self.stream.flush()

    @contextmanager
    def shown(self) -> Iterator[None]:
        """Shown until the block ends, however it ends."""
        try:
            yield
        finally:
            if self.on:
                self.stream.write(CLEAR)
                self.stream.flush()


SILENT = Progress(io.StringIO())  # no terminal
