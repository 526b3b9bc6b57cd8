"""The page of a code: causes and what parts them, derived from what it reports. Common practice, no source, where no other is named."""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.faults.reported import SPLITS, fits_of, reports_of, silent_of
from bayleaf.pages.kinds import codes
from bayleaf.pages.parts.reported import causes_of, fits
from tests.pages.shown import parsed, seen


def causes(view, code):
    return {cause.fault.id for cause in causes_of(view, fits(view, view.book.of("codes")[code]))}


@pytest.mark.parametrize(
    ("code", "there", "absent"),
    [
        ("p0171", {"intake-duct-split", "air-meter-reads-low", "exhaust-leaks-ahead", "injector-clogged"}, {"regulator-diaphragm-leaking"}),
        ("p0174", {"intake-duct-split", "air-meter-reads-low", "exhaust-leaks-ahead"}, {"regulator-diaphragm-leaking"}),
        ("p0172", {"regulator-diaphragm-leaking", "injector-leaking"}, {"fuel-filter-restricted", "intake-duct-split"}),
        ("p0087", {"high-pressure-pump-weak", "cam-follower-worn", "fuel-filter-restricted"}, {"regulator-diaphragm-leaking"}),
        ("p0192", {"pressure-sensor-dead", "pressure-sensor-reads-low"}, {"fuel-filter-restricted", "pressure-sensor-reads-high"}),
        ("p0299", {"charge-hose-leaks", "wastegate-stuck-open", "boost-control-bad"}, {"wastegate-stuck-shut"}),
        # A fault of the layer of two tanks, which disturbs a reading of the system under it.
        ("p0313", {"fuel-tank-empty", "jet-pump-blocked", "transfer-line-off"}, {"fuel-filter-restricted"}),
    ],
)  # fmt: skip
def test_the_causes_are_those_that_may_show_what_is_reported(view, code, there, absent):
    found = causes(view, code)
    assert there <= found and not absent & found


def test_every_cause_of_every_code_stands_on_its_page_once_and_none_that_the_report_rules_out(view, made):
    asked = 0
    for record in view.live("codes"):
        reports = reports_of(record)
        if not reports:
            continue
        asked += 1
        links = [a.attributes["href"] for a in parsed(made[f"codes/{record.id}.md"]).css("#faults ~ * a")]
        listed = [href.split("/")[-1].removesuffix(".html") for href in links if "/faults/" in href]
        assert sorted(listed) == sorted(causes(view, record.id)) and listed, record.id
    assert asked > 60


def test_the_faults_of_which_nothing_is_said_are_counted_and_not_named(view, made):
    record = view.book.of("codes")["p0192"]
    silent = silent_of((view.matrices[s] for s in view.systems_of(record)), reports_of(record)) - causes(view, "p0192")
    assert silent and f"Not ruled out: {len(silent)} other faults" in seen(made["codes/p0192.md"])


def test_what_splits_the_causes_are_a_few_readings_that_no_repair_is_needed_for(view, made):
    for code in ("p0171", "p0172", "p0087", "p0299"):
        rows = parsed(made[f"codes/{code}.md"]).css(".bl-results tbody tr")
        assert 2 <= len(rows) <= SPLITS, code
        ways = {
            a.attributes["href"].split("/")[-1][:-5]
            for a in parsed(made[f"codes/{code}.md"]).css(".bl-results td:first-child a")
        }
        assert not ways & view.repairs, code
    # A leaking diaphragm wets the hose, and the split duct does not.
    assert "fuel-in-regulator-hose.html" in made["codes/p0172.md"].partition("What splits the causes")[2]
    assert "charge-side-leak.html" in made["codes/p0299.md"].partition("What splits the causes")[2]


def test_a_code_without_a_reading_says_that_its_causes_are_those_of_its_symptoms(view, made):
    said = seen(made["codes/p0420.md"])
    assert "No reading of this book is what this code reports." in said and "What splits the causes" not in said
    assert "Faults that show what it reports" not in said and "Faults that are felt that way" in said


def test_a_pair_of_systems_adds_only_faults_that_no_system_shows_alone(view):
    reports = reports_of(view.book.of("codes")["p0313"])
    alone = fits_of(view.matrices.values(), [], reports)
    both = fits_of(view.matrices.values(), view.pairs.values(), reports)
    assert both[: len(alone)] == alone and len(both) > len(alone)
    assert not {fit.row.fault for fit in both[len(alone) :]} & {fit.row.fault for fit in alone}


def test_only_the_procedures_of_its_systems_are_named(view):
    said = seen(codes.page(view, view.book.of("codes")["p0192"]))
    assert view.title("measure-rail-pressure-idle") not in said
