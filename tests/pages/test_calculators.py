"""The calculators' pages: the table, the chart and the form say what the formula gives."""

from __future__ import annotations

import json
import re

import pytest

from bayleaf.formulas.output.tabulate import tabulate
from bayleaf.pages.kinds.calculators import group_of
from bayleaf.pages.parts.form import form
from tests.pages.shown import parsed, seen

RISE = "regulator-rise"


def rise(view) -> str:
    """The calculator of the regulator's rise, whatever its id is at present."""
    return next(id for id in view.calculators if id.startswith(RISE))


def test_every_calculator_shows_its_table_its_formula_and_its_checks(view, made):
    assert view.calculators
    for id, calc in view.calculators.items():
        tree = parsed(made[f"calculators/{id}.md"])
        cells = [cell for row in tabulate(calc).cells for cell in row]
        shown = [" ".join(td.text().split()) for td in tree.css(".bl-values tbody td:not(:first-child)")]
        assert len(shown) == len(cells), id
        assert all(text.startswith(cell.shown) for text, cell in zip(shown, cells)), id
        assert len(tree.css(".bl-formula math")) == len(calc.lines), id
        assert len(tree.css(".bl-check")) == len(view.book.of("calculators")[id].data["checks"]), id


def test_a_cell_outside_the_limits_is_marked_and_the_mark_is_explained(view, made):
    for id, calc in view.calculators.items():
        marked = sum(cell.mark == "outside" for row in tabulate(calc).cells for cell in row)
        tree = parsed(made[f"calculators/{id}.md"])
        assert len(tree.css(".bl-values .bl-outside")) == marked
        assert ("do not use it" in seen(made[f"calculators/{id}.md"])) == bool(marked)


def test_the_page_gives_its_result_without_scripts(view, made):
    # 18 inHg of vacuum lift the rail by 8.84 psi: 18 × 3.386389 / 6.894757, factors of NIST SP 811, table B.8 (recalled)
    page = seen(made[f"calculators/{rise(view)}.md"])
    assert "At manifold vacuum 18 inHg:" in page and "8.84 psi" in page


def test_the_form_carries_its_limits_in_si_and_the_place_of_each_result(view):
    id = rise(view)
    found = form(view.book.of("calculators")[id], view.calculators[id])
    data = json.loads(re.search(r'class="bl-data">(.*?)</script>', found)[1])
    vacuum = data["inputs"][0]
    assert vacuum["reference"] == "vacuum" and vacuum["low"] == 0
    assert vacuum["high"] == pytest.approx(
        25 * 3386.389, rel=1e-6
    )  # inHg conventional, NIST SP 811 table B.8 (recalled)
    assert [r["line"] for r in data["results"]] == [
        list(view.calculators[id].lines).index(r) for r in view.calculators[id].results
    ]


def test_json_in_a_page_cannot_end_the_script_that_holds_it(view):
    for id, calc in view.calculators.items():
        data = re.search(r'class="bl-data">(.*?)</script>', form(view.book.of("calculators")[id], calc))[1]
        assert "<" not in data and "&" not in data


def test_a_procedure_that_names_a_calculator_holds_its_table(view, made):
    owners = [
        r for kind in ("procedures", "systems") for r in view.live(kind) if isinstance(r.data.get("calculators"), list)
    ]
    assert owners
    for record in owners:
        tree = parsed(made[f"{record.kind}/{record.id}.md"])
        assert len(tree.css(".bl-embedded .bl-values")) >= len(record.data["calculators"])


def test_the_index_groups_calculators_by_what_comes_out(view, made):
    tree = parsed(made["calculators/index.md"])
    assert len(tree.css("ul.bl-tiles > li")) == len(view.live("calculators"))
    # Powers of m, kg, s, K, A as the SI brochure derives them: pascal, volt, litre a second, a pure number, square metre.
    expected = {
        "Pressure": (-1, 1, -2, 0, 0),
        "Electricity": (2, 1, -3, 0, -1),
        "Flow, volume and mass": (3, 0, -1, 0, 0),
        "Ratios, shares and counts": (0, 0, 0, 0, 0),
        "Others": (2, 0, 0, 0, 0),
    }
    assert {group: group_of(dimension) for group, dimension in expected.items()} == {group: group for group in expected}
