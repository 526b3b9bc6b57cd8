"""The terms of a book: the file LICENSE at its root, which goes with every copy of its records."""

from __future__ import annotations

from pathlib import Path

LICENSE = "LICENSE"


def license_of(root: Path) -> dict[str, str]:
    """File name to text; nothing for a book whose owner states no terms."""
    path = root / LICENSE
    return {LICENSE: path.read_text(encoding="utf-8")} if path.is_file() else {}
