"""`bayleaf check` in a cold process against a fresh interpreter that reads the same files with PyYAML's C loader.

    python -m tests.bench.bench_check [RECORDS …]

Prints one line for the book as it stands and one for each size (2000 and 10000 unless others are named). The goal is
a ratio of 3 at most and growth that is no more than linear: the ratio of the shortest times, and the middle one of the ratios of
runs side by side, which a busy machine disturbs less. Nothing here passes or fails: times belong to the machine.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

from tests.bench.grow import HERE, grow

FLOOR = """
import sys, pathlib, yaml
for path in sorted(pathlib.Path(sys.argv[1]).glob("*/*.yaml")):
    with open(path, "rb") as handle:
        yaml.load(handle, yaml.CSafeLoader)
"""
RUNS = 9


def timed(command: list[str]) -> tuple[float, float, str]:
    """(the wall time and the processor time of one cold run in seconds, the last line printed)."""
    environment = {**os.environ, "PYTHONPATH": str(HERE / "tools")}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # both sides run from compiled modules, as they do once installed
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    done = subprocess.run(command, capture_output=True, text=True, env=environment, check=False)
    wall = time.perf_counter() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode not in (0, 1) or done.stderr:
        raise SystemExit(done.stderr)
    busy = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return wall, busy, (done.stdout.strip().split("\n") or [""])[-1]


def line(root: Path, runs: int) -> str:
    """One line of the table for the book under a root. The two sides take turns, so that a busy minute falls on both."""
    files = list((root / "kb").glob("*/*.yaml"))
    size = sum(path.stat().st_size for path in files)
    floor = [sys.executable, "-c", FLOOR, str(root / "kb")]
    check = [sys.executable, "-m", "bayleaf", "check", "--root", str(root)]
    pairs = [(timed(floor), timed(check)) for _ in range(runs + 1)][1:]  # the first may have modules to compile
    walls = [min(side[n][0] for side in pairs) for n in (0, 1)]
    busy = [min(side[n][1] for side in pairs) for n in (0, 1)]
    middle = median(check[0] / floor[0] for floor, check in pairs)
    return (
        f"{len(files):>6} {size / 1024:>8.0f} {walls[0]:>8.3f} {walls[1]:>8.3f} {walls[1] / walls[0]:>6.2f} {middle:>7.2f} "
        f"{busy[0]:>8.3f} {busy[1]:>8.3f} {busy[1] / busy[0]:>6.2f}   {pairs[0][1][2]}"
    )


if __name__ == "__main__":
    print(f"{'':15}{'wall time':^32}{'processor time':^24}")
    print(
        f"{'files':>6} {'kB':>8} {'floor s':>8} {'check s':>8} {'ratio':>6} {'of pairs':>7} {'floor s':>7} {'check s':>8} {'ratio':>6}   what the check said"
    )
    print(line(HERE, RUNS), flush=True)
    for records in [int(word) for word in sys.argv[1:]] or [2000, 10000]:
        with tempfile.TemporaryDirectory() as folder:
            grow(Path(folder), records)
            print(line(Path(folder), RUNS if records < 5000 else 3), flush=True)
