"""Generic scan data: bytes decoded with int.from_bytes, the scalings of SAE J1979 recalled."""

from __future__ import annotations

from tests.reference.outside import PINT, against, published

Q = PINT.Quantity


def word(first: float, second: float) -> float:
    """Two bytes as one number, the first the greater; between whole bytes (for the sake of the test) in proportion."""
    whole = int.from_bytes(bytes((int(first), int(second))), "big")
    return whole + (first - int(first)) * 256 + (second - int(second))


@against("scan-pressure-scalings", "SAE J1979 (recalled), int.from_bytes and pint", floor=1e3)
def _(first_byte, second_byte, manifold, barometer):
    both = word(first_byte, second_byte)
    relative = Q(0.079 * both, "kPa")
    return {
        "item_0a_gauge": Q(3 * first_byte, "kPa"),
        "item_0b_absolute": Q(first_byte, "kPa"),
        "item_22_above_manifold": relative,
        "item_22_as_gauge": Q(manifold, "Pa") + relative - Q(barometer, "Pa"),
        "item_23_gauge": Q(both / 100, "MPa"),
        "item_59_absolute": Q(both / 100, "MPa"),
    }


@against(
    "scan-one-byte-scalings", "SAE J1979 (recalled): A - 40, A / 1.28 - 100, A / 200, A / 2.55, A / 2 - 64", floor=1e-2
)
def _(byte):
    return {
        "temperature": byte - 40 + 273.15,
        "trim": (byte / 1.28 - 100) / 100,
        "oxygen_sensor": byte / 200,
        "share": byte / 2.55 / 100,
        "advance": (byte / 2 - 64) / 360,
    }


@against("scan-two-byte-scalings", "SAE J1979 (recalled), int.from_bytes", floor=1e-6)
def _(first_byte, second_byte):
    both = word(first_byte, second_byte)
    return {
        "engine_speed": both / 4 / 60,
        "air_flow": both / 100 / 1000,
        "air_ratio": both / 32768,
        "module_voltage": both / 1000,
        "converter_temperature": both / 10 - 40 + 273.15,
        "absolute_load": both * 100 / 255 / 100,
        "fuel_rate": both / 20 * 1e-3 / 3600,
    }


# Greatest values that the standard prints beside each item, recalled; it rounds them.
published(
    "scan-two-byte-scalings",
    "SAE J1979, greatest values (recalled)",
    rel=5e-4,
    rows=[
        (
            {"first_byte": "255", "second_byte": "255"},
            {
                "engine_speed": "16383.75 rpm",
                "air_flow": "655.35 g/s",
                "air_ratio": "1.999",
                "module_voltage": "65.535 V",
                "converter_temperature": "6513.5 degC",
                "fuel_rate": "3276.75 L/h",
                "absolute_load": "25700 %",
            },
        )
    ],
)
published(
    "scan-pressure-scalings",
    "SAE J1979, greatest values (recalled)",
    rel=2e-4,
    rows=[
        (
            {"first_byte": "255", "second_byte": "255"},
            {"item_0a_gauge": "765 kPa", "item_22_above_manifold": "5177.27 kPa", "item_23_gauge": "655350 kPa"},
        )
    ],
)
