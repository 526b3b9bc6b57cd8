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
