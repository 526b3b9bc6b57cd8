"""Pairs of one slip that can kill and its safe twin, each made in one procedure of the book.

What is unsafe here is common practice of the trade, no source: pressure is let out before a joint is opened, fuel flows
only into what is bonded, nothing hot is opened, and nothing turns while a joint stands open.
"""

from __future__ import annotations

from typing import NamedTuple


class Pair(NamedTuple):
    """In procedure `base` the text `good` becomes `unsafe`, or `safe` in the twin."""

    name: str
    base: str
    good: str
    unsafe: str
    safe: str


COOL = "  - do: Let engine and exhaust cool.\n    act: cool-down\n    cautions: [open-only-cool]\n"
LONGER = COOL.replace("cool.\n", "cool for an hour or more.\n")
HAND = "  - do: Let engine and exhaust cool until a bare hand can rest on the shield.\n    act: cool-down\n    cautions: [hot-engine-and-fans, converter-burns]\n"
LEAD = "  - do: Clip the bonding lead of the container to bare metal of the car.\n"
BOND = LEAD + "    cautions: [catch-fuel-closed]\n    act: bond\n"
WAIT = "  - do: Wait a while.\n    cautions: [catch-fuel-closed]\n"
KEY = "  - do: Switch the key on.\n    act: key-on\n  - do: Switch the key off.\n    act: key-off\n"
RUN = "  - do: Start the engine.\n    act: start-engine\n    cautions: [exhaust-gas-out]\n  - do: Stop the engine.\n    act: stop-engine\n"
CRANKED = "    act: crank\n    lasts: {value: 5, unit: s, basis: {practice: true}}\n"
FUSE = "  - do: Pull the pump fuse.\n    act: disconnect-electrical\n    at: pump-fuse\n    sets: [pump-disabled]\n    equipment: [fuse-puller]\n"
CLOTH = "  - do: Lay a shop cloth around the adapter.\n"
FILTER = "  - do: Open the joint at each end of the filter slowly, under the cloth.\n"
BOTH = "  - do: Lay a shop cloth around both joints of the filter.\n"
UNSCREW = "  - do: Unscrew the front oxygen sensor with the oxygen-sensor socket.\n"
FOLLOW = "  - follow: relieve-through-gauge-bleed\n"
CHECK = "  - follow: leak-check-rail-joints\n"
STALL = "  - do: Let the engine idle until it stalls.\n"


def _instead(base: str, good: str, *pairs: tuple[str, str, str]) -> list[Pair]:
    """Several slips in one text of a procedure."""
    return [Pair(name, base, good, unsafe, safe) for name, unsafe, safe in pairs]


def _before(base: str, good: str, *pairs: tuple[str, str, str]) -> list[Pair]:
    """Several slips put in front of one text of a procedure."""
    return _instead(base, good, *((name, unsafe + good, safe + good) for name, unsafe, safe in pairs))


