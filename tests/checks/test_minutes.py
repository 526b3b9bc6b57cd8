"""The minutes of a procedure against its own steps: who drives works, who holds for some seconds does not wait.

The figures are made up for the test; the sums are done by hand beside them.
"""

from __future__ import annotations

import pytest

from bayleaf.checks.rule import Example
from tests.checks.small import complaint, lay_out

PRIMED = "procedures/measure-primed-pressure.yaml"
LASTS = "lasts: {value: 2, unit: s,"


@pytest.mark.parametrize(
    ("minutes", "lasts", "said"),
    [
        ("{hands: 2}", "lasts: {value: 59, unit: s,", ""),  # less than a whole minute
        ("{hands: 90}", "lasts: {value: 1, unit: min,", "the steps last 1 minutes, and minutes / waiting is 0"),
        ("{hands: 2, waiting: 3}", "lasts: {value: 200, unit: s,", ""),  # 3 min 20 s
        (
            "{hands: 2, waiting: 3}",
            "lasts: {value: 4, unit: min,",
            "the steps last 4 minutes, and minutes / waiting is 3",
        ),
    ],
)
def test_what_steps_last_is_waited_and_work_does_not_make_up_for_it(minutes, lasts, said, tmp_path):
    slips = [Example(PRIMED, "minutes: {hands: 2}", f"minutes: {minutes}"), Example(PRIMED, LASTS, lasts)]
    found = complaint(lay_out(tmp_path, *slips), "DIAG-20")
    assert said in found and bool(found) == bool(said)


@pytest.mark.parametrize(("hands", "said"), [(20, ""), (19, "the steps last 20 minutes, and minutes / hands is 19")])
def test_a_drive_is_work(hands, said, tmp_path):
    file = "procedures/drive-at-full-load.yaml"
    slips = [
        Example(file, "minutes: {hands: 20}", f"minutes: {{hands: {hands}}}"),
        Example(
            file, "    act: drive\n", "    act: drive\n    lasts: {value: 20, unit: min, basis: {practice: true}}\n"
        ),
    ]
    found = complaint(lay_out(tmp_path, *slips), "DIAG-20")
    assert said in found and bool(found) == bool(said)


def test_no_waiting_is_none_whether_it_is_left_out_or_nought(tmp_path):
    slip = Example("procedures/take-gauge-off.yaml", "waiting: 45", "waiting: 0")
    assert "step 2 lets the engine cool" in complaint(lay_out(tmp_path, slip), "DIAG-27")
