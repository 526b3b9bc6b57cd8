"""The usual mistakes of the trade, each as a number. Worked by hand here unless a source is named."""

from __future__ import annotations

import pytest

from bayleaf.quantities import QuantityError, read_value, units
from tests.reference.outside import calculator
from tests.reference.outside import results as calc
from tests.reference.outside.mixture import exhaust


def test_vacuum_lowers_the_gauge_and_not_the_injector():
    told = calc("injector-pressure-layouts", set_pressure="43.5 psi", manifold_vacuum="18 inHg", boost="0 psi")
    assert told["referenced_gauge"] == pytest.approx(34.7, abs=0.05)
    assert told["referenced_across"] == pytest.approx(43.5)
    assert told["in_tank_across"] == pytest.approx(43.5 + 8.84, abs=0.01)  # in the tank it is the reverse


def test_boost_raises_the_gauge_or_is_lost_across_the_injector():
    told = calc("injector-pressure-layouts", set_pressure="43.5 psi", manifold_vacuum="0 inHg", boost="10 psi")
    assert told["referenced_gauge"] == pytest.approx(53.5)
    assert told["referenced_across"] == pytest.approx(43.5)
    assert told["in_tank_across"] == pytest.approx(33.5)


def test_a_vacuum_is_never_typed_with_a_minus():
    with pytest.raises(QuantityError, match="a vacuum is a positive number; write 18 inHg"):
        read_value("-18 inHg", calculator("regulator-rail-pressure").inputs["manifold_vacuum"].quantity)


def test_flow_follows_the_root_and_not_the_pressure():
    told = calc("injector-flow-at-pressure", rated_flow="100 cc/min", rated_pressure="40 psi", pressure="10 psi")
    assert told["flow"] == pytest.approx(50)


def test_the_same_boost_is_a_larger_ratio_at_altitude():
    low = calc("compressor-outlet-temperature", boost="10 psi", barometer="101.325 kPa")
    high = calc("compressor-outlet-temperature", boost="10 psi", barometer="84.3 kPa")  # about 5000 ft
    assert (low["ratio"], high["ratio"]) == pytest.approx((1.680, 1.818), abs=1e-3)
    assert high["outlet"] > low["outlet"]


def test_the_two_inches_of_mercury_differ_by_a_quarter_percent():
    at_60_fahrenheit = 3376.85  # Pa, NIST SP 811 table B.8, recalled
    assert units()["inHg"].factor / at_60_fahrenheit - 1 == pytest.approx(0.0028, abs=5e-5)


@pytest.mark.parametrize(("injections", "divisor"), [("1", 1200), ("2", 600)])
def test_duty_is_milliseconds_times_rpm_over_1200_or_600(injections, divisor):
    told = calc("injector-duty", pulse_width="7 ms", engine_speed="4200 rpm", injections=injections)
    assert told["duty"] == pytest.approx(7 * 4200 / divisor)


def test_the_trade_s_20_and_80_percent_on_time_is_far_from_idle_and_near_full_load():
    assert calc("injector-duty", pulse_width="2.5 ms", engine_speed="750 rpm")["duty"] < 3
    assert 65 < calc("injector-duty", pulse_width="15 ms", engine_speed="6000 rpm")["duty"] < 85


GASES = {"hydrogen": 1.87, "oxygen": 0.0}


def lambda_of(gases: dict[str, float], **instead: float) -> float:
    given = gases | {"hydrogen_carbon": GASES["hydrogen"], "oxygen_carbon": GASES["oxygen"]} | instead
    return calculator("lambda-from-gases").evaluate(given)["air_ratio"]


def test_hydrocarbons_count_as_hexane_and_nitric_oxide_as_a_share():
    gases = exhaust(1.1, **GASES, monoxide=0.01, unburnt=0.02, nitric=0.02)
    assert lambda_of(gases) == pytest.approx(1.1, rel=1e-12)
    assert lambda_of(gases, hydrocarbons=gases["hydrocarbons"] * 6) == pytest.approx(1.0)  # carbon typed as hexane
    assert lambda_of(gases, nitric_oxide=0.0) < 1.1


def test_without_the_water_gas_term_rich_gas_reads_wrong():
    gases = exhaust(0.9, **GASES, monoxide=0.3, unburnt=0.0, nitric=0.0)
    assert lambda_of(gases) == pytest.approx(0.9, rel=1e-12)
    carbon = gases["carbon_dioxide"] + gases["carbon_monoxide"]
    without = (
        (carbon - gases["carbon_monoxide"] / 2 + gases["oxygen"] + GASES["hydrogen"] / 4 * carbon)
        / (1 + GASES["hydrogen"] / 4)
        / carbon
    )
    assert without - 0.9 > 0.02


def test_the_constants_of_another_fuel_move_lambda():
    gases = exhaust(1.0, hydrogen=3.0, oxygen=0.5, monoxide=0.02, unburnt=0.0, nitric=0.0)  # ethanol
    assert lambda_of(gases, hydrogen_carbon=3.0, oxygen_carbon=0.5) == pytest.approx(1.0, rel=1e-12)
    assert abs(lambda_of(gases) - 1.0) > 1e-4


def test_air_that_leaks_in_before_the_probe_reads_lean():
    gases = exhaust(1.0, **GASES, monoxide=0.01, unburnt=0.0, nitric=0.0)
    leak = 0.05  # a twentieth of the sample is air
    diluted = {name: share * (1 - leak) for name, share in gases.items()}
    diluted["oxygen"] += leak * 0.209476
    assert lambda_of(diluted) == pytest.approx(1.049, abs=1e-3)


def test_ratios_average_by_mass_and_labels_are_by_volume():
    told = calc("stoichiometric-ethanol", ethanol_share="85 %", gasoline_ratio="14.7", gasoline_density="745 kg/m3")
    by_volume = 0.85 * 9.005 + 0.15 * 14.7
    assert told["mass_share"] == pytest.approx(85.72, abs=0.01)
    assert by_volume - told["ratio"] == pytest.approx(0.041, abs=0.002)


def test_e10_wants_about_14_1():
    assert calc("stoichiometric-ethanol", ethanol_share="10 %")["ratio"] == pytest.approx(14.1, abs=0.01)


def test_low_pressure_makes_a_positive_trim_and_hides_until_36_psi():
    assert 9.5 < calc("trim-from-pressure", calibrated="43.5 psi", actual="36 psi")["trim"] < 10
    assert calc("trim-from-pressure", calibrated="43.5 psi", actual="35.9 psi")["trim"] == pytest.approx(10.1, abs=0.05)


def test_an_odd_number_of_bars_gives_two_ripples_a_bar():
    told = calc("pump-speed-waveform", repeat="10 ms", bars="7", humps_a_bar="2")
    assert told["speed"] == pytest.approx(6000)
    assert told["hump_frequency"] / 7 * 60 == pytest.approx(2 * told["speed"])  # counted as bars it is twice too fast


def test_copper_s_coefficient_belongs_to_20_degrees():
    right = calc("coil-resistance", at_20="14 ohm", temperature="80 degC")["resistance"]
    from_zero = 14 * (1 + 0.00393 * 80)
    assert from_zero - right == pytest.approx(14 * 0.00393 * 20)
