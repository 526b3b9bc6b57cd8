"""Random slips in the small book end in findings: no rule fails on a record that another rule already refuses."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from bayleaf.checks import check
from bayleaf.checks.rule import Example
from tests.checks.slips import restore, slips, write
from tests.checks.small import lay_out, load_at


@pytest.fixture(scope="module")
def root():
    folder = Path(tempfile.mkdtemp())
    yield lay_out(folder)
    shutil.rmtree(folder)


@settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    database=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(changed=slips())
def test_slips_end_in_findings_of_one_line(root, changed):
    write(root, changed)
    try:
        for finding in check(load_at(root)):
            assert "could not finish" not in finding.message
            assert "\n" not in finding.message + finding.help
    finally:
        restore(root, changed)


def test_a_crash_inside_a_rule_is_a_finding_of_that_rule(tmp_path, monkeypatch):
    from bayleaf.checks import run

    def broken(record, context):
        raise KeyError("x\ny")

    rule = next(r for r in run.all_rules() if r.code == "SHAPE-14")
    monkeypatch.setattr(run, "all_rules", lambda: (rule._replace(find=broken),))
    found = check(load_at(lay_out(tmp_path)))
    assert [(f.code, f.level, "could not finish: KeyError" in f.message) for f in found] == [
        ("SHAPE-14", "error", True)
    ]


def test_rules_over_the_whole_book_wait_for_a_record_that_cannot_be_read(tmp_path):
    found = check(
        load_at(
            lay_out(tmp_path, Example("faults/fuel-filter-restricted.yaml", "part: fuel-filter", "part: [fuel-filter]"))
        )
    )
    assert {f.code for f in found} == {"SHAPE-3", "BOOK-8"}


def test_a_record_of_the_wrong_shape_still_exists_for_links(tmp_path):
    found = check(load_at(lay_out(tmp_path, Example("readings/rail-pressure-idle.yaml", "each: none", "each: twice"))))
    assert "LINK-1" not in {f.code for f in found}


def test_an_exception_silences_its_rule_and_field_only(tmp_path):
    slip = Example(
        "components/fuel-filter.yaml",
        "status: draft\n",
        "status: draft\nexceptions: [{rule: WORD-5, field: found, because: A name.}]\n",
    )
    vague = Example("components/fuel-filter.yaml", "Under the floor", "As necessary under the floor")
    also = Example("components/fuel-filter.yaml", "Blocks slowly", "Properly blocks")
    assert [f.path for f in check(load_at(lay_out(tmp_path, slip, vague, also))) if f.code == "WORD-5"] == [
        ("fails", 0)
    ]
