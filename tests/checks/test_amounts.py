"""Every number with a unit is found, with the quantity that it belongs to."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.checks import all_rules
from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import ROLES, Amounts
from bayleaf.records import load
from tests.checks.small import load_small

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def context():
    return Context(load_small())


def amounts(context: Context, id: str) -> dict[str, tuple]:
    """Path to (role, quantity, unit, numbers) of a record's amounts."""
    return {
        ".".join(map(str, s.path)): (s.role, s.meant and s.meant.id, s.unit, list(s.numbers.values()))
        for s in context.amounts.of(context.book.get(id))
    }


def test_bands_belong_to_the_quantity_of_their_reading(context):
    found = amounts(context, "port-injection-return")
    assert found["bands.rail-pressure-primed"] == ("band", "rail-pressure", "psi", [36, 65])
    assert found["bands.manifold-vacuum-idle"] == ("band", "manifold-vacuum", "inHg", [12, 22])
    assert found["bands.injector-pressure-idle"] == (
        "band",
        "pressure-across-injector",
        "psi",
        [36, 65],
    )  # what its calculator gives
    assert found["paths.0.greatest"] == ("value", "rated-pressure", "psi", [130])


def test_an_instrument_has_widths_and_ranges(context):
    found = amounts(context, "gauge-0-100")
    assert found["range"][0] == found["error.zones.1"][0] == "range"
    assert found["readability"] == ("width", "rail-pressure", "psi", [1]) and found["rated"] == (
        "value",
        "rated-pressure",
        "psi",
        [150],
    )


def test_a_step_says_its_quantity_by_its_unit(context):
    assert amounts(context, "relieve-fuel-pressure")["steps.2.stop_at"] == ("value", "fuel-volume", "L", [0.5])
    assert amounts(context, "measure-primed-pressure")["steps.0.lasts"] == ("value", "time", "s", [2])


def test_a_calculator_has_limits_results_and_checks(context):
    found = amounts(context, "pressure-across-injector-idle")
    assert found["inputs.rail"] == ("range", "rail-pressure", "psi", [35, 0, 100])
    assert found["result.across"] == ("unit", "pressure-across-injector", "psi", [])
    assert found["checks.0.gives.across.within"] == ("width", "pressure-across-injector", "psi", [0.02])


def test_jobs_vehicles_and_fuels_have_theirs(context):
    assert amounts(context, "parks-van-no-power")["readings.0"] == ("reading", "rail-pressure", "psi", [35])
    assert amounts(context, "parks-van")["altitude"] == ("value", "altitude", "m", [120])
    assert amounts(context, "e10")["density"] == ("value", "fuel-density", "kg/m3", [745])


def test_every_number_beside_a_unit_is_an_amount(context):
    """Walks the raw data of the whole small book: no map with a unit and a number is missed."""
    missed = []
    for record in context.book.records():
        held = {path for amount in context.amounts.of(record) for path in amount.numbers}
        for path, value in _numbers(record.data, ()):
            if path not in held:
                missed.append((record.id, path, value))
    assert missed == []


def _numbers(data: object, path: tuple):
    if isinstance(data, dict):
        for key, value in data.items():
            if (
                "unit" in data
                and isinstance(value, int | float)
                and not isinstance(value, bool)
                and key not in ("digits", "percent_of_span")
            ):
                yield (*path, key), value
            yield from _numbers(value, (*path, key))
    elif isinstance(data, list):
        for i, value in enumerate(data):
            yield from _numbers(value, (*path, i))


def test_rules_are_asked_about_every_role_whose_numbers_they_judge():
    """A rule that names its roles must name them all."""
    rules = {rule.code: rule for rule in all_rules()}
    book = load(ROOT)
    numbers = Amounts(book)
    seen: set[str] = set()
    for record in book.records():
        for amount in numbers.of(record):
            seen.add(amount.role)
            if len({path[-1] for path in amount.numbers} & {"min", "max"}) == 2:
                assert rules["UNIT-4"].asks(record.kind, amount.role), f"{record.id} {amount.path}"
            if amount.numbers and amount.role != "width":
                assert rules["UNIT-5"].asks(record.kind, amount.role), f"{record.id} {amount.path}"
            if amount.numbers:
                assert any(
                    rules[code].asks(record.kind, amount.role) for code in ("UNIT-2", "UNIT-3", "UNIT-6", "JOB-8")
                ), f"{record.id} {amount.path}"
    assert seen == set(ROLES)
