"""What the rules of the walk let pass, and what they say once and not twice.

A foreman's measure, common practice, no source: a disconnection that is put back is no defeat, a sentence that
forbids a practice orders none, and a caution is not counted for its own sake.
"""

from __future__ import annotations

import pytest

from bayleaf.checks import check
from bayleaf.checks.rule import Example
from tests.checks.small import lay_out, load_at

FIT, OFF, HIGH, IDLE, LOOK = (
    f"procedures/{p}.yaml"
    for p in ("fit-gauge", "take-gauge-off", "read-high-side", "measure-idle-pressure", "look-into-regulator-hose")
)
COUNT = "  - {do: Count the fuel lines that end at the rail.,"


def said(tmp_path, *slips: tuple[str, str, str]) -> list[tuple[str, str]]:
    root = lay_out(tmp_path, *(Example(*slip) for slip in slips))
    return [(f.code, f.record) for f in check(load_at(root)) if f.code.startswith("SAFE") and f.level == "error"]


@pytest.mark.parametrize(
    ("file", "good", "bad"),
    [
        (
            LOOK,
            "  - {do: Look into the hose for fuel.,",
            (
                "  - {do: Start the engine., act: start-engine, cautions: [running-engine, hot-parts]}\n"
                "  - {do: Stop the engine., act: stop-engine}\n  - {do: Look into the hose for fuel.,"
            ),
        ),
        ("procedures/recognise-the-rail.yaml", COUNT, "  - {do: Never bypass the converter.}\n" + COUNT),
        ("procedures/recognise-the-rail.yaml", COUNT, "  - {do: Do not feel for a leak with a finger.}\n" + COUNT),
        ("procedures/recognise-the-rail.yaml", COUNT, "  - {do: Wait with the key off.}\n" + COUNT),
        ("procedures/recognise-the-rail.yaml", COUNT, "  - {do: Look at the oxygen sensor for soot.}\n" + COUNT),
        ("procedures/recognise-the-rail.yaml", COUNT, "  - {do: Open the bonnet.}\n" + COUNT),
        (
            OFF,
            "  - {do: Look at the port with a lamp., act: leak-check, at: fuel-test-port,",
            "  - {do: Look at the port with a lamp., act: leak-check,",
        ),
        (
            FIT,
            "  - {do: Look at the joint with a lamp.,",
            "  - {do: Switch the key off., act: key-off}\n  - {do: Switch the key on again., act: key-on}\n  - {do: Look at the joint with a lamp.,",
        ),
    ],
    ids=[
        "engine run with the vacuum hose off",
        "a sentence that forbids a defeat",
        "a sentence that forbids a hand",
        "waiting with the key off",
        "an oxygen sensor is no oxygen",
        "a bonnet is no joint",
        "a look that names no joint",
        "primed twice before the look",
    ],
)
def test_the_checker_lets_this_pass(file, good, bad, tmp_path):
    assert said(tmp_path, (file, good, bad)) == []


SHOWN = "misleads: [A hose that hangs down drains before anybody looks.]"


@pytest.mark.parametrize(
    ("line", "passes"),
    [
        ("Start the engine, and look again.", False),
        ("It wets late. Run the engine, stop it, and look again.", False),
        ("Go on, and switch the key on.", False),
        ("When it is dry, open the fuel line at the rail.", False),
        ("Bleed the hose and read again.", False),
        ("Crank again after a pause.", False),
        ("Drive it hot, and look again.", False),
        ("Read [[measure-idle-pressure]] again. Start the engine, open the fuel line.", False),
        ("Set the recorder to one hour, and start it.", True),
        ("Read again with [[measure-idle-pressure]], then start the engine.", True),
        ("Do not start the engine.", True),
        ("Never open the line and crank the engine.", True),
        ("Open no joint.", True),
        ("The engine may be started.", True),
        ("Crank and camshaft agree.", True),
        ("Drive, tensioner and guides come first.", True),
        ("Read the lines, the rail and the port.", True),
    ],
)
def test_what_hurts_is_ordered_in_steps_only(line, passes, tmp_path):
    assert (said(tmp_path, (LOOK, SHOWN, f'misleads: ["{line}"]')) == []) == passes


def test_a_sheet_that_starts_the_engine_may_speak_of_it_again(tmp_path):
    assert (
        said(
            tmp_path,
            (IDLE, "misleads: none", "misleads: [It hunts when cold. Start the engine again when it has cooled.]"),
        )
        == []
    )


def test_a_caution_in_an_inherited_preparation_is_enough(tmp_path):
    first = ("procedures/measure-primed-pressure.yaml", "    cautions: [fuel-jet]\n", "")
    prep = ("procedures/bay-preparation.yaml", "cautions: [stop-at-any-leak]", "cautions: [stop-at-any-leak, fuel-jet]")
    assert ("SAFE-1", "measure-primed-pressure") in said(tmp_path / "a", first)
    assert said(tmp_path / "b", first, prep) == []


def test_a_slip_in_a_followed_procedure_is_said_where_it_is_written(tmp_path):
    slip = ("procedures/relieve-fuel-pressure.yaml", "    cautions: [fuel-jet, fuel-in-container]\n", "")
    assert {record for code, record in said(tmp_path, slip) if code == "SAFE-1"} == {"relieve-fuel-pressure"}


def test_a_follower_is_told_what_the_followed_procedure_alone_cannot_know(tmp_path):
    slip = (
        FIT,
        "  - {follow: relieve-fuel-pressure}\n",
        "  - {do: Switch the key on., act: key-on}\n  - {follow: relieve-fuel-pressure}\n",
    )
    assert said(tmp_path, slip) == []  # the followed procedure switches the key off again by itself
    slip = (
        FIT,
        "  - {follow: relieve-fuel-pressure}\n",
        "  - {follow: take-gauge-off}\n  - {follow: relieve-fuel-pressure}\n",
    )
    assert ("SAFE-32", "fit-gauge") in said(tmp_path / "b", slip)


def test_relieving_before_cooling_is_named_as_what_ended_the_relief(tmp_path):
    cool = "  - {do: Let the engine and the exhaust cool., act: cool-down}\n"
    root = lay_out(
        tmp_path,
        Example("procedures/relieve-fuel-pressure.yaml", cool, ""),
        Example(FIT, "  - {do: Take the cap off", cool + "  - {do: Take the cap off"),
    )
    found = [f.message for f in check(load_at(root)) if (f.code, f.record) == ("SAFE-5", "fit-gauge")]
    assert found == ["step 3 begins 'fuel joint open', and 'fuel pressure relieved' does not stand: step 2 ended it"]


def test_a_scan_tool_may_read_the_high_side_and_a_gauge_may_not(tmp_path):
    assert said(tmp_path / "a") == []
    slip = (HIGH, "instrument: scan-tool}", "instrument: vacuum-gauge}")
    assert ("SAFE-17", "read-high-side") in said(tmp_path / "b", slip)


def test_the_idle_reading_needs_an_engine_that_was_started(tmp_path):
    slip = (IDLE, "  - {do: Start the engine and wait until it is hot., act: start-engine}\n", "")
    assert ("SAFE-33", "measure-idle-pressure") in said(tmp_path, slip)
