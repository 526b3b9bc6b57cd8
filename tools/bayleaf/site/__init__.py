"""From pages to a finished site: run the engine, seal what it wrote, exchange the folders, serve it.

`build_site(pages, entries, out, settings)` is the whole stage; `serve(...)` keeps building as records change.
"""

from __future__ import annotations

from bayleaf.site.build import BuildReport, build_site
from bayleaf.site.errors import SealError, SiteError
from bayleaf.site.serve import serve

__all__ = ["BuildReport", "SealError", "SiteError", "build_site", "serve"]
