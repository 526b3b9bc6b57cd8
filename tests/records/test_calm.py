"""Whatever stands in a file, reading ends in data or in findings: one line each, at a place inside the file."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from bayleaf.records import KINDS, RECORD_KINDS, load
from bayleaf.records.yaml.strict import load_text
from tests.checks.small import SCHEMAS

CALM = settings(max_examples=300, deadline=None, derandomize=True, database=None)
SIGNS = [
    *list("[]{}:,-?&*!|>'\"%@`#~=<.\\ \t\n"),
    "\r\n",
    "\r",
    "- ",
    ": ",
    "? ",
    "a",
    "b: ",
    "1",
    "no",
    "0x1",
    "1e3",
    "\u202e",
    "\x00",
    "é",
    "😀",
    "  ",
    "---\n",
    "...\n",
    "<<: ",
    "!!str ",
    "&a ",
    "*a ",
    "|\n",
    ">-\n",
    "none",
    "title: ",
    "2024-01-01",
    "\ufeff",
    "�",
]
fragments = st.lists(st.sampled_from(SIGNS), max_size=60).map("".join)
scalars = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-10, 10**17),
    st.floats(),
    st.text(max_size=12),
    st.sampled_from(["none", "psi", "2 psi", "[[x]]", "rail-pressure"]),
)
structured = st.recursive(
    scalars,
    lambda inner: st.one_of(
        st.lists(inner, max_size=4), st.dictionaries(st.text(min_size=1, max_size=8), inner, max_size=5)
    ),
    max_leaves=25,
)


def calm(raw: bytes) -> None:
    """Reading neither raises nor says anything that is not one line at a place in the file."""
    loaded = load_text(raw)
    assert loaded.problems or loaded.root is not None
    lines = (
        raw.count(b"\n")
        + raw.count(b"\r")
        + raw.count(b"\xc2\x85")
        + raw.count(b"\xe2\x80\xa8")
        + raw.count(b"\xe2\x80\xa9")
        + 2
    )
    for problem in loaded.problems:
        assert "\n" not in problem.message + problem.help
        assert 1 <= problem.start[0] <= lines and problem.start[1] >= 1


@CALM
@given(st.binary(max_size=300))
@example(b"\xf0\x9f")
@example(b"")
def test_any_bytes(raw):
    calm(raw)


@CALM
@given(fragments)
def test_any_fragments_of_yaml(text):
    calm(text.encode("utf-8", "surrogatepass"))


@pytest.fixture(scope="module")
def root():
    folder = Path(tempfile.mkdtemp())
    (folder / "kb").mkdir()
    (folder / "schemas").symlink_to(SCHEMAS)
    yield folder
    shutil.rmtree(folder)


@settings(CALM, max_examples=150)
@given(kind=st.sampled_from(KINDS), data=structured)
def test_any_structure_as_any_kind_of_record(root, kind, data):
    file = root / "kb" / (f"{kind}/x1.yaml" if kind in RECORD_KINDS else f"vocabulary/{kind}.yaml")
    file.parent.mkdir(exist_ok=True)
    file.write_text(_text(data), encoding="utf-8", errors="surrogatepass")
    try:
        for finding in load(root).findings:
            assert "\n" not in finding.message + finding.help and finding.code and finding.line >= 1
            assert (
                "is not valid under" not in finding.message and "does not match" not in finding.message
            )  # a validator's own words
    finally:
        file.unlink()


def _text(data: object, indent: int = 0) -> str:
    """YAML of our own, so that odd scalars arrive as they are."""
    pad = "  " * indent
    if isinstance(data, dict) and data:
        return "".join(f"{pad}{key}:{_inner(value, indent)}" for key, value in data.items())
    if isinstance(data, list) and data:
        return "".join(f"{pad}-{_inner(value, indent)}" for value in data)
    return f"{pad}{data!r}\n" if isinstance(data, str) else f"{pad}{'none' if data in ([], {}) else data}\n"


def _inner(value: object, indent: int) -> str:
    return "\n" + _text(value, indent + 1) if isinstance(value, dict | list) and value else f" {_text(value).strip()}\n"
