"""`python -m bayleaf` is the same as the `bayleaf` command."""

from __future__ import annotations

import sys

from bayleaf.cli import main

if __name__ == "__main__":
    sys.exit(main())
