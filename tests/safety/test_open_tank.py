"""What the rules say of steps in the book's own vocabulary: words that name no act, fuel that flows, and a tank that stands open.

That a container is bonded before fuel flows, that vapour and hot exhaust are kept apart, and that nobody works alone at a
drained tank is common practice, no source.
"""

from __future__ import annotations

import pytest

from bayleaf.checks import all_rules
from tests.safety.test_safety_table import POUR, walk


def says(code: str, *steps: dict, **more) -> list[str]:
    """What one rule says of a procedure of these steps."""
    context, record = walk(*steps, **more)
    return [f.message for rule in all_rules() if rule.code == code for f in rule.find(record, context)]


@pytest.mark.parametrize(
    "words",
    [
        "Pour the fuel back into the tank.",
        "Fill four portions, while the second person writes.",
        "Empty the old filter into the container.",
        "Draw the fuel out of the bowl with the hand pump.",
        "Drain the tank into the cart.",
        "Let the old piece drain into the container.",
        "Take the bonding lead off last.",
        "Loosen the filler cap until the hiss ends.",
        "Screw the filler cap on until it clicks.",
        "Lift the rear seat over the module.",
        "Put the floor plate back.",
    ],
)
def test_words_that_let_fuel_flow_or_open_the_tank_name_their_act(words):
    asked = says("SAFE-41", {"do": words})
    acts = [
        a
        for a in ("pour", "unbond", "open-cap", "close-cap", "lift-seat", "refit-seat")
        if not says("SAFE-41", {"do": words, "act": a})
    ]
    assert len(asked) == len(acts) == 1


@pytest.mark.parametrize(
    "words",
    [
        "Fill water into the tube up to its lower mark.",
        "Fill the form in.",
        "Draw the screws crosswise.",
        "Empty your pockets.",
        "Lift the module out.",
        "Put the cap back on the bottle.",
        "Take the gas hose off.",
    ],
)
def test_words_that_let_no_fuel_flow_need_no_act(words):
    assert says("SAFE-41", {"do": words}) == []


def test_an_act_of_the_second_person_is_an_act():
    assert says("SAFE-41", {"do": "Let the second person start the engine."}) == [
        "the words of step 1 are 'start the engine', and it has no act"
    ]
    assert says("SAFE-41", {"do": "When it is cold, have the helper switch the key on."})
    assert says("SAFE-41", {"do": "Let the second person hold the hose at the lid."}) == []


HOSE_OFF, HOSE_ON = {"act": "disconnect", "at": "canister"}, {"act": "connect", "at": "canister"}
CAP_OFF, CAP_ON, KEY, COOL = (
    {"act": "open-cap", "at": "neck"},
    {"act": "close-cap", "at": "neck"},
    {"act": "key-on"},
    {"act": "cool-down"},
)


@pytest.mark.parametrize(
    ("code", "steps", "many"),
    [
        ("SAFE-5", [HOSE_OFF], 1),
        ("SAFE-5", [COOL, HOSE_OFF], 0),
        ("SAFE-5", [{"act": "disconnect", "at": "hose"}], 0),
        ("SAFE-4", [COOL, HOSE_OFF, {"act": "connect-electrical", "at": "pump"}], 1),
        ("SAFE-4", [COOL, HOSE_OFF, HOSE_ON, {"act": "connect-electrical", "at": "pump"}], 0),
        ("SAFE-4", [CAP_OFF, KEY], 1),
        ("SAFE-4", [CAP_OFF, CAP_ON, KEY], 0),
        ("SAFE-4", [KEY, CAP_OFF], 1),
        ("SAFE-6", [{"act": "lift-seat", "at": "tank"}], 1),
        ("SAFE-3", [CAP_OFF], 1),
        ("SAFE-3", [CAP_OFF, CAP_ON], 0),
        ("SAFE-4", [{"act": "start-engine"}, POUR], 1),
        ("SAFE-59", [{"sets": ["tank-drained"]}], 1),
    ],
    ids=[
        "vapour line off hot",
        "vapour line off cool",
        "a vacuum hose may come off hot",
        "spark beside an open vapour line",
        "vapour line back on first",
        "key on with the filler open",
        "cap on first",
        "filler opened with the key on",
        "seat not put back",
        "cap left off",
        "cap put on",
        "poured with the engine on",
        "a tank drained by one person",
    ],
)
def test_what_an_open_tank_asks(code, steps, many):
    assert len(says(code, *steps)) == many


BOND, UNBOND = {"act": "bond"}, {"act": "unbond"}


@pytest.mark.parametrize(
    ("steps", "where", "many"),
    [
        ([POUR], "bay", 1),
        ([BOND, POUR], "bay", 0),
        ([BOND, UNBOND, POUR], "lift", 1),
        ([BOND, POUR, UNBOND], "bay", 0),
        ([POUR], "bench", 0),
        ([{"act": "bleed", "at": "rail"}], "bay", 1),
        ([{"act": "bleed", "at": "radiator"}], "bay", 0),
    ],
    ids=[
        "poured unbonded",
        "bonded first",
        "unbonded too soon",
        "unbonded last",
        "a glass on the bench",
        "bled unbonded",
        "coolant needs no bond",
    ],
)
def test_fuel_flows_only_where_its_container_is_bonded(steps, where, many):
    assert len(says("SAFE-57", *steps, where=where)) == many
