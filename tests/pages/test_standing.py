"""What a record's standing does to its page: retired, brought by a layer, expected by a calculator, described by a schema."""

from __future__ import annotations

import copy
import json

import pytest

from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.fields import field_pages
from bayleaf.pages.parts.bands import band_words
from bayleaf.pages.tree import pages
from tests.checks.small import load_small
from tests.data import book_of
from tests.pages.shown import ROOT, block, parsed, seen


def changed(**changes: dict) -> dict[str, dict[str, dict]]:
    """The small book as plain data, with records laid over it: kind to id to fields."""
    small = load_small()
    data = {kind: {id: copy.deepcopy(r.data) for id, r in records.items()} for kind, records in small.kinds.items()}
    for kind, records in changes.items():
        for id, fields in records.items():
            data[kind][id] = data[kind].get(id, {}) | fields
    return data


def test_a_retired_record_keeps_its_page_says_what_to_use_and_is_in_no_list():
    made = pages(
        book_of(changed(readings={"lines-at-rail": {"status": "retired", "replaced_by": "rail-pressure-primed"}}))
    )
    page = made["readings/lines-at-rail.md"]
    assert "Retired. Do not use it: use" in seen(page) and 'href="rail-pressure-primed.html"' in page
    assert "lines-at-rail.html" not in made["readings/index.md"]


def test_what_a_layer_brings_stands_among_the_cautions_of_the_work_it_changes():
    layer = {
        "title": "Car that starts itself",
        "summary": "It may start.",
        "also_called": "none",
        "status": "draft",
        "family": "layer",
        "shows": "none",
        "explains": ["It starts."],
        "paths": "none",
        "has": "none",
        "bands": "none",
        "mistaken_for": "none",
        "calculators": "none",
        "adds_to": ["fuel"],
        "brings": {"acts": ["key-on"], "cautions": ["starts-itself"]},
    }
    caution = {
        "title": "Starts by itself",
        "signal": "WARNING",
        "severity": "could-kill",
        "hazards": ["jet"],
        "danger": "It starts.",
        "consequence": "It hurts.",
        "avoid": ["Keep the key away."],
        "basis": {"practice": True},
    }
    book = book_of(changed(systems={"self-starter": layer}, cautions={"starts-itself": caution}))
    before = parsed(pages(book)["procedures/measure-primed-pressure.md"]).body.text(separator=" ").split("Steps")[0]
    assert "On a car with Car that starts itself" in " ".join(before.split()) and "Keep the key away." in before


def test_an_expected_band_says_what_gives_it_from_what_and_how_far_off_it_may_be():
    band = {
        "expected": {
            "calculator": "pressure-across-injector-idle",
            "inputs": {"vacuum": {"reading": "manifold-vacuum-idle"}},
        },
        "within": {"value": 1.5, "unit": "psi"},
        "means": "limit",
        "basis": {"practice": True},
    }
    view = Uses(book_of(changed(systems={"port-injection-return": {"bands": {"rail-pressure-idle": band}}})))
    said = block(
        band_words(
            view,
            view.book.of("systems")["port-injection-return"],
            ("bands", "rail-pressure-idle"),
            "rail-pressure-idle",
        )
    )
    title, vacuum = view.title("pressure-across-injector-idle"), view.title("manifold-vacuum-idle")
    assert said == f"what {title} gives from {vacuum}, ± 1.5 psi (10.3 kPa)"


@pytest.mark.parametrize("path", sorted((ROOT / "schemas").glob("*.schema.json")), ids=lambda p: p.name)
def test_the_field_reference_has_every_property_of_a_schema(path):
    schemas = {
        p.name.split(".")[0]: json.loads(p.read_text(encoding="utf-8")) for p in (ROOT / "schemas").glob("*.json")
    }
    kind = path.name.split(".")[0]
    made = field_pages(schemas)
    if kind == "common":
        assert "fields/common.md" not in made
        return
    page = seen(made[f"fields/{kind}.md"])
    for name, field in schemas[kind].get("properties", {}).items():
        assert name in page and " ".join(field["description"].split()) in page
