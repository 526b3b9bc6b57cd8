"""Cycles in a graph of ids."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence


def cycles(edges: Mapping[str, Sequence[str]]) -> Iterator[list[str]]:
    """Each cycle once, from its first id in the order given; one that shares an id with another may be left to the next run."""
    done: set[str] = set()
    for start in edges:
        way: dict[str, None] = {}  # in order; a dict, so that a long way is not searched at every step
        stack = [iter([start])]
        while stack:
            id = next(stack[-1], None)
            if id is None:
                stack.pop()
                if way:
                    done.add(way.popitem()[0])
            elif id in way:
                ids = list(way)
                yield ids[ids.index(id) :]
            elif id in edges and id not in done:
                way[id] = None
                stack.append(iter(edges[id]))
