"""`python -m tests.reference.port_against_records`: the physical model against the fault matrix, entry by entry.

After the entries come the severities, swept from none to extreme, at which no stage of the record fits what the model
shows: a stage that is missing, or an answer that is too sharp.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from tests.reference.port_model import Port, readings
from tests.reference.test_physics import HEALTHY, answers, book_matrix, confirmations

SWEEPS: list[tuple[str, str, np.ndarray]] = [
    ("fuel-filter-restricted", "filter", HEALTHY.filter * np.geomspace(1.5, 2000, 60)),
    ("pump-weak", "slip", HEALTHY.slip * np.geomspace(1.1, 12, 60)),
    ("pump-feed-resistance", "feed_ohm", np.geomspace(0.05, 5, 60)),
    ("pump-ground-resistance", "ground_ohm", np.geomspace(0.05, 5, 60)),
    ("strainer-blocked", "strainer", HEALTHY.strainer * np.geomspace(2, 1e5, 60)),
    ("regulator-stuck-low", "set_pressure", HEALTHY.set_pressure * np.linspace(0.99, 0.1, 60)),
    ("regulator-stuck-high", "set_pressure", HEALTHY.set_pressure * np.linspace(1.01, 2.3, 60)),
    ("regulator-stuck-high", "screen", np.geomspace(1e12, 1e16, 60)),
    ("return-restricted", "return_line", HEALTHY.return_line * np.geomspace(2, 1e7, 60)),
    ("regulator-hose-split", "reference", np.linspace(1, 0.03, 60)),
    ("regulator-diaphragm-leaking", "diaphragm_leak", np.geomspace(1e-15, 3e-11, 60)),
    ("wrong-pump-fitted", "displacement", HEALTHY.displacement * np.linspace(1.05, 3, 60)),
]


def entries() -> Iterator[str]:
    """One line for each entry and severity in the tests."""
    for fault, stage, reading, shown, said in confirmations():
        mark = "agrees" if shown & said else "DIFFERS"
        yield f"{mark:8} {fault:28} {stage:16} {reading:26} model {' or '.join(sorted(shown)):12} record {' or '.join(sorted(said))}"


def gaps() -> Iterator[str]:
    """One line for each range of a severity in which no stage of the fault fits."""
    healthy = readings(HEALTHY)
    for fault, field, values in SWEEPS:
        rows, last = [row for row in book_matrix().rows if row.fault == fault], ""
        for value in values:
            found = {r: answers(r, x, healthy[r]) for r, x in readings(_with(field, float(value))).items()}
            against = [{r for r, a in found.items() if row.answers.get(r) and not a & row.answers[r]} for row in rows]
            seen = any("normal" not in a for a in found.values())
            nearest = min(range(len(rows)), key=lambda i, by=against: len(by[i]))
            words = ", ".join(f"{r} {' or '.join(sorted(found[r]))}" for r in sorted(against[nearest]))
            said = f"{fault}: {field} from {value:.3g}: nearest is {rows[nearest].stage}, but {words}" if words and seen else ""
            if said and words != last:
                yield said
            last = words if said else ""


def _with(field: str, value: float) -> Port:
    return replace(HEALTHY, **{field: value})


if __name__ == "__main__":
    print("\n".join(entries()))
    print("\nSeverities that no stage fits")
    print("\n".join(gaps()))
