"""`python -m tests.mutations`: every operator over the book, the table, and what got through.

`--each N` takes at most N mutants an operator, drawn with `--seed`; `--examples N` shows so many of what was missed;
words choose the operators whose names hold them. Exit status 1 when something that was promised did not happen.
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
    parser.add_argument("--each", type=int)
    parser.add_argument("--seed", type=int)
    parser.add_argument("--examples", type=int, default=3)
    args = parser.parse_args()
    seed = 1 if args.each and args.seed is None else args.seed
    rows = run(detector(args.root), args.each, seed, args.names)
    print(render(rows, args.examples))
    sys.exit(any(not row.kept for row in rows))
