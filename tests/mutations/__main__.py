"""`python -m tests.mutations`: every operator over the book, the table, and what got through.

It takes at most 60 mutants an operator, drawn with a seed, which lasts some minutes; `--each N` and `--seed N` change
that, and `--all` takes every mutant there is. `--examples N` shows so many of what was missed; words choose the operators
whose names hold them. Exit status 1 when something that was promised did not happen.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from tests.mutations.run import ROOT, detector, run
from tests.mutations.table import render

if __name__ == "__main__":
    parser = argparse.ArgumentParser(prog="python -m tests.mutations", description=__doc__)
    parser.add_argument("names", nargs="*", metavar="WORD")
    parser.add_argument("--root", type=Path, default=ROOT)
    parser.add_argument("--each", type=int, default=60)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--all", action="store_true")
    parser.add_argument("--examples", type=int, default=3)
    args = parser.parse_args()
    rows = run(detector(args.root), *((None, None) if args.all else (args.each, args.seed)), args.names)
    print(render(rows, args.examples))
    sys.exit(any(not row.kept for row in rows))
