"""The committed list of what is healthy by the graph alone is current, and says what a change adds and drops. Our own rule."""

from __future__ import annotations

from pathlib import Path

from bayleaf.diagnosis.faults.pairs import lines
from bayleaf.records import load
from tests.diagnosis.sample import book

LIST = Path(__file__).with_name("healthy_by_graph.txt")
PROJECT = Path(__file__).resolve().parents[2]


def test_the_committed_list_is_current():
    """Renew it as its module says, and read the difference."""
    assert LIST.read_text(encoding="utf-8").splitlines() == list(lines(load(PROJECT)))


def test_a_change_of_the_graph_shows_as_lines_that_go_and_come():
    now = list(lines(book()))
    assert now[now.index("# filter-blocked") + 1 :][:2] == ["ground-loss", "hose"]
    longer = {"title": "Flow", "summary": "…", "influences": ["pressure", "ground-loss"]}
    then = list(lines(book(variables={"flow": longer})))
    assert [line for line in now if line not in then] == ["ground-loss"]
    assert then[then.index("# filter-blocked") + 1 :][:1] == ["hose"]
