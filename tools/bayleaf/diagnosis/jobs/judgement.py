"""What a judgement holds: the readings with their verdicts, and what they leave of the faults."""

from __future__ import annotations

from dataclasses import dataclass

from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.jobs.agree import Disagreement
from bayleaf.diagnosis.plan.choose import Proposal
from bayleaf.diagnosis.plan.next_test import Repair
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.records import OUTSIDE


@dataclass(frozen=True)
class Suspect:
    """A fault with its share of all belief, the causes outside this book included (0 to 1).

    `stages` are those that fit every reading. `mends` are procedure ids, `words` what to do where no procedure of this
    book mends it. `elsewhere` says that its part is on no path of the car's systems. `silent`
    are the readings that are out and of which the book says nothing for this fault: it fits them for want of words.
    """

    fault: str
    share: float
    stages: tuple[str, ...]
    mends: tuple[str, ...]
    words: tuple[str, ...]
    elsewhere: bool = False
    silent: tuple[str, ...] = ()


@dataclass(frozen=True)
class Contradicted:
    """A fault of which no stage fits every reading, and for each stage the readings that contradict it.

    `factor` is how likely those readings are at best, beside a fault that says nothing about them. `by_graph` are those of
    the readings of which not the fault but the graph says that they are healthy with it.
    """

    fault: str
    by: dict[str, tuple[str, ...]]
    factor: float
    by_graph: frozenset[str] = frozenset()

    @property
    def reasons(self) -> tuple[str, ...]:
        """Few readings that together contradict every stage: each time the one that meets most of those still there."""
        reasons, there = [], list(self.by.values())
        while there:
            readings = dict.fromkeys(r for readings in there for r in readings)
            meets = {r: sum(r in readings for readings in there) for r in readings}
            reasons.append(max(meets, key=meets.__getitem__))
            there = [readings for readings in there if reasons[-1] not in readings]
        return tuple(reasons)


@dataclass(frozen=True)
class Doubt:
    """When nothing fits: the reading (or the repair of a fault) that, if doubted, brings these faults back.

    `minutes` is the shortest procedure that takes the reading again, None where there is none.
    """

    of: str
    brings: tuple[str, ...]
    repair: bool = False
    minutes: float | None = None


@dataclass(frozen=True)
class Pair:
    """Two faults that together would show every reading; `weight` is the product of their beliefs."""

    faults: tuple[str, str]
    weight: float


@dataclass(frozen=True)
class Judgement:
    """Everything that a job's readings say.

    `left` fits every reading, to 95 % of the belief of all that does; `besides` is the rest of it. `outside` is the
    share of a cause that is in no record. `contradictions` are readings that no fault shows, alone or two together.
    `healthy` says that something was measured and all of it is in band. `next` are the
    tests worth doing, `unable` what the first cannot decide with its instrument, `repairs` those of what is left, `alike` the faults that none of these tests parts.
    """

    title: str
    car: Car
    felt: tuple[str, ...]
    taken: tuple[Taken, ...]
    left: tuple[Suspect, ...]
    besides: tuple[Suspect, ...]
    contradicted: tuple[Contradicted, ...]
    outside: float
    codes: tuple[str, ...] = ()
    history: tuple[str, ...] = ()
    dangers: tuple[str, ...] = ()
    healthy: bool = False
    repaired: tuple[str, ...] = ()
    comes_and_goes: bool = False
    cannot: tuple[tuple[str, str], ...] = ()
    doubts: tuple[Doubt, ...] = ()
    pairs: tuple[Pair, ...] = ()
    contradictions: tuple[tuple[str, ...], ...] = ()
    next: tuple[Proposal, ...] = ()
    unable: tuple[str, ...] = ()
    repairs: tuple[Repair, ...] = ()
    alike: tuple[tuple[str, ...], ...] = ()
    disagreements: tuple[Disagreement, ...] = ()
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

    @property
    def repeat(self) -> Doubt | None:
        """When nothing fits: the reading that is quickest to take again and brings a fault back."""
        again = [doubt for doubt in self.doubts if doubt.minutes is not None]
        return min(again, key=lambda doubt: (doubt.minutes, doubt.of), default=None)
