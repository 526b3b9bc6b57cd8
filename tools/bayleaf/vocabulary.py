"""Every id of the book that code relies on. A rule that knows an act or a state by name goes blind when the book renames it: BOOK-9 asks the book for each of these."""

from __future__ import annotations

from collections.abc import Iterator


class Acts:
    """What a step does."""

    BLEED = "bleed"
    BOND = "bond"
    CLAMP = "clamp"
    CLOSE_CAP = "close-cap"
    CLOSE_JOINT = "close-joint"
    CONNECT = "connect"
    CONNECT_ELECTRICAL = "connect-electrical"
    COOL_DOWN = "cool-down"
    CRANK = "crank"
    CRANK_DISABLED = "crank-disabled"
    DISCONNECT = "disconnect"
    DISCONNECT_ELECTRICAL = "disconnect-electrical"
    DRIVE = "drive"
    ENERGISE_PUMP = "energise-pump"
    HAND_OVER = "hand-over"
    KEY_OFF = "key-off"
    KEY_ON = "key-on"
    LEAK_CHECK = "leak-check"
    LIFT_SEAT = "lift-seat"
    OPEN_CAP = "open-cap"
    OPEN_JOINT = "open-joint"
    POUR = "pour"
    PRESSURISE = "pressurise"
    REFIT_SEAT = "refit-seat"
    START_ENGINE = "start-engine"
    STOP_ENGINE = "stop-engine"
    STOP_PUMP = "stop-pump"
    UNBOND = "unbond"
    UNCLAMP = "unclamp"


class States:
    """What stands between steps."""

    AIR_INLET_OPEN = "air-inlet-open"
    CONTAINER_BONDED = "container-bonded"
    EXHAUST_COOL = "exhaust-cool"
    FUEL_PRESSURE_RELIEVED = "fuel-pressure-relieved"
    HIGH_SIDE_SAFE = "high-side-safe"
    JOINT_OPEN = "joint-open"
    JOINT_UNPROVED = "joint-unproved"
    PUMP_DISABLED = "pump-disabled"
    RUNNING = "running"
    TANK_DRAINED = "tank-drained"
    TANK_SHUT = "tank-shut"
    ZERO_SEEN = "zero-seen"


class Quantities:
    """What readings and steps measure."""

    AIR_FUEL_RATIO = "air-fuel-ratio"
    AIR_TEMPERATURE = "air-temperature"
    ALTITUDE = "altitude"
    BAROMETRIC_PRESSURE = "barometric-pressure"
    BOOST_PRESSURE = "boost-pressure"
    CARBON_DIOXIDE = "carbon-dioxide"
    CARBON_MONOXIDE = "carbon-monoxide"
    DISTANCE = "distance"
    ENGINE_LOAD = "engine-load"
    ENGINE_SPEED = "engine-speed"
    FUEL_TRIM = "fuel-trim"
    HYDROCARBONS = "hydrocarbons"
    LAMBDA = "lambda"
    NITRIC_OXIDE = "nitric-oxide"
    OXYGEN = "oxygen"
    OXYGEN_PUMP_CURRENT = "oxygen-pump-current"
    OXYGEN_SENSOR_VOLTAGE = "oxygen-sensor-voltage"
    RELATIVE_HUMIDITY = "relative-humidity"
    VEHICLE_SPEED = "vehicle-speed"
    VOLTAGE_DROP = "voltage-drop"


class Components:
    """Parts whose ids, or ids that begin or end with theirs, mean more than their place on a path."""

    TURBOCHARGER = "turbocharger"


class Equipment:
    """Instruments that differ from a gauge in what they may be read on."""

    SCAN_TOOL = "scan-tool"


# Each kind of record with the ids of it that code relies on.
_NEEDED = {"acts": Acts, "states": States, "quantities": Quantities, "components": Components, "equipment": Equipment}


def needed() -> Iterator[tuple[str, str]]:
    """(kind, id) of everything that a book must hold."""
    for kind, ids in _NEEDED.items():
        yield from ((kind, id) for name, id in vars(ids).items() if name.isupper())
