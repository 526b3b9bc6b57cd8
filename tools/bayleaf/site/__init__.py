"""From a book to a finished site: check it, lay out its pages, run the engine, seal what it wrote, exchange the folders.

`publish(source, out)` is the whole way, `build_site(pages, entries, out, settings)` the part behind the pages; `serve(...)`
keeps building as records change, and `write_tree(source, folder)` writes the pages alone.
"""

from __future__ import annotations

from bayleaf.site.build import BuildReport, build_site
from bayleaf.site.errors import SealError, SiteError
from bayleaf.site.progress import Progress
from bayleaf.site.publish import RefusedError, Source, publish, write_tree
from bayleaf.site.serve import serve

__all__ = [
    "BuildReport",
    "Progress",
    "RefusedError",
    "SealError",
    "SiteError",
    "Source",
    "build_site",
    "publish",
    "serve",
    "write_tree",
]
