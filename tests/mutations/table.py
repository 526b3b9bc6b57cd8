"""The table of a run: operator by operator, what was expected and what was seen."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from tests.mutations.detect import Seen
from tests.mutations.mutant import BLIND, CAUGHT, MOSTLY, Mutant, Operator


@dataclass
class Row:
    """One operator's mutants, and what saw each of them."""

    operator: Operator
    seen: list[tuple[Mutant, Seen]] = field(default_factory=list)

    @property
    def missed(self) -> list[Mutant]:
        """The mutants that nothing saw."""
        return [mutant for mutant, seen in self.seen if not seen.level]

    @property
    def share(self) -> float:
        """The share of the mutants that an error or a warning saw; 1 where there was none to see."""
        return 1 - len(self.missed) / len(self.seen) if self.seen else 1.0

    @property
    def kept(self) -> bool:
        """Whether what was said beforehand came true. A blind spot makes no promise."""
        return not self.crashed and (self.operator.expects == BLIND or self.share >= self.operator.least)

    @property
    def crashed(self) -> list[tuple[Mutant, str]]:
        """The mutants on which a rule broke down, each with what it said."""
        return [(mutant, seen.code) for mutant, seen in self.seen if seen.level == "crash"]


def render(rows: list[Row], examples: int) -> str:
    """The table, then every blind spot and everything missed, with examples."""
    lines = [
        f"{'operator':<46}{'expected':>10}{'mutants':>9}{'error':>7}{'warning':>9}{'missed':>8}{'share':>8}  seen by"
    ]
    for row in rows:
        levels = Counter(seen.level for _m, seen in row.seen)
        codes = Counter(seen.code for _m, seen in row.seen if seen.level in ("error", "warning"))
        flag = "" if row.kept else "  BROKEN"
        lines.append(
            f"{row.operator.name:<46}{row.operator.expects:>10}{len(row.seen):>9}{levels['error']:>7}{levels['warning']:>9}{levels['']:>8}"
            f"{row.share:>8.1%}  {' '.join(c for c, _n in codes.most_common(4))}{flag}"
        )
    for expects, title in (
        (CAUGHT, "to be caught always"),
        (MOSTLY, "to be caught mostly"),
        (BLIND, "blind spots in principle"),
    ):
        some = [row for row in rows if row.operator.expects == expects]
        mutants, missed = sum(len(r.seen) for r in some), sum(len(r.missed) for r in some)
        if mutants:
            lines.append(f"{title}: {len(some)} operators, {mutants} mutants, {1 - missed / mutants:.1%} caught")
    lines += [f"CRASH {m.kind}/{m.id}: {m.what}: {said}" for row in rows for m, said in row.crashed]
    lines += ["", "What got through, and why:"]
    for row in rows:
        if row.missed:
            lines.append(f"- {row.operator.name} ({len(row.missed)} of {len(row.seen)}): {row.operator.why}")
            lines += [
                f"    {m.kind}/{m.id}: {m.what}" for m in row.missed[:: max(1, len(row.missed) // examples)][:examples]
            ]
    return "\n".join(lines)
