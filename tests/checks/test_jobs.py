"""What the rules of jobs accept and refuse beside their own examples."""

from __future__ import annotations

import pytest

from bayleaf.checks import check, check_record
from bayleaf.checks.rule import Example
from tests.checks.small import complaint, lay_out, load_at

JOB = "jobs/parks-van-no-power.yaml"
END = "true_cause: [fuel-filter-restricted]\nexpects: {left: [fuel-filter-restricted]}\n"
TWO = "true_cause: [fuel-filter-restricted, regulator-hose-off]\n"


def said(root, code, *slips):
    return complaint(lay_out(root, *slips), code)


@pytest.mark.parametrize("left", ["none", "[outside-this-book]"])
def test_no_single_fault_is_an_honest_end_of_two(tmp_path, left):
    root = lay_out(tmp_path, Example(JOB, END, f"{TWO}expects: {{left: {left}}}\n"))
    assert complaint(root, "JOB-9") == complaint(root, "LINK-1") == ""


@pytest.mark.parametrize("left", ["none", "[outside-this-book]"])
def test_no_single_fault_is_no_end_of_one(tmp_path, left):
    end = Example(JOB, "expects: {left: [fuel-filter-restricted]}", f"expects: {{left: {left}}}")
    assert "the true cause fuel-filter-restricted is not among what is left" in said(tmp_path, "JOB-9", end)


def test_of_two_causes_one_that_was_repaired_need_not_be_left(tmp_path):
    repaired = Example(JOB, "true_cause: [fuel-filter-restricted]\n", f"  - {{repaired: regulator-hose-off}}\n{TWO}")
    assert said(tmp_path, "JOB-9", repaired) == ""


def test_outside_this_book_is_left_alone(tmp_path):
    slip = Example(JOB, "left: [fuel-filter-restricted]", "left: [fuel-filter-restricted, outside-this-book]")
    assert "outside-this-book is left only when nothing else is" in said(tmp_path, "JOB-9", slip)


def test_outside_this_book_is_no_true_cause(tmp_path):
    slip = Example(JOB, "true_cause: [fuel-filter-restricted]", "true_cause: [outside-this-book]")
    assert "there is no fault outside-this-book" in said(tmp_path, "LINK-1", slip)


@pytest.mark.parametrize(
    ("each", "which", "words"),
    [
        ("cylinder", "3", ""),
        ("bank", "2", ""),
        ("connection", "battery", ""),
        ("cylinder", "battery", "battery is no cylinder"),
        ("connection", "3", "3 is no connection"),
    ],
)
def test_which_one_fits_what_the_reading_is_taken_of(tmp_path, each, which, words):
    slips = [
        Example(
            JOB,
            "{reading: pump-supply-voltage, value: 12.4",
            f"{{reading: pump-supply-voltage, which: {which}, value: 12.4",
        ),
        Example("readings/pump-supply-voltage.yaml", "each: none", f"each: {each}"),
    ]
    found = said(tmp_path, "JOB-11", *slips)
    assert words in found if words else found == ""


def test_a_connection_that_does_not_exist_is_found(tmp_path):
    slip = Example(JOB, "{reading: pump-supply-voltage, value", "{reading: pump-supply-voltage, which: batery, value")
    assert "there is no component batery" in said(tmp_path, "LINK-1", slip)


def test_jobs_are_replayed_only_when_asked(tmp_path):
    slip = Example(JOB, "rail-pressure-primed, value: 35", "rail-pressure-primed, value: 60")
    book = load_at(lay_out(tmp_path, slip))
    assert [f.code for f in check(book, replay=True)] == ["JOB-10"]
    assert check(book) == []


def test_one_record_is_checked_as_the_whole_book_would_check_it(tmp_path):
    slips = [
        Example(JOB, "value: 35, unit: psi", "value: 35, unit: V"),
        Example(JOB, "value: 12.4, unit: V", "value: 112.4, unit: V"),
        Example(JOB, "felt: [loss-of-power]", "felt: [loss-of-powr]"),
    ]
    book = load_at(lay_out(tmp_path, *slips))
    job = book.of("jobs")["parks-van-no-power"]
    found = check_record(book, job)
    assert len(found) >= 3
    assert found == [f for f in check(book) if f.file == job.file]


def test_a_record_that_is_not_sound_keeps_what_the_reader_said(tmp_path):
    book = load_at(lay_out(tmp_path, Example(JOB, "felt: [loss-of-power]", "fel: [loss-of-power]")))
    job = book.of("jobs")["parks-van-no-power"]
    assert {f.code for f in check_record(book, job)} == {f.code for f in book.findings if f.file == job.file} != set()
