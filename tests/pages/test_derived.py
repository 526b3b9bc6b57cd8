"""Tables derived from the stages of faults: hand-worked on one small book."""

from __future__ import annotations

import pytest

from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds import faults as fault_pages
from bayleaf.pages.kinds.symptoms import first_line
from bayleaf.pages.kinds.variables import effects, variables
from bayleaf.pages.parts.bands import band_table
from bayleaf.pages.parts.shown_by import showing
from bayleaf.pages.tree import pages
from tests.data import book_of
from tests.pages.shown import block, parsed, seen

COMMON = {"summary": "A line about it.", "also_called": "none", "status": "draft"}
PRACTICE = {"practice": True}


def reading(title: str, **more: object) -> dict:
    return COMMON | {"title": title, "at": "filter", "when": "idle", "each": "none", "valid_if": "none"} | more


def fault(title: str, stages: dict, **more: object) -> dict:
    return (
        COMMON
        | {
            "title": title,
            "part": "filter",
            "commonness": "common",
            "stages": stages,
            "felt_as": {"slow": "always"},
            "mended_by": ["renew"],
            "proved_by": "drop",
        }
        | more
    )


@pytest.fixture(scope="module")
def book():
    return book_of(
        {
            "quantities": {
                "pressure": {
                    "title": "Pressure",
                    "reference": "gauge",
                    "units": {"psi": "none", "kPa": "none"},
                    "shown": {"customary": "psi", "si": "kPa"},
                    "plausible": {"min": 0, "max": 100, "unit": "psi", "basis": PRACTICE},
                }
            },
            "conditions": {"idle": {"title": "Idle", "summary": "Idle.", "implies": "none"}},
            "components": {
                "filter": COMMON
                | {
                    "title": "Filter",
                    "does": "Filters.",
                    "found": "There.",
                    "fails": ["Blocks."],
                    "mistaken_for": "none",
                }
            },
            "systems": {
                "port": COMMON
                | {
                    "title": "Port",
                    "family": "fuel",
                    "shows": "none",
                    "explains": ["So."],
                    "has": "none",
                    "mistaken_for": "none",
                    "calculators": "none",
                    "bands": {"drop": {"max": 5, "unit": "psi", "means": "limit", "basis": PRACTICE}},
                    "paths": [
                        {
                            "name": "supply",
                            "carries": "fuel",
                            "side": "low",
                            "through": ["filter"],
                            "greatest": {"value": 90, "unit": "psi", "because": "It is.", "basis": PRACTICE},
                        }
                    ],
                }
            },
            "readings": {
                "drop": reading("Drop", quantity="pressure"),
                "hose": reading("Hose", answers=["dry", "wet"], healthy=["dry"]),
                "flow": reading("Flow", quantity="pressure"),
            },
            "tasks": {"work": {"title": "Work", "summary": "Work."}},
            "symptoms": {
                "slow": COMMON
                | {"title": "Slow", "ask": ["When?"], "first": ["drop"], "prevents": "none", "explain": "It is slow."}
            },
            "faults": {
                "blocked": fault(
                    "Filter blocked",
                    {"partly": {"drop": "high", "hose": "dry"}, "fully": {"like": "partly", "drop": "none"}},
                ),
                "split": fault(
                    "Hose split", {"all": {"hose": "wet", "drop": ["normal", "low"]}}, commonness="rare", felt_as="none"
                ),
            },
            "procedures": {
                "renew": COMMON
                | {
                    "title": "Measure the drop",
                    "systems": ["port"],
                    "tasks": ["work"],
                    "inherits": "none",
                    "leaves": "none",
                    "where": ["bay"],
                    "minutes": {"hands": 5},
                    "spoils": "none",
                    "needs": {"states": "none", "has": "none", "equipment": "none", "consumables": "none", "people": 1},
                    "misleads": "none",
                    "steps": [{"do": "Read it.", "takes": {"reading": "drop"}}],
                    "results": {"drop": {"high": "Dirt."}},
                }
            },
        }
    )


def rows(page: str, css: str) -> list[list[str]]:
    return [[" ".join(cell.text().split()) for cell in row.css("td")] for row in parsed(page).css(f"{css} tbody tr")]


def test_the_faults_of_an_answer_come_from_the_stages_commonest_first(book):
    shown = showing(Uses(book), "drop", ["port"])
    assert [(s.fault.id, list(s.stages), s.surely) for s in shown["high"]] == [("blocked", ["partly"], True)]
    assert [(s.fault.id, s.surely) for s in shown["low"]] == [("split", False)]


def test_a_procedure_says_for_each_answer_what_it_means_and_which_faults_show_it(book):
    made = rows(pages(book)["procedures/renew.md"], ".bl-results")
    assert made == [
        ["none", "", "Filter blocked (fully)"],
        ["low", "", "Hose split (perhaps)"],
        ["normal", "", "does not rule out: Hose split (perhaps)"],
        ["high", "Dirt.", "Filter blocked (partly)"],
    ]


def test_a_fault_shows_its_row_by_stage_and_what_stays_healthy(book):
    page = pages(book)["faults/blocked.md"]
    assert rows(page, ".bl-stages") == [["Drop", "high", "none", ""]]
    assert "Stay healthy: Hose (dry)." in seen(page)


def test_a_symptom_derives_its_causes_and_what_its_first_readings_show(book):
    page = pages(book)["symptoms/slow.md"]
    assert rows(page, ".bl-causes") == [
        ["Filter blocked common, felt always", "none or high", "Measure the drop", "Drop"]
    ]
    assert "A cause outside this book is always possible" in seen(page)


def test_a_system_names_its_greatest_pressure_with_reason_and_basis(book):
    assert "90 psi (621 kPa) It is. Basis: common practice, no source" in seen(pages(book)["systems/port.md"])


def test_a_reading_without_a_general_band_says_that_only_the_maker_can_judge_it(book):
    assert "only the maker's figure can judge it" in block(band_table(Uses(book), ["flow"], ["port"]))


def test_what_speaks_of_a_record_is_linked_from_it(book):
    made = pages(book)
    assert 'href="../faults/blocked.html"' in made["components/filter.md"]
    assert 'href="../procedures/renew.html"' in made["readings/drop.md"]
    assert 'href="../faults/blocked.html"' in made["procedures/renew.md"]


def test_nobody_is_sent_to_a_repair_to_take_a_first_reading(view):
    """`pump-sound-priming` is taken by a look and, to prove themselves, by repairs; `inlet-filter-look` by its repair alone."""
    heard, alone = (str(first_line(view, reading)) for reading in ("pump-sound-priming", "inlet-filter-look"))
    assert "look-smell-listen" in heard and "replace-pump-relay" not in heard
    assert "replace-carburettor-inlet-filter" in alone


def test_a_fault_says_what_it_disturbs_and_which_readings_are_healthy_by_the_graph_alone(view):
    record = view.book.of("faults")["regulator-hose-blocked"]
    page = fault_pages.page(view, record)
    assert "DisturbsReference of the regulator" in seen(page) and "not a proof" in seen(page)
    spared = {a.text() for a in parsed(page).css("#spared a")}
    assert view.title("charging-voltage") in spared and view.title("rail-pressure-idle") not in spared


def test_a_variable_says_what_moves_it_and_within_which_limits(view):
    said = seen(variables(view))
    assert "Reference of the regulator" in said
    assert "not with Hot idle, regulator hose off; on Central port injection" in said


def test_an_effect_says_what_it_shows_and_which_faults_use_it(view):
    said = seen(effects(view))
    for effect in view.book.of("effects").values():
        assert effect.title in said
    assert view.title("weak-ignition") in said
