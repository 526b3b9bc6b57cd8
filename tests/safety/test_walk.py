"""Walking a procedure: what stands, what a step ends, and what is noted.

The states and acts are a small vocabulary of this file's own; that a relief ends when the key turns, and that one
cools first and relieves last, is common practice, no source.
"""

from __future__ import annotations

import pytest

from bayleaf.checks.context import Context
from tests.data import book_of

ACTS = {
    "open-joint": {"implies": "none", "undone_by": "close-joint"},
    "close-joint": {"implies": "none"},
    "disconnect": {"implies": "none", "undone_by": "connect"},
    "connect": {"implies": "none"},
    "disconnect-electrical": {"implies": "none", "undone_by": "connect-electrical"},
    "connect-electrical": {"implies": "none"},
    "key-on": {"implies": "none", "undone_by": "key-off"},
    "key-off": {"implies": "none"},
    "bleed": {"implies": "none"},
    "energise-pump": {"implies": "none", "undone_by": "stop-pump"},
    "stop-pump": {"implies": "none"},
    "start-engine": {"implies": ["key-on", "energise-pump"], "undone_by": "stop-engine"},
    "stop-engine": {"implies": ["key-off", "stop-pump"]},
    "cool-down": {"implies": "none"},
    "leak-check": {"implies": "none"},
}
STATES = {
    "running": {"set_by": ["start-engine"], "ended_by": ["stop-engine"], "forbids": ["open-joint"]},
    "cool": {"set_by": ["cool-down"], "ended_by": ["start-engine"]},
    "hot": {"set_by": ["start-engine"], "ended_by": ["cool-down"]},
    "relieved": {"ended_by": ["key-on", "energise-pump", "start-engine", "cool-down"]},
    "open": {
        "set_by": ["open-joint"],
        "carries": ["fuel"],
        "requires": ["relieved", "cool"],
        "ended_by": ["close-joint"],
        "forbids": ["key-on", "energise-pump", "start-engine"],
        "each": "joint",
    },
    "unproved": {
        "set_by": ["close-joint"],
        "carries": ["fuel"],
        "ended_by": ["leak-check"],
        "forbids": ["start-engine"],
        "each": "joint",
    },
    "gauge": {"ended_by": "none", "forbids": ["hand-over"], "connection": True},
    "fuse-out": {"ended_by": "none", "forbids": ["start-engine"]},
}
CONDITIONS = {
    "priming": ["key-on", "energise-pump"],
    "hot-idle": ["running", "hot", "key-on"],
    "cold": ["cool"],
    "key-out": ["key-off"],
}
PATHS = [
    {
        "name": "supply",
        "carries": "fuel",
        "side": "low",
        "through": ["tank", "rail"],
        "greatest": {"value": 130, "unit": "psi"},
    },
    {"name": "reference", "carries": "vacuum", "through": ["manifold", "hose"]},
]
READY = [
    {"do": "Let it cool.", "act": "cool-down"},
    {"do": "Bleed it.", "act": "bleed", "at": "rail", "sets": ["relieved"]},
]


def entries(data: dict) -> dict:
    return {id: {"title": id.capitalize(), **entry} for id, entry in data.items()}


def procedure(*steps: dict, **fields) -> dict:
    needs = {"states": fields.pop("needs", "none"), "equipment": "none", "people": 1}
    return {
        "title": "P",
        "systems": ["port"],
        "inherits": "none",
        "needs": needs,
        "leaves": "none",
        "where": ["bay"],
        "steps": list(steps),
        **fields,
    }


def walked(*steps: dict, others: dict | None = None, **fields):
    book = book_of(
        {
            "acts": entries(ACTS),
            "states": entries(STATES),
            "conditions": entries({id: {"implies": implied} for id, implied in CONDITIONS.items()}),
            "systems": {"port": {"title": "Port", "family": "fuel", "paths": PATHS}},
            "components": {
                id: {"title": id} for id in ("tank", "rail", "hose", "manifold", "filter", "fuse", "other-fuse")
            }
            | {"port-of-rail": {"title": "Port", "part_of": "rail"}},
            "procedures": {"p": procedure(*steps, **fields), **(others or {})},
        }
    )
    return Context(book).procedures.walk(book.get("p"))


