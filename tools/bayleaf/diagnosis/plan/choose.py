"""Which test comes next: the expected information a minute, one step ahead.

The expected reduction of entropy over faults, as in de Kleer and Williams (1987), divided by what the test costs.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product
from math import log2
from typing import NamedTuple

from bayleaf.diagnosis.belief.belief import Belief
from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.plan.actions import Action
from bayleaf.diagnosis.plan.outcomes import Outcomes, table_of

LEAST_BITS = 0.02  # less changes nothing that a person would do
LEAST_SHARE = 1e-4  # rows below this share of what is left are left out of the sum
CLOSE = 0.9  # where one test is at least this share as good as another, the less intrusive goes first
JOINT = 4  # readings of one procedure that are counted together


class Proposal(NamedTuple):
    """A test with the bits that it is expected to give and the reading that gives most of them."""

    action: Action
    bits: float
    reading: str

    @property
    def minutes(self) -> float:
        """What it costs from here: its own minutes and those of the connections that it needs."""
        return self.action.minutes + self.action.setup

    @property
    def rate(self) -> float:
        """Bits a minute."""
        return self.bits / self.minutes


def proposals_of(
    matrix: Matrix, belief: Belief, fits: int, actions: Sequence[Action], outcomes: dict[tuple[str, str], Outcomes]
) -> list[Proposal]:
    """The tests worth doing, the next one first. The standing beginning goes before all else."""
    total = sum(share for i, share in enumerate(belief.rows) if fits >> i & 1)
    rows = [i for i, share in enumerate(belief.rows) if fits >> i & 1 and share > LEAST_SHARE * total]
    if len({matrix.rows[i].fault for i in rows}) < 2:
        return []
    shares = tuple(share / total for share in belief.rows)
    tables = {
        (reading, instrument): table_of(matrix, reading, outcomes[reading, instrument], shares, rows)
        for action in actions
        for reading, instrument in action.readings.items()
    }
    single = {key: bits_of(matrix, shares, rows, [table]) if table else 0.0 for key, table in tables.items()}
    proposals = []
    for action in actions:
        told = sorted((key for key in action.readings.items() if single[key] > 0), key=lambda key: (-single[key], key))
        if told and sum(single[key] for key in told) >= LEAST_BITS:
            bits = (
                bits_of(matrix, shares, rows, [tables[key] for key in told[:JOINT]])
                if len(told) > 1
                else single[told[0]]
            )
            if bits >= LEAST_BITS:
                proposals.append(Proposal(action, bits, told[0][0]))
    proposals.sort(key=lambda p: (not p.action.first, -p.rate, p.action.procedure))
    return _gentle(proposals)


def _gentle(proposals: list[Proposal]) -> list[Proposal]:
    """The less intrusive of the first few before the best, where it is nearly as good."""
    if not proposals:
        return []
    best = proposals[0]
    near = [p for p in proposals if p.action.first == best.action.first and p.rate >= CLOSE * best.rate]
    first = min(near, key=lambda p: (p.action.intrusion, -p.rate, p.action.procedure))
    return [first, *(p for p in proposals if p is not first)]


def bits_of(
    matrix: Matrix, shares: Sequence[float], rows: list[int], tables: Sequence[list[tuple[float, ...]]]
) -> float:
    """The mutual information, in bits, between the fault and the outcomes of some readings taken together.

    `tables` holds for each reading the outcome probabilities of each row; readings are independent once the row is known.
    """
    faults = [matrix.rows[i].fault for i in rows]
    prior: dict[str, float] = {}
    for fault, i in zip(faults, rows, strict=True):
        prior[fault] = prior.get(fault, 0.0) + shares[i]
    bits = 0.0
    for outcome in product(*(range(len(table[0])) for table in tables)):
        joint: dict[str, float] = {}
        for n, (fault, i) in enumerate(zip(faults, rows, strict=True)):
            p = shares[i]
            for table, k in zip(tables, outcome, strict=True):
                p *= table[n][k]
            joint[fault] = joint.get(fault, 0.0) + p
        total = sum(joint.values())
        bits += sum(p * log2(p / (prior[fault] * total)) for fault, p in joint.items() if p > 0)
    return bits
