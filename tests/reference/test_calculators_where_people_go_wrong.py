"""The usual mistakes of the trade, each as a number. Worked by hand here unless a source is named."""

from __future__ import annotations

import pytest

from bayleaf.quantities import QuantityError, from_si, read_value, to_si, units
from tests.reference.outside import calculator
from tests.reference.outside.mixture import exhaust


def calc(id: str, **texts: str) -> dict[str, float]:
    """A calculator's results in their own units; inputs as text with units."""
    one, given = calculator(id), {}
    for name, text in texts.items():
        quantity = one.inputs[name].quantity
        value, symbol = read_value(text, quantity)
        given[name] = to_si(value, symbol, quantity.reference)
    lines = one.evaluate(given)
    return {name: from_si(lines[name], r.symbol, r.quantity.reference) for name, r in one.results.items()}


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
    without = (carbon - gases["carbon_monoxide"] / 2 + gases["oxygen"] + GASES["hydrogen"] / 4 * carbon) / (1 + GASES["hydrogen"] / 4) / carbon
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


def test_density_stays_below_the_pressure_ratio_until_all_heat_is_taken_out():
    for cooler in ("0 %", "50 %", "80 %", "99 %"):
        told = calc("charge-density-ratio", boost="15 psi", cooler=cooler, cooler_loss="0 psi")
        assert told["density_ratio"] < told["pressure_ratio"]
    told = calc("charge-density-ratio", boost="15 psi", cooler="100 %", cooler_loss="0 psi")
    assert told["density_ratio"] == pytest.approx(told["pressure_ratio"], rel=1e-12)


def test_boost_of_15_psi_doubles_an_engine_by_ratio_and_not_by_air():
    told = calc("effective-displacement", displacement="350 in3", boost="15 psi", barometer="101.325 kPa")
    assert told["by_rule"] == pytest.approx(707, abs=0.5)
    assert told["by_air"] < 540


def test_boost_at_altitude_is_a_larger_ratio_of_the_local_barometer():
    told = calc("pressure-ratio-altitude", boost="10 psi", altitude="8000 ft")
    assert told["ratio"] > told["ratio_at_sea_level"]


def test_ten_and_a_half_cc_a_minute_is_true_only_at_0_72():
    assert abs(calc("injector-flow-units", mass_flow="30 lb/h", fuel_density="0.72 g/cc")["rule_off"]) < 0.01
    assert calc("injector-flow-units", mass_flow="30 lb/h", fuel_density="0.745 g/cc")["rule_off"] > 3


def test_j1349_refers_to_dry_990_hectopascals_and_25_degrees():
    assert calc("power-correction", temperature="25 degC", humidity="0 %", barometer="990 hPa")["factor"] == pytest.approx(1, rel=1e-12)
    assert calc("power-correction", temperature="25 degC", humidity="80 %", barometer="990 hPa")["factor"] > 1.02


def test_short_and_long_trim_multiply():
    assert calc("trim-product", short="20 %", long="20 %")["total"] == pytest.approx(44)


def test_low_voltage_does_not_raise_a_pump_s_current():
    at = {"known_current": "6 A", "known_pressure": "58 psi", "known_voltage": "13.5 V", "pressure": "58 psi"}
    well, low = calc("pump-current-expected", voltage="13.5 V", **at), calc("pump-current-expected", voltage="10.5 V", **at)
    assert low["current"] == well["current"]
    assert low["speed_share"] < well["speed_share"]
    assert low["by_constant_power"] > 7.5  # what is expected and never seen


def test_a_restriction_that_the_pump_sees_raises_current_and_lowers_speed():
    well, blocked = (calc("pump-current-expected", voltage="13.5 V", pressure=p) for p in ("58 psi", "90 psi"))
    assert blocked["current"] > well["current"]
    assert blocked["speed_share"] < well["speed_share"]


def test_a_wide_gauge_leaves_a_window_of_two_psi_and_cannot_prove_back_pressure():
    told = calc("gauge-good-enough", span="100 psi", grade="2 %", readability="1 psi", low="55 psi", high="62 psi")
    assert (told["window_low"], told["window_high"]) == pytest.approx((57.5, 59.5))
    assert calc("gauge-good-enough", span="100 psi", grade="3 %", readability="1 psi", low="0 psi", high="1.25 psi")["window"] < 0


def test_skin_is_judged_by_the_greatest_credible_pressure():
    told = calc("greatest-credible-pressure", set_pressure="43.5 psi", relief="100 psi", relief_spread="0 %")
    assert told["skin_share"] == pytest.approx(100)  # the usual pressure is less than half of that


def test_normal_pressure_at_idle_clears_nothing_that_two_thirds_of_the_flow_would_show():
    well = calc("voltage-drop-pump", feed_drop="0 V", ground_drop="0 V")["flow_share"]
    sick = calc("voltage-drop-pump", feed_drop="3 V", ground_drop="2 V", slip="50 %")["flow_share"]
    assert well == pytest.approx(100)
    assert sick < 40  # and an idling engine burns a few percent of the pump's flow


def test_a_leak_shows_at_idle_and_a_meter_s_error_at_every_load():
    idle, load = (calc("trim-from-leak", diameter="3 mm", metered=m)["trim"] for m in ("4 g/s", "60 g/s"))
    assert idle > 20 > 2 > load
    idle, load = (calc("trim-from-meter", meter_error="-10 %", air=a)["trim"] for a in ("4 g/s", "60 g/s"))
    assert idle == pytest.approx(load)


def test_the_same_rail_reads_differently_by_two_items_of_scan_data():
    told = calc("scan-pressure-scalings", first_byte="15", second_byte="0", manifold="35 kPa", barometer="101 kPa")
    assert told["item_22_above_manifold"] - told["item_22_as_gauge"] == pytest.approx(66)


def test_less_vacuum_in_the_mountains_is_no_fault():
    told = calc("vacuum-at-altitude", sea_level_vacuum="18 inHg", altitude="3000 ft")
    assert told["vacuum_here"] == pytest.approx(15, abs=0.2)


def test_leak_down_offers_arithmetic_and_no_size_of_a_leak():
    assert list(calculator("residual-decay").results) == ["change", "rate", "left"]