def notes(walk, kind: str) -> list[tuple]:
    return [(i, n.what, n.other) for i, step in enumerate(walk.steps) for n in step.notes if n.kind == kind]


def test_an_act_sets_the_states_that_name_it_and_ends_their_opposites():
    walk = walked({"do": "Cool.", "act": "cool-down"}, {"do": "Start.", "act": "start-engine"})
    assert walk.steps[0].has == {"cool"}
    assert walk.steps[1].has == {"running", "hot"}


def test_what_an_act_implies_is_done_too():
    walk = walked({"do": "Start.", "act": "start-engine"})
    assert walk.steps[0].acts == {"start-engine", "key-on", "energise-pump"}


@pytest.mark.parametrize("act", ["key-on", "energise-pump", "start-engine", "cool-down"])
def test_relief_is_gone_after(act):
    assert "relieved" not in walked(*READY, {"do": "Do it.", "act": act}).steps[-1].has


def test_relief_is_gone_after_a_step_in_a_condition_that_turns_the_key():
    assert "relieved" not in walked(*READY, {"do": "Read.", "when": "priming"}).steps[-1].has


def test_a_joint_opened_cool_and_relieved_lacks_nothing():
    assert notes(walked(*READY, {"do": "Open.", "act": "open-joint", "at": "rail"}), "lacks") == []


def test_relieved_first_and_cooled_last_lacks_the_relief():
    walk = walked(READY[1], READY[0], {"do": "Open.", "act": "open-joint", "at": "rail"})
    assert notes(walk, "lacks") == [(2, "open", "relieved")]
    assert walk.last("ended", "relieved", 2) == 1


def test_a_vacuum_hose_is_no_fuel_joint():
    assert "open" not in walked({"do": "Open.", "act": "open-joint", "at": "hose"}).steps[0].has


def test_a_part_of_the_rail_lies_on_the_rails_path():
    assert ("open", "port-of-rail") in walked(*READY, {"do": "Open.", "act": "open-joint", "at": "port-of-rail"}).end


def test_closing_one_joint_leaves_the_other_open():
    walk = walked(
        *READY,
        {"do": "Open.", "act": "open-joint", "at": "rail"},
        {"do": "Open.", "act": "open-joint", "at": "tank"},
        {"do": "Close.", "act": "close-joint", "at": "tank"},
    )
    assert {k for k in walk.end if k[0] in ("open", "unproved")} == {("open", "rail"), ("unproved", "tank")}


def test_a_look_that_names_no_joint_is_of_every_joint():
    walk = walked(
        *READY,
        *({"do": "x", "act": act, "at": at} for act in ("open-joint", "close-joint") for at in ("rail", "tank")),
        {"do": "Look.", "act": "leak-check"},
    )
    assert not any(state == "unproved" for state, _at in walk.end)


def test_a_look_at_one_joint_proves_no_other():
    walk = walked(
        *READY,
        *({"do": "x", "act": act, "at": at} for act in ("open-joint", "close-joint") for at in ("rail", "tank")),
        {"do": "Look.", "act": "leak-check", "at": "rail"},
    )
    assert ("unproved", "tank") in walk.end and ("unproved", "rail") not in walk.end


def test_an_act_that_a_standing_state_forbids_is_noted():
    walk = walked(*READY, {"do": "Open.", "act": "open-joint", "at": "rail"}, {"do": "Key.", "act": "key-on"})
    assert notes(walk, "forbidden") == [(3, "open", "key-on")]


def test_a_condition_can_be_forbidden_too():
    walk = walked(*READY, {"do": "Open.", "act": "open-joint", "at": "rail"}, {"do": "Read.", "when": "priming"})
    assert {(what, other) for _i, what, other in notes(walk, "forbidden")} == {
        ("open", "key-on"),
        ("open", "energise-pump"),
    }


def test_a_joint_opened_while_the_key_is_still_on_is_noted():
    walk = walked(
        READY[0], {"do": "Key.", "act": "key-on"}, READY[1], {"do": "Open.", "act": "open-joint", "at": "rail"}
    )
    assert notes(walk, "under-way") == [(3, "open", "key-on")]


