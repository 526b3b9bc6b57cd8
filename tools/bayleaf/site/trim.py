"""Take out of the built folder what the engine's theme brings along and no page of ours uses.

The theme's search speaks some thirty languages through files of their own, some of them under copyleft licenses. The
search box is answered by our own script from our own index, so neither those files nor the theme's search worker ever
run; the theme's picture is replaced by ours, and the source maps serve only whoever changes the theme.
"""

from __future__ import annotations

import shutil
from pathlib import Path

UNUSED = ("assets/javascripts/lunr", "assets/javascripts/workers", "assets/images")
MAPS = "*.map"


def trim(site: Path) -> None:
    """Delete the folders in `UNUSED` and every source map."""
    for folder in UNUSED:
        shutil.rmtree(site / folder, ignore_errors=True)
    for path in site.rglob(MAPS):
        path.unlink()
