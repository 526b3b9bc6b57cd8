"""How long the search takes over file:// with 5,000 records: `python tests/bench/bench_search.py [RECORDS]`.

The records are made up from a word list with fixed seeds; the numbers are printed, nothing is asserted.
"""

from __future__ import annotations

import gzip
import os
import random
import shutil
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tools")]

from playwright.sync_api import Page, sync_playwright

from bayleaf.search import Entry, build_index
from bayleaf.site import build_site
from tests.browser.conftest import ARGUMENTS, executable
from tests.site.sample import sample

WORDS = [
    "fuel",
    "pressure",
    "rail",
    "regulator",
    "pump",
    "filter",
    "relay",
    "ground",
    "injector",
    "vacuum",
    "manifold",
    "idle",
    "load",
    "cruise",
    "primed",
    "residual",
    "volume",
    "return",
    "supply",
    "carburettor",
    "float",
    "needle",
    "jet",
    "choke",
    "throttle",
    "sensor",
    "oxygen",
    "exhaust",
    "boost",
    "charge",
    "cooler",
    "leak",
    "smoke",
    "test",
    "measure",
    "check",
    "inspect",
    "hose",
    "clamp",
    "tank",
    "sender",
    "gauge",
    "adapter",
    "lean",
    "rich",
    "misfire",
    "hesitation",
    "surge",
]
BOX = "[data-md-component=search-query]"
ANSWERED = """text => new Promise(done => {
  const box = document.querySelector("[data-md-component=search-query]"), list = document.querySelector(".md-search-result__list");
  const start = performance.now();
  new MutationObserver((_, o) => { if (list.children.length) { o.disconnect(); done(performance.now() - start); } })
    .observe(list, {childList: true});
  box.focus(); box.value = text; box.dispatchEvent(new Event("input", {bubbles: true}));
})"""


def entries(count: int) -> list[Entry]:
    """Entries with titles of three to five words, two synonyms and a summary of twelve words."""
    random.seed(7)

    def text(n: int) -> str:
        return " ".join(random.choices(WORDS, k=n))

    return [
        Entry(
            f"{text(random.randint(3, 5))} {i}",
            "procedures/measure-primed-rail-pressure.html",
            random.choice(("Procedure", "Fault", "Reading")),
            (text(2), f"p{i:04}"),
            f"{text(12)} {random.randint(20, 90)}.5 psi",
            random.randint(1, 9),
        )
        for i in range(count)
    ]


def answer(page: Page, text: str) -> float:
    """Milliseconds from the text being in the box to the first result in the list."""
    return page.evaluate(ANSWERED, text)


def main(count: int) -> None:
    book = entries(count)
    start = time.perf_counter()
    script = build_index(book).encode()
    print(
        f"{count} records: index built in {time.perf_counter() - start:.2f} s, {len(script) / count:.0f} B a record, "
        f"{len(script) / 1000:.0f} kB, {len(gzip.compress(script, mtime=0)) / 1000:.0f} kB gzipped"
    )
    arguments = ARGUMENTS + (["--no-sandbox"] if os.geteuid() == 0 else [])
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        shutil.copy(ROOT / "mkdocs.yml", folder)
        site = build_site(sample(), book, Path(folder, "site"), Path(folder, "mkdocs.yml")).out
        browser = playwright.chromium.launch(executable_path=executable(), args=arguments)
        firsts = []
        for _ in range(5):
            page = browser.new_page()
            page.goto((site / "index.html").as_uri())
            page.wait_for_timeout(300)
            firsts.append(answer(page, "rail pressure"))
        laters = [
            answer(page, text)
            for text in ("r", "re", "reg", "43.5", "p0171", "egulat", "fuel pump relay ground", "xq p01")
        ]
        browser.close()
    print("first answer, index loaded then, ms:", ", ".join(f"{ms:.0f}" for ms in sorted(firsts)))
    print("later answers, ms:", ", ".join(f"{ms:.0f}" for ms in laters))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5000)