def test_what_was_disconnected_is_left_until_it_is_connected_at_the_same_part():
    pulled = {"do": "Pull.", "act": "disconnect", "at": "hose"}
    assert set(walked(pulled, {"do": "Push.", "act": "connect", "at": "manifold"}).left) == {("disconnect", "hose")}
    assert walked(pulled, {"do": "Push.", "act": "connect", "at": "hose"}).left == {}


def test_stopping_the_engine_undoes_all_that_starting_it_brought():
    assert walked({"do": "Start.", "act": "start-engine"}, {"do": "Stop.", "act": "stop-engine"}).left == {}


def test_a_state_set_with_an_act_ends_when_that_act_is_undone_at_the_same_part():
    out = {"do": "Pull the fuse.", "act": "disconnect-electrical", "at": "fuse", "sets": ["fuse-out"]}
    assert ("fuse-out", "fuse") in walked(out, {"do": "Plug.", "act": "connect-electrical", "at": "other-fuse"}).end
    assert not walked(out, {"do": "Plug.", "act": "connect-electrical", "at": "fuse"}).end


def test_a_sentence_does_not_cool_an_engine_but_it_can_heat_one():
    walk = walked({"do": "Read.", "when": "cold"})
    assert notes(walk, "claimed") == [(0, "cool", "")] and not walk.end
    walk = walked({"do": "Cool.", "act": "cool-down"}, {"do": "Read.", "when": "hot-idle"})
    assert {state for state, _at in walk.end} == {"running", "hot"}


def test_a_condition_with_the_key_off_contradicts_a_key_that_is_on():
    walk = walked({"do": "Key.", "act": "key-on"}, {"do": "Read.", "when": "key-out"})
    assert notes(walk, "contradicted") == [(1, "key-on", "key-off")]


def test_a_followed_procedure_is_walked_in_place():
    ready = procedure(*READY)
    walk = walked({"follow": "ready"}, {"do": "Open.", "act": "open-joint", "at": "rail"}, others={"ready": ready})
    assert [s.number for s in walk.steps] == ["1", "1.1", "1.2", "2"]
    assert notes(walk, "lacks") == [] and walk.steps[2].source == "ready" and walk.steps[2].place == ("steps", 0)


def test_what_a_followed_procedure_needs_must_stand():
    use = procedure({"do": "Read."}, needs=["gauge"])
    assert notes(walked({"follow": "use"}, others={"use": use}), "unmet") == [(0, "gauge", "")]
    assert notes(walked({"follow": "use"}, others={"use": use}, needs=["gauge"]), "unmet") == []


def test_what_a_followed_procedure_ends_no_longer_stands():
    off = procedure({"do": "Take it off."}, needs=["gauge"], ends=["gauge"])
    assert walked({"follow": "off"}, others={"off": off}, needs=["gauge"]).end == {}


def test_a_circle_of_followed_procedures_comes_to_an_end():
    back = procedure({"follow": "p"})
    assert [s.number for s in walked({"follow": "back"}, others={"back": back}).steps] == ["1", "1.1"]


def test_a_preparation_hands_over_what_it_leaves_and_sets():
    prep = procedure({"do": "Cool.", "act": "cool-down", "sets": ["relieved"]}, standing=True, leaves=["cool"])
    assert set(walked({"do": "Go on."}, others={"prep": prep}, inherits=["prep"]).start) == {
        ("cool", ""),
        ("relieved", ""),
    }


def test_cautions_are_shown_from_their_step_on_and_inherited_ones_from_the_start():
    prep = procedure({"do": "x", "cautions": ["leak"]}, standing=True)
    walk = walked({"do": "a"}, {"do": "b", "cautions": ["jet"]}, others={"prep": prep}, inherits=["prep"])
    assert [s.shown for s in walk.steps] == [{"leak"}, {"leak", "jet"}]


def test_names_that_lead_nowhere_do_not_stop_the_walk():
    walk = walked(
        {"do": "x", "act": "fly", "at": "moon", "when": "never", "sets": ["bliss"], "takes": {"reading": "none-such"}},
        {"follow": "nothing"},
        needs=["unheard-of"],
        inherits=["nobody"],
    )
    assert len(walk.steps) == 2 and walk.end == {}
