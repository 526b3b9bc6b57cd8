"""An exception names its field as the finding prints it, and silences that field alone."""

from __future__ import annotations

import pytest

from bayleaf.checks import all_rules, check
from bayleaf.checks.rule import Example
from bayleaf.finding import reader_level
from tests.checks.small import lay_out, load_at

FILE = "procedures/measure-idle-pressure.yaml"
VAGUE = Example(
    FILE, "Start the engine and wait until it is hot.", "Start the engine properly and wait until it is hot."
)


def excepting(field: str) -> Example:
    return Example(
        FILE, "status: draft\n", f"status: draft\nexceptions: [{{rule: WORD-5, because: A name., {field}}}]\n"
    )


def told(tmp_path, *slips: Example) -> list[tuple[str, str, str]]:
    return [(f.code, f.message, f.help) for f in check(load_at(lay_out(tmp_path, *slips)))]


def step_of(tmp_path) -> str:
    """The field of the vague word as its finding prints it."""
    (finding,) = told(tmp_path, VAGUE)
    assert finding[0] == "WORD-5"
    return finding[1].split(" says ")[0]


def test_the_field_that_a_finding_prints_silences_it(tmp_path):
    field = step_of(tmp_path / "a")
    assert field.startswith("step ") and field.endswith(" / do")
    assert told(tmp_path / "b", VAGUE, excepting(f"field: {field}")) == []


@pytest.mark.parametrize("part", ["s", "step", "do", "steps", "steps.0.do"])
def test_a_part_of_a_field_silences_nothing(tmp_path, part):
    field = step_of(tmp_path / "a")
    found = told(tmp_path / "b", VAGUE, excepting(f"field: {part}"))
    assert [code for code, _message, _help in found] == ["BOOK-1", "WORD-5"]
    assert found[0][1] == f"WORD-5 finds nothing in the field {part!r}" and f"field: {field}," in found[0][2]


def test_the_reader_states_the_level_of_its_own_rules():
    own = [rule for rule in all_rules() if rule.scope == "file"]
    assert {rule.code: rule.level for rule in own} == {rule.code: reader_level(rule.code) for rule in own}
    assert {"error", "warning", "advice"} == {rule.level for rule in own}
