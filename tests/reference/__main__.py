"""`python -m tests.reference`: the worst relative error of each calculator against each outside reference, as a table."""

from __future__ import annotations

from bayleaf.formulas.calculator.worked import run_checks
from tests.reference.outside import book, calculator, everything


def worked(id: str) -> tuple[int, float]:
    """The worked checks of the record: how many values, and the worst relative error."""
    checks = run_checks(calculator(id), book().of("calculators")[id].data)
    return len(checks), max(abs(check.got - check.wanted) / (abs(check.wanted) or 1) for check in checks)


def main() -> None:
    rows = [(one.calculator, one.source, *one.worst(), f"{one.rel:.0e}") for one in everything()]
    rows += [(id, "its worked checks", *worked(id), "each its own") for id in book().of("calculators")]
    print("| calculator | against | values | worst relative error | allowed |\n|---|---|---|---|---|")
    for id, source, count, worst, allowed in sorted(rows):
        print(f"| {id} | {source} | {count} | {worst:.1e} | {allowed} |")


if __name__ == "__main__":
    main()