GLASSES = "  - do: Put the safety glasses on.\n"
PAIRS = [
    # Fuel flows into what is bonded by an act.
    *(
        Pair(
            f"{base}: the lead is only spoken of",
            base,
            BOND,
            BOND.replace("act: bond", "sets: [container-bonded]"),
            BOND.replace("Clip", "Clamp"),
        )
        for base in (
            "relieve-through-gauge-bleed",
            "relieve-direct-feed",
            "relieve-nozzle-held-pressure",
            "fit-rail-gauge",
        )
    ),
    *(
        Pair(f"{base}: nobody bonds", base, BOND, WAIT, WAIT + BOND)
        for base in ("take-fuel-sample", "take-feed-sample", "replace-fuel-filter", "bleed-supply-line-gauge")
    ),
    # Relief is fuel that leaves.
    *(
        Pair(
            f"{base}: relieved by a look at the rail",
            base,
            "    act: bleed\n",
            "",
            "    act: bleed\n    when: engine-off\n",
        )
        for base in (
            "relieve-carburettor-pressure",
            "relieve-nozzle-held-pressure",
            "relieve-through-gauge-bleed",
            "relieve-direct-feed",
            "bleed-supply-line-gauge",
        )
    ),
    *(
        Pair(
            f"{base}: the starter blinks",
            base,
            CRANKED,
            CRANKED.replace("value: 5", "value: 0.2"),
            CRANKED.replace("value: 5", "value: 6"),
        )
        for base in ("relieve-port-fuel-pressure", "relieve-throttle-body-pressure", "relieve-nozzle-held-pressure")
    ),
    *(
        Pair(f"{base}: the pump keeps its fuse", base, FUSE, "", FUSE.replace("Pull the", "Take out the"))
        for base in ("relieve-port-fuel-pressure", "relieve-throttle-body-pressure")
    ),
    Pair(
        "an engine-driven pump is cranked for relief",
        "relieve-throttle-body-pressure",
        "systems: [throttle-body-injection-low, throttle-body-injection-medium]",
        "systems: [throttle-body-injection-low, carburettor-mechanical-pump]",
        "systems: [throttle-body-injection-low]",
    ),
    Pair(
        "the starter is held for a minute",
        "relieve-port-fuel-pressure",
        CRANKED,
        CRANKED.replace("value: 5, unit: s", "value: 1, unit: min"),
        CRANKED.replace("value: 5", "value: 4"),
    ),
    # A safe state in needs comes from somewhere.
    *(
        Pair(
            f"{base}: begins relieved by nobody",
            base,
            f"  made_by: [{makers}]\n",
            "",
            f"  made_by: [{makers}, {more}]\n",
        )
        for base, makers, more in (
            ("move-airflow-plate", "relieve-nozzle-held-pressure", "relieve-port-fuel-pressure"),
            ("replace-supply-line", "relieve-port-fuel-pressure", "relieve-nozzle-held-pressure"),
            ("renew-tank-seal-or-sender", "relieve-port-fuel-pressure", "relieve-nozzle-held-pressure"),
            (
                "check-float-level",
                "relieve-carburettor-pressure, relieve-carburettor-electric-pump",
                "relieve-throttle-body-pressure",
            ),
        )
    ),
    *(
        Pair(
            f"{base}: relieved for one of its systems",
            base,
            "made_by: [relieve-carburettor-pressure, relieve-carburettor-electric-pump]",
            "made_by: [relieve-carburettor-electric-pump]",
            "made_by: [relieve-carburettor-electric-pump, relieve-carburettor-pressure]",
        )
        for base in ("set-float-level", "rebuild-carburettor", "repair-suction-line", "replace-needle-and-seat")
    ),
    Pair(
        "a needed relief in place of the step",
        "replace-fuel-filter",
        "  - follow: relieve-port-fuel-pressure\n",
        "",
        "  - do: Put the safety glasses on.\n  - follow: relieve-port-fuel-pressure\n",
    ),
    # Nothing hot is opened, and nothing turns after the relief.
    *_before(
        "remove-rail-gauge",
        CLOTH,
        ("the key once more after the relief", KEY, GLASSES),
        ("the engine once more after the relief", RUN, GLASSES),
    ),
    *_before(
        "replace-fuel-filter",
        BOTH,
        ("filter: the key after the relief", KEY, GLASSES),
        ("filter: the engine after the relief", RUN, GLASSES),
    ),
    *_instead("remove-rail-gauge", COOL, ("nobody lets the engine cool", "", LONGER)),
    *_instead("remove-rail-gauge", FOLLOW, ("the gauge comes off with nothing relieved", "", GLASSES + FOLLOW)),
    *_instead("remove-rail-gauge", CHECK, ("the port is never looked at again", "", CHECK + GLASSES)),
    *_instead(
        "measure-exhaust-back-pressure",
        HAND,
        ("the sensor comes out of a hot exhaust", "", HAND.replace("Let", "Wait and let")),
    ),
    *_before("measure-exhaust-back-pressure", UNSCREW, ("the engine runs before the sensor comes out", RUN, GLASSES)),
    Pair(
        "the manifold is opened hot",
        "renew-exhaust-gasket",
        "    act: cool-down\n",
        "",
        "    act: cool-down\n    when: engine-off\n",
    ),
    # Gas and connections.
    Pair(
        "the cap comes off under gas",
        "measure-tank-leak",
        "    act: vent\n    at: tank-vent-line\n",
        "",
        "    act: vent\n    at: tank-vent-line\n    when: engine-off\n",
    ),
    Pair(
        "the gauge is off because the page says so",
        "measure-primed-rail-pressure",
        "\nwhere:",
        "\nends: [gauge-on-rail]\nwhere:",
        "\nends: none\nwhere:",
    ),
    Pair(
        "a jumper without fuse and switch",
        "measure-delivered-volume",
        "    sets: [jumper-at-relay]\n    equipment: [fused-switched-jumper]\n",
        "    sets: [jumper-at-relay]\n",
        "    equipment: [fused-switched-jumper]\n    sets: [jumper-at-relay]\n",
    ),
]
