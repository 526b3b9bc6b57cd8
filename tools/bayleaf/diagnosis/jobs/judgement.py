"""What a judgement holds: the readings with their verdicts, and what they leave of the faults."""

from __future__ import annotations

from dataclasses import dataclass

from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.records import OUTSIDE


@dataclass(frozen=True)
class Left:
    """A fault that every reading allows.

    `weight` is its commonness (9, 3 or 1) times the share of its stages and of its either-or answers that the readings
    leave; `share` is that weight over the weights of all that are left. `mends` are procedure ids, `words` what to do
    where no procedure of this book mends it. `elsewhere` says that its part is on no path of the car's systems.
    """

    fault: str
    weight: float
    share: float
    stages: tuple[str, ...]
    mends: tuple[str, ...]
    words: tuple[str, ...]
    elsewhere: bool = False


@dataclass(frozen=True)
class Cleared:
    """A fault that was a candidate, and for each of its stages the readings that do not fit it, first taken first."""

    fault: str
    by: dict[str, tuple[str, ...]]

    @property
    def reasons(self) -> tuple[str, ...]:
        """Few readings that together clear every stage: each time the one that clears most of those still there."""
        found, there = [], list(self.by.values())
        while there:
            readings = dict.fromkeys(r for readings in there for r in readings)
            clears = {r: sum(r in readings for readings in there) for r in readings}
            found.append(max(clears, key=clears.__getitem__))
            there = [readings for readings in there if found[-1] not in readings]
        return tuple(found)


@dataclass(frozen=True)
class Doubt:
    """When nothing is left: the reading (or the repair of a fault) that, if doubted, brings these faults back."""

    of: str
    brings: tuple[str, ...]
    repair: bool = False


@dataclass(frozen=True)
class Pair:
    """Two faults that together would show every reading; `weight` is the product of their weights."""

    faults: tuple[str, str]
    weight: float


@dataclass(frozen=True)
class Judgement:
    """Everything that a job's readings say.

    `explains` is "all" when candidates explain everything felt, "any" when no fault explains all of it, "nothing" when
    none explains any of it, "no complaint" when nothing was felt. *Outside this book* is always a candidate besides
    `left`. `contradictions` are readings that no candidate shows, alone or two together. `invented` marks the demonstration.
    """

    title: str
    car: Car
    felt: tuple[str, ...]
    explains: str
    taken: tuple[Taken, ...]
    left: tuple[Left, ...]
    cleared: tuple[Cleared, ...]
    repaired: tuple[str, ...] = ()
    comes_and_goes: bool = False
    cannot: tuple[tuple[str, str], ...] = ()
    doubts: tuple[Doubt, ...] = ()
    pairs: tuple[Pair, ...] = ()
    contradictions: tuple[tuple[str, ...], ...] = ()
    invented: bool = False

    @property
    def left_ids(self) -> tuple[str, ...]:
        """The faults left, or *outside this book* when it is left alone."""
        return tuple(item.fault for item in self.left) or (OUTSIDE,)

    @property
    def one_mend(self) -> str:
        """The procedure that mends everything that is left; "" when there is none such."""
        shared = set.intersection(*(set(item.mends) for item in self.left)) if self.left else set()
        return min(shared, default="")
