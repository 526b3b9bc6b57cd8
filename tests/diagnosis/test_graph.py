"""The graph: what a disturbed variable reaches, and that more influences never clear more.

The method is that of signed directed graphs of process diagnosis (Iri and others, 1979; recalled, the text was not
open), without the signs. The cases are worked by hand.
"""

from __future__ import annotations

import random

from bayleaf.diagnosis.faults.graph import Graph, Influence


def chain(**limits: object) -> Graph:
    """a moves b, with limits; b moves c; c moves a; d stands alone."""
    influences = {"a": [Influence("b", **limits)], "b": [Influence("c")], "c": [Influence("a")], "d": []}
    return Graph(influences)


def reached(graph: Graph, start: str, holds: tuple = (), systems: tuple = ()) -> set[str]:
    return set(graph.names(graph.reach(graph.mask([start]), frozenset(holds), systems)))


def test_what_is_reached_goes_on_and_a_circle_is_walked_once():
    assert reached(chain(), "a") == reached(chain(), "c") == {"a", "b", "c"}
    assert reached(chain(), "d") == {"d"}


def test_an_influence_acts_only_within_its_limits():
    while_it_runs = chain(when=frozenset({"running"}))
    assert reached(while_it_runs, "a") == {"a"}
    assert reached(while_it_runs, "a", ("hot-idle", "running")) == {"a", "b", "c"}
    not_on_the_jumper = chain(unless=frozenset({"on-the-jumper"}))
    assert reached(not_on_the_jumper, "a", ("on-the-jumper",)) == {"a"}
    assert reached(not_on_the_jumper, "a", ("running",)) == {"a", "b", "c"}
    with_a_return = chain(systems=frozenset({"return"}))
    assert reached(with_a_return, "a", (), ("returnless",)) == {"a"}
    assert reached(with_a_return, "a", (), ("returnless", "return")) == {"a", "b", "c"}


def test_the_way_is_the_shortest():
    graph = Graph({"a": [Influence("b"), Influence("d")], "b": [Influence("c")], "c": [Influence("d")], "d": []})
    assert graph.way(graph.mask(["a"]), graph.mask(["d"]), frozenset(), ()) == ("a", "d")
    assert graph.way(graph.mask(["d"]), graph.mask(["a"]), frozenset(), ()) == ()


def test_a_name_that_is_no_variable_reaches_nothing():
    graph = Graph({"a": [Influence("nowhere")]})
    assert reached(graph, "a") == {"a"} and graph.mask(["nowhere"]) == 0


def test_one_more_influence_never_clears_more():
    """Whatever is healthy with it was healthy without it: the property that makes a missing influence the only danger."""
    grew = 0
    for seed in range(300):
        r = random.Random(seed)
        names = [f"v{i}" for i in range(8)]
        influences = {name: [_random(r, names) for _ in range(r.randint(0, 2))] for name in names}
        more = {name: list(found) for name, found in influences.items()}
        more[r.choice(names)].append(_random(r, names))
        before, after = Graph(influences), Graph(more)
        for start in names:
            for holds in (frozenset(), frozenset({"running"}), frozenset({"running", "idle"})):
                was = before.reach(before.mask([start]), holds, ("s0",))
                now = after.reach(after.mask([start]), holds, ("s0",))
                assert was & ~now == 0, f"seed {seed}"
                grew += now != was
    assert grew > 100  # the influences that were added did reach something


def _random(r: random.Random, names: list[str]) -> Influence:
    def some(word: str) -> frozenset[str]:
        return frozenset({word}) if r.random() < 0.2 else frozenset()

    return Influence(r.choice(names), some("running"), some(r.choice(["s0", "s1"])), some("idle"))
