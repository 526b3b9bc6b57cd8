"""The live form in a real Chromium: it reads, refuses and yields as the command does."""

from __future__ import annotations

from importlib.resources import files

import pytest

from bayleaf.formulas import script
from bayleaf.pages.parts.form import form
from tests.reference.outside import book, calculator

RAIL, VERDICT, PULSE, WIRE = (
    "regulator-rail-pressure",
    "verdict-with-gauge-error",
    "injector-pulse-width",
    "wire-drop",
)


@pytest.fixture
def typed(chromium):
    """typed(id, name=text, …) types into the form of a calculator; gives what it says, and what stands in its fields."""
    page = chromium.new_page()

    def run(id: str, **values: str) -> tuple[str, dict[str, str]]:
        page.set_content(str(form(book().of("calculators")[id], calculator(id))))
        page.add_script_tag(content=script({id: calculator(id)}))
        page.add_script_tag(content=files("bayleaf.pages").joinpath("assets/bayleaf.js").read_text(encoding="utf-8"))
        for name, text in values.items():
            page.locator(f"input[name={name}]").fill(text)
        fields = {name: page.locator(f"input[name={name}]").input_value() for name in calculator(id).inputs}
        return page.locator(".bl-calculator").inner_text(), fields

    yield run
    page.close()


def test_boost_makes_the_vacuum_yield(typed):
    said, fields = typed(RAIL, boost="10")
    assert fields["manifold_vacuum"] == "0"
    assert "53.5 psi" in said  # 43.5 and 10, by hand


@pytest.mark.parametrize("text", ["300 kPa", "300kPa", "3 bar", "3e2 kPa", ".3 MPa", "3,000 mbar"])
def test_a_number_with_its_unit_is_read_as_the_command_reads_it(typed, text):
    said, _ = typed(RAIL, set_pressure=text, boost="0", manifold_vacuum="0")
    assert "43.5 psi (300 kPa)" in said


@pytest.mark.parametrize("text", ["43,5", "0,300", "1,01", "43.5 lb/h", "1e", "nan", "much"])
def test_what_is_no_number_or_no_unit_is_refused(typed, text):
    said, _ = typed(RAIL, set_pressure=text)
    assert "Mend the marked value first." in said and "Write a number" in said


def test_what_contradicts_itself_is_refused_with_both_named(typed):
    said, _ = typed(VERDICT, low="62", high="55")
    assert "low and high cannot be so: the low limit lies below the high one." in said


def test_the_verdict_is_said_in_words(typed):
    assert "too close to call" in typed(VERDICT, reading="56")[0]
    assert "outside, whatever the gauge's error" in typed(VERDICT, reading="52")[0]


def test_counts_are_whole_and_a_larger_wire_is_not_number_0(typed):
    assert "Write a whole number." in typed(PULSE, cylinders="3.5")[0]
    assert "00 is -1" in typed(WIRE, gauge_number="00")[0]
