"""`bayleaf check` in a cold process against a fresh interpreter that reads the same files with PyYAML's C loader.

    python -m tests.bench.bench_check [RECORDS …]

Prints one line for the book as it stands and one for each size (1000 and 10000 unless others are named). The goal is
a ratio of 2 and growth that is no more than linear. Nothing here passes or fails: times belong to the machine.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.bench.grow import HERE, grow

FLOOR = """
import sys, pathlib, yaml
for path in sorted(pathlib.Path(sys.argv[1]).glob("*/*.yaml")):
    with open(path, "rb") as handle:
        yaml.load(handle, yaml.CSafeLoader)
"""
RUNS = 5


def best(command: list[str], runs: int) -> tuple[float, float, str]:
    """(the shortest wall time and the shortest processor time of some cold runs in seconds, the last line printed)."""
    environment = {**os.environ, "PYTHONPATH": str(HERE / "tools")}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # both sides run from compiled modules, as they do once installed
    wall, busy, said = [], [], ""
    for _ in range(runs + 1):  # the first may have modules to compile; the shortest counts
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        start = time.perf_counter()
        done = subprocess.run(command, capture_output=True, text=True, env=environment, check=False)
        wall.append(time.perf_counter() - start)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        busy.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
        if done.returncode not in (0, 1):
            raise SystemExit(done.stderr)
        said = (done.stdout.strip().split("\n") or [""])[-1]
    return min(wall), min(busy), said


def line(root: Path, runs: int) -> str:
    """One line of the table for the book under a root."""
    files = list((root / "kb").glob("*/*.yaml"))
    size = sum(path.stat().st_size for path in files)
    floor, floor_busy, _ = best([sys.executable, "-c", FLOOR, str(root / "kb")], runs)
    check, check_busy, said = best([sys.executable, "-m", "bayleaf", "check", "--root", str(root)], runs)
    return (f"{len(files):>6} {size / 1024:>8.0f} {floor:>8.3f} {check:>8.3f} {check / floor:>6.2f} "
            f"{floor_busy:>8.3f} {check_busy:>8.3f} {check_busy / floor_busy:>6.2f}   {said}")  # fmt: skip


if __name__ == "__main__":
    print(f"{'':15}{'wall time':^24}{'processor time':^24}")
    print(f"{'files':>6} {'kB':>8} {'floor s':>8} {'check s':>8} {'ratio':>6} {'floor s':>8} {'check s':>8} {'ratio':>6}   what the check said")
    print(line(HERE, RUNS), flush=True)
    for records in [int(word) for word in sys.argv[1:]] or [1000, 10000]:
        with tempfile.TemporaryDirectory() as folder:
            grow(Path(folder), records)
            print(line(Path(folder), RUNS if records < 5000 else 2), flush=True)
