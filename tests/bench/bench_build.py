"""How long a site of 4,000 record pages takes, part by part: `python tests/bench/bench_build.py [PAGES]`.

The pages are all the same two screens of text and tables; the numbers are printed, nothing is asserted.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tools")]

from bayleaf.search import Entry
from bayleaf.site.build import write_pages
from bayleaf.site.engine import run_engine
from bayleaf.site.seal import seal
from bayleaf.site.swap import staged
from tests.site.sample import page, sample

BODY = "\n\n".join(
    f"## Part {n}\n\nPressure at the rail while the pump primes.\n\n| car | psi | kPa |\n|---|---|---|\n"
    + "| van | 43.5 | 300 |\n" * 6
    + "\n1. Switch the key on.\n2. Read the gauge.\n\n[Reading](../readings/rail-pressure-primed.md#limits)"
    for n in range(6)
)


@contextmanager
def timed(what: str) -> Iterator[None]:
    start = time.perf_counter()
    yield
    print(f"{what}: {time.perf_counter() - start:.1f} s")


def main(count: int) -> None:
    pages = sample({f"procedures/test-{n}.md": page(f"Test {n}", BODY) for n in range(count)})
    entries = [Entry(f"Test {n}", f"procedures/test-{n}.html", "Procedure") for n in range(count)]
    with tempfile.TemporaryDirectory() as folder:
        settings = Path(shutil.copy(ROOT / "mkdocs.yml", folder))
        with timed(f"{count} pages with the exchange"), staged(Path(folder, "site")) as new:
            with timed("write pages"):
                probes = write_pages(pages, entries, Path(folder, "build", "pages"))
            with timed("engine"):
                run_engine(settings, new)
            with timed("seal"):
                seal(new, probes)
        size = sum(path.stat().st_size for path in Path(folder, "site").rglob("*.html"))
        print(f"HTML: {size / 1e6:.0f} MB")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 4000)
