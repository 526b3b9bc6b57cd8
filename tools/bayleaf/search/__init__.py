"""The search index of the site, and the script that answers from it.

`build_index(entries)` gives the index as a script; `client()` gives the script that answers the search box.
Neither knows the engine that lays out the pages, and neither needs a server.
"""

from __future__ import annotations

from bayleaf.search.index import Entry, build_index, words_of
from bayleaf.search.script import CLIENT, INDEX, client

__all__ = ["CLIENT", "INDEX", "Entry", "build_index", "client", "words_of"]
