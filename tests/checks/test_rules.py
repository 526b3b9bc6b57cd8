"""Every rule speaks about its bad example, says what its golden text says, and is silent about the small book."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.checks import all_rules, check, rules
from bayleaf.checks.rule import SCOPES, Example
from bayleaf.finding import LEVELS
from tests.checks.small import complaint, lay_out, load_at, load_small

GOLDEN = Path(__file__).with_name("golden")
RULES = {rule.code: rule for rule in all_rules()}


@pytest.fixture(scope="module")
def small():
    return load_small()


def test_the_small_book_is_clean(small):
    assert [f"{f.file}:{f.line} {f.code} {f.message}" for f in check(small, replay=True)] == []


@pytest.mark.parametrize("code", RULES)
def test_a_rule_speaks_about_its_bad_example(code, tmp_path):
    said = complaint(lay_out(tmp_path, RULES[code].example), code)
    assert said, f"{code} is silent about its own bad example"
    assert said == (GOLDEN / f"{code}.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("code", RULES)
def test_a_rule_explains_itself_in_whole_sentences(code):
    rule = RULES[code]
    assert rule.level in LEVELS and rule.scope in SCOPES
    assert (rule.find is None) == (rule.scope == "file" or code in ("BOOK-1", "BOOK-2", "BOOK-8"))
    for text in (rule.what, rule.why, rule.mend):
        assert len(text) > 12 and text[0].isupper() and text.endswith(".")
    assert not rule.title.endswith(".") and len(rule.title) <= 70


def test_a_rule_is_one_file_in_the_folder_of_its_family():
    folder = Path(rules.__file__).parent
    families = [path.parent.name.upper() for path in folder.glob("[!_]*/[!_]*.py")]
    assert sorted(families) == sorted(code.rsplit("-", 1)[0] for code in RULES)


def test_no_golden_text_is_left_over():
    assert {p.stem for p in GOLDEN.glob("*.txt")} == set(RULES)


def test_an_id_that_does_not_exist_is_complained_of_once(tmp_path):
    slip = Example("procedures/measure-idle-pressure.yaml", "instrument: vacuum-gauge", "instrument: vacum-gauge")
    assert [f.code for f in check(load_at(lay_out(tmp_path, slip))) if f.level == "error"] == ["LINK-1"]


def test_a_decimal_point_that_slipped_is_no_complaint_about_the_greatest_pressure(tmp_path):
    slip = Example(
        "systems/port-injection-return.yaml",
        "rail-pressure-idle: {min: 27, max: 56,",
        "rail-pressure-idle: {min: 27, max: 560,",
    )
    codes = {f.code for f in check(load_at(lay_out(tmp_path, slip)))}
    assert "UNIT-3" in codes and "UNIT-21" not in codes


def test_an_influence_that_is_limited_to_a_system_reaches_nothing_on_another(tmp_path):
    slip = Example("faults/regulator-hose-off.yaml", "rail-pressure-primed: normal", "rail-pressure-primed: low")
    said = complaint(lay_out(tmp_path, slip), "DIAG-17")
    assert "rail-pressure-primed may be other than healthy, and on port-injection-return nothing" in said


def test_an_unknown_variable_is_answered_with_the_nearest(tmp_path):
    slip = Example("components/fuel-filter.yaml", "variables: [line-flow]", "variables: [line-flaw]")
    assert "line-flow" in complaint(lay_out(tmp_path, slip), "LINK-1")


def test_a_circle_of_influences_is_walked_once_and_is_no_error(tmp_path):
    slip = Example("vocabulary/variables.yaml", "influences: [tip-pressure]", "influences: [tip-pressure, line-flow]")
    assert [f.code for f in check(load_at(lay_out(tmp_path, slip))) if f.level == "error"] == []


def test_a_system_that_is_no_layer_has_paths_though_the_field_may_say_none(tmp_path):
    good = "paths:\n  - {name: charge air, carries: air, through: [inlet-duct, turbocharger, intake-manifold]}\n  - {name: exhaust, carries: exhaust, through: [intake-manifold, turbocharger]}\n"
    slip = Example("systems/turbocharged-induction.yaml", good, "paths: none\n")
    assert "only a layer may have no paths" in complaint(lay_out(tmp_path, slip), "SHAPE-11")
