"""What a hazard of the vocabulary asks of a step before it holds there."""

from __future__ import annotations

from typing import Any, NamedTuple

from bayleaf.safety.paths import PathFact, pascals


class Trigger(NamedTuple):
    """One trigger of one hazard, made ready. What is empty or None, it does not ask."""

    hazard: str
    data: dict[str, Any]
    acts: frozenset[str]
    quantities: frozenset[str]
    carries: frozenset[str]
    side: str
    least: float | None
    with_: tuple[str, ...]
    without: tuple[str, ...]
    conditions: frozenset[str]
    equipment: frozenset[str]
    places: frozenset[str]
    on_path: bool  # whether it asks anything of a path

    def index_ids(self) -> list[str]:
        """Under which ids the trigger is found; '' for one that asks for none."""
        return list(self.acts or self.with_[:1] or self.quantities or self.equipment or self.conditions or ("",))

    def fits(self, path: PathFact) -> bool:
        """Whether a path is all that the trigger asks of one path."""
        return (
            (not self.carries or path.carries in self.carries)
            and (not self.side or path.side == self.side)
            and (self.least is None or (path.greatest is not None and path.greatest >= self.least))
        )


def trigger(hazard: str, data: dict[str, Any]) -> Trigger:
    """A trigger of a hazard from its entry in the vocabulary."""
    sets = {
        name: frozenset(data.get(name, []))
        for name in ("acts", "quantities", "carries", "conditions", "equipment", "places")
    }
    return Trigger(
        hazard=hazard,
        data=data,
        side=data.get("side", ""),
        least=pascals(data.get("greatest_at_least")),
        with_=tuple(data.get("with", [])),
        without=tuple(data.get("without", [])),
        **sets,
        on_path=bool(sets["carries"] or "side" in data or "greatest_at_least" in data),
    )
