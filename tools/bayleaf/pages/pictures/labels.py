"""Labels beside each other that must not overlap: each as near to its wish as the others let it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Label:
    """Where the middle of a label should be, and how high it is."""

    middle: float
    height: float


def laid_out(labels: Sequence[Label], top: float, bottom: float) -> list[float]:
    """The upper edge of each label, between `top` and `bottom` as far as all of them fit, none over another.

    Labels that would touch become one group that moves as a whole, so that no label is pushed away by more than it must.
    """
    groups: list[tuple[list[Label], float]] = []  # labels that touch, and their upper edge
    order = sorted(range(len(labels)), key=lambda i: (labels[i].middle, i))
    for i in order:
        one = [labels[i]]
        start = _best(one, top, bottom)
        while groups and groups[-1][1] + _height(groups[-1][0]) > start:
            one = groups.pop()[0] + one
            start = _best(one, top, bottom)
        groups.append((one, start))
    edges = [edge for one, start in groups for edge in _edges(one, start)]
    return [edge for _i, edge in sorted(zip(order, edges, strict=True))]


def _height(group: list[Label]) -> float:
    return sum(label.height for label in group)


def _edges(group: list[Label], start: float) -> list[float]:
    return [start + _height(group[:i]) for i in range(len(group))]


def _best(group: list[Label], top: float, bottom: float) -> float:
    """The upper edge of a group that leaves its labels nearest to their wishes, by least squares."""
    wish = sum(
        label.middle - label.height / 2 - edge for label, edge in zip(group, _edges(group, 0.0), strict=True)
    ) / len(group)
    return max(top, min(wish, bottom - _height(group)))
