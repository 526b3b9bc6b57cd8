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


def elsewhere(path: str) -> Example:
    """A fault of direct injection that names one path."""
    return Example(
        "faults/high-pressure-pump-worn.yaml",
        "felt_as:",
        f"elsewhere: {{normal_on: [{path}], because: It is not touched.}}\nfelt_as:",
    )


@pytest.mark.parametrize("path", ["feed", "charge air"])
def test_elsewhere_may_name_a_path_of_another_family(tmp_path, path):
    assert complaint(lay_out(tmp_path, elsewhere(path)), "LINK-8") == ""


def test_elsewhere_may_not_name_a_path_of_the_same_family_which_no_car_has_beside_it(tmp_path):
    said = complaint(lay_out(tmp_path, elsewhere("pump circuit")), "LINK-8")
    assert "no car with direct-injection has a path pump circuit" in said
    assert "It may be feed or high side, or a path of a system of another family." in said


def test_elsewhere_is_not_a_path_through_the_part_in_a_system_that_the_fault_does_not_name(tmp_path):
    system = "systems/turbocharged-induction.yaml"
    through = Example(
        system, "[inlet-duct, turbocharger, intake-manifold]", "[inlet-duct, turbocharger, high-pressure-pump]"
    )
    root = lay_out(tmp_path, through, elsewhere("charge air"))
    fault = root / "kb/faults/high-pressure-pump-worn.yaml"
    fault.write_text(fault.read_text().replace("felt_as:", "systems: [direct-injection]\nfelt_as:", 1))
    assert "the path charge air of turbocharged-induction runs through high-pressure-pump" in complaint(root, "DIAG-17")


def test_a_system_that_is_no_layer_has_paths_though_the_field_may_say_none(tmp_path):
    good = "paths:\n  - {name: charge air, carries: air, through: [inlet-duct, turbocharger, intake-manifold]}\n"
    slip = Example("systems/turbocharged-induction.yaml", good, "paths: none\n")
    assert "only a layer may have no paths" in complaint(lay_out(tmp_path, slip), "SHAPE-11")
