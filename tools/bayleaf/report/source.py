"""The source lines that findings point at."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

from bayleaf.records.yaml.decode import MOST_BYTES


def line_reader(root: Path) -> Callable[[str, int], str]:
    """A function that gives a source line of a finding's file, or nothing where there is no such line."""

    @cache
    def lines(file: str) -> list[str]:
        path = root / file
        try:
            if path.is_symlink() or not path.is_file():  # a pipe would hang
                return []
            with open(path, "rb") as handle:
                return handle.read(MOST_BYTES).decode("utf-8", "replace").split("\n")
        except OSError:
            return []

    return lambda file, line: lines(file)[line - 1].rstrip("\r") if 0 < line <= len(lines(file)) else ""
