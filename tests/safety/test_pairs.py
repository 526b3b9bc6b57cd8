"""Every slip of the pairs is refused by an error, and its safe twin is clean."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.checks import check
from bayleaf.records import load
from tests.safety.pairs import PAIRS

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module", params=["unsafe", "safe"])
def said(request, tmp_path_factory):
    """Which of the two, and what is said as an error about each procedure in which it was made; one look at the whole book."""
    shop = tmp_path_factory.mktemp("shop")
    (shop / "kb" / "procedures").mkdir(parents=True)
    for n, pair in enumerate(PAIRS):
        text = (ROOT / "kb" / "procedures" / f"{pair.base}.yaml").read_text(encoding="utf-8")
        assert pair.good in text, pair.name
        text = text.replace(pair.good, getattr(pair, request.param), 1)
        text = text.replace("title: ", f"title: Twin {n} of ", 1)
        (shop / "kb" / "procedures" / f"pair-{n}.yaml").write_text(text, encoding="utf-8")
    errors: dict[str, list[str]] = {}
    for finding in check(load(ROOT, [shop])):
        if finding.level == "error":
            errors.setdefault(finding.record, []).append(f"{finding.code} {finding.message}")
    return request.param, errors


def test_there_are_at_least_forty_pairs():
    assert len(PAIRS) == len({pair.name for pair in PAIRS}) >= 40


@pytest.mark.parametrize("n", range(len(PAIRS)), ids=[pair.name for pair in PAIRS])
def test_a_slip_is_refused_and_its_twin_is_not(said, n):
    which, errors = said
    codes = errors.get(f"pair-{n}", [])
    if which == "unsafe":
        assert any(one.startswith("SAFE-") for one in codes)
    else:
        assert codes == []
