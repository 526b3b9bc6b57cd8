"""`bayleaf explain` prints every rule and helps with a code that does not exist."""

from __future__ import annotations

import pytest

from bayleaf.checks import all_rules
from bayleaf.cli import main
from bayleaf.cli.explain import FAMILIES


@pytest.mark.parametrize("rule", all_rules(), ids=lambda rule: rule.code)
def test_every_rule_is_explained_with_both_examples(rule, capsys):
    assert main(["explain", rule.code.lower()]) == 0
    said = capsys.readouterr().out
    for word in (rule.code, rule.title, "What:", "Why:", "Mend:", "Bad:", "Good:"):
        assert word in said


def test_without_a_code_all_rules_are_listed_by_family(capsys):
    assert main(["explain"]) == 0
    said = capsys.readouterr().out
    assert all(f"  {rule.code} " in said for rule in all_rules())
    assert all(f"{rule.code.split('-')[0]}: " in said for rule in all_rules())


def test_every_family_has_its_words():
    assert {rule.code.split("-")[0] for rule in all_rules()} <= set(FAMILIES)


def test_a_family_is_listed_alone(capsys):
    assert main(["explain", "link"]) == 0
    assert "UNIT-1 " not in capsys.readouterr().out


def test_a_code_that_does_not_exist_gets_one_line_with_the_nearest(capsys):
    assert main(["explain", "UNIT1"]) == 2
    said = capsys.readouterr().err
    assert said.count("\n") == 1 and "Did you mean UNIT-1?" in said
