"""The script that answers the search box, and where the two search files lie in the site."""

from __future__ import annotations

from importlib.resources import files

# The engine's offline plugin fetches a script of its own from outside unless the settings name one with these words
# in its file name.
CLIENT = "assets/search-iframe-worker.js"
INDEX = "assets/search-index.js"


def client() -> str:
    """The text of the client script; it loads the index from the file beside it when the box is first used."""
    return files("bayleaf.search").joinpath("client.js").read_text(encoding="utf-8")
