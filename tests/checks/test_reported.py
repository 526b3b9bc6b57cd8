"""A code names no cause that its own report rules out. The small book's faults, worked by hand beside each case."""

from __future__ import annotations

import pytest

from bayleaf.checks.rule import Example
from tests.checks.small import complaint, lay_out

CODE = "codes/p0171.yaml"
HIGH = Example(CODE, "shows: low", "shows: high")  # of the pressure at idle: only with the hose off, a rough idle
ONE_SYSTEM = Example(CODE, "systems: none", "systems: [port-injection-return]")
ROUGH = Example(CODE, "symptoms: [loss-of-power]", "symptoms: [rough-idle]")


@pytest.mark.parametrize(
    ("slips", "said"),
    [
        # Filter and ground low or normal, diaphragm normal or low: no loss of power comes of what is high.
        ([HIGH, ONE_SYSTEM], "rail-pressure-idle high rules out every fault that is felt as loss-of-power"),
        # On direct injection the pump worn is felt so too, and says nothing of that reading.
        ([HIGH], ""),
        ([HIGH, ONE_SYSTEM, ROUGH], ""),
        ([ONE_SYSTEM], ""),
        ([Example(CODE, "{reading: rail-pressure-idle, shows: low, at: bank 1}", "{words: Nothing of ours.}")], ""),
    ],
)
def test_a_symptom_is_refused_where_the_report_rules_out_every_fault_that_is_felt_so(slips, said, tmp_path):
    found = complaint(lay_out(tmp_path, *slips), "DIAG-28")
    assert ("is felt as" in found) == bool(said) and said in found


def test_a_first_reading_is_refused_where_the_report_rules_out_all_that_it_points_to(tmp_path):
    # The supply voltage is low with the poor ground alone, where the pressure is low; the hose off leaves it normal.
    first = Example(CODE, "manifold-vacuum-idle]", "pump-supply-voltage]")
    said = complaint(lay_out(tmp_path, HIGH, ONE_SYSTEM, ROUGH, first), "DIAG-28")
    assert "rail-pressure-idle high rules out every fault that pump-supply-voltage points to" in said
