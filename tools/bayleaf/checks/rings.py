"""Circles in a graph of ids."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence


def rings(edges: Mapping[str, Sequence[str]]) -> Iterator[list[str]]:
    """Each circle once, from its first id in the order given; one that shares an id with another may be left to the next run."""
    done: set[str] = set()
    for start in edges:
        way: list[str] = []
        stack = [iter([start])]
        while stack:
            id = next(stack[-1], None)
            if id is None:
                stack.pop()
                if way:
                    done.add(way.pop())
            elif id in way:
                yield way[way.index(id) :]
            elif id in edges and id not in done:
                way.append(id)
                stack.append(iter(edges[id]))
