"""`bayleaf suggest`: blanks that check refuses, with a guess beside each. Our own rule; no outside source."""

from __future__ import annotations

import pytest

from bayleaf.cli import main
from bayleaf.records import load
from tests.checks.small import lay_out

CRUISE = """# yaml-language-server: $schema=../../schemas/readings.schema.json
title: Rail pressure, cruise
summary: Pressure at a steady speed.
status: draft
quantity: rail-pressure
at: fuel-rail
when: hot-idle
observes: [fuel-pressure]
each: none
valid_if: none
"""


@pytest.fixture
def root(tmp_path):
    lay_out(tmp_path)
    (tmp_path / "kb/readings/rail-pressure-cruise.yaml").write_text(CRUISE, encoding="utf-8")
    return tmp_path


def suggested(root, capsys, reading: str) -> tuple[int, str, str]:
    status = main(["suggest", reading, "--root", str(root)])
    return status, *capsys.readouterr()


def test_every_stage_that_is_reached_and_silent_gets_a_blank_with_a_guess(root, capsys):
    status, out, _ = suggested(root, capsys, "rail-pressure-cruise")
    assert status == 0 and out.startswith("# rail-pressure-cruise: 4 stages are reached")
    assert "# kb/faults/fuel-filter-restricted.yaml, stage partly; reached by line-flow → fuel-pressure\n" in out
    assert "    rail-pressure-cruise:  # high? as rail-pressure-idle there\n" in out
    assert "high-pressure-pump-worn" not in out  # nothing that it disturbs reaches the low side


def test_a_blank_is_refused_until_a_person_answers(root, capsys):
    blank = next(
        line for line in suggested(root, capsys, "rail-pressure-cruise")[1].splitlines() if line.startswith("    ")
    )
    fault = root / "kb/faults/pump-ground-poor.yaml"
    text = fault.read_text(encoding="utf-8").replace(
        "    rail-pressure-idle: low\n", f"    rail-pressure-idle: low\n{blank}\n"
    )
    fault.write_text(text, encoding="utf-8")
    assert "FILE-9" in {f.code for f in load(root).findings}


def test_an_unknown_reading_is_one_line_with_the_nearest(root, capsys):
    said = "bayleaf: there is no reading 'rail-pressure-cruse'; did you mean rail-pressure-cruise?\n"
    assert suggested(root, capsys, "rail-pressure-cruse") == (2, "", said)


def test_a_reading_that_answers_as_another_needs_no_blank(root, capsys):
    reading = root / "kb/readings/rail-pressure-cruise.yaml"
    reading.write_text(CRUISE.replace("each:", "answers_as: rail-pressure-idle\neach:"), encoding="utf-8")
    assert suggested(root, capsys, "rail-pressure-cruise")[1].startswith("# rail-pressure-cruise: 0 stages")
