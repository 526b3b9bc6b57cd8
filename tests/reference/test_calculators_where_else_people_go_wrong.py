"""More of the usual mistakes of the trade, each as a number. Worked by hand here unless a source is named."""

from __future__ import annotations

import pytest

from tests.reference.outside import calculator
from tests.reference.outside import results as calc


def test_density_stays_below_the_pressure_ratio_until_all_heat_is_taken_out():
    for cooler in ("0 %", "50 %", "80 %", "99 %"):
        told = calc("charge-density-ratio", boost="15 psi", cooler=cooler, cooler_loss="0 psi")
        assert told["density_ratio"] < told["pressure_ratio"]
    told = calc("charge-density-ratio", boost="15 psi", cooler="100 %", cooler_loss="0 psi")
    assert told["density_ratio"] == pytest.approx(told["pressure_ratio"], rel=1e-12)


def test_boost_of_12_psi_makes_4_4_liters_of_2_4_by_ratio_and_not_by_air():
    told = calc("effective-displacement", displacement="2.4 L", boost="12 psi", barometer="101.325 kPa")
    # Arithmetic by hand: 2.4 L x (14.696 + 12) psi / 14.696 psi = 4.36 L.
    assert told["by_rule"] == pytest.approx(4.36, abs=0.005)
    assert told["by_air"] < 3.5


def test_boost_at_altitude_is_a_larger_ratio_of_the_local_barometer():
    told = calc("pressure-ratio-altitude", boost="10 psi", altitude="8000 ft")
    assert told["ratio"] > told["ratio_at_sea_level"]


def test_ten_and_a_half_cc_a_minute_is_true_only_at_0_72():
    assert abs(calc("injector-flow-units", mass_flow="30 lb/h", fuel_density="0.72 g/cc")["rule_off"]) < 0.01
    assert calc("injector-flow-units", mass_flow="30 lb/h", fuel_density="0.745 g/cc")["rule_off"] > 3


def test_j1349_refers_to_dry_990_hectopascals_and_25_degrees():
    assert calc("power-correction", temperature="25 degC", humidity="0 %", barometer="990 hPa")[
        "factor"
    ] == pytest.approx(1, rel=1e-12)
    assert calc("power-correction", temperature="25 degC", humidity="80 %", barometer="990 hPa")["factor"] > 1.02


def test_short_and_long_trim_multiply():
    assert calc("trim-product", short="20 %", long="20 %")["total"] == pytest.approx(44)


def test_low_voltage_does_not_raise_a_pump_s_current():
    at = {"known_current": "6 A", "known_pressure": "58 psi", "known_voltage": "13.5 V", "pressure": "58 psi"}
    well, low = (
        calc("pump-current-expected", voltage="13.5 V", **at),
        calc("pump-current-expected", voltage="10.5 V", **at),
    )
    assert low["current"] == well["current"]
    assert low["speed_share"] < well["speed_share"]
    assert low["by_constant_power"] > 7.5  # what is expected and never seen


def test_a_restriction_that_the_pump_sees_raises_current_and_lowers_speed():
    well, blocked = (calc("pump-current-expected", voltage="13.5 V", pressure=p) for p in ("58 psi", "90 psi"))
    assert blocked["current"] > well["current"]
    assert blocked["speed_share"] < well["speed_share"]


def test_a_wide_gauge_leaves_a_window_of_two_psi_and_cannot_prove_back_pressure():
    told = calc("gauge-good-enough", span="100 psi", grade="2 %", readability="1 psi", low="53.5 psi", high="60.5 psi")
    assert (told["window_low"], told["window_high"]) == pytest.approx((56, 58))
    assert (
        calc("gauge-good-enough", span="100 psi", grade="3 %", readability="1 psi", low="0 psi", high="1.25 psi")[
            "window"
        ]
        < 0
    )


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


def test_gasoline_s_lower_limit_is_given_as_1_2_or_1_4_percent():
    strict, usual = (
        calc("spilled-fuel-vapour", spilled="1 L", lower_limit=limit)["burnable"] for limit in ("1.2 %", "1.4 %")
    )
    assert strict / usual == pytest.approx(1.4 / 1.2)
    assert usual > 15  # a garage, from one litre that all evaporates
